import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { use } from '../../www/app/calls.js';
import { rules } from '../../www/app/marklist.js';
import { wayTaken, waysOut } from '../../www/app/waysout.js';
import { give } from '../../www/app/words.js';
import { page } from '../checks/elements.mjs';

page();
for (const name of ['depth', 'spraying', 'fields']) give(name, JSON.parse(readFileSync(new URL(`../../www/words/en/${name}.json`, import.meta.url), 'utf8')));

/** What the core was asked to work out, and what it answers: 100 board feet an inch, a pass for each two. */
let asked = [];
use({
  write: (kind, value) => `${kind === 'resistance' ? 'R-' : ''}${Math.round(value * 1000) / 1000}`,
  estimate: (job) => {
    asked.push(job);
    const inches = Number(job.surfaces[0].entries.find((one) => one.field === 'depth').text);
    return { surfaces: [{ id: 1, in_place: { likely: inches * 100 }, lifts: { count: Math.ceil(inches / 2) } }] };
  },
});

const mark = (rule, bound, at_in, more) => ({ rule, bound, at_in, asks: undefined, printed: '', section: '', edition: '', trust: 'read', stands: 'applies', lacks: [], ...more });
const ROW = mark('code_r', 'least', 3.5, { asks: 21, printed: '20 or 13+5', section: 'R402.1.2', edition: 'IECC 2012–2018' });
const U = mark('code_u', 'mean', 2.75, { asks: 0.06, trust: 'memory', stands: 'not_chosen' });
const RIM = mark('rim_exposed', 'most', 3.25, { section: 'R316.5.11', edition: 'IRC 2018' });
const depth = (marks, more) => ({
  aim_in: { low: 3, likely: 3, high: 3 }, promised_in: 2.5, promised_r: 15, most_in: 3.25, under_in: 0.5, cavity_in: 4, marks, target_r: undefined,
  window: { least_in: 3.5, least_by: 'code_r', most_in: 3.25, most_by: 'rim_exposed', gap_in: 0.25 }, assembly: { u: 0.0561, foam_in: 3, layers: [] }, ...more,
});
const storeOf = (entries = [], zone = '5a') => {
  const store = {
    job: { units: 'us', surfaces: [{ id: 1, shape: 'rectangle', depth_way: 'typed', entries: [{ field: 'depth', text: '3' }, ...entries] }], foams: [] },
    estimate: { surfaces: [{ id: 1, in_place: { likely: 300 } }], place: { zone } },
    done: [], dispatch: (change) => store.done.push(change),
  };
  return store;
};
const out = (store, of, quick = false) => {
  const node = waysOut(store, 1, of, 10, quick);
  const rows = node?.querySelectorAll('li') ?? [];
  const keys = Object.fromEntries(rows.map((row) => [row.querySelector('button')?.getAttribute('data-key') ?? row.querySelector('a').getAttribute('href'), row]));
  return { node, keys, says: (key) => keys[key].textContent };
};

test('where least and most cross, each way out says what follows from it', () => {
  asked = [];
  const { node, says, keys } = out(storeOf(), depth([ROW, U, RIM]));
  assert.match(node.textContent, /Least and most cross by 0.25/);
  assert.match(says('out-ufactor'), /U\u00a00.056 at 3\. The table asks U\u00a00.060 or less: from memory, check your code book\. 2.75 or more on average/);
  // Covered, the aim is what the code asks plus the tolerance: 4 in where 3 are, 100 board feet more, worked out in full.
  assert.match(says('out-cover'), /Then 3.5 may stay, under a cover that the code accepts\. Aim 4: 100 more, 2 passes\. The cover costs its own board/);
  assert.equal(asked[0].surfaces[0].entries.find((one) => one.field === 'exposure').text, 'covered');
  assert.match(says('#/foam/10'), /lists R-21 at 3.25 or less: R-6.462 an inch/);
  assert.match(says('out-none'), /R-15 promised/);
  assert.ok(keys['out-accepted'] && !keys['out-fill'] && !keys['out-small_ceiling'] && !keys['#/place']);
});

test('while the aim is dragged the core is not asked to work out what else would follow', () => {
  asked = [];
  out(storeOf(), depth([ROW, U, RIM]), true);
  assert.equal(asked.length, 0);
});

