import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { paid } from '../../www/app/price.js';
import { writer } from '../../www/app/stepunits.js';
import { give } from '../../www/app/words.js';

for (const page of ['kits', 'fields']) give(page, JSON.parse(readFileSync(new URL(`../../www/words/en/${page}.json`, import.meta.url), 'utf8')), 'en');

const w = { money: (cents) => `${cents} c`, rate: (pct) => `${pct} %`, pct: () => 'a share' };
const purchase = (cost, price) => ({ buy: { cost }, price });
const price = (kits, tax_pct, tax, delivery) => ({ kits, tax_pct, tax, delivery, total: kits + tax + delivery });
const said = (...about) => paid(purchase(...about), w).map(({ of, value }) => [of, value]);

test('what is to be paid is said where it is more than the kits', () => {
  const all = paid(purchase(234000, price(234000, 8.875, 20768, 4500)), w);
  assert.deepEqual(all.map((one) => [one.of, one.what, one.below, one.value]), [
    ['tax', 'Sales tax on the kits', '8.875 % of 234000 c', '20768 c'],
    ['delivery', 'Delivery and other costs', '', '4500 c'],
    ['total', 'To pay', 'kits, tax and delivery', '259268 c'],
  ]);
  assert.deepEqual(said(234000, price(234000, 0, 0, 4500)), [['delivery', '4500 c'], ['total', '238500 c']]);
  assert.deepEqual(said(234000, price(234000, 7.25, 16965, 0)), [['tax', '16965 c'], ['total', '250965 c']]);
});

test('without tax and delivery, and without a cost, nothing is added', () => {
  assert.deepEqual(said(234000, price(234000, 0, 0, 0)), []);
  assert.deepEqual(said(0, price(0, 7.25, 0, 0)), []);
  assert.deepEqual(said(undefined, undefined), []);
  assert.deepEqual(paid({ buy: undefined, price: undefined }, w), []);
});

test('a sum that cannot be known yet is a dash, never the kits alone', () => {
  assert.deepEqual(paid(purchase(234000, undefined), w), [{ of: 'total', what: 'To pay', below: 'Not known while sales tax or delivery cannot be read.', value: '–' }]);
});

test('in the working the rate stands as it was set, and tax and delivery are money', () => {
  assert.equal(writer(w, 'purchase.price.tax_pct')(8.875), '8.875 %');
  for (const path of ['purchase.buy.cost', 'purchase.price.tax', 'purchase.price.delivery']) assert.equal(writer(w, path)(4500), '4500 c', path);
  assert.equal(writer(w, 'framing_share_pct')(25), 'a share');
});
