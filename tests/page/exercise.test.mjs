// The exercise screen's parts without a page: how lines are written, what helps cost, what may be shown.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { use } from '../../www/app/calls.js';
import { likeThis, otherTopic } from '../../www/app/practice/another.js';
import { valueOf } from '../../www/app/practice/answers.js';
import { howText, quarters } from '../../www/app/practice/pieces.js';
import { clear } from '../../www/app/practice/readchart.js';
import { plainly } from '../../www/app/practice/plain.js';
import { createProgress } from '../../www/app/practice/progress.js';
import { createSession, given, nextHelp, worth } from '../../www/app/practice/session.js';

import { meets, standsAt } from '../../www/app/practice/tapedraw.js';
import { hatchOf, measured, readingsOf } from '../../www/app/practice/todraw.js';
import { asGiven, saidOf, solution } from '../../www/app/practice/verdict.js';
import { answerText, tolerance } from '../../www/app/practice/written.js';
import { give, has } from '../../www/app/words.js';

const NBSP = '\u00a0';
const words = (language, page) => JSON.parse(readFileSync(`www/words/${language}/${page}.json`, 'utf8'));
for (const page of ['fields', 'practice']) give(page, words('en', page), 'en');
give('exercises', { 'step.a': 'Gross', 'step.b': 'Net', 'hint.a': 'Length × height.', 'choice.go': 'Go', 'choice.hold': 'Hold' });
give('slips', { doubled: '{answer} is {how}: once is enough.' });
// A stand-in for the core: it writes a figure with its kind's sign and reads plain numbers.
const SIGN = { area: 'ft²', length: 'in', temperature_step: '°F', duration: 'min' };
use({
  fields: () => [],
  write: (kind, value) => kind === 'clock' ? `${Math.floor(value / 60)}:${value % 60}${NBSP}am` : `${Math.round(value * 100) / 100}${SIGN[kind] ? NBSP + SIGN[kind] : ''}`,
  read: (text, kind) => (/^[\d.]+$/.test(text) && (kind !== 'count' || !text.includes('.')) ? { state: 'read', likely: Number(text), text, other: [], meanings: [] } : { state: 'refused', text: '', other: [], meanings: [] }),
});

test('what a tape and a label say is set for reading, and nothing else is touched', () => {
  for (const [typed, read] of [
    [`12' 6 1/2"`, '12′-6½″'], [`8' 0"`, '8′-0″'], [`7' 3 3/16"`, `7′-3${NBSP}3/16″`], ["16'", '16′'], ['7 1/4"', '7¼″'], ['2 1/2 in', `2½${NBSP}in`], ['7/8 in', `⅞${NBSP}in`],
    ['382 mm', `382${NBSP}mm`], ['3.82 m', `3.82${NBSP}m`], ['63 F', `63${NBSP}°F`], ['-4 C', `−4${NBSP}°C`], ['R-6.2', 'R-6.2'], ['RSI 1.09', `RSI${NBSP}1.09`], ['RSI 1.05666', `RSI${NBSP}1.06`],
    ['2x6', '2x6'], ['5/12', '5/12'], ['7:30 am', '7:30 am'], ['', ''],
  ]) assert.equal(plainly(typed), read, typed);
});

const figure = (value, kind = 'area') => ({ is: 'figure', value, kind });
const sign = (is) => ({ is, value: 0, kind: 'number' });

