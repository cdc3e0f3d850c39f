// Answer files: what goes out comes in again, nothing odd comes in, and the published schema says the same as the reader.
import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { answersName, answersText, readAnswers } from '../../www/app/practice/answerfile.js';

const schema = JSON.parse(readFileSync(new URL('../../www/answers-v1.schema.json', import.meta.url), 'utf8'));

const step = (over = {}) => ({ text: '81', unit: 'ft2', hints: 0, shown: false, ...over });
const good = (over = {}) => ({
  units: 'us', language: 'en', seeds: ['1-1-0b11', '1-4-7f3a'], saved: 1_778_590_800_000,
  answers: [{ seed: '1-4-7f3a', units: 'metric', seen: true, steps: [step(), step({ text: '5.11', unit: 'ft', sense: 'decimal_feet', hints: 2 }), step({ text: '', shown: true })] }], ...over,
});
const file = (over = {}) => ({ format: 'foamwright-answers', version: 1, ...good(), ...over });
const one = (over) => file({ answers: [{ seed: '1-1-0b11', units: 'us', steps: [step(over)] }] });
const entry = (over) => file({ answers: [{ seed: '1-1-0b11', units: 'us', steps: [], ...over }] });
const without = (name) => Object.fromEntries(Object.entries(file()).filter(([key]) => key !== name));

/** As much of JSON Schema as ours uses; a word that it does not know fails. */
function faults(value, rule, at = '$') {
  const known = {
    $schema: () => true, $defs: () => true, title: () => true, description: () => true,
    $ref: (ref) => faults(value, schema.$defs[ref.replace('#/$defs/', '')], at),
    const: (it) => value === it, enum: (all) => all.includes(value),
    type: (kind) => ({ object: typeof value === 'object' && value !== null && !Array.isArray(value), array: Array.isArray(value), string: typeof value === 'string', number: Number.isFinite(value), integer: Number.isInteger(value), boolean: typeof value === 'boolean' })[kind],
    required: (names) => Object(value) !== value || names.every((name) => Object.hasOwn(value, name)),
    properties: (all) => Object(value) !== value ? [] : Object.entries(all).flatMap(([name, it]) => (Object.hasOwn(value, name) ? faults(value[name], it, `${at}.${name}`) : [])),
    items: (it) => (Array.isArray(value) ? value.flatMap((inner, index) => faults(inner, it, `${at}[${index}]`)) : []),
    minItems: (n) => !Array.isArray(value) || value.length >= n, maxItems: (n) => !Array.isArray(value) || value.length <= n,
    uniqueItems: () => !Array.isArray(value) || new Set(value.map((inner) => JSON.stringify(inner))).size === value.length,
    maxLength: (n) => typeof value !== 'string' || [...value].length <= n, pattern: (form) => typeof value !== 'string' || new RegExp(form, 'u').test(value),
    minimum: (n) => typeof value !== 'number' || value >= n, maximum: (n) => typeof value !== 'number' || value <= n,
  };
  return Object.entries(rule).flatMap(([word, it]) => {
    const said = known[word](it);
    return Array.isArray(said) ? said : said ? [] : [`${at}: ${word}`];
  });
}

test('what was saved is read again, to the letter', () => {
  assert.deepEqual(readAnswers(answersText(good())), { file: good() });
  assert.deepEqual(readAnswers(`\uFEFF${answersText(good())}`), { file: good() });
  assert.deepEqual(faults(JSON.parse(answersText(good())), schema), []);
});

test('the file says which sheet and nothing of the student', () => {
  assert.equal(answersName(good().seeds), 'answers-1-1-0b11-2.json');
  assert.deepEqual(Object.keys(JSON.parse(answersText({ ...good(), name: 'Mia', student: 'Mia' }))), ['format', 'version', 'units', 'language', 'seeds', 'answers', 'saved']);
});

const GOOD = {
  'nothing answered': file({ answers: [] }),
  'a blank unit': one({ unit: '' }),
  'twenty exercises': file({ seeds: Array.from({ length: 20 }, (_, n) => `1-1-00${(16 + n).toString(16)}`), answers: [] }),
  'of the book': file({ seeds: ['1-0-0003'], answers: [] }),
  'a text of 300 characters that take two units each': one({ text: '𝟏'.repeat(300) }),
  'seen before': entry({ seen: true }),
  'another language': file({ language: 'es-MX' }),
};

