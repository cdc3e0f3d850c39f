// The shipped core and the program give the same estimate of every job, and the shipped exercises and the program the
// same exercise of every seed, with answers and slips, to the last bit.
//
//   node tests/checks/native.mjs SITE PROGRAM

import { execFileSync } from 'node:child_process';
import { core, exercises, jobs } from './shipped.mjs';

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

const estimator = await core(site);
const { estimate } = estimator;
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
const ofJobs = compared;

/** The figures of a job at these paths, as the page lends them (`www/app/practice/core.js`), written apart from it. */
function figures(job, now, paths) {
  const estimated = estimate(job, now);
  return Float64Array.from(paths, (path) => {
    const [way, word] = path.split('=');
    let here = estimated;
    for (const name of way.split('.')) {
      if (Array.isArray(here)) here = Number.isInteger(Number(name)) ? here[name] : here.find((one) => one.field === name)?.value;
      else here = here?.[name];
    }
    if (word !== undefined) return typeof here === 'string' ? Number(here === word) : NaN;
    const value = here?.likely ?? here;
    return typeof value === 'number' ? value : NaN;
  });
}

const module = await exercises(site);
const seeds = [...module.book(), ...[1, 2, 3, 4].flatMap((level) => Array.from({ length: 24 }, (_, at) => module.find(level, 0, at * 2741)))];
for (const seed of seeds) {
  for (const units of ['us', 'metric']) {
    const { exercise } = module.exercise(seed, units);
    const shipped = { ...exercise, solved: module.solve(seed, units, figures), slips: module.slips(seed, units, figures) };
    const native = JSON.parse(execFileSync(program, ['exercise', seed, '--units', units, '--key', '--json'], { encoding: 'utf8' }));
    const found = differences(shipped, native);
    for (const line of found.slice(0, 20)) console.log(`${seed} ${units}${line}`);
    faults += found.length;
  }
}
// What the page throws while it is asked for figures is thrown on: nothing is marked by figures that are not there.
const failing = () => { throw new Error('planted'); };
for (const [name, ask] of Object.entries({
  solve: () => module.solve(seeds[0], 'us', failing), slips: () => module.slips(seeds[0], 'us', failing),
  mark: () => module.mark(seeds[0], 'us', Float64Array.of(1), new Uint8Array(1), failing),
})) {
  let thrown = '';
  try {
    ask();
  } catch (error) {
    thrown = error.message;
  }
  if (thrown === 'planted') continue;
  console.log(`${name} passes over a failure of the estimator`);
  faults += 1;
}
console.log(`${seeds.length} exercises in two systems of units, ${compared - ofJobs} values, ${faults} differ in all`);
process.exit(faults || ofJobs < 1000 || compared - ofJobs < 10_000 ? 1 : 0);
