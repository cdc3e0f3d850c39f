// What the shipped site weighs after gzip -9, against the budget.
//
//   node tests/checks/size.mjs SITE PROGRAM BUDGET
//
// The first visit is measured, not guessed: Chromium opens the served site, and every file that it asks for,
// the worker's own fetches left out, counts, even what arrives after the sheet is there. A phone's width and a
// desk's are opened; the heavier one counts.

import { spawn, execFile, execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
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

/** The files that a first visit asks for, and the page that stands then. @param {number} width of the window @param {string} path below the site */
async function firstVisit(width, path) {
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
        '--disable-background-networking', '--disable-component-update', `--user-data-dir=${profile}`, `--window-size=${width},900`,
        '--virtual-time-budget=30000', '--dump-dom', address + path], { maxBuffer: 1e8, timeout: 60_000 },
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

let failed = false;
const fail = (why) => { console.log(why); failed = true; };

/** What a first visit to the site or one of its pages weighs. @param {number} width @param {string} path @param {string[]} needs files without which it was none */
async function weigh(width, path, needs) {
  const { page, asked } = await firstVisit(width, path);
  const files = [...new Set(asked.filter(({ status, from }) => status === '200' && !from.endsWith('/sw.js'))
    .map(({ path }) => path || 'index.html').filter((path) => path !== 'sw.js'))].sort();
  const rows = files.map((name) => [weight(name), name]).sort((a, b) => b[0] - a[0]);
  const sum = rows.reduce((all, [bytes]) => all + bytes, 0);
  console.log(`${path || 'the sheet'}, ${width} wide: ${sum} bytes in ${files.length} files`);
  for (const [bytes, name] of rows) console.log(`${String(bytes).padStart(8)}  ${name}`);
  for (const wanted of [...needs, `${folder}/core_bg.wasm`]) {
    if (!files.includes(wanted)) fail(`the first visit did not fetch ${wanted}: it was not a first visit`);
  }
  for (const { status, path } of asked) {
    if (Number(status) >= 400 && path !== 'favicon.ico') fail(`${status} for ${path}`);
  }
  const body = page.slice(page.indexOf('<body')).replace(/ data-words(-label)?="[^"]*"/g, '');
  if (!body.includes('<input') && !body.includes('<button')) fail('the page drew nothing');
  for (const [key] of body.matchAll(pages)) fail(`${key} has no words on a first visit`);
  return { sum, files, body };
}

/** What a first visit to the sheet weighs. @param {number} width */
async function sheet(width) {
  const visit = await weigh(width, '', ['index.html', `${folder}/app.js`, `${folder}/sample/demo.json`]);
  if (width >= 1000 && !visit.body.includes('class="frame"')) fail('the live sheet of a desk is not there');
  // All that is said is in the words of a first visit: no page of words was fetched.
  for (const name of visit.files.filter((one) => one.includes('/words/') && !one.endsWith('/first.json'))) fail(`a first visit needs ${name}`);
  return visit;
}

/** What a visitor of a company's page fetches before the estimator can be used: the script on that page, and the frame. */
async function embedded() {
  const visit = await weigh(390, 'embed.html', ['embed.html', `${folder}/embed/frame.js`]);
  return visit.sum + weight('embed.js');
}


const pages = new RegExp(`(?<![\\w/.-])(?:${readdirSync('www/words/en').map((name) => name.replace('.json', '')).join('|')})\\.[a-z][\\w.]*(?<!\\.(?:js|css|html|json|svg))`, 'g');
const phone = await sheet(412);
const desk = await sheet(1280);
const embed = await embedded();
const wasm = weight(join(folder, 'core_bg.wasm'));
const exercises = weight(join(folder, 'exercises_bg.wasm'));
const visit = Math.max(phone.sum, desk.sum);
const kB = (/** @type {number} */ bytes) => (bytes / 1000).toFixed(1);
const script = weight('embed.js');
for (const [name, bytes] of [['wasm', wasm], ['exercises', exercises], ['first_visit', visit], ['embed_script', script], ['embed_first_use', embed]]) {
  if (!(bytes <= budget[name])) fail(`${name}: ${bytes} bytes, over the budget of ${budget[name]}`);
}
console.log(`phone ${kB(phone.sum)} kB in ${phone.files.length} files, desk ${kB(desk.sum)} in ${desk.files.length}`);
console.log(`wasm ${kB(wasm)} of ${budget.wasm / 1000} kB, exercises ${kB(exercises)} of ${budget.exercises / 1000} kB, first visit ${kB(visit)} of ${budget.first_visit / 1000} kB, embedded ${kB(embed)} of ${budget.embed_first_use / 1000} kB, its script ${kB(script)} of ${budget.embed_script / 1000} kB`);
process.exit(failed ? 1 : 0);
