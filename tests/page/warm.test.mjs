// Warm-up: curves are made while nothing is typed, and the largest words say what is so.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { cut, timeChart } from '../../www/app/drawing/warmcurve.js';
import { inputs, warmCurves } from '../../www/app/warmcurves.js';
import { about, after, answerOf, before, hours, labelHours, standOf, under, wasDue, won } from '../../www/app/warmwords.js';
import { freshOf, lastOf } from '../../www/app/warmread.js';
import { apply } from '../../www/app/changes.js';
import { give } from '../../www/app/words.js';
import { page as elements } from '../checks/elements.mjs';

for (const page of ['warm', 'page']) give(page, JSON.parse(readFileSync(`www/words/en/${page}.json`, 'utf8')));
elements();
const plain = (text) => text.replaceAll(/[\u00a0\u202f]/g, ' ');
/** Minutes by the clock on the wall. */
const wall = (text) => Date.parse(`${text}Z`) / 60_000;

const job = (start, name = '') => ({ entries: [], foams: [], kits: [], foam: 0, surfaces: [], name, warming: [{ id: 7, name: '', entries: [{ field: 'start', text: start }], log: [] }] });

/** A browser whose idle time comes when the test says so. */
function idling() {
  const waits = new Map();
  let next = 1;
  return {
    waits,
    idle: (run) => { waits.set(next, run); return next++; },
    drop: (handle) => waits.delete(handle),
    rest: () => { for (const [handle, run] of [...waits]) { waits.delete(handle); run(); } },
  };
}

test('curves are made in idle time, once for each set of inputs, and an old one is never handed out', () => {
  const store = { job: job('4') };
  const by = idling();
  let drawn = 0;
  let made = 0;
  let there = true;
  const curves = warmCurves(store, 7, () => { drawn += 1; }, { ...by, make: () => { made += 1; return there ? { of: store.job.warming[0].entries[0].text } : undefined; }, ready: () => there });
  assert.equal(curves.latest(), undefined);
  assert.equal(made, 0, 'nothing is worked out while the change is shown');
  store.job = job('40');
  assert.equal(curves.latest(), undefined);
  assert.equal(by.waits.size, 1, 'two keystrokes wait for one calculation');
  by.rest();
  assert.deepEqual([made, drawn], [1, 1]);
  assert.deepEqual(curves.latest(), { of: '40' }, 'of the inputs as they stand, not of the ones when it was asked for');
  store.job = job('40', 'another name');
  assert.deepEqual(curves.latest(), { of: '40' }, 'the name of the job moves no curve');
  assert.equal(by.waits.size, 0);
  store.job = job('41');
  assert.equal(curves.latest(), undefined, 'the curves of 40 are not those of 41');
  there = false;
  by.rest();
  there = true;
  assert.equal(curves.latest(), undefined, 'while the core was gone nothing was made, so it is asked for again');
  by.rest();
  assert.deepEqual(curves.latest(), { of: '41' });
  store.job = job('42');
  there = false;
  for (let i = 0; i < 9; i += 1) { curves.latest(); by.rest(); }
  assert.equal(made, 5, 'inputs on which the core is lost twice are left alone');
  assert.equal(curves.latest(), null);
  store.job = job('43');
  curves.latest();
  curves.stop();
  by.rest();
  assert.equal(made, 5, 'a screen that has gone works nothing out');
});

test('curves follow from what the core counts them from', () => {
  const base = job('40');
  for (const [what, other] of Object.entries({
    group: { ...base, warming: [{ ...base.warming[0], moved_in: { ms: 1, offset_min: 0 } }] },
    day: { ...base, entries: [{ field: 'spray_date', text: '2026-11-04' }] },
    foam: { ...base, foams: [{ id: 1, entries: [{ field: 'cylinder_least', text: '75' }] }] },
    kits: { ...base, kits: [{ id: 1, entries: [{ field: 'gross_weight', text: '45' }] }] },
  })) assert.notEqual(inputs(base, 7), inputs(other, 7), what);
});

