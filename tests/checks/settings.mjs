// What the shipped core says of the settings of an embed: all of the demo's is taken, and each thing that is not is said.
//
//   node tests/checks/settings.mjs SITE

import { readFileSync } from 'node:fs';
import { fieldRow, use } from '../../www/app/calls.js';
import { estimated } from '../../www/app/embed/estimated.js';
import { jobFrom } from '../../www/app/embed/first.js';
import { checkSheets } from '../../www/app/embed/sheetcheck.js';
import { faultText } from '../../www/app/embed/faulttext.js';
import { worked } from '../../www/app/embed/settled.js';
import { lacks } from '../../www/app/embed/told.js';
import { left } from '../../www/app/embed/steps.js';
import { readable } from '../../www/app/embed/reads.js';
import { read, readText } from '../../www/app/embed/settings.js';
import { give } from '../../www/app/words.js';
import { core, here } from './shipped.mjs';

const shipped = await core(process.argv[2]);
const call = (name, ...args) => shipped[name](...args);
const faults = [];
let checked = 0;
const want = (good, what) => { checked += 1; if (!good) faults.push(what); };
const told = ({ at, why }) => `${at} ${why}`;

for (const name of ['company-settings.json', 'company-crawl-settings.json']) {
  const { settings, faults: wrong } = readText(readFileSync(`www/${name}`, 'utf8'), 'en');
  for (const one of [...wrong, ...checkSheets(settings, call)]) want(false, `${name}: ${told(one)}`);
  want(settings.kits.length > 0 && settings.foams.length > 0, `${name}: no sheets`);
}
want(checkSheets(read(undefined, 'en').settings, call).length === 0, 'the defaults are not taken');

const entries = (all) => Object.entries(all).map(([field, text]) => ({ field, text }));
const spoiled = {
  format: 'foamwright-embed', version: 1, units: 'us', sales_tax: 'as usual', delivery: '-3', depths: ['2 in', '90 in', '5,111'],
  foams: [{ sheet: 'f', version: 1, entries: entries({ density: '1.9', wait: '3 kg', mood: 'good', cure: '' }), r_at: [entries({ thickness: '1 in', r: 'R-6' }), entries({ thickness: 'thin', r: 'R-9' })] }],
  kits: [{ sheet: 'a', version: 1, entries: entries({ label_yield: '50000', price: '1.000.0' }) }, { sheet: 'b', version: 1, entries: entries({ price: '338', label_yield: ' ' }) }],
  start: [{ shape: 'rim_run', entries: [{ field: 'band', text: '5.11', unit: 'ft' }, { field: 'ground', text: 'lumpy' }] }],
};
const expected = [
  'foams[0].entries[1].text not_read', 'foams[0].entries[2].text no_field', 'foams[0].r_at[1][0].text not_read', 'kits[0].entries[0].text above',
  'kits[0].entries[1].text not_read', 'kits[1].entries lacks', 'start[0].entries[0].text two_meanings', 'start[0].entries[1].text choice',
  'depths[1] above', 'depths[2] two_meanings', 'sales_tax not_read', 'delivery not_read',
];
const form = read(spoiled, 'en');
want(form.faults.length === 0, `of its form, and yet: ${form.faults.map(told)}`);
const found = checkSheets(form.settings, call);
want(JSON.stringify(found.map(told)) === JSON.stringify(expected), `spoiled settings:\n  ${found.map(told).join('\n  ')}`);
// A carton that holds less than its label needs; kits of which none has a price.
const cartons = (...all) => checkSheets({ ...form.settings, foams: [{ sheet: 'f', version: 1, name: '', entries: entries({ density: '1.9' }), r_at: [] }], start: [], depths: [], sales_tax: '', delivery: '',
  kits: all.map((one, at) => ({ sheet: `k${at}`, version: 1, name: '', entries: entries(one) })) }, call);
// 190 board feet × 1.9 lb/ft³ ÷ 12 = 30 lb.
const [good, light, free] = [{ label_yield: '190', price: '338', net_weight: '31 lb' }, { label_yield: '190', price: '338', net_weight: '20 lb' }, { label_yield: '190' }];
for (const [all, told_] of [[[good], []], [[good, light], ['kits[1].entries mass_short']], [[good, free], ['kits[1].entries lacks']], [[free, free], ['kits lacks']]]) {
  const said = cartons(...all);
  want(JSON.stringify(said.map(told)) === JSON.stringify(told_), `cartons: ${said.map(told)}, not ${told_}`);
  found.push(...said);
}

