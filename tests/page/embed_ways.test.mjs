import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { use } from '../../www/app/calls.js';
import { facts } from '../../www/app/embed/paper.js';
import { totals } from '../../www/app/embed/send.js';
import { taken } from '../../www/app/embed/taking.js';
import { give } from '../../www/app/words.js';

const read = (path) => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8'));
const job = read('../jobs/larkspur-lane/job.json');
const checks = read('../jobs/larkspur-lane/checks.json');
const worked = (path) => checks.find((one) => one.path === path).value;
const band = (likely) => ({ low: likely, likely, high: likely });

// The core writes areas to a tenth, with a comma between thousands; here only that is needed.
use({ write: (kind, value, style) => `${kind === 'area' && style === 'us' ? (Math.round(value * 10) / 10).toLocaleString('en-US') : '?'}\u00a0ft²` });

/** The estimate of the sample as far as it is asked for: areas and amount as worked out by hand in its checks, the purchase that it buys. */
const estimate = {
  quantity: { surfaces: 3, of: 3, to_spray_up: band(worked('quantity.to_spray_up.likely')) },
  surfaces: [{ id: 101, area: { net_ft2: band(worked('surfaces.0.area.net_ft2.likely')) } }, { id: 102, area: { net_ft2: band(124.3) } }, { id: 105, area: { net_ft2: band(62) } }],
  purchase: { buy: { buy: [{ kit: 32, count: 2 }], kits: 2, enough: true }, price: { kits: 150000, tax: 10875, delivery: 4500, total: 165375 } },
};
const store = (change = {}, of = job) => ({ job: of, estimate: { ...estimate, ...change } });
/** A company with foams and kits of its own. */
const theirs = { company: 'Example & Sons', foams: job.foams, kits: job.kits, sections: new Set(['price']) };
const kit = job.kits.find((one) => one.id === 32).name;

test('the totals are the figures of the sheet', () => {
  // 107.53125 + 124.3 + 62 ft², rounded once.
  const wanted = {
    version: 1, complete: true, surfaces: 3, of: 3, area_ft2: 293.8, board_feet: 812, kits: [{ name: kit, count: 2 }],
    price: { kits: 150000, tax: 10875, delivery: 4500, total: 165375 }, currency: 'USD', language: 'es',
  };
  assert.deepEqual(totals(store(), 'es'), wanted);
  assert.deepEqual(totals(store(), 'en'), { ...wanted, language: 'en' });
  assert.equal(totals(store({ surfaces: [{ id: 1, area: { net_ft2: band(12345.67) } }] }), 'en').area_ft2, 12345.7, 'a comma between thousands is no end');
});

test('what is not worked out yet is not complete', () => {
  const partly = totals(store({ quantity: { ...estimate.quantity, surfaces: 2 } }), 'en');
  assert.deepEqual([partly.complete, partly.surfaces, partly.of], [false, 2, 3]);
  const none = totals({ job, estimate: undefined }, 'en');
  assert.deepEqual([none.complete, none.surfaces, none.of, none.area_ft2, none.board_feet, none.kits, none.price], [false, 0, 3, 0, 0, [], null]);
  assert.equal(totals(store({ quantity: { surfaces: 0, of: 0, to_spray_up: band(0) } }), 'en').complete, false, 'nothing is no estimate');
  for (const purchase of [{ ...estimate.purchase, too_big: {} }, { ...estimate.purchase, buy: { ...estimate.purchase.buy, enough: false } }, {}]) {
    const lacking = totals(store({ purchase }), 'en');
    assert.deepEqual([lacking.complete, lacking.kits, lacking.price], [false, [], null], 'no kits that are enough');
  }
  const unpriced = totals(store({ purchase: { buy: estimate.purchase.buy } }), 'en');
  assert.deepEqual([unpriced.complete, unpriced.price], [true, null]);
});

test('a section that is not on the sheet is not in the totals', () => {
  const without = (section) => totals(store(), 'en', new Set(['depth', 'foam', 'kits', 'price'].filter((one) => one !== section)));
  assert.equal(without('price').price, null);
  assert.deepEqual(without('price').kits.length, 1);
  assert.deepEqual(without('kits').kits, []);
  assert.equal(without('kits').price.total, 165375);
});

test('nothing that was typed goes along', () => {
  const typed = 'Calle-Ejemplo-77';
  const entries = (list) => list.map((one) => ({ ...one, text: `${one.text} ${typed}` }));
  const named = (list) => list.map((one) => ({ ...one, name: typed, entries: entries(one.entries) }));
  const private_ = { ...job, name: typed, place: typed, note: typed, entries: entries(job.entries), surfaces: named(job.surfaces).map((one) => ({ ...one, openings: named(one.openings) })), readings: named(job.readings) };
  assert.ok(JSON.stringify(private_).split(typed).length > 20);
  const text = JSON.stringify(totals(store({}, private_), 'en'));
  assert.ok(!text.includes(typed), text);
  assert.deepEqual(Object.keys(JSON.parse(text)), ['version', 'complete', 'surfaces', 'of', 'area_ft2', 'board_feet', 'kits', 'price', 'currency', 'language'], 'no other key');
});

