// The shipped modules in Node: the very bytes that a browser gets.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The hashed folder of a built site. */
export function here(site) {
  const folders = readdirSync(site, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  if (folders.length !== 1) throw new Error(`${site}: one folder is wanted, there are ${folders.length}`);
  return join(site, folders[0].name);
}

/** The core of a built site. */
export const core = (site) => module(site, 'core');

/** The module of the exercises of a built site. */
export const exercises = (site) => module(site, 'exercises');

async function module(site, name) {
  const folder = here(site);
  const glue = readFileSync(join(folder, `${name}.js`), 'utf8');
  const module = await import(`data:text/javascript;base64,${Buffer.from(glue).toString('base64')}`);
  module.initSync({ module: readFileSync(join(folder, `${name}_bg.wasm`)) });
  return module;
}

/** Every whole job of the tests: its name, its file, the job and the instant it is worked out at. */
export function jobs() {
  const all = [];
  const take = (folder) => {
    for (const entry of readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) take(path);
      if (entry.name !== 'job.json') continue;
      const now = JSON.parse(readFileSync(join(folder, 'now.json'), 'utf8'));
      all.push({ name: folder, file: path, job: JSON.parse(readFileSync(path, 'utf8')), now });
    }
  };
  take('tests/jobs');
  if (!all.length) throw new Error('no jobs in tests/jobs');
  return all;
}

export const isMain = (url) => url === pathToFileURL(process.argv[1]).href;