test('a line is written with its signs, and the answer of an open step stands in it by its number', () => {
  const line = [figure(40.5), sign('minus'), figure(4)];
  assert.equal(howText(line, 'us'), `40.5${NBSP}ft² − 4${NBSP}ft²`);
  assert.equal(howText(line, 'us', [{ n: 2, value: 40.5, kind: 'area' }]), `(answer of step 2) − 4${NBSP}ft²`);
  // A length of the same number is another figure.
  assert.equal(howText(line, 'us', [{ n: 2, value: 40.5, kind: 'length' }]), `40.5${NBSP}ft² − 4${NBSP}ft²`);
  assert.equal(howText(line, 'us', [{ n: 2, value: 40.5, kind: 'area', text: '81' }]), `81 − 4${NBSP}ft²`);
  assert.equal(howText([sign('larger'), sign('open'), figure(15, 'duration'), sign('and'), figure(18, 'duration'), sign('close')], 'us'), `the larger of (15${NBSP}min and 18${NBSP}min)`);
  assert.equal(howText([sign('root'), sign('open'), figure(9, 'number'), sign('close'), sign('times'), figure(2, 'number'), sign('over'), figure(3, 'number'), sign('plus'), figure(1, 'number')], 'us'), '√(9) × 2 ÷ 3 + 1');
});

test('points are written in quarters', () => {
  assert.deepEqual([0, 0.25, 0.5, 0.75, 1, 5.5, 8, 3.7500001].map(quarters), ['0', '¼', '½', '¾', '1', '5½', '8', '3¾']);
});

test('a tolerance is said in the unit of the answer; without one it is exact', () => {
  const step = (/** @type {any} */ more) => ({ within: 0, within_pct: 0, kind: 'area', ...more });
  assert.equal(tolerance(step({}), 'us'), 'exactly');
  assert.equal(tolerance(step({ within_pct: 0.5 }), 'us'), `within 0.5${NBSP}%`);
  assert.equal(tolerance(step({ within: 0.3 }), 'us'), `within 0.3${NBSP}ft²`);
  assert.equal(tolerance(step({ within: 0.3, within_pct: 0.2 }), 'us'), `within 0.3${NBSP}ft² or 0.2${NBSP}%`);
  // Of a temperature and of a time of day it is a difference.
  assert.equal(tolerance(step({ within: 1, kind: 'temperature' }), 'us'), `within 1${NBSP}°F`);
  assert.equal(tolerance(step({ within: 35, kind: 'clock' }), 'us'), `within 35${NBSP}min, written like 9:50${NBSP}am`);
  // A small one keeps its digits, a part of an inch is one of a tape.
  assert.equal(tolerance(step({ within: 0.01, kind: 'resistance' }), 'us'), 'within R-0.01');
  assert.equal(tolerance(step({ within: 0.01, kind: 'resistance' }), 'metric'), `within RSI${NBSP}0.0018`);
  assert.equal(tolerance(step({ within: 0.0005, kind: 'number' }), 'us'), 'within 0.0005');
  // So many points of a share, not so many percent of it.
  assert.equal(tolerance(step({ within: 1.5, kind: 'percent' }), 'us'), 'within 1.5 points');
  assert.equal(tolerance(step({ within: 1 / 32, kind: 'length' }), 'us'), `within 1/32${NBSP}in`);
  assert.equal(tolerance(step({ within: 0.06, within_pct: 0.5, kind: 'foam_volume' }), 'us'), `within 0.06${NBSP}bd${NBSP}ft or 0.5${NBSP}%`);
  assert.equal(tolerance(step({ within: 0.0625, kind: 'length' }), 'us'), `within 1/16${NBSP}in`);
});

test('help comes in its order, each costs a quarter, and the answer all', () => {
  const both = { words: true, how: true };
  const at = (hints, shown = false) => ({ hints, shown });
  assert.deepEqual([0, 1, 2, 3].map((hints) => nextHelp(at(hints), both)), ['hint', 'how', 'show', 'show']);
  assert.deepEqual([0, 1].map((hints) => nextHelp(at(hints), { words: false, how: true })), ['how', 'show']);
  assert.deepEqual([0, 1].map((hints) => nextHelp(at(hints), { words: true, how: false })), ['hint', 'show']);
  assert.equal(nextHelp(at(0), { words: false, how: false }), 'show');
  assert.equal(nextHelp(at(1, true), both), undefined);
  assert.deepEqual([at(0), at(1), at(2), at(2, true)].map((one) => given(one, both)), [[], ['hint'], ['hint', 'how'], ['hint', 'how', 'show']]);
  assert.deepEqual([at(0), at(1), at(2), at(0, true)].map(worth), [1, 0.75, 0.5, 0]);
});

