import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { createStore } from '../../www/app/store.js';
import { nextLine } from '../../www/app/aim.js';
import { depthAt, heightOf, scaleOf, section, snapped } from '../../www/app/drawing/ruler.js';
import { dashed, drawn, levels } from '../../www/app/levels.js';
import { wide } from '../../www/app/svg.js';
import { give } from '../../www/app/words.js';
import { page } from '../checks/elements.mjs';

page();
const words = (language, name) => JSON.parse(readFileSync(new URL(`../../www/words/${language}/${name}.json`, import.meta.url), 'utf8'));
for (const name of ['depth', 'spraying', 'fields']) give(name, words('en', name));

/** Figures as the core writes them, near enough for a drawing. */
const w = { depth: (one) => `${one} in`, r: (one) => (one === undefined ? '' : `R-${one}`), pct: (one) => `${one} %`, u: (one) => `U-${one.toFixed(3)}` };
const mark = (rule, bound, at_in, more) => ({ rule, bound, at_in, asks: undefined, printed: '', section: '', edition: '', trust: 'read', stands: 'applies', lacks: [], ...more });
const depth = (more) => ({
  aim_in: { low: 3, likely: 3, high: 3 }, promised_in: 2.5, most_in: 3.25, promised_r: 15, target_r: 20, exposed_most_in: 3.25, cavity_in: 4,
  marks: [
    mark('target', 'least', 10 / 3, { trust: 'your_target' }), mark('code_u', 'mean', 2.75, { trust: 'memory', asks: 0.06 }),
    mark('rim_exposed', 'most', 3.25), mark('cavity', 'most', 4, { trust: 'your_tape' }), mark('largest_lift', 'lift', 2), mark('barrier', 'condition'),
    mark('class_three', 'least', 1.25, { stands: 'nothing_in_front' }), mark('kit_reach', 'reach', 3.8, { trust: 'your_sheet' }),
  ],
  window: { least_in: 10 / 3, least_by: 'target', most_in: 3.25, most_by: 'rim_exposed', gap_in: 1 / 12 }, ...more,
});
const cutOf = (of, more) => {
  const found = levels(of, w, { passes: 2, zone: '5A' });
  return {
    aim: of.aim_in.likely, promised: of.promised_in, most: of.most_in, cavity: of.cavity_in, lifts: 2, levels: found.levels, shared: found.shared, gap: found.gap,
    behind: [{ hatch: 'wood', thick: 0, name: '' }], fill: [], front: [],
    words: { lift: (n) => `pass ${n}`, aim: 'aim', behind: 'behind', member: 'framing', cross: 'cross by 1/12 in' }, ...more,
  };
};
const numbers = (path) => path.match(/-?[\d.]+/g).map(Number);
/** The leaders: from the ruler's edge, 222, over its bend to the label's line. */
const leaders = (svg) => svg.querySelectorAll('path').map((one) => ({ kind: one.getAttribute('class'), at: one.getAttribute('d') }))
  .filter(({ kind, at }) => kind && /^M 212 [\d.]+ H 226 L 251 [\d.]+ H /.test(at)).map(({ kind, at }) => ({ kind, from: numbers(at)[1], to: numbers(at)[4] }));
/** Every text of a label, as a box. */
const labels = (svg) => svg.querySelectorAll('text').filter((one) => one.getAttribute('x') === '256').map((one) => {
  const size = one.getAttribute('class').includes('lg') ? 17 : 13.5;
  const y = Number(one.getAttribute('y'));
  return { text: one.textContent, top: y - size * 0.76, foot: y + size * 0.22, end: 256 + wide(one.textContent, size) };
});
const many = () => Array.from({ length: 14 }, (_, n) => mark(['code_r', 'unvented_table', 'fill_cavity', 'small_ceiling', 'foam_retarder'][n % 5], 'least', 2 + n * 0.11, { edition: 'IRC 2018', asks: 20 + n }));
const cases = [
  ['a rim', depth()], ['nothing but the plan', depth({ marks: [], window: {} })], ['many marks', depth({ marks: many(), window: { least_in: 2, least_by: 'code_r' } })],
  ['a deep roof', depth({ aim_in: { low: 9, likely: 9, high: 9 }, promised_in: 8.5, most_in: 9.25, cavity_in: 11.25, window: {} })],
  ['a thin coat', depth({ aim_in: { low: 0.5, likely: 0.5, high: 0.5 }, promised_in: 0, most_in: 0.75, cavity_in: undefined, marks: [], window: {} })],
];

