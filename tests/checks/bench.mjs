// Times the shipped core beside a spreadsheet engine (hyperformula) and a psychrometric library (psychrolib).
//
//   node tests/checks/bench.mjs SITE

import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { core } from './shipped.mjs';

const require = createRequire(resolve('target/tools/package.json'));
const { HyperFormula } = require('hyperformula');
const psychrolib = require('psychrolib');
const { estimate, warm_curves } = await core(process.argv[2]);

const job = JSON.parse(readFileSync('tests/jobs/larkspur-lane/job.json', 'utf8'));
const now = JSON.parse(readFileSync('tests/jobs/larkspur-lane/now.json', 'utf8'));

/** The middle of many runs, in microseconds, after a warm-up. */
function time(run, least = 30) {
  for (let i = 0; i < 5; i += 1) run(i);
  const took = [];
  const end = performance.now() + 1500;
  while (took.length < least || performance.now() < end) {
    const from = performance.now();
    run(took.length);
    took.push((performance.now() - from) * 1000);
    if (took.length >= 20_000) break;
  }
  took.sort((a, b) => a - b);
  return { least: took[0], middle: took[took.length >> 1], slow: took[Math.floor(took.length * 0.95)] };
}

const show = (micro) => (micro >= 1000 ? `${(micro / 1000).toFixed(2)} ms` : `${micro.toFixed(1)} µs`);
const row = (what, { least, middle, slow }, beside = '') => console.log(`${what.padEnd(58)} ${[least, middle, slow].map((one) => show(one).padStart(10)).join(' ')}   ${beside}`);
console.log(`${''.padEnd(58)} ${'least'.padStart(10)} ${'middle'.padStart(10)} ${'95 in 100'.padStart(10)}`);

/** The sample's surfaces, again and again under ids of their own, so many in all. */
function jobOf(count) {
  const surfaces = Array.from({ length: count }, (_, at) => {
    const one = structuredClone(job.surfaces[at % job.surfaces.length]);
    one.id = 10_000 + at * 100;
    one.openings.forEach((opening, nth) => { opening.id = one.id + 1 + nth; });
    return one;
  });
  return { ...structuredClone(job), next_id: 1e7, surfaces };
}

const own = {};
for (const count of [1, 40, 1000]) {
  const many = jobOf(count);
  const result = estimate(many, now);
  const complete = result.surfaces.filter((one) => one.in_place !== undefined).length;
  if (complete !== count) throw new Error(`${complete} of ${count} surfaces are complete`);
  own[count] = time((i) => {
    // One edit a call, as a keystroke makes it.
    many.surfaces[0].entries.find((entry) => entry.field === 'depth').text = i % 2 ? '2' : '2 1/2';
    estimate(many, now);
  });
  row(`estimate, ${count} surface${count > 1 ? 's' : ''}, one edited`, own[count]);
}

// A takeoff of 40 rows in a spreadsheet: length, height, openings, depth; net, board feet; total, kits.
const cells = Array.from({ length: 40 }, (_, at) => [24 + at, 8, 30, 2, `=A${at + 1}*B${at + 1}-C${at + 1}`, `=E${at + 1}*D${at + 1}`]);
cells.push([null, null, null, null, '=SUM(E1:E40)', '=SUM(F1:F40)*1.03'], [null, null, null, null, null, '=CEILING(F41/(480*0.86-5),1)']);
const sheet = HyperFormula.buildFromArray(cells, { licenseKey: 'gpl-v3' });
const before = sheet.getCellValue({ sheet: 0, row: 40, col: 5 });
sheet.setCellContents({ sheet: 0, row: 0, col: 3 }, 3);
if (sheet.getCellValue({ sheet: 0, row: 40, col: 5 }) === before) throw new Error('the spreadsheet does not follow its edit');
const spread = time((i) => sheet.setCellContents({ sheet: 0, row: 0, col: 3 }, i % 2 ? 2 : 2.5));
row('spreadsheet engine, 40 rows of two formulas, one cell edited', spread, `estimate of 40 surfaces: ${(own[40].least / spread.least).toFixed(0)} ×`);

// Dew points. The core has no call for one alone: a job without surfaces is worked out, its verdict, windows and
// findings included, and the dew point three times (the reading, and both ends of the meter's error).
psychrolib.SetUnitSystem(psychrolib.IP);
const HUMIDITIES = 64;
const humidity = job.readings.find((reading) => reading.of === 'humidity');
const air = job.readings.find((reading) => reading.of === 'air');
const moist = (text) => ({
  ...structuredClone(job),
  surfaces: [],
  readings: [structuredClone(air), { ...structuredClone(humidity), entries: [{ ...humidity.entries[0], text }] }],
});
const jobs = Array.from({ length: HUMIDITIES }, (_, at) => moist(`${20 + at}%`));
const airF = Number.parseFloat(air.entries[0].text);
jobs.forEach((one, at) => {
  const { likely } = estimate(one, now).readiness.dew.point_f;
  const wanted = psychrolib.GetTDewPointFromRelHum(airF, (20 + at) / 100);
  // Below freezing the library gives the frost point.
  if (wanted > 32.1 && Math.abs(likely - wanted) > 0.01) throw new Error(`dew point ${likely} against ${wanted}`);
});
const ours = time(() => { for (const one of jobs) estimate(one, now); });
const theirs = time(() => { for (let at = 0; at < HUMIDITIES; at += 1) psychrolib.GetTDewPointFromRelHum(airF, (20 + at) / 100); });
row(`${HUMIDITIES} whole verdicts, three dew points in each`, ours);
row(`${HUMIDITIES} dew points by the library`, theirs, `a whole verdict: ${(ours.least / theirs.least).toFixed(0)} × one dew point of the library`);

// Kits brought to temperature: two bands of curves with a night set-back, and one learned from readings.
for (const [name, what] of [['cantilever-4-celsius', 'a night set-back'], ['boat-second-kit', 'readings that teach']]) {
  const read = (/** @type {string} */ file) => JSON.parse(readFileSync(`tests/jobs/${name}/${file}.json`, 'utf8'));
  const [cold, at] = [read('job'), read('now')];
  const lines = warm_curves(cold, at, cold.warming[0].id);
  if (!(lines?.warm_slow_f.length > 90 && lines.warm_slow_f.at(-1) > lines.warm_slow_f[0])) throw new Error(`${name}: no curve`);
  row(`a warm-up curve with its band, ${what}`, time(() => warm_curves(cold, at, cold.warming[0].id)), 'bar: 5 ms');
  const without = { ...cold, warming: [] };
  const [groups, none] = [time(() => estimate(cold, at)), time(() => estimate(without, at))];
  row(`the same job's estimate, its ${cold.warming.length} group${cold.warming.length > 1 ? 's' : ''} among it`, groups, `groups alone: ${show(groups.least - none.least)}`);
}