test('an answer stands in a line as figures are written, and a count that is none is read as a number', () => {
  const of = (text, more, units = 'us') => asGiven(/** @type {any} */ ({ exercise: { steps: [form('a', more)] }, answers: [{ text, unit: '', hints: 0, shown: false }], units }), 0);
  assert.equal(of('1560', { kind: 'money', unit: 'usd' }).replace(/\u00a0.*/, ''), '$1,560');
  assert.equal(of('93.6', { kind: 'money', unit: 'usd' }), '$93.60');
  assert.equal(of('.0631', { kind: 'number', unit: 'one' }).replace(/\u00a0.*/, ''), '0.0631');
  assert.equal(of('12345.75', {}, 'metric'), `12\u202f345.75${NBSP}ft²`);
  assert.equal(valueOf(form('a', { kind: 'count', unit: 'each' }), { text: '3.4', unit: '', hints: 0, shown: false }, 'us'), 3.4);
  assert.ok(Number.isNaN(valueOf(form('a', { kind: 'count', unit: 'each' }), { text: 'three or so', unit: '', hints: 0, shown: false }, 'us')));
});

test('a line of a right answer says what its figures come to; that of a choice begins with its word', () => {
  const { session, core } = standIn();
  const mark = core.mark;
  core.mark = (...args) => {
    const marked = mark(...args);
    return { ...marked, steps: marked.steps.map((one, at) => (at === 0 ? { ...one, verdict: 'right', how: [figure(18, 'length'), sign('times'), figure(4.5, 'length')], gives: 81 } : at === 2 ? { ...one, verdict: 'right', how: [figure(3)], gives: 0 } : one)) };
  };
  session.answer(0, { text: '80.9' });
  session.answer(2, { text: 'go' });
  session.judge();
  assert.equal(saidOf(session, 0)?.rest, `18${NBSP}in × 4.5${NBSP}in = 81${NBSP}ft².`);
  assert.equal(saidOf(session, 2)?.rest, `Go: 3${NBSP}ft².`);
});

const form = (key, more = {}) => ({ key, of: '', topic: 'areas', kind: 'area', unit: 'ft2', choices: [], within: 0, within_pct: 0.5, ...more });
const ANSWERS = [81, 77, 0];

/** A core of three steps: 81, 81 − 4, and a press of which the first is right. Twice the first answer is a slip. */
function standIn() {
  const asked = [];
  // The device's own keeping, with one text for a store.
  let text = 'null';
  let clock = 0;
  const kept = createProgress({ get: () => JSON.parse(text), put: (doc) => { text = JSON.stringify(doc); return true; } }, () => (clock += 10));
  const core = {
    solve: () => [{ value: 81, how: [figure(18, 'length'), sign('times'), figure(4.5, 'length')] }, { value: 77, how: [figure(81), sign('minus'), figure(4)] }, { value: 0, how: [] }],
    mark: (seed, units, values, hints) => {
      asked.push([...values].map((one) => (Number.isNaN(one) ? '–' : one)).join(' ') + ' | ' + [...hints].join(' '));
      const steps = [...values].map((value, at) => {
        const less = hints[at] === 255 ? 1 : hints[at] / 4;
        if (hints[at] === 255) return { verdict: 'shown', slip: '', how: [], carried: false, points: 0 };
        if (Number.isNaN(value)) return { verdict: 'blank', slip: '', how: [], carried: false, points: 0 };
        if (value === ANSWERS[at]) return { verdict: 'right', slip: '', how: at === 1 ? [figure(81), sign('minus'), figure(4)] : [], carried: false, points: 1 - less };
        if (at === 1 && value === values[0] - 4) return { verdict: 'carried', slip: '', how: [figure(values[0]), sign('minus'), figure(4)], carried: true, points: 1 - less };
        return value === 2 * ANSWERS[at] ? { verdict: 'slip', slip: 'doubled', how: [figure(81), sign('times'), figure(2, 'number')], carried: false, points: 0 } : { verdict: 'wrong', slip: '', how: [], carried: false, points: 0 };
      });
      return { steps, points: steps.reduce((sum, one) => sum + one.points, 0), of: 3 };
    },
  };
  const exercise = { seed: '1-1-0001', steps: [form('a'), form('b'), form('c', { kind: 'choice', unit: 'one', choices: ['go', 'hold'], within_pct: 0 })] };
  return { session: createSession(core, kept, exercise, 'us'), asked, kept, core, exercise };
}

