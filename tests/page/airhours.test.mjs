import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { use } from '../../www/app/calls.js';
import { about } from '../../www/app/heatplan.js';
import { answer } from '../../www/app/hours.js';
import { vanKits } from '../../www/app/loadout.js';
import { chosen, says } from '../../www/app/moist.js';
import { give } from '../../www/app/words.js';
import { figures } from '../../www/app/figures.js';
import { page } from '../checks/elements.mjs';

page();
const words = (language, name) => JSON.parse(readFileSync(`www/words/${language}/${name}.json`, 'utf8'));
const speak = (language) => { for (const one of ['hours', 'moist', 'people', 'kits', 'page']) give(one, words(language, one), language); };
speak('en');
use({ write: (kind, value) => `${value} ${kind}` });
const plain = (/** @type {string} */ text) => text.replace(/[\u00a0\u202f]/g, ' ');

const day = (parts) => ({ edge_min: 105, stretches: parts.map(([from_min, to_min, says]) => ({ from_min, to_min, says })) });

test('only what is inside stands under that word; the rest is measured first', () => {
  const fall = day([[0, 640, 'outside'], [640, 745, 'measure_first'], [745, 1050, 'inside'], [1050, 1155, 'measure_first'], [1155, 1440, 'outside']]);
  assert.equal(plain(answer('Fri', fall)), 'Fri: inside 12:30 PM to 5:30 PM, by estimate; measure first 10:45 AM to 12:30 PM and 5:30 PM to 7:15 PM');
  assert.equal(plain(answer('Fri', day([[0, 1440, 'inside']]))), 'Fri: inside all day, by estimate');
  assert.equal(plain(answer('Fri', day([[0, 1440, 'measure_first']]))), 'Fri: measure first all day, edges ± 1¾ h');
  assert.equal(plain(answer('Fri', day([]))), 'Fri: the air never is inside');
  speak('es');
  assert.match(plain(answer('vie', fall)), /^vie: dentro [^;]+, según la estimación; medir primero [^;]+$/);
  speak('en');
});

test('hours of heating are rounded up, never down', () => {
  assert.deepEqual([0.2, 0.5, 0.51, 2.6, 3, 9.01, 9.4, 10, 23.2, 99.5, 101, 340].map(about), [0.5, 0.5, 1, 3, 3, 10, 10, 10, 24, 100, 110, 340]);
  for (let hours = 0.1; hours < 400; hours *= 1.07) assert.ok(about(hours) >= hours && about(hours) < hours * 1.2 + 0.5, String(hours));
});

const at = [[0.5, 75], [1, 63], [4, 50]].map(([changes, dew_f]) => ({ changes, dew_f, above_f: 60 - dew_f }));
const found = { at, coldest_f: 60, spread_f: 5 };
const w = figures('us');

test('a room of which nothing is said is a closed one, as at the heater', () => {
  assert.equal(chosen(found, '').changes, 0.5);
  assert.equal(chosen(found, '4').changes, 4);
  assert.equal(chosen(found, '1,0').changes, 1);
});

test('a dew point above the air of the room wets everything, and that is said', () => {
  const said = (one, air) => plain(says(w, found, one, air));
  assert.match(said(at[0], 70), /gets wet\. That is above the air of the room as it was read \(70 temperature\): water settles on everything\.$/);
  assert.match(said(at[0], 80), /gets wet\.$/);
  assert.match(said(at[0], undefined), /gets wet\. If it is above the air of the room too, water settles on everything\.$/);
  assert.match(said(at[2], undefined), /above it\.$/);
  assert.match(plain(says(w, { at, spread_f: 5 }, { changes: 0.5, dew_f: 75 }, 70)), /water settles on everything\.$/);
});

test('a kit over what one cylinder may weigh asks to look at each', () => {
  const store = (gross_lb) => ({ job: { units: 'us', kits: [{ id: 4, name: 'Large' }], stock: [] }, estimate: { people: { load: { kits: [{ kit: 4, owned: false, count: 1, gross_lb }] } } } });
  const [heavy, light] = [221, 220].map((one) => plain(vanKits(store(one))[0].why));
  assert.match(heavy, /A cylinder may weigh 220 weight at most, from memory: look at each$/);
  assert.match(light, /in all$/);
});

test('one pair of words for the verdict in Spanish, in every text', () => {
  for (const name of ['findings', 'hours', 'moist', 'people', 'emergency']) assert.doesNotMatch(JSON.stringify(words('es', name)), /\b(?:ALTO|ADELANTE)\b/, name);
});
