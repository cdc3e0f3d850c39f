// A class's answer files: each is read and marked in its own units, the mistakes are counted by student, the tables hold it all.
import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { use } from '../../www/app/calls.js';
import { judged, unread, valueOf } from '../../www/app/practice/answers.js';
import { columns, marksOf, markWords, meanShare, pointsCsv, slipCounts, stepsCsv, unmarked } from '../../www/app/practice/marking.js';
import { bits, draw, linkOf, seedsOf, sorted } from '../../www/app/practice/seeds.js';
import { give } from '../../www/app/words.js';

give('practice', JSON.parse(readFileSync(new URL('../../www/words/en/practice.json', import.meta.url), 'utf8')), 'en');
give('fields', JSON.parse(readFileSync(new URL('../../www/words/en/fields.json', import.meta.url), 'utf8')), 'en');
give('exercises', { 'scene.wall.title': '=A wall', 'step.gross_area': 'Whole wall', 'step.verdict': 'Go or hold', 'choice.go': 'Go', 'choice.hold': 'Hold', 'thing.first': 'first wall' }, 'en');

/** A core that reads plain numbers, knows one text with two meanings and refuses units that there are not. */
const reads = [];
use(/** @type {any} */ ({
  read(text, kind, unit, sense, units) {
    reads.push([text, kind, unit, sense, units]);
    if (!['ft2', 'm2', 'ft'].includes(unit)) throw new Error('unknown variant');
    if (text === '5.11' && !sense) return { state: 'ask' };
    const value = Number(text);
    return Number.isFinite(value) ? { state: 'read', likely: value } : { state: 'refused' };
  },
}));

const area = { key: 'gross_area', of: 'first', topic: 'areas', kind: 'area', unit: 'ft2', choices: [], within: 0, within_pct: 0.5 };
const choice = { key: 'verdict', of: '', topic: 'temperatures', kind: 'choice', unit: 'one', choices: ['go', 'hold'], within: 0, within_pct: 0 };
const answer = (text, more = {}) => ({ text, unit: 'ft2', hints: 0, shown: false, ...more });

/** 100 ft² or m², and "hold"; 144 times too much has a name. */
const marked = [];
const core = {
  exercise: (seed, units) => (seed.startsWith('9') ? { refused: 'newer' } : seed.includes('x') ? { refused: 'form' }
    : { refused: '', exercise: { seed: seed.toLowerCase().replace(/^0+/, ''), level: 1, scene: 'wall', job: { units }, steps: [area, choice], topics: ['areas'] } }),
  mark(seed, units, values, hints) {
    marked.push([seed, units, [...values], [...hints]]);
    const steps = [...values].map((value, at) => {
      const verdict = hints[at] === 255 ? 'shown' : Number.isNaN(value) ? 'blank' : value === [100, 1][at] ? 'right' : value === [1200, 7][at] ? 'slip' : 'wrong';
      return { verdict, slip: verdict === 'slip' ? 'twelve_for_144' : '', how: [], carried: false, points: verdict === 'right' ? 1 - 0.25 * hints[at] : 0 };
    });
    return { steps, points: steps.reduce((sum, one) => sum + one.points, 0), of: steps.length };
  },
};
const file = (answers, over = {}) => ({ units: 'us', language: 'en', seeds: ['1-1-0001', '1-1-0002'], saved: 0, answers: answers.map((one) => ({ units: 'us', seen: false, ...one })), ...over });

test('an answer is what the estimator reads; a choice is the place of its word', () => {
  assert.equal(valueOf(area, answer(' 81 '), 'us'), 81);
  assert.equal(valueOf(choice, answer('hold', { unit: '' }), 'us'), 1);
  for (const blank of [undefined, answer(''), answer('  ')]) assert.ok(Number.isNaN(valueOf(area, blank, 'us')) && !unread(area, blank, 'us'));
  for (const odd of [answer('about 80'), answer('5.11'), answer('81', { unit: 'cubits' })]) assert.ok(Number.isNaN(valueOf(area, odd, 'us')) && unread(area, odd, 'us'), odd.text);
  assert.equal(valueOf(area, answer('5.11', { sense: 'literal' }), 'us'), 5.11);
  assert.ok(Number.isNaN(valueOf(choice, answer('maybe'), 'us')));
});