// What is missing is named.
for (const page of ['fields', 'surface']) give(page, JSON.parse(readFileSync(`www/words/en/${page}.json`, 'utf8')), 'en');

// Depths that the core does not take are on no press, and no surface begins with them.
use(shipped);
const begun_with = (shape, typed, openings) => {
  const { settings } = read({ format: 'foamwright-embed', version: 1, start: [{ shape, name: '', entries: entries(typed) }, { shape: 'typed_area', name: '', entries: entries({ area: '100', depth: '2 in' }) }] }, 'en');
  const job = jobFrom({ ...settings, foams: JSON.parse(readFileSync('www/sample/foams.json', 'utf8')) }, () => 'checked');
  const [one] = job.surfaces;
  one.openings = openings.map((given, at) => ({ id: 900 + at, name: '', entries: entries(given) }));
  return { job, estimate: estimated(job) };
};
const wall = { length: '20', height: '8', depth: '2 in' };
// A window typed in inches takes the wall away; each of these is worked out by the core, and is no estimate of that surface.
for (const [shape, typed, openings, n, part, field] of [
  ['rectangle', wall, [], 2], ['rectangle', wall, [{ width: '3', height: '4' }], 2], ['rectangle', wall, [{ width: '3', height: '4', from_left: '1', sill: '1' }], 2],
  ['rectangle', wall, [{ width: '36', height: '48' }], 1, 'opening', 'height'], ['rectangle', wall, [{ width: '36', height: '4-0' }], 1, 'opening', 'width'],
  ['rectangle', wall, Array(3).fill({ width: '10', height: '8' }), 1, 'opening', 'width'], ['rectangle', wall, [{ width: '3', height: 'tall' }], 1, 'opening', 'height'],
  ['rectangle', { ...wall, depth: '0' }, [], 1, 'surface', 'depth'], ['rectangle', { ...wall, height: '0' }, [], 1, 'surface', 'height'],
  ['rim_run', { perimeter: '0', band: '9 1/4 in', member: '2x10', depth: '2 in' }, [], 1, 'surface', 'perimeter'], ['rectangle', { length: '20', depth: '2 in' }, [], 1, 'surface', 'height'],
]) {
  const made = begun_with(shape, typed, openings);
  const [one] = made.job.surfaces;
  const what = JSON.stringify([typed, openings]);
  want(worked(made).n === n && worked(made).of === 2, `${what}: ${worked(made).n} of ${worked(made).of} are worked out`);
  const lack = lacks(made, one)[0]?.at;
  want(lack?.part === part && lack?.field === field, `${what}: what is missing is ${JSON.stringify(lack)}`);
}
const fit = (more) => readable({ ...form.settings, start: [], ...more }, fieldRow('surface', 'depth'), call);
const same = (a, b, what) => want(JSON.stringify(a) === JSON.stringify(b), `${what}: ${JSON.stringify(a)}, not ${JSON.stringify(b)}`);
same(fit({}).depths, ['2 in'], 'depths that are taken');
same(fit({ depths: ['thick', '90 in'] }).depths, ['1 in', '2 in', '3 in'], 'ours where none is left');
same(fit({ depths: ['thick'], units: 'metric' }).depths, ['25 mm', '50 mm', '75 mm'], 'ours in metric');
same(fit({ depths: [] }).depths, [], 'none on offer stays so');
const begun = (text) => [{ shape: 'rectangle', name: '', entries: entries({ length: 'thick', depth: text }) }];
same(fit({ start: begun('2 in') }).start, begun('2 in'), 'a depth to begin with');
same(fit({ start: begun('90 in') }).start[0].entries, entries({ length: 'thick' }), 'a depth that is not taken');
for (const [text, on] of [['2 in', false], ['thick', true]]) want(fit({ sections: new Set(['kits']), depths: [], start: begun(text) }).sections.has('depth') === on, `depth shown, begun with ${text}`);