test('a press chooses, and the same press takes it back', () => {
  for (const [key, entry] of [['out-ufactor', { field: 'code_path', text: 'u_factor' }], ['out-accepted', { field: 'code_path', text: 'accepted' }], ['out-none', { field: 'code_path', text: 'none' }], ['out-cover', { field: 'exposure', text: 'covered' }]]) {
    const before = storeOf();
    out(before, depth([ROW, U, RIM])).keys[key].querySelector('button').click();
    assert.deepEqual(before.done, [{ do: 'entry', part: 'surface', id: 1, ...entry }]);
    // Once it is chosen nothing crosses: the list stays, with the way marked.
    const after = storeOf([entry]);
    const marks = entry.field === 'exposure' ? [ROW, U, { ...RIM, stands: 'covered' }] : [{ ...ROW, stands: 'not_chosen' }, U, RIM];
    const { node, keys } = out(after, depth(marks, { window: {} }));
    assert.match(node.textContent, /The way that was chosen/);
    const pressed = keys[key].querySelector('button');
    assert.equal(pressed.getAttribute('aria-pressed'), 'true');
    assert.equal(node.querySelectorAll('button').filter((one) => one.getAttribute('aria-pressed') === 'true').length, 1);
    pressed.click();
    assert.deepEqual(after.done, [{ do: 'entry', part: 'surface', id: 1, field: entry.field, text: '' }]);
  }
});

test('only ways that the surface has are offered, and none where there is nothing to get out of', () => {
  const ceiling = [ROW, mark('small_ceiling', 'least', 5, { asks: 30, stands: 'not_chosen' }), mark('fill_floor', 'least', 4, { asks: 19, stands: 'not_chosen' }), mark('cavity', 'most', 3)];
  const { keys } = out(storeOf(), depth(ceiling, { window: { least_in: 3.5, least_by: 'code_r', most_in: 3, most_by: 'cavity', gap_in: 0.5 } }));
  assert.ok(keys['out-small_ceiling'] && keys['out-fill'] && !keys['out-cover'] && !keys['out-ufactor']);
  assert.equal(out(storeOf(), depth([{ ...ROW, at_in: 2.5 }, U, RIM], { window: { least_in: 2.5, most_in: 3.25 } })).node, undefined);
  // More asked than is promised, or beyond the foam sheet: nothing crosses, and there are ways.
  assert.match(out(storeOf(), depth([{ ...ROW, at_in: 3 }, U, RIM], { window: {} })).node.textContent, /Other ways through the code/);
  assert.ok(out(storeOf(), depth([{ ...ROW, at_in: undefined, stands: 'beyond_sheet' }, U], { window: {} })).keys['out-ufactor']);
  // A target alone, with no zone: the code's ways hang on where the house stands.
  const target = out(storeOf([], ''), depth([mark('target', 'least', 3.5, { trust: 'your_target' }), RIM], { target_r: 21, window: { least_in: 3.5, least_by: 'target', most_in: 3.25, most_by: 'rim_exposed', gap_in: 0.25 } }));
  assert.ok(target.keys['out-target'] && target.keys['#/place'] && !target.keys['out-none']);
});

test('a crossing by a figure from memory says that it decides nothing', () => {
  const { node } = out(storeOf(), depth([{ ...ROW, trust: 'memory' }, U, RIM], { window: { most_in: 3.25 } }));
  assert.match(node.textContent, /They cross only by a figure that decides nothing/);
  assert.doesNotMatch(out(storeOf(), depth([ROW, U, RIM])).node.textContent, /decides nothing/);
});

test('the list says of each mark where it comes from, and of each that is not drawn why', () => {
  const list = rules(storeOf(), depth([ROW, U, RIM, mark('class_three', 'least', undefined, { stands: 'nothing_in_front', trust: 'memory' })]), 10);
  const said = list.querySelectorAll('li').map((one) => one.textContent);
  // What is drawn, the deepest first; then what is not.
  assert.match(said[0], /IECC 2012–2018.*the table prints 20 or 13\+5/);
  assert.match(said[1], /At most 3.25 left exposed/);
  assert.deepEqual(said.map((one) => one.startsWith('Not drawn: ')), [false, false, true, true]);
  assert.match(said[3], /^Not drawn: condensation/);
});

test('a way from which no depth follows can be taken back', () => {
  assert.equal(wayTaken(storeOf(), 1), undefined);
  for (const [path, key] of [['none', 'out-none'], ['u_factor', 'out-ufactor'], ['accepted', 'out-accepted'], ['fill', 'out-fill'], ['small_ceiling', 'out-small_ceiling']]) {
    const store = storeOf([{ field: 'code_path', text: path }]);
    const button = wayTaken(store, 1).querySelector('button');
    assert.deepEqual([button.getAttribute('data-key'), button.getAttribute('aria-pressed')], [key, 'true']);
    button.click();
    assert.deepEqual(store.done, [{ do: 'entry', part: 'surface', id: 1, field: 'code_path', text: '' }]);
  }
});