test('each exercise is read and marked in its own units, whatever the page stood in that saved the file', () => {
  reads.length = 0;
  marked.length = 0;
  const { parts } = marksOf(core, 'a', file([{ seed: '1-1-0002', units: 'metric', seen: true, steps: [answer('9.29', { unit: 'm2', hints: 2 }), answer('', { shown: true })] }]));
  assert.deepEqual(reads, [['9.29', 'area', 'm2', undefined, 'metric']]);
  assert.deepEqual(marked, [['1-1-0001', 'us', [NaN, NaN], [0, 0]], ['1-1-0002', 'metric', [9.29, NaN], [2, 255]]]);
  assert.deepEqual(parts.map(({ units, seen }) => [units, seen]), [['us', false], ['metric', true]]);
  marked.length = 0;
  marksOf(core, 'b', file([{ seed: '1-1-0002', steps: [answer('100')] }], { units: 'metric' }));
  assert.deepEqual(marked.map(([seed, units]) => [seed, units]), [['1-1-0001', 'metric'], ['1-1-0002', 'us']]);
});

test('hints beyond those that count do not pass for a step that was shown', () => {
  marked.length = 0;
  judged(core, core.exercise('1-1-0001', 'us').exercise, [answer('100', { hints: 255 })], 'us');
  assert.deepEqual(marked[0][3], [254, 0]);
});

const students = () => [
  marksOf(core, 'mia.json', file([{ seed: '1-1-0001', steps: [answer('100'), answer('hold')] }, { seed: '1-1-0002', steps: [answer('1200'), answer('go')] }])),
  marksOf(core, 'ben.json', file([{ seed: '1-1-0001', steps: [answer('1200', { hints: 1 })] }, { seed: '1-1-0002', steps: [answer('1200'), answer('hold', { hints: 1 })] }])),
  marksOf(core, '=ada.json', file([{ seed: '1-1-0003', steps: [answer('about 90')] }], { seeds: ['1-1-0003', '9-1-0000'] })),
];

test('points of each, over all exercises of all sheets', () => {
  const all = students();
  assert.deepEqual(all.map(({ points, of }) => [points, of]), [[2, 4], [0.75, 4], [0, 2]]);
  assert.deepEqual(columns(all).map((one) => one.seed), ['1-1-0001', '1-1-0002', '1-1-0003', '9-1-0000']);
  assert.equal(all[2].parts[1].refused, 'newer');
});

test('another way to write a seed is no column of its own', () => {
  const all = [...students(), marksOf(core, 'zoe.json', file([{ seed: '01-1-0001', steps: [answer('100')] }], { seeds: ['01-1-0001', '1-1-0001'] }))];
  assert.deepEqual([all[3].points, all[3].of], [1, 2]);
  assert.deepEqual(columns(all).map((one) => one.seed), ['1-1-0001', '1-1-0002', '1-1-0003', '9-1-0000']);
});

test('what could not be marked is counted, and the mean is one of shares', () => {
  const all = students();
  assert.deepEqual(all.map(unmarked), [0, 0, 1]);
  // 2 of 4, 0.75 of 4, 0 of 2; a file of which nothing could be marked says nothing.
  const none = marksOf(core, 'none.json', file([], { seeds: ['9-1-0000'] }));
  assert.equal(meanShare([...all, none]), (0.5 + 0.1875 + 0) / 3);
  assert.equal(meanShare([none]), undefined);
});

test('a mistake counts once a student, out of those who had such an exercise', () => {
  assert.deepEqual(slipCounts(students()), [{ slip: 'twelve_for_144', n: 2, seeds: ['1-1-0002', '1-1-0001'], of: 2 }]);
  assert.deepEqual(slipCounts([]), []);
});

test('each answer has its mark in words', () => {
  const [mia, ben, ada] = students();
  assert.equal(markWords(mia.parts[0], 0), 'right');
  assert.equal(markWords(mia.parts[1], 1), 'wrong');
  assert.equal(markWords(ben.parts[0], 0), '÷ 12 and ÷ 144 mixed up, 1 hint');
  assert.equal(markWords(ben.parts[0], 1), 'blank');
  assert.equal(markWords(ada.parts[0], 0), 'not read: no figure, or two meanings');
});

