import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { eventName, stepName } from '../../www/app/day.js';
import { FAULTS } from '../../www/app/faults.js';
import { give, has, t } from '../../www/app/words.js';

const store = { job: { surfaces: [{ id: 1, name: 'Rim', shape: 'typed_area' }] } };
const event = (what, about = {}) => eventName(store, { id: 9, what, at: { ms: 0, offset_min: 0 }, key: '', surface: 0, lift: 0, name: '', entries: [], ...about });
const words = (language) => JSON.parse(readFileSync(`www/words/${language}/day.json`, 'utf8'));
const checklist = [...readFileSync('src/spraying/day/checklist.rs', 'utf8').matchAll(/row\("(\w+)"|: &str = "(\w+)"/g)].map((found) => found[1] ?? found[2]);

test('every mark of the day has a name', () => {
  give('day', words('en'));
  assert.equal(event('lift', { surface: 1, lift: 2 }), 'Rim, pass 2');
  assert.equal(event('step', { key: 'protection' }), 'Protection on');
  assert.equal(event('skip', { key: 'part_used' }), 'Does not apply: Part-used kit to the shelf');
  assert.equal(event('fault', { key: 'soft' }), 'Fault: Soft or sticky');
  assert.equal(event('kit_on', { name: ' Kit 1 ' }), 'Opened: Kit 1');
  assert.equal(stepName(store, { key: 'lift', surface: 1, lift: 1, of: 3 }), 'Rim, pass 1 of 3');
  for (const what of ['idle', 'trigger', 'kit_off', 'exhaust_off', 'exhaust_on']) assert.ok(!event(what).includes('day.'), what);
});

test('a surface that is gone and a key of another version are named, not shown raw', () => {
  give('day', words('en'));
  assert.equal(event('lift', { surface: 7, lift: 1 }), `${t('day.gone')}, pass 1`);
  for (const key of ['', 'x', '<b>', 'constructor']) {
    assert.equal(event('step', { key }), t('day.unknown'));
    assert.equal(event('fault', { key }), `Fault: ${t('day.unknown')}`);
  }
});

test('every line of the checklist and every fault has its words, in both languages', () => {
  assert.ok(checklist.length > 20 && checklist.includes('empty_left'), checklist.join());
  for (const language of ['en', 'es']) {
    give('day', words(language), language);
    for (const key of checklist.filter((one) => one !== 'lift')) assert.ok(has(`day.step.${key}`), `${language}: ${key}`);
    for (const key of FAULTS) for (const part of ['', '_check', '_cut', '_stop']) assert.ok(has(`day.fault.${key}${part}`), `${language}: ${key}${part}`);
  }
});