test('answers, hints and shown steps go to the marking as they stand, and a changed answer loses its mark', () => {
  const { session, asked, kept } = standIn();
  session.answer(0, { text: '81' });
  session.help(1, 'hint');
  session.answer(2, { text: 'hold' });
  session.judge();
  assert.equal(asked.at(-1), '81 – 1 | 0 1 0');
  assert.deepEqual([0, 1, 2].map((at) => session.mark(at)?.verdict), ['right', 'blank', 'wrong']);
  assert.equal(session.firstOpen(), 1);
  session.answer(0, { text: '80' });
  assert.equal(session.mark(0), undefined);
  assert.equal(session.mark(2)?.verdict, 'wrong');
  assert.deepEqual(kept.answers('1-1-0001', 'us')[1], { text: '', unit: 'ft2', hints: 1, shown: false });
  session.help(1, 'show');
  session.judge();
  assert.equal(asked.at(-1), '80 – 1 | 0 255 0');
  assert.equal(kept.recent()[0].score?.points, session.marked?.points);
  session.answer(0, { text: '81' });
  session.judge();
  session.giveUp();
  // What was right stays right; only the rest is given up.
  assert.deepEqual(session.answers.map((one) => one.shown), [false, true, true]);
  assert.equal(session.marked?.points, 1);
  assert.equal(session.firstOpen(), -1);
  session.again();
  assert.deepEqual(kept.answers('1-1-0001', 'us').map((one) => one.text + one.hints + one.shown), ['0false', '0false', '0false']);
  assert.equal(session.marked, undefined);
});

test('each system of units has its own answers, marked in it', () => {
  const { session, core, kept, exercise } = standIn();
  const metric = createSession(core, kept, exercise, 'metric');
  session.answer(0, { text: '81' });
  assert.deepEqual(metric.reload(), []);
  metric.answer(0, { text: '7.5' });
  const asked = [];
  const spy = { ...core, mark: (seed, units, values, hints) => { asked.push([units, values[0]]); return core.mark(seed, units, values, hints); } };
  for (const units of ['us', 'metric']) createSession(spy, kept, exercise, units).judge();
  assert.deepEqual(asked, [['us', 81], ['metric', 7.5]]);
});

test('what was forgotten elsewhere is not written again, and another tab\'s step stands beside the own one', () => {
  const { session, core, kept, exercise } = standIn();
  const other = createSession(core, kept, exercise, 'us');
  session.answer(0, { text: '81' });
  session.judge();
  other.answer(1, { text: '77' });
  assert.deepEqual(kept.answers('1-1-0001', 'us').map((one) => one.text), ['81', '77']);
  assert.deepEqual([session.reload(), other.reload()], [[1], [0]]);
  assert.deepEqual([session.answers, other.answers].map((all) => all.map((one) => one.text)), [['81', '77', ''], ['81', '77', '']]);
  assert.deepEqual([0, 1].map((at) => session.mark(at)?.verdict), ['right', undefined]);
  const undo = kept.reset();
  assert.deepEqual(session.reload(), [0, 1]);
  assert.deepEqual([session.marked, session.mark(0), session.answers[0].text], [undefined, undefined, '']);
  session.answer(2, { text: 'go' });
  assert.deepEqual(kept.answers('1-1-0001', 'us').map((one) => one.text), ['', '', 'go']);
  undo();
  session.reload();
  assert.equal(session.answers[0].text, '81');
});