// The same texts in metric units: a bare depth is in millimeters.
want(checkSheets({ ...form.settings, units: 'metric', foams: [], kits: [], start: [], sales_tax: '', delivery: '', depths: ['50'] }, call).length === 0, '50 mm is refused');

// Kits without a price: the fewest, of those what leaves least over, and no sum; one price is enough for the usual way.
const kits = JSON.parse(readFileSync('www/sample/kits.json', 'utf8'));
const bought = (list, feet) => {
  const of = { ...read(undefined, 'en').settings, foams: [], kits: list, depths: ['1 in'], start: [{ shape: 'typed_area', name: '', entries: [{ field: 'area', text: String(feet) }] }] };
  return estimated(jobFrom({ ...of, surfaces: ['typed_area'] }, () => 'checked'))?.purchase;
};
const mix = (purchase) => (purchase?.buy?.buy ?? []).map(({ kit, count }) => `${purchase.sizes.findIndex((one) => one.kit === kit)}×${count}`).join();
const without = kits.map((one) => ({ ...one, entries: one.entries.filter(({ field }) => field !== 'price') }));
for (const feet of [10, 60, 240, 400, 600]) {
  const found = bought(without, feet);
  // By hand, each way that is enough: 29.4, 132.6 and 407.8 board feet reach the wall.
  const usable = found?.sizes.map((one) => one.usable) ?? [];
  let best;
  for (let a = 0; a < 40; a += 1) for (let b = 0; b < 10; b += 1) for (let c = 0; c < 4; c += 1) {
    const left = a * usable[0] + b * usable[1] + c * usable[2] - (found?.to_buy.likely ?? 0);
    if (left >= 0 && (!best || a + b + c < best.kits || a + b + c === best.kits && left < best.left)) best = { kits: a + b + c, left, mix: [a, b, c].map((n, at) => n && `${at}×${n}`).filter(Boolean).join() };
  }
  want(best && mix(found) === best.mix, `${feet} ft² without prices: ${mix(found)}, by hand ${best?.mix}`);
  want(!/"(cost|price|least_cost)"/.test(JSON.stringify(found)), `${feet} ft²: a sum from no price`);
}
want(bought(kits, 400)?.price?.total > 0, 'no price from kits with prices');
want(mix(bought([kits[0], ...without.slice(1)], 400)).startsWith('0×'), 'what has no price is bought beside what has one');

for (const language of ['en', 'es']) {
  give('embed_faults', JSON.parse(readFileSync(`www/words/${language}/embed_faults.json`, 'utf8')), language);
  for (const one of found) want(!/embed_faults|undefined|\{\w+\}/.test(faultText(one)), `${language}: ${faultText(one)}`);
}

// What is left out on the sheet is in no working: told by the names of the steps.
const steps = JSON.parse(readFileSync(`${here(process.argv[2])}/steps.json`, 'utf8'));
const named = { price: /cost|price|dearer/, spraying: /lift|wait|nozzle|most_/, kits: /bought_(label|usable)|^left_over(_shelf)?$|break_factor|usable|after_factor|needs_weight|stock|to_buy|largest_kits/ };
const inFrame = steps.filter(({ scope, result }) => ['surface', 'kit'].includes(scope) || scope === 'job' && /^(quantity|purchase|spraying)\./.test(result));
for (const [section, form_] of Object.entries(named)) {
  const on = new Set(Object.keys(named));
  const all = inFrame.filter((step) => !left(on)(step));
  want(all.length === inFrame.length, 'with all sections a step is left out');
  on.delete(section);
  const kept = inFrame.filter((step) => !left(on)(step)).map(({ code }) => code);
  want(!kept.some((code) => form_.test(code)), `${section} is off, and yet: ${kept.filter((code) => form_.test(code))}`);
  want(all.some(({ code }) => form_.test(code)) && kept.includes('to_spray_up') && kept.includes('net'), `${section}: nothing to leave out, or too much left out`);
}
want(inFrame.filter((step) => !left(new Set())(step)).every(({ code }) => !Object.values(named).some((one) => one.test(code))), 'all sections off');

for (const fault of faults) console.log(fault);
console.log(`${checked} checks of settings, ${found.length} spoiled entries told, ${faults.length} faults`);
process.exit(faults.length ? 1 : 0);