test('a curve ends at the edge of the drawing, on its own line', () => {
  assert.deepEqual(cut([0, 10, 20], [40, 50, 70], 15), [[0, 40], [10, 50], [15, 60]]);
  assert.deepEqual(cut([0, 10, 20], [40, 50, 70], 20), [[0, 40], [10, 50], [20, 70]]);
  assert.deepEqual(cut([0, 10], [40, 50], 99), [[0, 40], [10, 50]]);
});

const up = (more) => ({ target_f: 70, likely_min: 660, slow_min: 1_132, label_min: 1_440, plan_min: 1_440, decides: 'label', late: false, ...more });
/** An instant in a place five hours west of Greenwich, by its clock. */
const instant = (text) => text && { ms: (wall(text) + 300) * 60_000, offset_min: -300 };
const answer = (warm_up, { at = wall('2026-11-02T12:00'), came, left, cool_down, spray } = {}) => plain(answerOf({ id: 1, warm_up, cool_down }, { moved_in: instant(came), moved_out: instant(left) }, at, spray).text);

test('the largest words: by when they have to be in, when they are ready, by when they are used', () => {
  assert.equal(answer(undefined), 'Not known yet');
  assert.equal(answer(up({})), 'Plan on 24 h');
  assert.equal(answer(up({ in_by: wall('2026-11-03T18:00') })), 'Indoors by Tue 6:00 PM');
  assert.equal(answer(up({ in_by: wall('2026-11-01T18:00'), late: true }), { spray: wall('2026-11-02T18:00') }), 'Too late for Mon 6:00 PM');
  assert.equal(answer(up({ plan_min: undefined, slow_min: undefined })), 'Not in this room');
  assert.equal(answer(up({ ready_at: wall('2026-11-04T13:00') })), 'Ready Wed 1:00 PM');
  // Hours that are over are no clearance.
  assert.equal(answer(up({ ready_at: wall('2026-11-02T12:00') })), 'Measure now');
  const cool_down = { use_by: wall('2026-11-02T12:48'), hot: false };
  const moves = { came: '2026-11-01T11:00', left: '2026-11-02T11:30', cool_down };
  const there = up({ ready_at: wall('2026-11-02T11:00') });
  assert.equal(answer(there, moves), 'Use by Mon 12:48 PM');
  assert.equal(answer(there, { ...moves, at: wall('2026-11-02T12:48') }), 'Measure first');
  assert.equal(answer(there, { ...moves, cool_down: undefined }), 'Measure first');
  // 24 h were planned on, and they left a minute sooner.
  assert.equal(answer(there, { ...moves, left: '2026-11-02T10:59' }), 'Measure first');
  // The core says of such that they never were ready; the night may do that too, with the hours of curve and label over.
  assert.equal(answer(up({}), moves), 'Measure first');
  assert.equal(wasDue(up({}), { moved_in: instant(moves.came), moved_out: instant('2026-11-02T10:59') }), wall('2026-11-02T11:00'));
  assert.equal(wasDue(up({}), { moved_in: instant(moves.came), moved_out: instant(moves.left) }), undefined);
  assert.equal(answer(there, { ...moves, left: '2026-11-02T11:00' }), 'Use by Mon 12:48 PM');
});