test('the points as a table: no file name is a formula, what a file did not have is an empty cell', () => {
  assert.equal(pointsCsv(students()), ['\uFEFF"File","\'=A wall, 1-1-0001, of 2","\'=A wall, 1-1-0002, of 2","\'=A wall, 1-1-0003, of 2","9-1-0000","Points","Of","Not marked"',
    '"mia.json",2,0,,,2,4,0', '"ben.json",0,0.75,,,0.75,4,0', '"\'=ada.json",,,0,,0,2,1', ''].join('\r\n'));
});

test('every answer as a table: a line a step', () => {
  const rows = stepsCsv(students()).split('\r\n');
  assert.equal(rows[0], '\uFEFF"File","Exercise","Number","Step","Answer","Mark","Hints","Points"');
  assert.equal(rows.length, 1 + 4 + 4 + 2 + 1);
  assert.equal(rows[2], '"mia.json","\'=A wall","1-1-0001","Go or hold","Hold","right",0,1');
  assert.equal(rows[5], '"ben.json","\'=A wall","1-1-0001","Whole wall, first wall","1200\u00a0ft²","÷ 12 and ÷ 144 mixed up, 1 hint",1,0');
});

test('seeds out of texts and links', () => {
  assert.deepEqual(seedsOf(' 1-4-7F3A '), ['1-4-7F3A']);
  assert.deepEqual(seedsOf('https://example.org/foam/?x=1#/exercise/1-4-7f3a'), ['1-4-7f3a']);
  assert.deepEqual(seedsOf('https://example.org/#/class/1-2-7f3a,1-1-0b11/print'), ['1-2-7f3a', '1-1-0b11']);
  assert.deepEqual(seedsOf('#/class/1-2-7f3a%2C1-1-0b11'), ['1-2-7f3a', '1-1-0b11']);
  assert.deepEqual(seedsOf('#/class/%E0%A4%A'), ['%E0%A4%A']);
  assert.deepEqual(seedsOf('  '), []);
  assert.equal(linkOf(['1-2-7f3a', '1-1-0b11'], 'https://example.org/foam/?x#/practice'), 'https://example.org/foam/?x#/class/1-2-7f3a,1-1-0b11');
});

test('a sheet has each exercise once, at most twenty, and says what it left out', () => {
  const { exercises, refused } = sorted(core, ['1-1-0001', '1-1-000A', '1-1-000a', 'x', '9-1-0000'], 'us');
  assert.deepEqual(exercises.map((one) => one.seed), ['1-1-0001', '1-1-000a']);
  assert.deepEqual(refused, [{ seed: '1-1-000a', why: 'twice' }, { seed: 'x', why: 'form' }, { seed: '9-1-0000', why: 'newer' }]);
  const many = sorted(core, Array.from({ length: 22 }, (_, n) => `1-1-${1000 + n}`), 'us');
  assert.deepEqual([many.exercises.length, many.refused.map((one) => one.why)], [20, ['many', 'many']]);
});

test('dice choose where to begin; what stands there already is passed over', () => {
  /** Every third number fits. */
  const find = (level, topics, from) => (topics === 4 ? '' : `1-${level}-${((Math.ceil(from / 3) * 3) % 65_536).toString(16).padStart(4, '0')}`);
  assert.equal(draw({ find }, 2, 0, new Set(), () => 10), '1-2-000c');
  assert.equal(draw({ find }, 2, 0, new Set(['1-2-000c', '1-2-000f']), () => 10), '1-2-0012');
  assert.equal(draw({ find }, 2, 4, new Set(), () => 10), '');
  assert.equal(draw({ find: () => '1-2-0001' }, 2, 0, new Set(['1-2-0001']), () => 10), '', 'there is only that one');
  const seen = new Set(Array.from({ length: 40 }, () => draw({ find }, 1, 0)));
  assert.ok(seen.size > 20, 'the device throws');
  assert.equal(bits(['tape', 'areas', 'framing'], new Set(['tape', 'framing'])), 5);
});
