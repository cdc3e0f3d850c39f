// Presses on the tape pad, and the text that they leave in the field.
import assert from 'node:assert/strict';
import test from 'node:test';
import { keysOf, press } from '../../www/app/tapekeys.js';

const typed = (/** @type {string} */ keys, before = '') => keys.split(' ').filter(Boolean).reduce(press, before);

test('feet close the figure before them, and digits after them are inches', () => {
  assert.equal(typed('2 4'), '24');
  assert.equal(typed('2 4 ft'), "24'");
  assert.equal(typed('7 ft 6'), "7' 6");
  assert.equal(typed('7 ft 1 1 in'), `7' 11"`);
  assert.equal(typed('ft'), '');
  assert.equal(typed('7 ft ft 6 ft'), "7' 6");
  assert.equal(typed('in'), '');
  assert.equal(typed('9 0 in in'), '90"');
});

test('fractions of an inch add up', () => {
  assert.equal(typed('6 1/8 1/8 1/8'), '6 3/8"');
  assert.equal(typed('7 ft 6 1/2 1/8'), `7' 6 5/8"`);
  assert.equal(typed('7 ft 1/16'), `7' 1/16"`);
  assert.equal(typed('1/4 1/4'), '1/2"');
  assert.equal(typed('7 ft 6 in 1/2'), `7' 6 1/2"`);
  assert.equal(typed('1/16', '1 1/16"'), '1 1/8"');
});

test('past a whole inch they carry, and past twelve into feet', () => {
  assert.equal(typed('6 1/2 1/2'), '7"');
  assert.equal(typed('1/2 1/2'), '1"');
  assert.equal(typed('7 ft 6 1/2 1/4 1/8 1/16 1/8'), `7' 7 1/16"`);
  assert.equal(typed('7 ft 1 1 1/2 1/2'), "8'");
  assert.equal(typed('7 ft 1 1 1/2 1/4 1/2'), `8' 1/4"`);
  assert.equal(typed('7 ft 1 1 1/2 1/2 1/8'), `8' 1/8"`);
  assert.equal(typed('1 1 1/2 1/2'), '12"', 'without feet, inches stay inches');
});

test('a sum of two pulls of the tape', () => {
  assert.equal(typed('1 2 ft + 8 ft'), "12' + 8'");
  assert.equal(typed('1 2 ft 6 + 8 in 1/2'), `12' 6" + 8 1/2"`);
  assert.equal(typed('6 1/2 + 6 1/2 1/2'), `6 1/2" + 7"`);
  assert.equal(typed('+'), '');
  assert.equal(typed('5 + +'), '5 + ');
});

test('what was typed otherwise is added to and never rewritten', () => {
  assert.equal(typed('1/2', '12-6'), '12-6 1/2"');
  assert.equal(typed('1/2', '5 1/3'), '5 1/3 1/2"');
  assert.equal(typed('3', `7' 6"`), `7' 6" 3`, 'the reader then says what it cannot read');
});

test('taking back', () => {
  assert.equal(typed('7 ft 6 1/2 back'), "7' 6");
  assert.equal(typed('7 ft 6 back'), "7'");
  assert.equal(typed('7 ft 6 back back'), '7');
  assert.equal(typed('7 ft 6 in back'), "7' 6");
  assert.equal(typed('5 + back'), '5');
  assert.equal(typed('5 + 3 back'), '5 + ');
  assert.equal(typed('2 . 4 m back'), '2.4');
  assert.equal(typed('2 m 4 0 mm back'), '2 m 40');
  assert.equal(typed('back'), '');
});

test('meters and millimeters', () => {
  assert.equal(typed('2 . 4 m'), '2.4 m');
  assert.equal(typed('2 . . 4'), '2.4');
  assert.equal(typed('. 5 m'), '.5 m');
  assert.equal(typed('2 m 4 0 0 mm'), '2 m 400 mm');
  assert.equal(typed('2 . 4 + 1 . 2'), '2.4 + 1.2');
  assert.equal(press('', '2.4 m'), '2.4 m');
  assert.equal(press('1 m + ', '2.4 m'), '1 m + 2.4 m');
});

test('lumber, pitch, area, temperature', () => {
  assert.equal(press('', '2×6'), '2×6');
  assert.equal(press('1', '2×6'), '2×6');
  assert.equal(typed('2 × 1 2'), '2×12');
  assert.equal(typed('× 1 1/2'), '1 1/2"');
  assert.equal(typed('4 / 1 2'), '4/12');
  assert.equal(typed('1 2 × 8 . 5'), '12×8.5');
  assert.equal(typed('- 5'), '-5');
  assert.equal(typed('5 -'), '5');
});

test('each field has the keys that make sense for it', () => {
  const keys = (/** @type {any[]} */ ...about) => keysOf(...(/** @type {[any, any, any, any]} */ (about))).rows.map((row) => row.join(' '));
  assert.deepEqual(keys('length', 'ft', []), ['7 8 9 ft 1/2', '4 5 6 in 1/4', '1 2 3 + 1/8', 'back 0 next 1/16']);
  assert.deepEqual(keys('length', 'ft', [], true), ['1/2 ft 7 8 9', '1/4 in 4 5 6', '1/8 + 1 2 3', '1/16 next 0 back']);
  assert.deepEqual(keys('length', 'm', ['2.4 m', '3 m']), ['7 8 9 m .', '4 5 6 mm 2.4 m', '1 2 3 + 3 m', 'back 0 next ']);
  assert.deepEqual(keys('count', 'each', []), ['7 8 9 back', '4 5 6 next', '1 2 3', ' 0 ']);
  assert.deepEqual(keys('percent', 'pct', [], true), ['back 7 8 9', 'next 4 5 6', '1 2 3', ' 0 .']);
  assert.deepEqual(keys('temperature', 'f', []).at(-1), '- 0 .');
  assert.deepEqual(keys('member', 'in', [])[0], '7 8 9 × 2×4');
});