test('what was right but not marked yet is not given up, nor after a reload', () => {
  const { session, core, kept, exercise } = standIn();
  session.answer(0, { text: '81' });
  session.giveUp();
  session.look();
  assert.deepEqual(session.answers.map((one) => one.shown), [false, true, true]);
  assert.equal(session.gave, true);
  const again = createSession(core, kept, exercise, 'us');
  assert.equal(again.firstOpen(), -1, 'the worked solution may be read again');
  assert.equal(again.gave, false);
  session.again();
  assert.equal(kept.entry('1-1-0001').seen, true);
  const afresh = createSession(core, kept, exercise, 'us');
  assert.deepEqual([afresh.firstOpen(), afresh.marked], [0, undefined]);
});

test('an exercise that the core cannot work out is none', () => {
  const { core, kept, exercise } = standIn();
  assert.throws(() => createSession({ ...core, solve: () => core.solve().map((one, at) => (at ? one : { ...one, value: NaN })) }, kept, exercise, 'us'), /not solved/);
  assert.throws(() => createSession({ ...core, solve: () => [] }, kept, exercise, 'us'), /not solved/);
});

test('a kept answer stands again with its unit, its hints and nothing of its mark', () => {
  const { core, kept, exercise } = standIn();
  const again = createSession(core, { ...kept, answers: () => [{ text: '7.5', unit: 'm2', hints: 2, shown: false }] }, exercise, 'us');
  assert.deepEqual(again.answers[0], { text: '7.5', unit: 'm2', hints: 2, shown: false });
  assert.deepEqual(again.answers[1], { text: '', unit: 'ft2', hints: 0, shown: false });
  assert.equal(again.mark(0), undefined);
});

test('a mark says how it comes about, what was carried on, and names the slip', () => {
  const { session } = standIn();
  session.answer(0, { text: '162' });
  session.answer(1, { text: '158' });
  session.judge();
  // The slip's line holds the right answer of its own step: that is what it is about.
  assert.deepEqual(saidOf(session, 0), { kind: 'hold', bold: 'Look again.', rest: `162${NBSP}ft² is 81${NBSP}ft² × 2: once is enough.` });
  assert.deepEqual(saidOf(session, 1), { kind: 'go', bold: 'Right method,', rest: `carried on from your 162${NBSP}ft². 162${NBSP}ft² − 4${NBSP}ft² = 158${NBSP}ft².` });
  assert.equal(saidOf(session, 2), undefined);
  session.answer(0, { text: '5' });
  session.help(1, 'hint');
  session.answer(1, { text: '77' });
  session.judge();
  assert.equal(saidOf(session, 0)?.rest, 'Not what this comes to. Go through the step again, or take the hint.');
  // The first step is still open: its right answer is not given away by the second one's line.
  assert.deepEqual(saidOf(session, 1), { kind: 'go', bold: 'Right.', rest: `(answer of step 1) − 4${NBSP}ft² = 77${NBSP}ft². ¾ point after hints.` });
  session.answer(1, { text: 'about that' });
  session.judge();
  // Nothing stands above to be pressed.
  assert.deepEqual(saidOf(session, 1), { kind: 'none', bold: 'Not marked.', rest: 'Write a figure, with its unit where it is another one than in the box.' });
  session.help(0, 'show');
  assert.equal(saidOf(session, 0)?.rest, `18${NBSP}in × 4.5${NBSP}in = 81${NBSP}ft². No point.`);
  assert.equal(solution(session, 1), `81${NBSP}ft² − 4${NBSP}ft² = 77${NBSP}ft²`);
  session.answer(2, { text: 'hold' });
  assert.equal(asGiven(session, 2), 'Hold');
});

