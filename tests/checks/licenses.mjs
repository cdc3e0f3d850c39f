// Every crate that ends up in the shipped core or in the program may be given away under terms like our own, and
// so may the two tools that what is shipped goes through, and the data that its tables are made from, whose notices
// go along in `www/data-licenses.txt`.
//
//   node tests/checks/licenses.mjs

import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

const ALLOWED = new Set(['MIT', 'Apache-2.0', 'Apache-2.0 WITH LLVM-exception', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC',
  'Unlicense', 'Zlib', '0BSD', 'Unicode-3.0', 'CC0-1.0', 'BSL-1.0']);

/** Whether an SPDX expression (or the older `A/B`) can be met by allowed licenses alone. */
function allowed(expression) {
  const words = (expression ?? '').replaceAll('/', ' OR ').replace(/[()]/g, ' $& ').trim().split(/\s+/);
  let at = 0;
  const one = () => {
    if (words[at] === '(') {
      at += 1;
      const inner = or();
      at += 1;
      return inner;
    }
    let name = words[at++];
    if (words[at] === 'WITH') {
      name = `${name} WITH ${words[at + 1]}`;
      at += 2;
    }
    return ALLOWED.has(name);
  };
  const and = () => {
    let all = one();
    while (words[at] === 'AND') { at += 1; all = one() && all; }
    return all;
  };
  const or = () => {
    let any = and();
    while (words[at] === 'OR') { at += 1; any = and() || any; }
    return any;
  };
  return or() && at === words.length;
}

for (const [expression, wanted] of [['MIT', true], ['GPL-3.0-only', false], ['MIT OR GPL-3.0-only', true], ['MIT AND GPL-3.0-only', false],
  ['(MIT OR Apache-2.0) AND Unicode-3.0', true], ['Apache-2.0 WITH LLVM-exception', true], ['MIT/Apache-2.0', true], ['', false]]) {
  if (allowed(expression) !== wanted) throw new Error(`misjudged: ${expression}`);
}

function linked(triple) {
  const text = execFileSync('cargo', ['metadata', '--format-version', '1', '--locked', '--filter-platform', triple],
    { encoding: 'utf8', maxBuffer: 1e8, stdio: ['ignore', 'pipe', 'inherit'] });
  const { packages, resolve } = JSON.parse(text);
  const byId = new Map(packages.map((one) => [one.id, one]));
  const nodes = new Map(resolve.nodes.map((node) => [node.id, node]));
  const seen = new Set();
  const open = [resolve.root];
  while (open.length) {
    const id = open.pop();
    if (seen.has(id)) continue;
    // A macro runs in the compiler: what it needs is not linked.
    if (byId.get(id).targets.some((target) => target.kind.includes('proc-macro'))) continue;
    seen.add(id);
    for (const dep of nodes.get(id).deps) {
      if (dep.dep_kinds.some((kind) => kind.kind === null)) open.push(dep.pkg);
    }
  }
  return [...seen].map((id) => byId.get(id));
}

const host = execFileSync('rustc', ['--print', 'host-tuple'], { encoding: 'utf8' }).trim();
let faults = 0;
const counts = [];
for (const [what, triple] of [['core', 'wasm32-unknown-unknown'], ['program', host]]) {
  const crates = linked(triple);
  for (const { name, version, license } of crates) {
    const good = allowed(license);
    if (!good) faults += 1;
    console.log(`${good ? '      ' : 'NOT OK'} ${what} ${name} ${version}: ${license}`);
  }
  if (crates.length < 5) { console.log(`${what}: only ${crates.length} crates found`); faults += 1; }
  counts.push(`${crates.length} crates in the ${what}`);
}
const { packages } = JSON.parse(readFileSync('tests/package-lock.json', 'utf8'));
for (const name of ['binaryen', 'esbuild']) {
  const { version, license } = packages[`node_modules/${name}`] ?? {};
  const good = allowed(license);
  if (!good) faults += 1;
  console.log(`${good ? '      ' : 'NOT OK'} tool ${name} ${version}: ${license}`);
}
counts.push('2 tools');
const notices = readFileSync('www/data-licenses.txt', 'utf8');
const sources = [...readFileSync('tests/oracles/zones.py', 'utf8').matchAll(/^ {4}"([^"]+)": \("([^"]+)", "([^"]+)", "(?:pip|npm)"/gm)];
for (const [, name, version, license] of sources) {
  const noticed = notices.includes(`${name} ${version} (${license})`);
  const good = allowed(license) && noticed;
  if (!good) faults += 1;
  console.log(`${good ? '      ' : 'NOT OK'} data ${name} ${version}: ${license}${noticed ? '' : ', without a notice'}`);
}
if (sources.length !== 3) { console.log(`data: ${sources.length} sources found, not three`); faults += 1; }
counts.push(`${sources.length} sources of data`);
console.log(`${counts.join(', ')}, ${faults} not allowed`);
process.exit(faults ? 1 : 0);
