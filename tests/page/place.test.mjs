// Place and code: what is looked up, what is offered, what a press enters, what is said of the work.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { apply } from '../../www/app/changes.js';
import { findZip, lookOut, zipOf } from '../../www/app/placefind.js';
import { give } from '../../www/app/words.js';
import { asks, placeWords } from '../../www/app/workline.js';
import { chosenPlace, countyCode, warmer } from '../../www/app/zoneoffer.js';

const page = (name, language = 'en') => JSON.parse(readFileSync(`www/words/${language}/${name}.json`, 'utf8'));
/** Every zone that the table of fields has words for. */
const ZONES = Object.keys(page('fields')).flatMap((key) => key.match(/^choice\.zone\.(.*)/)?.[1] ?? []);
const job = (entries, surface = []) => ({ entries: Object.entries(entries).map(([field, text]) => ({ field, text })), next_id: 9, surfaces: [{ id: 1, shape: 'framed_wall', entries: Object.entries(surface).map(([field, text]) => ({ field, text })), openings: [], patches: [], layers: [] }], foams: [], kits: [], stock: [], readings: [], events: [] });

test('one zone warmer is a zone that the United States have, of the same letter', () => {
  assert.equal(ZONES.length, 16);
  for (const zone of ZONES) {
    const up = warmer(zone);
    for (const one of up) {
      assert.ok(ZONES.includes(one), `${zone} → ${one}`);
      assert.equal(Number(one[0]), Number(zone[0]) - 1);
      assert.ok(!zone[1] || one[1] === zone[1], `${zone} → ${one}`);
    }
    // There is no zone 0, no dry zone 1 and no marine zone 2.
    assert.equal(up.length === 0, ['1a', '2b', '3c'].includes(zone), zone);
  }
  assert.deepEqual(warmer('7'), ['6a', '6b']);
});

test('five digits are looked up, and nothing else', () => {
  assert.equal(zipOf(' 02134 '), '02134');
  assert.equal(zipOf('81230-1234'), '81230');
  for (const text of ['', '5580', '558022', '81230-12', '5580a', 'Duluth']) assert.equal(zipOf(text), '', text);
});

test('counties are named only where a ZIP code lies in several zones', async () => {
  const asked = [];
  const find = (several) => async (zip, withCounties) => {
    asked.push([zip, withCounties]);
    return { zones: several ? ['5b', '7'] : ['7'], counties: withCounties ? [{ county: 8051, name: 'Gunnison, CO', zone: '7' }] : [] };
  };
  assert.deepEqual((await findZip('55802', find(false))).zones, ['7']);
  assert.equal((await findZip('81230', find(true))).counties.length, 1);
  assert.deepEqual(asked, [['55802', false], ['81230', false], ['81230', true]]);
});

test('an answer that comes late for another text is dropped; a failure can be tried again', async () => {
  const waiting = new Map();
  let shown = 0;
  const look = lookOut((text) => new Promise((found, failed) => waiting.set(text, { found, failed })), () => { shown += 1; });
  const turn = () => new Promise((done) => { setTimeout(done); });
  look.want('55802');
  look.want('81230');
  assert.equal(look.now.state, 'busy');
  waiting.get('81230').found({ zones: ['7'], counties: [] });
  await turn();
  waiting.get('55802').found({ zones: ['1a'], counties: [] });
  await turn();
  assert.deepEqual(look.now, { state: 'found', found: { zones: ['7'], counties: [] } });
  assert.equal(shown, 1);
  look.want('90210');
  waiting.get('90210').failed(new Error('no network'));
  await turn();
  assert.equal(look.now.state, 'failed');
  look.again();
  assert.equal(look.now.state, 'busy');
  waiting.get('90210').found({ zones: ['3b'], counties: [] });
  await turn();
  assert.equal(look.now.state, 'found');
  look.want('');
  assert.equal(look.now.state, 'none');
});

test('a press enters the zone and its county in one step; a zone from elsewhere takes the county away', () => {
  assert.equal(countyCode(1001), '01001');
  const pressed = apply(job({ zip: '81230' }), { do: 'entries', part: 'job', id: 0, entries: chosenPlace('6b', 8109) });
  const of = (it) => Object.fromEntries(it.entries.map((one) => [one.field, one.text]));
  assert.deepEqual(of(pressed), { zip: '81230', zone: '6b', county: '08109' });
  assert.deepEqual(of(apply(pressed, { do: 'entries', part: 'job', id: 0, entries: chosenPlace('7') })), { zip: '81230', zone: '7' });
});

for (const language of ['en', 'es']) {
  test(`what the rule asks follows from the work before all else (${language})`, () => {
    give('work', page('work', language), language);
    give('fields', page('fields', language), language);
    const words = page('work', language);
    assert.equal(asks(job({ edition: '2021', zone: '5a' }), 1), words.none_why);
    for (const work of ['new', 'addition']) {
      const said = asks(job({ work, edition: '2012_2018', zone: '4c' }), 1);
      assert.ok(said.includes('2012–2018') && said.includes('4C'), said);
      assert.ok(asks(job({ work }), 1).includes(words.no_zone));
      assert.ok(asks(job({ work }), 1).includes(words.no_edition));
    }
    // No row of a table is named for work on what stands, whatever zone and edition are.
    for (const work of ['alteration', 'insulation_only']) {
      const all = ['', 'yes', 'no'].map((opened) => asks(job({ work, edition: '2021', zone: '8' }, opened ? { cavity_opened: opened } : {}), 1));
      assert.equal(new Set(all).size, 3);
      // Their section is known from memory, and says so.
      for (const one of all) assert.match(one, /R503\.1\.1.*(from memory|de memoria)/);
    }
    for (const component of ['cold_room', 'other']) {
      for (const work of ['new', 'alteration']) assert.equal(asks(job({ work }, { component }), 1), words.no_table);
    }
    assert.ok(placeWords(job({ zone: '7' })).includes('7'));
  });
}
