import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { REST } from '../../www/app/loadout.js';
import { CALLS, PEOPLE, PLACE } from '../../www/app/papers/emergency.js';
import { LAW, LIMITS, WORK } from '../../www/app/protection.js';
import { exhaustOff, hours, inHours, reasons, waits } from '../../www/app/reentry.js';
import { give, has } from '../../www/app/words.js';
import { page as elements } from '../checks/elements.mjs';

const words = (language, page) => JSON.parse(readFileSync(`www/words/${language}/${page}.json`, 'utf8'));

test('every row of protection, of the limits, of the law, of the van and of an emergency has its words, in both languages', () => {
  for (const language of ['en', 'es']) {
    give('people', words(language, 'people'), language);
    give('emergency', words(language, 'emergency'), language);
    const keys = [
      ...WORK.flatMap(([work, rows]) => [`people.work.${work}`, ...rows.flatMap(([what, from]) => [`people.worn.${what}`, `people.wear.${work}.${what}`, `people.from.${from}`])]),
      ...LIMITS.flatMap(({ key, sure }) => ['', '_is', '_from'].map((part) => `people.limit.${key}${part}`).concat(`people.sure.${sure}`)),
      ...LAW.flatMap((one) => ['', '_do', '_from'].map((part) => `people.law.${one}${part}`)),
      ...REST.flatMap((one) => [`people.load.${one}`, `people.load.${one}_why`]),
      ...['before', 'spraying', 'smell', 'off'].map((state) => `people.${state}_do`),
      ...[...PEOPLE, ...PLACE].flatMap(([what, steps]) => [`emergency.${what}`, `emergency.${what}.sds`, ...steps.map((one) => `emergency.${what}.${one}`)]),
      ...[...CALLS, 'site', 'product', 'sds'].flatMap((one) => [`emergency.${one}`, `emergency.${one}_why`]),
    ];
    assert.deepEqual(keys.filter((one) => !has(one)), [], language);
  }
});

// 29 CFR 1910.1000, table Z-1 (ceiling 0.02 ppm, 0.2 mg/m³); NIOSH Pocket Guide, MDI (0.005 ppm, 0.05 mg/m³; ceiling over 10 min
// 0.020 ppm, 0.2 mg/m³; IDLH 75 mg/m³); ACGIH (0.005 ppm, 0.051 mg/m³). A ppm of MDI, 250.25 g/mol, is 10.24 mg/m³ at 25 °C and 1 atm.
test('the public limits of MDI, and both of their units', () => {
  const by = Object.fromEntries(LIMITS.map(({ key, ppm, mg }) => [key, [ppm, mg]]));
  assert.deepEqual(by, { pel: [0.02, 0.2], rel: [0.005, 0.05], rel_ceiling: [0.02, 0.2], tlv: [0.005, 0.051], idlh: [undefined, 75] });
  for (const [key, [ppm, mg]] of Object.entries(by)) if (ppm) assert.ok(Math.abs(ppm * 250.25 / 24.45 / mg - 1) < 0.03, key);
});

test('no hours of re-entry are written anywhere: the only ones are those for which intakes stay sealed', () => {
  for (const language of ['en', 'es']) {
    for (const page of ['people', 'emergency']) {
      const said = Object.entries(words(language, page)).filter(([, text]) => /\d\s?(h|hours|horas)\b/i.test(String(text))).map(([key]) => key);
      assert.deepEqual(said, page === 'people' ? ['sealed_do'] : [], `${language} ${page}`);
    }
  }
});

const HOUR = 3_600_000;
const store = (day, events = [], foams = []) => ({ job: { events }, estimate: { day, foams } });

test('a time is said where the core gives one, with what was added; otherwise why there is none', () => {
  const last = 1_800_000_000_000;
  const found = hours(store({ last_spray_ms: last, reentry_min: 1440, reentry_ms: last + 24 * HOUR + 100 * 60_000 }), 'all');
  assert.deepEqual(found, { state: 'time', min: 1440, ms: last + 24 * HOUR + 6_000_000, more: 100 });
  assert.equal(hours(store({ last_spray_ms: last, reentry_min: 1440, reentry_held: 'exhaust_off' }), 'all').state, 'off');
  assert.equal(hours(store({ last_spray_ms: last, reentry_min: 1440, reentry_held: 'smell' }), 'all').state, 'smell');
  assert.equal(hours(store({ last_spray_ms: last, reentry_min: 1440 }), 'all').state, 'spraying');
  assert.equal(hours(store({ reentry_min: 1440 }), 'all').state, 'before');
  // A sheet that is silent, even where a time were given by mistake.
  const silent = hours(store({ last_spray_ms: last, reentry_ms: last }, [], [{ id: 7, reentry_min: 60 }, { id: 8 }]), 'all');
  assert.deepEqual([silent.state, silent.ms, silent.foam], ['silent', undefined, 8]);
  assert.equal(hours(store({ last_spray_ms: last, reentry_min: 1440, reentry_ms: last + 24 * HOUR }), 'workers').state, 'silent');
});

