// What a student did, kept on the device: nothing is lost between tabs, without storage it holds, and a reset can be taken back.
import { test } from 'node:test';
import assert from 'node:assert/strict';
import { createProgress, textBox } from '../../www/app/practice/progress.js';
import { MOST_KEPT } from '../../www/app/practice/progressdoc.js';

/** A box that tabs may share, as text like local storage; `refuse` makes it keep nothing. */
function box(state = { text: '', refuse: false, writes: 0 }) {
  return {
    state,
    get: () => JSON.parse(state.text || 'null'),
    put(doc) {
      if (state.refuse) return false;
      state.text = JSON.stringify(doc);
      state.writes += 1;
      return true;
    },
  };
}

const answer = (text, more = {}) => ({ text, unit: 'ft2', hints: 0, shown: false, ...more });
const exercise = { steps: [{ topic: 'areas' }, { topic: 'areas' }, { topic: 'board_feet' }] };
const marks = (...points) => ({ steps: points.map((one) => ({ verdict: one === undefined ? 'blank' : one ? 'right' : 'wrong', points: one ?? 0 })), points: points.reduce((sum, one) => sum + (one ?? 0), 0), of: points.length });
const ticking = (start = 1000) => () => (start += 10);
/** Keeps every step of an exercise. */
const put = (tab, seed, all, units = 'us') => tab.keep(seed, units, all.map((one, at) => [at, one]));
const done = (tab, seed, ...points) => {
  put(tab, seed, [answer('1')]);
  tab.marked(seed, 'us', exercise, marks(...points));
};

test('answers come back as they were typed, with unit, meaning, hints and what was shown', () => {
  const shared = box();
  const all = [answer('12 6 1/2', { unit: 'ft', sense: 'feet_inches', hints: 2 }), answer('', { shown: true }), answer('go', { unit: '' })];
  const tab = createProgress(shared, ticking());
  assert.deepEqual(tab.answers('1-1-0001', 'us'), []);
  put(tab, '1-1-0001', all);
  assert.deepEqual(tab.answers('1-1-0001', 'us'), all);
  // After a reload.
  assert.deepEqual(createProgress(shared, ticking()).answers('1-1-0001', 'us'), all);
  assert.deepEqual(Object.keys(JSON.parse(shared.state.text)).slice(0, 2), ['format', 'version']);
  assert.equal(JSON.parse(shared.state.text).format, 'foamwright-practice');
});

test('looking at an exercise is not beginning it, and the same answers are not written again', () => {
  const shared = box();
  const tab = createProgress(shared, ticking());
  put(tab, '1-1-0001', [answer(''), answer('  ')]);
  assert.deepEqual(tab.recent(), []);
  put(tab, '1-1-0001', [answer('5')]);
  put(tab, '1-1-0001', [answer('5')]);
  assert.equal(shared.state.writes, 1);
});

test('a topic has the exercises marked, their points and how many there were; the last marking counts', () => {
  const tab = createProgress(box(), ticking());
  done(tab, '1-1-0001', 1, 0, 0.75);
  assert.deepEqual(tab.byTopic(), { areas: { done: 1, points: 1, of: 2 }, board_feet: { done: 1, points: 0.75, of: 1 } });
  done(tab, '1-1-0002', 0, undefined, undefined);
  assert.deepEqual(tab.byTopic(), { areas: { done: 2, points: 1, of: 4 }, board_feet: { done: 2, points: 0.75, of: 2 } });
  done(tab, '1-1-0001', 1, 1, 1);
  assert.deepEqual(tab.byTopic(), { areas: { done: 2, points: 2, of: 4 }, board_feet: { done: 2, points: 1, of: 2 } });
  // Nothing answered, nothing counted.
  tab.marked('1-1-0003', 'us', exercise, marks(undefined, undefined, undefined));
  assert.equal(tab.recent().length, 2);
  assert.deepEqual(tab.recent().map((one) => [one.seed, one.score.points, one.score.of]), [['1-1-0001', 3, 3], ['1-1-0002', 0, 3]]);
});

test('the last exercises are kept, and the sums of all', () => {
  const shared = box();
  const tab = createProgress(shared, ticking());
  const more = 25;
  for (let n = 0; n < MOST_KEPT + more; n += 1) done(tab, `1-1-${n.toString(16).padStart(4, '0')}`, 1, 0, 0.5);
  assert.equal(tab.recent().length, MOST_KEPT);
  assert.deepEqual(tab.answers('1-1-0000', 'us'), []);
  assert.deepEqual(tab.byTopic(), { areas: { done: MOST_KEPT + more, points: MOST_KEPT + more, of: 2 * (MOST_KEPT + more) }, board_feet: { done: MOST_KEPT + more, points: (MOST_KEPT + more) / 2, of: MOST_KEPT + more } });
  assert.deepEqual(createProgress(shared, ticking()).byTopic(), tab.byTopic());
});