test('a room that does it, but not for that hour, is not the room that never does it', () => {
  const spray = wall('2026-11-04T08:00');
  assert.equal(answer(up({}), { spray }), 'Too cold at night');
  assert.equal(answer(up({ plan_min: undefined }), { spray }), 'Too cold at night');
  assert.equal(standOf({ id: 1, warm_up: up({ spray_at: spray }) }, {}, spray - 9_000).is, 'hour');
  assert.equal(standOf({ id: 1, warm_up: up({ plan_min: undefined, slow_min: undefined, spray_at: spray }) }, {}, spray - 9_000).is, 'never');
  // In, and never ready at that hour.
  assert.equal(standOf({ id: 1, warm_up: up({ spray_at: spray }) }, { moved_in: instant('2026-11-02T11:00') }, spray - 2_000).is, 'hour');
  // Nobody said when, and the nights are too cold: no hours that would do it.
  assert.deepEqual(standOf({ id: 1, warm_up: up({}) }, { moved_in: instant('2026-11-02T11:00') }, spray), { is: 'hour', time: undefined });
});

test('out of the room without a start there is no time until which they may be used', () => {
  const cool_down = { use_by: wall('2026-11-02T12:48'), hot: false };
  assert.equal(answer(undefined, { came: '2026-11-02T10:30', left: '2026-11-02T11:30', cool_down }), 'Measure first');
  // Neither where this room never makes them ready.
  assert.equal(answer(up({ plan_min: undefined }), { came: '2026-10-30T10:30', left: '2026-11-02T11:30', cool_down }), 'Measure first');
});

test('back in the warm room the hours count anew, and how warm they came in first does not stand', () => {
  const [came, left, again] = ['2026-11-01T11:00', '2026-11-02T05:00', '2026-11-02T09:00'].map(instant);
  const before = { ...job('68'), warming: [{ id: 7, name: 'Near', moved_in: came, moved_out: left, log: [{ id: 8, entries: [] }], entries: [{ field: 'start', text: '68' }, { field: 'room', text: '75' }] }] };
  const [group] = apply(before, { do: 'moved_back', id: 7, now: again }).warming;
  assert.deepEqual(group, { id: 7, name: 'Near', moved_in: again, log: [{ id: 8, entries: [] }], entries: [{ field: 'room', text: '75' }] });
  assert.equal(apply(before, { do: 'moved_back', id: 9, now: again }), before);
});

test('a time not to be missed is written early, one to wait for late; a plan is never rounded down', () => {
  assert.deepEqual([before(100.9), after(100.1), before(100), after(100)], [100, 101, 100, 100]);
  assert.equal(plain(hours(1_132, true)), '19 h');
  assert.equal(plain(hours(1_441, true)), '25 h');
  assert.equal(plain(hours(1_440, true)), '24 h');
  assert.equal(plain(hours(90.2, true)), '1 h 31');
  assert.equal(labelHours(1_440), '24 h');
  assert.equal(labelHours(1_470), '24.5 h');
  // 60 h and 71 h are no two days: 48 h. 24.02 h are more than 24.
  assert.deepEqual([3_600, 4_260, 1_441].map(labelHours), ['60 h', '71 h', '24.1 h']);
  assert.equal(plain(hours(4_260, true)), '71 h');
});

test('which of the two won is said with both', () => {
  assert.equal(plain(won(up({}))), 'The label’s 24 h decide; the slow curve would do in 19 h.');
  assert.equal(plain(won(up({ slow_min: 1_860, plan_min: 1_860, decides: 'curve' }))), 'The slow curve decides: 31 h. The label asks for 24 h.');
});

/** A liquid that nears 75 °F by a fifth of the rest every two hours, over 30 hours. */
const min = Array.from({ length: 16 }, (_, at) => at * 120);
const nears = (share) => min.map((_, at) => 75 - 35 * (1 - share) ** at);
const chart = (more) => timeChart({
  min, end: 1_800, from: wall('2026-11-02T13:00'), band: [nears(0.3), nears(0.2)],
  curves: [{ kind: 'on dash', f: nears(0.3) }, { kind: 'on bold', f: nears(0.2) }],
  box: { least: 70, most: 90, name: 'label' }, reaches: [{ min: 660, name: 'likely' }, { min: 1_140, name: 'slow' }, { min: 1_440, name: 'label 24 h', main: true }],
  by: { min: 1_440, name: 'ready by Tue 1:00 PM' }, ...more,
}, { width: 390, label: 'Warm-up', metric: false });
const numbers = (node) => (node.getAttribute('d') ?? '').match(/-?[\d.]+/g).map(Number);