test('why there is no time is a sentence of its own, or the rest of the one before', () => {
  give('people', words('en', 'people'), 'en');
  elements();
  const foams = [{ id: 7, reentry_min: 1440 }];
  const told = (day) => {
    const by = store({ reentry_min: 1440, ...day }, [], foams);
    return reasons(by, hours(by, 'all'), 'all').map((one) => one.textContent ?? one).join('').replaceAll('\u00a0', ' ');
  };
  assert.equal(told({}), 'Label: 24 h after the last spray, counted once something is marked as sprayed on the day sheet.');
  assert.equal(told({ last_spray_ms: 1e12 }), 'Label: 24 h after the last spray, counted once the spraying is over: trigger locked, or stopped for the day.');
  assert.equal(told({ last_spray_ms: 1e12, reentry_held: 'exhaust_off' }), 'Label: 24 h after the last spray. No time is given while the exhaust is off.');
  assert.equal(told({ last_spray_ms: 1e12, reentry_held: 'smell' }), 'Label: 24 h after the last spray. No time is given while it smells: keep everybody out and ventilate.');
});

test('the exhaust is off after the mark that it went off, and on after the press or the line of the checklist', () => {
  const mark = (id, what, key = '') => ({ id, what, key, at: { ms: id, offset_min: 0 } });
  assert.equal(exhaustOff(store({}, []))?.id, undefined);
  assert.equal(exhaustOff(store({}, [mark(1, 'exhaust_off')]))?.id, 1);
  assert.equal(exhaustOff(store({}, [mark(1, 'exhaust_off'), mark(2, 'exhaust_on')])), undefined);
  assert.equal(exhaustOff(store({}, [mark(1, 'exhaust_off'), mark(2, 'step', 'air')])), undefined);
  assert.equal(exhaustOff(store({}, [mark(1, 'exhaust_off'), mark(2, 'step', 'lock')]))?.id, 1);
});

// 60 h and 71 h are no two days: 48 h.
test('hours to wait are never written as less than they are', () => {
  give('page', words('en', 'page'), 'en');
  const plain = (text) => text.replace(/\u00a0/g, ' ');
  assert.deepEqual([60, 71, 24, 71.004, 0.5].map((h) => plain(inHours(h * 60))), ['60 h', '71 h', '24 h', '71.01 h', '0.5 h']);
  assert.deepEqual([60 * 60, 71 * 60, 3_181, 2_879.5, 2_879, 40.2, 100].map((min) => plain(waits(min))), ['60 h', '71 h', '54 h', '48 h', '47 h 59', '41 min', '1 h 40']);
});

// Common first aid, deferring to the safety data sheet: no vomiting, the mouth rinsed, poison control; lukewarm water on frost
// burns, no rubbing, a loose cover.
test('an emergency says what to do after swallowing and for frost burns, and what not', () => {
  assert.deepEqual(PEOPLE.find(([what]) => what === 'swallowed')?.[1], ['rinse', 'vomit', 'call']);
  assert.ok(PEOPLE.find(([what]) => what === 'skin')?.[1].includes('frost'));
  for (const [language, said] of Object.entries({
    en: { 'swallowed.vomit': /not make .* vomit/, 'swallowed.rinse': /Rinse the mouth/, 'swallowed.call': /poison control/, 'swallowed.sds': /safety data sheet/, 'skin.frost': /lukewarm water.*do not rub.*cover/ },
    es: { 'swallowed.vomit': /No provoque el vómito/, 'swallowed.rinse': /Enjuague la boca/, 'swallowed.call': /control de envenenamiento/, 'swallowed.sds': /hoja de seguridad/, 'skin.frost': /agua tibia.*no frote.*cúbrala/, 'leak.out': /de donde viene el viento/, 'skin.cured': /en unos días/ },
  })) for (const [key, text] of Object.entries(said)) assert.match(words(language, 'emergency')[key], text, `${language} ${key}`);
});