for (const [name, of] of cases) {
  for (const width of [330, 360, 390, 640, 1280]) {
    test(`every leader begins at its true height and no label lies on another: ${name}, ${width} px`, () => {
      const cut = cutOf(of);
      const { svg, scale, height } = section(cut, { width, label: 'a section' });
      const found = leaders(svg);
      assert.equal(found.length, cut.levels.length);
      const wanted = cut.levels.map((one) => heightOf(scale, one.at)).sort((a, b) => a - b);
      found.forEach((one, at) => assert.ok(Math.abs(one.from - wanted[at]) < 0.011, `${one.from} instead of ${wanted[at]}`));
      for (let at = 1; at < found.length; at += 1) assert.ok(found[at].to - found[at - 1].to >= 36, `labels ${found[at].to - found[at - 1].to} px apart`);
      const boxes = labels(svg).sort((a, b) => a.top - b.top);
      for (let at = 1; at < boxes.length; at += 1) assert.ok(boxes[at].top >= boxes[at - 1].foot - 0.5, `${boxes[at - 1].text} / ${boxes[at].text}`);
      const end = width + (width < 440 ? 30 : 0);
      for (const box of boxes) assert.ok(box.top >= 0 && box.foot <= height && box.end <= end, `${box.text} leaves the drawing`);
    });
  }
}

test('only what stands and names a depth is drawn, dashed where it decides nothing', () => {
  const { levels: found } = levels(depth(), w, { passes: 2 });
  const said = found.map((one) => one.what);
  assert.ok(said.includes('2.75 in on average') && said.includes('4 in cavity') && said.includes('3.8 in from one kit'), said.join());
  assert.equal(said.some((one) => one.includes('condensation')), false);
  assert.equal(drawn(mark('largest_lift', 'lift', 2)), false);
  const mean = found.find((one) => one.what === '2.75 in on average');
  assert.deepEqual([mean.dash, mean.sub, mean.kind], [true, 'U\u00a00.060, from memory', 'ink']);
  assert.deepEqual(['memory', 'derived', 'read', 'retold', 'your_sheet'].map((trust) => dashed({ trust })), [true, true, false, false, false]);
  // The limit for what is left exposed is the most allowed here: one line, not two.
  assert.equal(said.filter((one) => one === '3.25 in at most').length, 1);
  const wall = levels(depth({ marks: [mark('code_r', 'least', 10 / 3, { asks: 20, edition: 'IECC 2012–2018' })] }), w, { zone: '5A' }).levels;
  assert.equal(wall.at(-1).sub, 'IECC 2012–2018, zone 5A');
});

test('a share of the whole is said in percent, as the mark asks it', () => {
  const { levels: found } = levels(depth({ marks: [mark('unvented_share', 'least', 1.2, { asks: 41, trust: 'derived' })], window: {} }), w, {});
  assert.equal(found.at(-1).sub, '41 % of the whole R, worked out');
});

test('marks at one height share a label, those above the number that stays legible go to the list', () => {
  const two = levels(depth({ marks: [mark('target', 'least', 2.5), mark('code_r', 'least', 2.5, { asks: 15 })] }), w, {});
  assert.equal(two.levels.length, 3);
  assert.match(two.levels.find((one) => one.at === 2.5).sub, /also your target, the code’s R/);
  const all = levels(depth({ marks: many() }), w, {});
  assert.equal(all.levels.length, 8);
  assert.equal(all.left, 9);
  // The one that decides is never among those.
  const least = levels(depth({ marks: [...many(), mark('target', 'least', 3.7)], window: { least_in: 3.7, least_by: 'target' } }), w, {});
  assert.ok(least.levels.some((one) => one.at === 3.7));
});

test('the least and the most that cross are hatched between their leaders, and by how much is said', () => {
  const { svg, scale } = section(cutOf(depth()), { width: 390, label: '' });
  const hatched = svg.querySelectorAll('path').find((one) => one.getAttribute('opacity') === '.34');
  const [, high, , , least] = numbers(hatched.getAttribute('d'));
  assert.ok(Math.abs(high - heightOf(scale, 10 / 3)) < 0.011);
  assert.ok(leaders(svg).some((one) => one.to === least));
  assert.ok(svg.querySelectorAll('text').some((one) => one.textContent === 'cross by 1/12 in'));
  const open = section(cutOf(depth({ window: {} })), { width: 390, label: '' }).svg;
  assert.equal(open.querySelectorAll('path').some((one) => one.getAttribute('opacity') === '.34'), false);
});

test('a height on the ruler is a depth and back, at every width', () => {
  for (const width of [330, 390, 1280]) {
    const scale = scaleOf(cutOf(depth()), width);
    for (let inches = 0; inches <= scale.reach; inches += 0.17) assert.ok(Math.abs(depthAt(scale, heightOf(scale, inches)) - inches) < 1e-9);
    assert.equal(depthAt(scale, -1000), scale.reach);
    assert.equal(depthAt(scale, 10_000), 0);
    // An inch of the drawing is an inch of the ruler.
    assert.ok(Math.abs(heightOf(scale, 1) - heightOf(scale, 2) - scale.k) < 1e-9);
  }
  assert.deepEqual([2.93, 0.01, 3.06].map((one) => snapped(one, 1 / 8)), [2.875, 0.125, 3]);
  assert.deepEqual([[3, 1], [3, -1], [3.06, 1], [3.06, -1]].map(([at, sign]) => nextLine(at, 1 / 8, sign)), [3.125, 2.875, 3.125, 3]);
});

