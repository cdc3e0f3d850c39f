import assert from 'node:assert/strict';
import { test } from 'node:test';
import { apply, mergeKey } from '../../www/app/changes.js';
import { dayCurve } from '../../www/app/drawing/daycurve.js';
import { degrees, spread } from '../../www/app/drawing/degrees.js';
import { dewBars } from '../../www/app/drawing/dewbars.js';
import { roundsDrawing } from '../../www/app/drawing/rounds.js';
import { page } from '../checks/elements.mjs';

page();

const numbers = (path) => path.match(/-?[\d.]+/g).map(Number);
const texts = (svg) => svg.querySelectorAll('text').map((one) => one.textContent);

const NAMES = {
  label: 'a day', air: 'Air', heated: 'Heated', masonry: 'Masonry', window: 'Window', dew: 'Dew point', sunrise: ['sunrise', '6:30'], sunset: ['sunset', '5:00'], spray: 'spraying',
  says: { inside: 'Inside', measure_first: 'Measure first', outside: 'Outside' }, hour: (min) => `${min / 60} h`,
};
const AIR = Array.from({ length: 97 }, (_, at) => 55 + 15 * Math.sin(((at / 4 - 10) / 24) * 2 * Math.PI));
const PARTS = [[0, 700, 'outside'], [700, 805, 'measure_first'], [805, 1155, 'inside'], [1155, 1260, 'measure_first'], [1260, 1440, 'outside']].map(([from, to, says]) => ({ from, to, says }));
const drawn = (more, how) => dayCurve({ air: AIR, heated: [], masonry: [], least: 60, most: 90, boxes: [[700, 1260]], edge: 105, parts: PARTS, ...more }, NAMES, { width: 360, metric: false, ...how });

test('the course of the air stands over its hours', () => {
  const air = drawn({}).querySelectorAll('path.cut').map((one) => numbers(one.getAttribute('d'))).find((one) => one.length === 2 * 97);
  const x = air.filter((_, at) => at % 2 === 0);
  const y = air.filter((_, at) => at % 2 === 1);
  // Warmest at 16 o'clock: two thirds of the way from midnight to midnight.
  const warmest = y.indexOf(Math.min(...y));
  assert.ok(Math.abs((x[warmest] - x[0]) / (x[96] - x[0]) - 16 / 24) < 1e-3);
  assert.ok(x[96] < 360 && x[0] > 30);
});

test('the window is a box closed at both ends, from the label’s least to its most', () => {
  const svg = drawn({});
  const [box] = svg.querySelectorAll('path.bold').map((one) => one.getAttribute('d'));
  assert.match(box, /Z$/);
  const [x, top] = numbers(box);
  const air = numbers(svg.querySelector('path.cut').getAttribute('d'));
  // Where the box begins, the air is as warm as the label's least.
  const at = Math.round(700 / 15) * 2;
  assert.ok(Math.abs(air[at] - x) < 3);
  assert.ok(top < Math.min(...air.filter((_, one) => one % 2)));
  assert.equal(drawn({ boxes: [] }).querySelectorAll('path.bold').length, 0);
});

test('the strip covers the whole day, each kind by a pattern of its own and by its word', () => {
  const svg = drawn({});
  const strips = svg.querySelectorAll('rect').filter((one) => ['26'].includes(one.getAttribute('height')));
  const wide = strips.reduce((sum, one) => sum + Number(one.getAttribute('width')), 0);
  assert.ok(Math.abs(wide - (360 - 14 - 42)) < 0.1, String(wide));
  const fills = new Set(strips.map((one) => one.getAttribute('fill') ?? one.getAttribute('class')));
  assert.equal(fills.size, 3);
  for (const word of Object.values(NAMES.says)) assert.ok(texts(svg).includes(word), word);
  assert.ok(!texts(drawn({ parts: [{ from: 0, to: 1440, says: 'outside' }], boxes: [] })).includes('Inside'));
});