test('a job is taken as it is, under a name to find it by', () => {
  for (const language of ['en', 'es']) {
    give('embed_ways', read(`../../www/words/${language}/embed_ways.json`), language);
    const { name, ...rest } = taken(store({}, { ...job, name: ' ' }), theirs);
    assert.match(name, /Example & Sons/);
    const { name: own, ...all } = job;
    assert.deepEqual(rest, all);
    assert.equal(taken(store(), theirs).name, own, 'a name of one’s own stays');
    const plain = taken(store({}, { ...job, name: '' }), { ...theirs, company: '' }).name;
    assert.ok(plain && !/embed_ways|\{|Example/.test(plain), plain);
  }
});

test('examples are called so in the job that is taken, and do not go under the company’s name', () => {
  for (const language of ['en', 'es']) {
    const words = read(`../../www/words/${language}/embed.json`);
    give('embed', words, language);
    give('embed_ways', read(`../../www/words/${language}/embed_ways.json`), language);
    for (const [which, settings] of [['both', { foams: [], kits: [] }], ['kits', { kits: [] }], ['foam', { foams: [] }]]) {
      const { name, note } = taken(store({}, { ...job, name: '', note: 'mine' }), { ...theirs, ...settings });
      assert.equal(note, `mine ${words[`invented_${which}`]} ${words.invented_do}`);
      assert.doesNotMatch(name, /Example & Sons/);
    }
    assert.equal(taken(store({}, { ...job, note: 'mine' }), theirs).note, 'mine');
  }
});

test('prices go along only where they are shown; the kits go along as they stand there', () => {
  const dear = { ...job, entries: [...job.entries, { field: 'sales_tax', text: '7.25' }, { field: 'delivery', text: '45' }] };
  const prices = (of) => JSON.stringify([of.entries, of.kits]).match(/"(price|sales_tax|delivery)"/g) ?? [];
  assert.deepEqual(taken(store({}, dear), { ...theirs, sections: new Set(['price']) }), dear);
  const bare = taken(store({}, dear), { ...theirs, sections: new Set(['kits']) });
  assert.ok(prices(dear).length > 4);
  assert.deepEqual(prices(bare), []);
  assert.deepEqual(bare.purchase, { buy: [{ kit: 32, count: 2 }], reason: '' });
  assert.equal(bare.kits.length, job.kits.length);
  assert.deepEqual(bare.entries, job.entries);
  for (const purchase of [{ ...estimate.purchase, too_big: {} }, { ...estimate.purchase, buy: { ...estimate.purchase.buy, enough: false } }, {}]) {
    assert.equal(taken(store({ purchase }, dear), { ...theirs, sections: new Set() }).purchase, dear.purchase, 'no kits that are enough');
  }
});

test('on paper each figure of a part of the surfaces says so, and there are none before the first', () => {
  for (const language of ['en', 'es']) {
    for (const page of ['embed_ways', 'kits']) give(page, read(`../../www/words/${language}/${page}.json`), language);
    const all = new Set(['foam', 'kits', 'price', 'spraying']);
    const purchase = { ...estimate.purchase, sizes: [] };
    const of = (surfaces, more = {}) => facts(store({ purchase: { ...purchase, ...more }, spraying: { lifts: 2 }, quantity: { ...estimate.quantity, surfaces } }), all);
    const whole = of(3);
    assert.deepEqual(whole.map((one) => one.below), whole.map(() => undefined));
    assert.deepEqual(whole.filter((one) => one.sum).map((one) => one.value.replace(/[^\d]/g, '')), ['165375']);
    const partly = of(2);
    assert.deepEqual(partly.map((one) => [one.what, one.value]), whole.map((one) => [one.what, one.value]));
    // The foam is what it is; passes, kits, and each line of the price hold for two surfaces only.
    assert.deepEqual(partly.map((one) => /2 (of|de) 3/.test(one.below ?? '')), [false, true, true, true, true, true, true]);
    const none = of(0);
    assert.equal(none.length, 3, 'foam, kits, passes');
    assert.ok(none.slice(0, 2).every((one) => !/\d/.test(one.value)), JSON.stringify(none));
    assert.ok(of(2, { too_big: { to_spray: 2000, limit: 1800, largest_kits: 5, kits_limit: 4 } }).every((one) => !one.sum), 'no price of what is too big');
  }
});