test('what another tab wrote is taken over, and never written over', () => {
  const shared = box();
  const one = createProgress(shared, ticking(1000));
  const two = createProgress(shared, ticking(5000));
  done(one, '1-1-0001', 1, 1, 1);
  done(two, '1-1-0002', 1, 0, 0);
  done(one, '1-1-0003', 0, 0, 0);
  for (const tab of [one, two]) {
    assert.deepEqual(tab.recent().map((it) => it.seed).sort(), ['1-1-0001', '1-1-0002', '1-1-0003']);
    assert.deepEqual(tab.byTopic().areas, { done: 3, points: 3, of: 6 });
  }
  // Of the same exercise the later answer stands.
  put(one, '1-1-0001', [answer('early')]);
  put(two, '1-1-0001', [answer('late')]);
  assert.equal(one.answers('1-1-0001', 'us')[0].text, 'late');
});

test('two writes that cross lose nothing, and the tabs come to rest', () => {
  const shared = box();
  const one = createProgress(shared, ticking(1000));
  const two = createProgress(shared, ticking(5000));
  done(one, '1-1-0001', 1, 1, 1);
  // The second tab read before that: what it writes knows nothing of it.
  const behind = shared.state.text;
  shared.state.text = '';
  done(two, '1-1-0002', 1, 0, 0);
  assert.ok(!shared.state.text.includes('1-1-0001') && behind.includes('1-1-0001'));
  one.heard();
  assert.deepEqual(two.recent().map((it) => it.seed), ['1-1-0002', '1-1-0001']);
  const { writes } = shared.state;
  for (const tab of [two, one, two, one]) tab.heard();
  assert.equal(shared.state.writes, writes, 'nobody has anything to add');
});

test('a later answer and a reset outlast an older state that was written over them', () => {
  const shared = box();
  const clock = ticking();
  const one = createProgress(shared, clock);
  done(one, '1-1-0001', 0, 0, 0);
  const old = shared.state.text;
  put(one, '1-1-0001', [answer('later')]);
  shared.state.text = old;
  one.heard();
  assert.equal(createProgress(shared, clock).answers('1-1-0001', 'us')[0].text, 'later');
  one.reset();
  shared.state.text = old;
  one.heard();
  assert.deepEqual(createProgress(shared, clock).recent(), []);
});

test('an exercise that fell out in one tab does not come back from the other, and counts once', () => {
  const shared = box();
  const clock = ticking();
  const old = createProgress(shared, clock);
  done(old, '1-1-ffff', 1, 1, 1);
  const busy = createProgress(shared, clock);
  for (let n = 0; n < MOST_KEPT; n += 1) done(busy, `1-1-${n.toString(16).padStart(4, '0')}`, 1, 1, 1);
  assert.equal(old.byTopic().areas.done, MOST_KEPT + 1);
  old.heard();
  done(old, '1-1-0000', 1, 1, 1);
  assert.equal(busy.byTopic().areas.done, MOST_KEPT + 1);
});

for (const why of ['blocked', 'full']) {
  test(`storage that is ${why}: it holds while the page is open, and says so`, () => {
    const shared = box();
    const tab = createProgress(shared, ticking());
    done(tab, '1-1-0001', 1, 1, 1);
    assert.equal(tab.isKept(), true);
    shared.state.refuse = true;
    if (why === 'blocked') shared.state.text = '';
    done(tab, '1-1-0002', 1, 0, 0);
    assert.equal(tab.isKept(), false);
    assert.deepEqual(tab.byTopic().areas, { done: 2, points: 3, of: 4 });
    // There is room again: everything is kept with the next answer.
    shared.state.refuse = false;
    put(tab, '1-1-0003', [answer('7')]);
    assert.equal(tab.isKept(), true);
    assert.deepEqual(createProgress(shared, ticking()).recent().map((it) => it.seed), ['1-1-0003', '1-1-0002', '1-1-0001']);
  });
}

test('a reset forgets everything, in other tabs too, and can be taken back with what came since', () => {
  const shared = box();
  const clock = ticking();
  const one = createProgress(shared, clock);
  const two = createProgress(shared, clock);
  done(one, '1-1-0001', 1, 1, 1);
  done(two, '1-1-0002', 1, 0, 0);
  const undo = one.reset();
  assert.deepEqual([one.byTopic(), one.recent(), one.answers('1-1-0001', 'us')], [{}, [], []]);
  two.heard();
  assert.deepEqual(two.recent(), []);
  done(two, '1-1-0003', 0, 1, 1);
  assert.equal(one.byTopic().areas.done, 1);
  undo();
  for (const tab of [one, two]) assert.deepEqual(tab.byTopic().areas, { done: 3, points: 4, of: 6 });
  two.heard();
  assert.deepEqual(createProgress(shared, clock).recent().map((it) => it.seed), ['1-1-0003', '1-1-0002', '1-1-0001']);
});

