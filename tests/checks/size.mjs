// What the shipped site weighs after gzip -9, against the budget.
//
//   node tests/checks/size.mjs SITE PROGRAM BUDGET
//
// The first visit is measured, not guessed: Chromium opens the served site, and every file that it asks for,
// the worker's own fetches left out, counts, even what arrives after the sheet is there.

import { spawn, execFile, execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { here } from './shipped.mjs';

const [site, program, budgetFile] = process.argv.slice(2);
const budget = Object.fromEntries(
  readFileSync(budgetFile, 'utf8').split('\n').map((line) => line.match(/^(\w+) = ([\d_]+)$/)).filter(Boolean)
    .map(([, name, value]) => [name, Number(value.replaceAll('_', ''))]),
);
// The program gzip itself: the library that Node carries is tuned for speed and packs the core 3 % worse at its level 9.
const weight = (name) => execFileSync('gzip', ['-9', '-n', '-c', join(site, name)], { maxBuffer: 1e8 }).length;
const folder = here(site).slice(site.length).replace(/^\//, '');

/** The files that a first visit asks for. */
async function firstVisit() {
  const server = spawn(program, ['serve', '--port', '0', '--log', '--dir', site], { stdio: ['ignore', 'pipe', 'inherit'] });
  const profile = mkdtempSync(join(tmpdir(), 'foamwright-size-'));
  let said = '';
  try {
    const address = await new Promise((resolve, reject) => {
      server.on('exit', () => reject(new Error('the server ended')));
      server.stdout.on('data', (data) => {
        said += data;
        const found = said.match(/at (http:\S+)/);
        if (found) resolve(found[1]);
      });
    });
    const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
    const page = await new Promise((resolve, reject) => {
      execFile('chromium', ['--headless=new', ...root, '--disable-dev-shm-usage', '--no-first-run',
        '--disable-background-networking', '--disable-component-update', `--user-data-dir=${profile}`,
        '--virtual-time-budget=30000', '--dump-dom', address], { maxBuffer: 1e8, timeout: 60_000 },
        (error, out) => (error ? reject(error) : resolve(out)));
    });
    await new Promise((resolve) => setTimeout(resolve, 300));
    const asked = said.split('\n').map((line) => line.match(/^(\d+) .*?GET (\S+) (\S+)$/)).filter(Boolean);
    return { page, asked: asked.map(([, status, path, from]) => ({ status, path: path.slice(1).split('?')[0], from })) };
  } finally {
    server.kill('SIGKILL');
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

const { page, asked } = await firstVisit();
const files = [...new Set(asked.filter(({ status, from }) => status === '200' && !from.endsWith('/sw.js'))
  .map(({ path }) => path || 'index.html').filter((path) => path !== 'sw.js'))].sort();
const rows = files.map((name) => [weight(name), name]).sort((a, b) => b[0] - a[0]);
for (const [bytes, name] of rows) console.log(`${String(bytes).padStart(8)}  ${name}`);
const wasm = weight(join(folder, 'core_bg.wasm'));
const visit = rows.reduce((sum, [bytes]) => sum + bytes, 0);
let failed = false;
const fail = (why) => { console.log(why); failed = true; };
for (const wanted of ['index.html', `${folder}/app.js`, `${folder}/core_bg.wasm`, `${folder}/sample/demo.json`]) {
  if (!files.includes(wanted)) fail(`the first visit did not fetch ${wanted}: it was not a first visit`);
}
for (const { status, path } of asked) {
  if (Number(status) >= 400 && path !== 'favicon.ico') fail(`${status} for ${path}`);
}
if (!page.includes('<input') && !page.includes('<button')) fail('the page drew nothing');
for (const [name, bytes] of [['wasm', wasm], ['first_visit', visit]]) {
  if (!(bytes <= budget[name])) fail(`${name}: ${bytes} bytes, over the budget of ${budget[name]}`);
}
console.log(`wasm ${(wasm / 1000).toFixed(1)} of ${budget.wasm / 1000} kB, first visit ${(visit / 1000).toFixed(1)} of ${budget.first_visit / 1000} kB in ${files.length} files`);
process.exit(failed ? 1 : 0);