test('while the aim is dragged the scale stays, so that the ruler does not run from under the finger', () => {
  const scale = scaleOf(cutOf(depth()), 390);
  for (const aim of [0.5, 2, 4.4]) {
    const moved = depth({ aim_in: { low: aim, likely: aim, high: aim }, promised_in: Math.max(0, aim - 0.5), most_in: aim + 0.25 });
    const { scale: held, grip, height } = section(cutOf(moved, { held: scale }), { width: 390, label: '' });
    assert.deepEqual([held.k, held.floor, held.reach], [scale.k, scale.floor, scale.reach]);
    assert.ok(Math.abs(grip[1] * height - heightOf(scale, aim)) < 1e-6);
  }
});

test('what stands before and behind the foam is drawn to scale, each with its hatch', () => {
  const fill = [{ hatch: 'batt', thick: 3.5, name: 'Batt' }];
  const front = [{ hatch: 'board', thick: 0.5, name: 'Gypsum board ½ in' }];
  const behind = [{ hatch: 'masonry', thick: 4, name: 'Face brick 4 in' }];
  const aim = { aim_in: { low: 2, likely: 2, high: 2 }, promised_in: 1.5, most_in: 2.25, cavity_in: 5.5, marks: [], window: {} };
  const { svg, scale } = section(cutOf(depth(aim), { fill, front, behind }), { width: 390, label: '' });
  const boxes = svg.querySelectorAll('rect').map((one) => ['y', 'height', 'width', 'class'].map((name) => one.getAttribute(name)));
  const box = (from, to) => boxes.find(([y, high]) => Math.abs(Number(y) - heightOf(scale, to)) < 0.02 && Math.abs(Number(high) - (to - from) * scale.k) < 0.02);
  // The batt reaches down to the lowest of the foam, which is drawn over it.
  assert.ok(box(1.5, 5.5), 'the batt from the foam to the cavity’s edge');
  assert.ok(box(5.5, 6), 'the board beyond it');
  assert.ok(boxes.some(([y]) => Number(y) === Math.round(scale.floor * 100) / 100), 'the brick behind');
  // A batt that is thicker than the room it has is pressed into it, never drawn through the board.
  const pressed = section(cutOf(depth({ ...aim, cavity_in: 4 }), { fill, front }), { width: 390, label: '' });
  assert.ok(pressed.svg.querySelectorAll('rect').some((one) => Math.abs(Number(one.getAttribute('y')) - heightOf(pressed.scale, 4)) < 0.02 && Math.abs(Number(one.getAttribute('height')) - 2.5 * pressed.scale.k) < 0.02));
});

test('a drag is one step of undo, another drag another', async () => {
  const surface = { id: 1, name: 'Rim', shape: 'rectangle', entries: [], openings: [], patches: [], depth_way: 'target_r', depth_kit: 0, foam: 0, deduct_framing: false };
  const store = createStore({ estimate: () => undefined, newId: () => 'x', shelf: { keep: async () => 'kept', keepNow: () => 'kept' } });
  await store.open({ id: 'j', next_id: 2, name: '', units: 'us', entries: [], surfaces: [surface], foams: [], kits: [], stock: [], readings: [], events: [] });
  const now = () => [store.job.surfaces[0].depth_way, store.job.surfaces[0].entries[0]?.text];
  for (const text of ['3 in', '3⅛ in', '3¼ in']) store.dispatch({ do: 'aim', id: 1, text, run: 1 });
  for (const text of ['3⅛ in', '3 in']) store.dispatch({ do: 'aim', id: 1, text, run: 2 });
  assert.deepEqual(now(), ['typed', '3 in']);
  store.undo();
  assert.deepEqual(now(), ['typed', '3¼ in']);
  store.undo();
  assert.deepEqual(now(), ['target_r', undefined]);
  await store.settled();
});

test('the figures of the blade stand at their own heights, in inches and in centimeters', () => {
  for (const [metric, inches] of [[false, 1], [true, 1 / 2.54]]) {
    for (const aim of [2, 9]) {
      const of = depth({ aim_in: { low: aim, likely: aim, high: aim }, promised_in: aim - 0.5, most_in: aim + 0.25, cavity_in: 11, marks: [], window: {} });
      const { svg, scale } = section(cutOf(of, { metric }), { width: 390, label: '' });
      const figures = svg.querySelectorAll('text').filter((one) => one.getAttribute('class') === 'xl e');
      assert.ok(figures.length >= 4, `${figures.length} figures`);
      const heights = figures.map((one) => Number(one.getAttribute('y')));
      figures.forEach((one, at) => assert.ok(Math.abs(heights[at] - 19 - heightOf(scale, Number(one.textContent) * inches)) < 0.011, one.textContent));
      for (let at = 1; at < heights.length; at += 1) assert.ok(heights[at - 1] - heights[at] >= 24, 'figures do not touch');
    }
  }
});