test('where a mark stands on a tape: the last whole line, the parts past it, the last flag', () => {
  // 12′-6⅜″ is 150⅜ in: past the 150-inch line, the 12-foot mark and six more inches.
  assert.deepEqual(standsAt(150.375, false), { whole: 150, past: 6, ticks: 16, flags: 12, after: 6 });
  assert.deepEqual(standsAt(11.9375, false), { whole: 11, past: 15, ticks: 16, flags: 0, after: 11 });
  // 3.825 m: past the 382-centimeter line, the 3-meter mark.
  assert.deepEqual(standsAt(3825 / 25.4, true), { whole: 382, past: 5, ticks: 10, flags: 3, after: 82 });
});

test('what a step asks for does not stand in the list of what was measured', () => {
  const roof = { id: 1, shape: 'pitched_plane', entries: [{ field: 'length', text: "24' 0\"" }, { field: 'plan_run', text: "13' 2\"" }], openings: [] };
  const all = (/** @type {string[]} */ asked) => readingsOf(/** @type {any} */ ({ units: 'us' }), /** @type {any} */ (roof), asked).map(([, text]) => text);
  assert.deepEqual(all([]), ['24′-0″', '13′-2″']);
  assert.deepEqual(all(['plan_run', 'slope_length', 'roof_area']), ['24′-0″']);
});

test('the pointer of a tape stops for a flag that lies across it, and for no other', () => {
  assert.deepEqual([meets(100, 80, 50), meets(100, 101, 50), meets(100, 130, 50), meets(100, 20, 50)], [true, true, false, false]);
});

test('what a hint costs is the same here and in the core', () => {
  assert.equal(worth({ hints: 1, shown: false }), 1 - Number(/const HINT: f64 = ([\d.]+);/.exec(readFileSync('src/practice/marking.rs', 'utf8'))?.[1]));
});

test('only what was entered is dimensioned on a drawing, and only a slip that shows is hatched', () => {
  const job = { entries: [], surfaces: [{ id: 1, entries: [{ field: 'length', text: '18\' 0"' }, { field: 'height', text: ' ' }], openings: [] }] };
  const line = (field) => ({ at: { part: 'surface', id: 1, field } });
  const outline = { dimensions: [line('length'), line('height'), line(''), line('rise')], edges: [line('length'), line('pitch')] };
  const left = measured(/** @type {any} */ (job), /** @type {any} */ (outline));
  assert.deepEqual([left.dimensions, left.edges].map((all) => all.map((one) => one.at.field)), [['length'], ['length']]);
  // Nor what a step asks for.
  assert.deepEqual(measured(/** @type {any} */ (job), /** @type {any} */ (outline), ['length']).dimensions, []);
  assert.equal(hatchOf([undefined, { slip: 'decimal_moved' }]), undefined);
  assert.deepEqual(hatchOf([{ slip: 'half_twice' }, { slip: 'whole_rectangle' }, { slip: 'openings_forgotten' }]), { extra: 'corners', n: 2 });
});

test('the name of a level line lies over no place where a curve crosses it', () => {
  const level = 100;
  const overlaps = ({ x, y }, at) => x < at + 4 && at - 4 < x + 90 && Math.abs(y - 5 - level) < 30;
  // Nothing near: at the right end, above the line.
  assert.deepEqual(clear([[[42, 200], [400, 180]]], 90, level, 400), { x: 306, y: 95 });
  // It crosses where the name would stand.
  const steep = [[[42, 200], [340, 120], [360, 80], [400, 20]]];
  assert.ok(!overlaps(clear(steep, 90, level, 400), 350));
  // A second curve runs close above the line all along, a third close below it: only the crossing is kept free.
  const crowded = [...steep, [[42, 88], [400, 86]], [[42, 112], [400, 114]]];
  const found = clear(crowded, 90, level, 400);
  assert.ok(!overlaps(found, 350) && found.x >= 46, JSON.stringify(found));
});