test('a reset with sums of what is no longer kept is taken back whole', () => {
  const tab = createProgress(box(), ticking());
  for (let n = 0; n < MOST_KEPT + 5; n += 1) done(tab, `1-1-${n.toString(16).padStart(4, '0')}`, 1, 1, 1);
  const before = tab.byTopic();
  const undo = tab.reset();
  assert.deepEqual(tab.byTopic(), {});
  undo();
  assert.deepEqual(tab.byTopic(), before);
});

test('what a newer version keeps is left alone; what is damaged is passed over', () => {
  const newer = JSON.stringify({ format: 'foamwright-practice', version: 2, exercises: 'otherwise' });
  const shared = box({ text: newer, refuse: false, writes: 0 });
  const tab = createProgress(shared, ticking());
  done(tab, '1-1-0001', 1, 1, 1);
  assert.deepEqual([shared.state.text, tab.isKept(), tab.recent().length], [newer, false, 1]);
  const odd = { format: 'foamwright-practice', version: 1, reset: null, past: { until: 'x', topics: { areas: 7 } }, exercises: [null, { seed: 3 }, { seed: '1-1-0009', at: 5, units: 'ells', sheets: { us: { steps: [null, { text: 7 }] }, metric: 7, ells: {} }, score: { points: 1, of: 2, topics: { areas: [1], pitch: [1, 2] } } }] };
  const read = createProgress(box({ text: JSON.stringify(odd), refuse: false, writes: 0 }), ticking());
  assert.deepEqual(read.recent().map((it) => it.seed), ['1-1-0009']);
  assert.deepEqual(read.answers('1-1-0009', 'us').map((one) => one.text), ['', '7']);
  assert.deepEqual([read.unitsOf('1-1-0009'), read.answers('1-1-0009', 'metric'), read.sheet()], ['us', [], []]);
  assert.deepEqual(read.byTopic(), { pitch: { done: 1, points: 1, of: 2 } });
});

test('each system of units has answers of its own', () => {
  const tab = createProgress(box(), ticking());
  put(tab, '1-1-0001', [answer('100'), answer('96')]);
  put(tab, '1-1-0001', [answer('9.29', { unit: 'm2' })], 'metric');
  assert.deepEqual(tab.answers('1-1-0001', 'us').map((one) => one.text), ['100', '96']);
  assert.deepEqual(tab.answers('1-1-0001', 'metric').map((one) => [one.text, one.unit]), [['9.29', 'm2']]);
  assert.equal(tab.unitsOf('1-1-0001'), 'metric');
  assert.equal(tab.unitsOf('1-1-0002'), undefined);
});

test('a file carries the units in which most was answered, on a tie the last ones', () => {
  const tab = createProgress(box(), ticking());
  const carried = () => { const { units, steps } = tab.entry('1-1-0001'); return [units, steps.map((one) => one.text).join(' ')]; };
  assert.equal(tab.entry('1-1-0001'), undefined);
  put(tab, '1-1-0001', [answer('100'), answer('96')]);
  put(tab, '1-1-0001', [answer('9.3')], 'metric');
  assert.deepEqual(carried(), ['us', '100 96']);
  tab.keep('1-1-0001', 'metric', [[1, answer('8.9')]]);
  assert.deepEqual(carried(), ['metric', '9.3 8.9']);
  tab.keep('1-1-0001', 'us', [[1, answer('97')]]);
  assert.deepEqual(carried(), ['us', '100 97']);
});

test('two tabs at one exercise keep each other\'s steps, also where their writes cross', () => {
  const shared = box();
  const clock = ticking();
  const [one, two] = [createProgress(shared, clock), createProgress(shared, clock)];
  one.keep('1-1-0001', 'us', [[0, answer('81')]]);
  two.keep('1-1-0001', 'us', [[2, answer('7')]]);
  const texts = (tab) => tab.answers('1-1-0001', 'us').map((it) => it.text);
  for (const tab of [one, two]) assert.deepEqual(texts(tab), ['81', '', '7']);
  // The second tab writes what it had read before the first one's write; its marking stays as well.
  const before = shared.state.text;
  one.keep('1-1-0001', 'us', [[0, answer('82')]]);
  one.marked('1-1-0001', 'us', exercise, marks(1, 0, 1));
  shared.state.text = before;
  two.keep('1-1-0001', 'us', [[1, answer('5')]]);
  one.heard();
  assert.deepEqual(texts(createProgress(shared, clock)), ['82', '5', '7']);
  assert.equal(createProgress(shared, clock).recent()[0].score.points, 2);
});

