// What the frame on a company's page makes of the demo's settings, with the shipped core: a job that opens, and figures.
//
//   node tests/checks/embedded.mjs SITE
//
// The expected figures are worked out here from the settings by hand, not by the core.

import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { apply } from '../../www/app/changes.js';
import { jobFrom } from '../../www/app/embed/first.js';
import { read } from '../../www/app/embed/settings.js';
import { core } from './shipped.mjs';

const shipped = await core(process.argv[2]);
const now = { ms: Date.UTC(2026, 5, 1, 12), offset_min: 0 };
const files = readdirSync('www').filter((name) => /^company.*settings\.json$/.test(name));
assert.ok(files.length > 0, 'there are no settings of the demo');
const settingsOf = (name) => read(JSON.parse(readFileSync(`www/${name}`, 'utf8')), 'en');

for (const name of files) {
  const { settings, faults } = settingsOf(name);
  assert.deepEqual(faults, [], name);
  const job = jobFrom(settings, () => 'frame');
  const opened = shipped.job_check(job);
  assert.equal(opened.refused, undefined, name);
  // Nothing but blank lists is filled in on the way: the full tool opens the very job.
  const whole = { ...job, surfaces: job.surfaces.map((one) => ({ ...one, layers: [] })) };
  assert.deepEqual(JSON.parse(JSON.stringify(opened.job)), JSON.parse(JSON.stringify(whole)), name);
  const estimate = shipped.estimate(job, now);
  assert.equal(estimate.surfaces.length, Math.max(1, settings.start.length), name);
  assert.equal(estimate.purchase.sizes.length, settings.kits.length, `${name}: a kit cannot be bought`);
  const depths = settings.depths.map((text) => shipped.estimate(apply(job, { do: 'entry', part: 'surface', id: job.surfaces[0].id, field: 'depth', text }), now).surfaces[0].depth);
  for (const [at, depth] of depths.entries()) assert.ok(depth.promised_r > 0, `${name}: nothing can be promised at ${settings.depths[at]}`);
}

// A plane of 10 by 12 ft at 2 in: 120 ft² and 240 board feet.
const { settings } = settingsOf('company-settings.json');
const job = jobFrom({ ...settings, start: [{ shape: 'rectangle', name: '', entries: [{ field: 'length', text: '12 ft' }, { field: 'height', text: '10 ft' }, { field: 'depth', text: '2 in' }] }] }, () => 'frame');
const { quantity, purchase, surfaces } = shipped.estimate(job, now);
assert.equal(surfaces[0].area.net_ft2.likely, 120);
assert.equal(quantity.to_spray_up.likely, 240);
const cents = (text) => Math.round(Number(text) * 100);
const text = (sheet, field) => settings.kits.find((one) => one.sheet === sheet).entries.find((one) => one.field === field).text;
const bought = purchase.buy.buy.map(({ kit, count }) => ({ sheet: job.kits.find((one) => one.id === kit).sheet, count }));
const kits = bought.reduce((sum, { sheet, count }) => sum + count * cents(text(sheet, 'price')), 0);
const tax = Math.round(kits * Number(settings.sales_tax) / 100);
const delivery = cents(settings.delivery);
const { price } = purchase;
assert.deepEqual([price.kits, price.tax, price.delivery, price.total], [kits, tax, delivery, kits + tax + delivery]);
assert.ok(bought.reduce((sum, { sheet, count }) => sum + count * Number(text(sheet, 'label_yield')), 0) > 240, 'the labels have to hold more than is sprayed');

console.log(`${files.length} settings of the demo make jobs that open; ${quantity.to_spray_up.likely} board feet and their price as worked out by hand`);
