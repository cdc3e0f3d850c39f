// The shipped core and the program give the same estimate of every job, to the last bit.
//
//   node tests/checks/native.mjs SITE PROGRAM

import { execFileSync } from 'node:child_process';
import { core, jobs } from './shipped.mjs';

const [site, program] = process.argv.slice(2);
let compared = 0;

/** Where two values differ. A missing key, undefined and null are the same nothing; 0 and −0 are not the same. */
function differences(a, b, path = '') {
  const nothing = (value) => value === undefined || value === null;
  if (nothing(a) && nothing(b)) return [];
  if (typeof a === 'object' && typeof b === 'object' && a && b && Array.isArray(a) === Array.isArray(b)) {
    const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
    return [...keys].flatMap((key) => differences(a[key], b[key], `${path}.${key}`));
  }
  compared += 1;
  return Object.is(a, b) ? [] : [`${path}: ${show(a)} in the browser, ${show(b)} on the host`];
}

const show = (value) => (Object.is(value, -0) ? '-0' : JSON.stringify(value) ?? String(value));

// The comparison itself has to see the least difference that there is.
const planted = [
  [{ a: 0.1 + 0.2 }, { a: 0.3 }],
  [{ a: 0 }, { a: -0 }],
  [{ a: [1] }, { a: [1, 2] }],
  [{ a: NaN }, { a: null }],
  [{ a: '' }, {}],
  [{ a: [] }, { a: {} }],
];
for (const [a, b] of planted) {
  if (differences(a, b).length !== 1) throw new Error(`the comparison overlooks ${JSON.stringify([a, b])}`);
}
if (differences({ a: undefined, c: [null] }, { b: null, c: [undefined] }).length) throw new Error('nothing differs from nothing');
compared = 0;

const { estimate } = await core(site);
let faults = 0;
const all = jobs();
for (const { name, file, job, now } of all) {
  const words = ['estimate', file, '--now', String(now.ms), '--offset', String(now.offset_min)];
  const native = JSON.parse(execFileSync(program, words, { encoding: 'utf8' }));
  const found = differences(estimate(job, now), native);
  for (const line of found.slice(0, 20)) console.log(`${name}${line}`);
  faults += found.length;
}
console.log(`${all.length} jobs, ${compared} values, ${faults} differ`);
process.exit(faults || compared < 1000 ? 1 : 0);