test('answers from before a reset do not come back with a later one of a tab that had not heard of it', () => {
  const shared = box();
  const clock = ticking();
  const [one, two] = [createProgress(shared, clock), createProgress(shared, clock)];
  put(one, '1-1-0001', [answer('old'), answer('old')]);
  two.heard();
  const before = shared.state.text;
  one.reset();
  shared.state.text = before;
  two.keep('1-1-0001', 'us', [[1, answer('new')]]);
  one.heard();
  assert.deepEqual(createProgress(shared, clock).answers('1-1-0001', 'us').map((it) => it.text), ['', 'new']);
});

test('starting over does not wipe that answers were seen; a reset does', () => {
  const shared = box();
  const tab = createProgress(shared, ticking());
  const seen = (seed) => createProgress(shared, ticking()).entry(seed).seen;
  put(tab, '1-1-0001', [answer('1'), answer('2')]);
  tab.again('1-1-0001', 'us');
  assert.equal(seen('1-1-0001'), false, 'nothing was seen');
  assert.deepEqual(tab.answers('1-1-0001', 'us').map((one) => one.text), ['', '']);
  for (const [seed, help] of [['1-1-0002', { hints: 1 }], ['1-1-0003', { shown: true }]]) {
    put(tab, seed, [answer('1', help)]);
    assert.equal(seen(seed), false, 'the step itself says so');
    tab.again(seed, 'us');
    put(tab, seed, [answer('1')]);
    assert.equal(seen(seed), true);
    // And once more over does not wipe it either.
    tab.again(seed, 'us');
    assert.equal(seen(seed), true);
  }
  put(tab, '1-1-0004', [answer('1')]);
  tab.opened('1-1-0004', 'us');
  assert.deepEqual([tab.isOpened('1-1-0004', 'us'), tab.isOpened('1-1-0004', 'metric'), seen('1-1-0004')], [true, false, false]);
  tab.again('1-1-0004', 'us');
  assert.deepEqual([tab.isOpened('1-1-0004', 'us'), seen('1-1-0004')], [false, true]);
  tab.reset();
  put(tab, '1-1-0004', [answer('1')]);
  assert.equal(seen('1-1-0004'), false);
});

test('answers that were seen in the other units were seen', () => {
  const tab = createProgress(box(), ticking());
  put(tab, '1-1-0001', [answer('', { shown: true })]);
  put(tab, '1-1-0001', [answer('9.3')], 'metric');
  assert.deepEqual([tab.entry('1-1-0001').units, tab.entry('1-1-0001').seen], ['metric', true]);
});

test('the class sheet that was opened last is known after a reload, and written once', () => {
  const shared = box();
  const clock = ticking();
  const tab = createProgress(shared, clock);
  tab.openSheet(['1-1-0001', '1-1-0002']);
  tab.openSheet(['1-1-0001', '1-1-0002']);
  assert.equal(shared.state.writes, 1);
  assert.deepEqual(createProgress(shared, clock).sheet(), ['1-1-0001', '1-1-0002']);
  createProgress(shared, clock).openSheet(['1-2-0003']);
  tab.heard();
  assert.deepEqual(tab.sheet(), ['1-2-0003']);
  tab.reset();
  assert.deepEqual(tab.sheet(), []);
});

test('an answer takes the document out once', () => {
  const shared = box();
  let reads = 0;
  const tab = createProgress({ get: () => { reads += 1; return shared.get(); }, put: shared.put }, ticking());
  put(tab, '1-1-0001', [answer('5')]);
  assert.equal(reads, 1);
});

test('what this tab wrote is not read again, what another one wrote is', () => {
  let text = '{damaged';
  const shared = () => textBox(() => text, (fresh) => { text = fresh; return true; });
  const clock = ticking();
  const [one, two] = [createProgress(shared(), clock), createProgress(shared(), clock)];
  put(one, '1-1-0001', [answer('5')]);
  const { parse } = JSON;
  let parsed = 0;
  JSON.parse = (...all) => { parsed += 1; return parse(...all); };
  try {
    put(one, '1-1-0001', [answer('56')]);
    assert.equal(one.answers('1-1-0001', 'us')[0].text, '56');
    assert.equal(parsed, 0);
    put(two, '1-1-0002', [answer('7')]);
    assert.deepEqual(one.recent().map((it) => it.seed), ['1-1-0002', '1-1-0001']);
    assert.equal(parsed, 2);
  } finally {
    JSON.parse = parse;
  }
  assert.equal(createProgress(shared(), clock).answers('1-1-0001', 'us')[0].text, '56');
});