const BAD = {
  'another format': [file({ format: 'foamwright-job' }), 'foreign'],
  'a newer version': [file({ version: 2 }), 'newer version'],
  'a version as text': [file({ version: '1' }), 'wrong version'],
  'no units': [without('units'), 'wrong units'],
  'odd units': [file({ units: 'cubits' }), 'wrong units'],
  'no language': [without('language'), 'wrong language'],
  'a language with script': [file({ language: '<b>' }), 'wrong language'],
  'saved as text': [file({ saved: '2026-05-12' }), 'wrong saved'],
  'saved before 1970': [file({ saved: -1 }), 'wrong saved'],
  'saved after the last day that there is': [file({ saved: 1e300 }), 'wrong saved'],
  'no seeds': [without('seeds'), 'wrong seeds'],
  'an empty sheet': [file({ seeds: [], answers: [] }), 'wrong seeds'],
  'seeds as text': [file({ seeds: '1-1-0b11', answers: [] }), 'wrong seeds'],
  'a seed of another form': [file({ seeds: ['1-1-0B11'], answers: [] }), 'wrong seeds[0]'],
  'a seed that is a path': [file({ seeds: ['../../x'], answers: [] }), 'wrong seeds[0]'],
  'a seed twice': [file({ seeds: ['1-1-0b11', '1-1-0b11'], answers: [] }), 'twice seeds[1]'],
  'too many seeds': [file({ seeds: Array.from({ length: 21 }, (_, n) => `1-1-00${(16 + n).toString(16)}`), answers: [] }), 'too_many seeds'],
  'no answers': [without('answers'), 'wrong answers'],
  'an answer that is none': [file({ answers: [null] }), 'wrong answers[0]'],
  'an answer without steps': [file({ answers: [{ seed: '1-1-0b11', units: 'us' }] }), 'wrong answers[0].steps'],
  'an answer without units': [file({ answers: [{ seed: '1-1-0b11', steps: [] }] }), 'wrong answers[0].units'],
  'an answer in odd units': [entry({ units: 'cubits' }), 'wrong answers[0].units'],
  'seen as text': [entry({ seen: 'no' }), 'wrong answers[0].seen'],
  'too many steps': [file({ answers: [{ seed: '1-1-0b11', units: 'us', steps: Array(61).fill(step()) }] }), 'too_many answers[0].steps'],
  'a step that is none': [file({ answers: [{ seed: '1-1-0b11', units: 'us', steps: [7] }] }), 'wrong answers[0].steps[0]'],
  'a number for a text': [one({ text: 81 }), 'wrong answers[0].steps[0].text'],
  'a text without end': [one({ text: '9'.repeat(301) }), 'wrong answers[0].steps[0].text'],
  'a unit with script': [one({ unit: '<img>' }), 'wrong answers[0].steps[0].unit'],
  'a meaning that is none': [one({ sense: 5 }), 'wrong answers[0].steps[0].sense'],
  'half a hint': [one({ hints: 0.5 }), 'wrong answers[0].steps[0].hints'],
  'hints taken back': [one({ hints: -1 }), 'wrong answers[0].steps[0].hints'],
  'hints without end': [one({ hints: 100 }), 'wrong answers[0].steps[0].hints'],
  'shown as text': [one({ shown: 'no' }), 'wrong answers[0].steps[0].shown'],
  'no file but a list': [[], 'foreign'],
  'no file but nothing': [null, 'foreign'],
};

/** What a schema cannot say: one value held against another. */
const BEYOND = {
  'an answer of another sheet': [file({ answers: [{ seed: '1-2-0000', units: 'us', steps: [] }] }), 'wrong answers[0].seed'],
  'an exercise answered twice': [file({ answers: [{ seed: '1-1-0b11', units: 'us', steps: [] }, { seed: '1-1-0b11', units: 'us', steps: [] }] }), 'twice answers[1].seed'],
};

for (const [name, value] of Object.entries(GOOD)) {
  test(`read: ${name}`, () => {
    assert.ok('file' in readAnswers(JSON.stringify(value)));
    assert.deepEqual(faults(value, schema), []);
  });
}

for (const [name, [value, why]] of Object.entries({ ...BAD, ...BEYOND })) {
  test(`refused: ${name}`, () => {
    const { refused, at } = readAnswers(JSON.stringify(value));
    assert.equal([refused, at].filter(Boolean).join(' '), why);
    assert.equal(faults(value, schema).length === 0, name in BEYOND, 'the schema says the same');
  });
}

test('too long, too deep and cut short are told before anything is looked at', () => {
  assert.equal(readAnswers(JSON.stringify(file({ note: 'é'.repeat(1_000_000) }))).refused, 'too_long');
  assert.equal(readAnswers('['.repeat(900_000)).refused, 'too_deep');
  assert.equal(readAnswers(JSON.stringify(file()).slice(0, -2)).refused, 'damaged');
  assert.equal(readAnswers('').refused, 'damaged');
  const deep = (n) => `${JSON.stringify(file()).slice(0, -1)},"x":${'['.repeat(n)}${']'.repeat(n)}}`;
  assert.ok('file' in readAnswers(deep(31)));
  assert.equal(readAnswers(deep(32)).refused, 'too_deep');
});

test('what is not known is left out, and prototypes stay as they are', () => {
  const text = JSON.stringify(one({ mood: 'good' })).replace('"format"', '"name":"Mia","__proto__":{"polluted":1},"format"');
  const { file: read } = readAnswers(text);
  assert.deepEqual(Object.keys(read), ['units', 'language', 'seeds', 'answers', 'saved']);
  assert.deepEqual(Object.keys(read.answers[0].steps[0]), ['text', 'unit', 'hints', 'shown']);
  assert.equal(/** @type {any} */ ({}).polluted, undefined);
});