test('only what is known is drawn: surfaces, sun, time of spraying', () => {
  assert.ok(!texts(drawn({})).some((one) => ['sunrise', 'Heated', 'Masonry', 'spraying', 'Dew point'].includes(one)));
  const all = texts(drawn({ heated: AIR, masonry: AIR, sunrise: 390, sunset: 1020, spray: 480, dew: 45 }));
  for (const one of ['sunrise', '6:30', 'sunset', 'Heated', 'Masonry', 'spraying', 'Dew point']) assert.ok(all.includes(one), one);
});

test('a scale in Celsius has its lines at round figures of Celsius', () => {
  const { y, lines } = degrees([32, 68], { metric: true, left: 40, right: 300, top: 0, end: 200 });
  const ten = lines.find((one) => one.textContent === '10°');
  assert.ok(Math.abs(Number(ten.getAttribute('y')) - 4.5 - y(50)) < 0.02);
});

const BARS = [['0.5', 60], ['1', 52], ['2', 45]].map(([name, dew]) => ({ name, dew, figure: `${dew}°`, yours: name === '1', dashed: false }));
const SAID = { label: '', over: 'Too moist', fits: 'Low enough', limit: 'limit', coldest: 'coldest', outdoors: 'outdoors', axis: 'changes' };

test('a bar is hatched exactly where its dew point is above the coldest surface less the spread', () => {
  const hatched = (limit) => dewBars(BARS, { coldest: limit + 5, limit }, SAID, { width: 360, metric: false }).querySelectorAll('rect').filter((one) => one.getAttribute('fill')?.startsWith('url(')).length;
  // One more is the sample of the legend.
  assert.deepEqual([44, 45, 51.9, 52, 60].map(hatched), [4, 3, 3, 2, 0]);
  assert.ok(texts(dewBars(BARS, {}, SAID, { width: 360, metric: false })).every((one) => one !== 'Too moist'), 'without a surface nothing is too moist');
});

test('names at the ends of lines keep apart and inside', () => {
  for (const wanted of [[10, 11, 12, 13], [190, 195, 199], [50], [10, 100, 101, 199]]) {
    const at = spread(wanted, 16, 200);
    for (let i = 1; i < at.length; i += 1) assert.ok(at[i] - at[i - 1] >= 16 - 1e-9, String(at));
    assert.ok(at.at(-1) <= 200);
  }
});

test('rounds: the least for a surface runs the spread above the dew point', () => {
  const courses = [{ of: 'surface', name: 'Rim', points: [{ ms: 0, value: 60 }, { ms: 3_600_000, value: 58 }] }, { of: 'dew', name: 'Dew point', points: [{ ms: 0, value: 50 }, { ms: 3_600_000, value: 54 }] }];
  const svg = roundsDrawing(courses, { spread: 6, times: [{ ms: 0, name: '1 PM' }, { ms: 3_600_000, name: '2 PM' }] }, { label: '', surface: 'Surfaces', air: 'Air', dew: 'Dew', least: 'Least' }, { width: 360, metric: false });
  const [rim, least] = ['path.bold', 'path.holdln'].map((kind) => numbers(svg.querySelectorAll(kind)[0].getAttribute('d')));
  // 54 + 6 = 60: at the end the least lies where the surface began.
  assert.ok(Math.abs(least[3] - rim[1]) < 0.02);
  assert.ok(['1 PM', '2 PM', 'Rim', 'Least'].every((one) => texts(svg).includes(one)));
});

test('a day that gets another date gets that date’s clock, in the same step of undo', () => {
  const job = { next_id: 3, forecast: [{ id: 2, entries: [], offset_min: -300 }, { id: 1, entries: [] }] };
  const next = apply(job, { do: 'offset', id: 2, offset_min: -360 });
  assert.deepEqual(next.forecast.map((one) => one.offset_min), [-360, undefined]);
  assert.equal(mergeKey({ do: 'offset', id: 2, offset_min: -360 }), mergeKey({ do: 'entry', part: 'forecast', id: 2, field: 'date', text: '2026-11-03' }));
});
