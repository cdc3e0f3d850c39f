// Figures of practice in words: as they stand on the key, in the marks and in their tables.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { use } from '../../www/app/calls.js';
import { howText } from '../../www/app/practice/pieces.js';
import { plainly } from '../../www/app/practice/plain.js';
import { answerText, slipText, typedText, written } from '../../www/app/practice/written.js';
import { give } from '../../www/app/words.js';

const NBSP = '\u00a0';
const words = (language, page) => JSON.parse(readFileSync(`www/words/${language}/${page}.json`, 'utf8'));
const speak = (language) => { for (const page of ['fields', 'practice', 'exercises']) give(page, words(language, page), language); };
speak('en');
// A stand-in for the core, which writes a count whole, a date by its digits, a pitch in words, and no time before midnight.
const standIn = () => use(/** @type {any} */ ({ write: (kind, value) => (kind === 'date' ? '2026-05-20' : kind === 'pitch' ? `${12 * value} in 12` : kind === 'clock' && value < 0 ? '' : String(Math.round(value))) }));
standIn();

test('a count that is not whole is not rounded to one that is', () => {
  assert.equal(written('count', 3, 'us'), '3');
  assert.equal(written('count', 2.6, 'us'), '2.60');
  assert.equal(written('count', 3.0000000001, 'us'), '3');
});

test('a date stands as the language writes it, from a figure and from a text', () => {
  assert.deepEqual([written('date', 20_593, 'us'), plainly('2026-05-20')], ['May 20, 2026', 'May 20, 2026']);
  speak('es');
  assert.match(plainly('2026-05-20'), /^20 .*2026$|^may.* 20.*2026$/i);
  assert.doesNotMatch(written('date', 20_593, 'us'), /2026-05/);
  speak('en');
});

test('a pitch is a fraction in a line, in brackets where it is multiplied', () => {
  const figure = (value, kind) => ({ is: 'figure', value, kind });
  const sign = (is) => ({ is, value: 0, kind: 'number' });
  const pitch = figure(10 / 12, 'pitch');
  for (const language of ['en', 'es']) {
    speak(language);
    assert.equal(howText([sign('root'), sign('open'), figure(1, 'number'), sign('plus'), pitch, sign('times'), pitch, sign('close')], 'us'), '√(1 + (10/12) × (10/12))');
    assert.equal(howText([figure(1, 'number'), sign('plus'), pitch], 'us'), '1 + 10/12');
  }
  speak('en');
});

test('in the line of a box in inches or millimeters every length stands in its unit', () => {
  const asked = [];
  use(/** @type {any} */ ({ write: (kind, value, style) => { asked.push(style); return String(value); } }));
  const line = [{ is: 'figure', value: 143, kind: 'length' }, { is: 'minus', value: 0, kind: 'number' }, { is: 'figure', value: 1, kind: 'length' }];
  const styles = (units, unit) => {
    asked.length = 0;
    const step = /** @type {any} */ ({ kind: 'length', unit, choices: [] });
    answerText(step, 142, units);
    howText(/** @type {any} */ (line), units, [], step);
    return [...asked];
  };
  assert.deepEqual(styles('us', 'in'), ['inches', 'inches', 'inches']);
  assert.deepEqual(styles('metric', 'mm'), ['millimeters', 'millimeters', 'millimeters']);
  assert.deepEqual(styles('us', 'ft'), ['feet_inches', 'us', 'us']);
  assert.deepEqual(styles('metric', 'm'), ['metric', 'metric_usual', 'metric_usual']);
  standIn();
});

test('the key names no mistake whose answer cannot be written, and none that reads as the right answer', () => {
  const step = (kind, more = {}) => /** @type {any} */ ({ key: 'a', of: '', kind, unit: 'one', choices: [], ...more });
  assert.equal(slipText(step('count'), 2.6, 3, 'us'), '2.60');
  assert.equal(slipText(step('clock'), -60, 900, 'us'), '');
  assert.equal(slipText(step('area'), NaN, 81, 'us'), '');
  assert.equal(slipText(step('choice', { choices: ['go', 'hold'] }), 5, 0, 'us'), '');
  assert.equal(slipText(step('area'), 81.2, 81, 'us'), '');
});

test('an answer stands as it was typed: a choice by its word, a bare number with its unit', () => {
  const step = /** @type {any} */ ({ kind: 'area', unit: 'ft2', choices: [] });
  const answer = (text, unit = 'ft2') => ({ text, unit, hints: 0, shown: false });
  assert.equal(typedText(step, answer(' 81 ')), `81${NBSP}ft²`);
  assert.equal(typedText(step, answer('9 m2')), '9 m2');
  assert.equal(typedText(step, answer('81', 'cubits')), '81');
  assert.equal(typedText({ ...step, choices: ['go', 'hold'] }, answer('hold', 'one')), words('en', 'exercises')['choice.hold']);
  assert.equal(typedText(step, undefined), '');
});