test('the drawing: a window closed at both ends, the upright where the later of curve and label ends', () => {
  const svg = chart({});
  assert.deepEqual([svg.getAttribute('role'), svg.getAttribute('aria-label')], ['img', 'Warm-up']);
  const heavy = svg.querySelector('path.heavy');
  const won = svg.querySelectorAll('path.ln').find((one) => one.getAttribute('class') === 'ln bold');
  assert.equal(numbers(heavy)[0], numbers(won)[0], 'the heavy upright stands on the end of what won');
  // The window's edges lie where the grid has 70 and 90 degrees.
  const degrees = new Map(svg.querySelectorAll('text').filter((one) => one.getAttribute('class') === 'e').map((one) => [one.textContent, Number(one.getAttribute('y')) - 4.5]));
  const box = svg.querySelector('rect.ln');
  const [top, tall] = ['y', 'height'].map((name) => Number(box.getAttribute(name)));
  assert.ok(Math.abs(top - degrees.get('90°')) < 0.02 && Math.abs(top + tall - degrees.get('70°')) < 0.02, `${top} ${tall} ${[...degrees]}`);
  // 40 and 70 by the slow curve: 35 · 0.8ⁿ = 5 at n = 8.72, the line crosses the window's lower edge between 16 and 18 hours.
  const slow = numbers(svg.querySelectorAll('path.on').find((one) => one.getAttribute('class') === 'on bold'));
  assert.ok(slow[2 * 8 + 1] > top + tall && slow[2 * 9 + 1] < top + tall);
  assert.ok(svg.querySelectorAll('text').some((one) => one.textContent === 'Tue'), 'midnight is named by its day');
});

test('without a day of spraying the axis has hours; without an answer there is no upright', () => {
  const svg = chart({ from: undefined, by: undefined });
  const said = svg.querySelectorAll('text').map((one) => plain(one.textContent));
  assert.ok(said.includes('6 h') && !said.includes('Tue'), said.join());
  assert.equal(svg.querySelector('path.heavy'), null);
});

test('what is short of a limit is never written as the limit', () => {
  const us = { metric: false, temp: (f) => `${Math.round(f * 10) / 10} °F` };
  const si = { metric: true, temp: (f) => `${Math.round((f - 32) / 0.18) / 10} °C` };
  assert.deepEqual([69.96, 69.4, 70, 70.3, 61.6].map((f) => under(us, f, 70)), ['69 °F', '69 °F', '70 °F', '70 °F', '62 °F']);
  // 68 °F are 20 °C, 67.9 °F are 19.94 °C, 67 °F are 19.4 °C.
  assert.deepEqual([67.9, 67, 68].map((f) => under(si, f, 68)), ['19 °C', '19 °C', '20 °C']);
  assert.equal(about(us, 69.96), '70 °F', 'where no limit is near, to the nearest degree');
});

test('a reading stands for now for an hour, and the last one counts', () => {
  const at = 1e12;
  const read = (of, f, minutes) => ({ of, f, ms: at - minutes * 60_000, offset_min: 0 });
  const log = [read('skin', 66, 61), read('skin', 64, 20), read('liquid', 60, 20), read('skin', 65, 59)];
  assert.equal(freshOf(log, 'skin', at).f, 64);
  assert.equal(freshOf(log, 'liquid', at).f, 60);
  assert.equal(freshOf(log.slice(0, 1), 'skin', at), undefined, 'an hour and a minute ago is not now');
  assert.equal(freshOf([read('skin', 66, -5)], 'skin', at), undefined);
  assert.equal(lastOf(log).of, 'liquid', 'of steel and liquid read together the liquid');
  assert.equal(lastOf([]), undefined);
});
