// What the shipped core says of the settings of an embed: all of the demo's is taken, and each thing that is not is said.
//
//   node tests/checks/settings.mjs SITE

import { readFileSync } from 'node:fs';
import { checkSheets } from '../../www/app/embed/sheetcheck.js';
import { faultText } from '../../www/app/embed/faulttext.js';
import { read, readText } from '../../www/app/embed/settings.js';
import { give } from '../../www/app/words.js';
import { core } from './shipped.mjs';

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
// The same texts in metric units: a bare depth is in millimeters.
want(checkSheets({ ...form.settings, units: 'metric', foams: [], kits: [], start: [], sales_tax: '', delivery: '', depths: ['50'] }, call).length === 0, '50 mm is refused');

for (const language of ['en', 'es']) {
  give('embed_faults', JSON.parse(readFileSync(`www/words/${language}/embed_faults.json`, 'utf8')), language);
  for (const one of found) want(!/embed_faults|undefined|\{\w+\}/.test(faultText(one)), `${language}: ${faultText(one)}`);
}

for (const fault of faults) console.log(fault);
console.log(`${checked} checks of settings, ${found.length} spoiled entries told, ${faults.length} faults`);
process.exit(faults.length ? 1 : 0);