test('a right R is written to as many places as an answer has to have', () => {
  const step = (within, within_pct) => ({ kind: 'resistance', choices: [], within, within_pct });
  assert.equal(answerText(/** @type {any} */ (step(0, 0.5)), 10.485, 'us'), '10.49');
  assert.equal(answerText(/** @type {any} */ (step(0.005, 0)), 13.73, 'us'), 'R-13.73');
  assert.equal(answerText(/** @type {any} */ (step(0.1, 0)), 13.73, 'us'), '13.73');
  assert.equal(answerText(/** @type {any} */ (step(0.005, 0)), 13.73, 'metric'), 'RSI\u00a02.418');
});

test('the next exercise is another one: of the same topics, or of a topic that this one has not', () => {
  const topics = ['tape', 'areas', 'pitch', 'kits'];
  const asked = [];
  const core = {
    topics: () => topics, book: () => ['1-0-0001', '1-0-0002'],
    scenes: () => [{ key: 'wall', levels: [1], topics: ['areas'] }, { key: 'gable', levels: [1, 2], topics: ['areas', 'pitch'] }, { key: 'far', levels: [3], topics: ['kits'] }],
    find: (level, wanted, from) => { asked.push([level, wanted, from]); return from < 3 ? '1-1-0000' : `1-${level}-${from.toString(16).padStart(4, '0')}`; },
  };
  const exercise = { seed: '1-1-0000', level: 1, topics: ['areas'] };
  // The dice fall on the present one: the next one after it is another.
  assert.equal(likeThis({ ...core, find: (level, wanted, from) => { asked.push([level, wanted, from]); return from ? '1-1-0001' : '1-1-0000'; } }, exercise, () => 0), '1-1-0001');
  assert.deepEqual(asked, [[1, 0b10, 0], [1, 0b10, 1]]);
  asked.length = 0;
  assert.equal(otherTopic(core, exercise, () => 9), '1-1-0009');
  assert.deepEqual(asked, [[1, 0b100, 9]]);
  assert.equal(otherTopic(core, { ...exercise, level: 3, topics: ['kits'] }), '');
  assert.equal(likeThis(core, { seed: '1-0-0002', level: 0, topics: [] }), '1-0-0001');
});

test('whatever the exercise says has its words, in both languages', () => {
  const named = ['exercise.js', ...['aircards', 'another', 'builtcards', 'cards', 'chartcards', 'goodscards', 'pieces', 'probestrip', 'question', 'session', 'solution', 'steps', 'tapecards', 'tapedraw', 'todraw', 'verdict', 'written'].map((one) => `practice/${one}.js`)]
    .flatMap((file) => [...readFileSync(`www/app/${file}`, 'utf8').matchAll(/practice\.(ex_\w+)(?![\w$]|\{)/g)].map((found) => found[1]));
  const made = [...['hint', 'how', 'show'].map((one) => `ex_help_${one}`), 'ex_given_hint', 'ex_given_how', ...['corners', 'openings', 'framing'].map((one) => `ex_hatched_${one}`), ...['slow', 'likely', 'steel', 'room'].map((one) => `ex_curve_${one}`),
    ...['tape', 'probes'].flatMap((one) => [`ex_${one}`, `ex_${one}_n`]), ...['ft', 'm'].flatMap((one) => [`ex_tape_at_${one}`, `ex_tape_flag_${one}`, `ex_tape_${one}`]), 'ex_zone_4', 'ex_zone_5', 'ex_zone_7', 'ex_least', 'ex_most'];
  assert.ok(named.length > 50, `only ${named.length} keys named`);
  const whole = [...new Set([...named.filter((one) => !one.endsWith('_')), ...made])];
  for (const language of ['en', 'es']) {
    give('practice', words(language, 'practice'), language);
    assert.deepEqual(whole.filter((one) => !has(`practice.${one}`)), [], language);
    // And nothing stands there that nobody says.
    assert.deepEqual(Object.keys(words(language, 'practice')).filter((one) => one.startsWith('ex_') && !whole.includes(one)), [], language);
  }
  give('practice', words('en', 'practice'), 'en');
});
