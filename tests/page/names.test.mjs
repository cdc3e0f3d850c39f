// A reading to which nobody gave a name is called by its word, in the language of the page.
import assert from 'node:assert/strict';
import test from 'node:test';
import { finding, give } from '../../www/app/words.js';

const cold = (/** @type {string} */ name) => finding(/** @type {any} */ ({
  code: 'cylinder_cold', severity: 'stop', source: '', at: { part: 'reading', id: 3, field: 'temperature' },
  figures: [{ name: 'name', text: name }, { name: 'given', text: '63 °F' }],
}));

test('a key stands for the word, a typed name for itself', () => {
  give('fields', {});
  give('findings', { cylinder_cold: { what: '{name} is {given}.', do: '' } });
  give('ready', { cylinder_b: 'Cylinder B' });
  assert.equal(cold('@cylinder_b').what, 'Cylinder B is 63 °F.');
  assert.equal(cold('Spare B').what, 'Spare B is 63 °F.');
  assert.equal(cold('@home').what, '@home is 63 °F.');
});
