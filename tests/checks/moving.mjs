// Jobs on the move, with the shipped core: every job out as file, link and backup and in again, unchanged;
// hostile files, links and backups change nothing; a shared text and the totals that an embedded
// estimate sends name the sheet's own figures.
//
//   node tests/checks/moving.mjs SITE

import { readFileSync, readdirSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import { isDeepStrictEqual } from 'node:util';
import { backupText, changes, openSheet, plan, readBackup, takeJobs } from '../../www/app/backup.js';
import { use } from '../../www/app/calls.js';
import { totals } from '../../www/app/embed/send.js';
import { openText, textOf } from '../../www/app/files.js';
import { figures } from '../../www/app/figures.js';
import { linkOf, unpack } from '../../www/app/link.js';
import { messageOf } from '../../www/app/message.js';
import { createShelf } from '../../www/app/shelf.js';
import { give, t } from '../../www/app/words.js';
import { core, jobs } from './shipped.mjs';

const shipped = await core(process.argv[2]);
use(shipped);
let checked = 0;
const faults = [];
const want = (good, what) => { checked += 1; if (!good) faults.push(what); };
const alike = (a, b, what) => want(isDeepStrictEqual(a, b), what);

function bench() {
  const map = new Map();
  const drawer = { available: () => true, keys: () => [...map.keys()], get: (key) => map.get(key), put: (key, text) => void map.set(key, text), remove: (key) => map.delete(key) };
  return { map, shelf: createShelf(drawer, { tab: 'here', clock: () => 5 }) };
}
let made = 0;
const how = { tab: 'here', now: 9, newId: () => `copy-${++made}`, copyName: (name) => `${name}, copy` };
const planned = (text, shelf, sheets = {}) => plan(readBackup(text).backup, { shelf, sheets, units: undefined, open: openText, ...how });
const carried = async (text) => unpack(new URL(await linkOf(JSON.parse(text), 'https://example.org/a/')).hash.slice('#/open/'.length));

// Out and in again. What the core makes of a stored file is the job; from there on nothing may change.
const all = jobs();
// One with everything that a job can hold, also what was done on the day.
const whole = all.find(({ name }) => name.endsWith('larkspur-lane'));
all.push({ ...whole, name: 'with a day', job: {
  ...whole.job, id: 'with-a-day',
  surfaces: whole.job.surfaces.map((one) => ({ ...one, patches: [{ id: 900, name: 'corner', entries: [{ field: 'depth', text: '2 in' }] }] })),
  stock: [{ id: 901, sheet: 'mine', version: 3, name: 'Half used', entries: [{ field: 'label_yield', text: '160' }] }],
  purchase: { buy: [{ kit: 30, count: 2 }], reason: 'to hand' },
  events: [{ id: 902, what: 'lift', at: { ms: 1_790_000_000_000, offset_min: -300 }, surface: 101, lift: 1, name: '', entries: [] }, { id: 903, what: 'fault', at: { ms: 1_790_000_100_000, offset_min: -300 }, key: 'brittle', name: 'corner', entries: [] }],
} });
want(all.some(({ name }) => name.includes('/old/')), 'no stored version is among the jobs');
const records = [];
for (const { name, job } of all) {
  const opened = openText(JSON.stringify(job)).job;
  want(Boolean(opened), `${name} does not open`);
  alike(openText(textOf(opened)).job, opened, `${name}: changed on the way through a file`);
  const link = await linkOf(opened, 'https://example.org/a/');
  const text = await unpack(new URL(link).hash.slice('#/open/'.length));
  alike(openText(text.text).job, opened, `${name}: changed on the way through a link`);
  // A link made by the version that wrote the file.
  alike(openText((await carried(JSON.stringify(job))).text).job, opened, `${name}: an old link gives another job than an old file`);
  records.push({ id: opened.id, revision: 3, tab: 'there', saved_at: 7, job: opened });
}
const once = records.filter((one, at) => records.findIndex((other) => other.id === one.id) === at);
const { map, shelf } = bench();
const text = backupText({ records: once, sheets: {}, prefs: {}, now: 1 });
const items = planned(text, shelf);
want(items.length === once.length && items.every(({ state }) => state === 'new'), 'the backup is not all new on an empty shelf');
want('undo' in takeJobs(shelf, items, how), 'the backup was not taken in');
for (const one of once) alike(JSON.parse(map.get(one.id)).job, one.job, `${one.id}: changed on the way through a backup`);
want(planned(text, shelf).every((item) => !changes(item)), 'a second restore would change something');
// Of a stored version: the backup carries it as it was written.
const old = all.find(({ name }) => name.includes('/old/')).job;
want(old.version === 1, 'the stored job is of the present version');
alike(planned(JSON.stringify({ format: 'foamwright-backup', version: 1, jobs: [{ id: old.id, revision: 1, saved_at: 1, job: old }] }), bench().shelf)[0].record.job, openText(JSON.stringify(old)).job, 'a stored version in a backup');

// Sheets of the catalogue, as the samples are.
for (const [part, file] of [['foam', 'foams'], ['kit', 'kits']]) {
  for (const sheet of JSON.parse(readFileSync(`www/sample/${file}.json`, 'utf8'))) alike(openSheet(part, sheet, openText), sheet, `${part} ${sheet.sheet}: changed on the way through a backup`);
}
for (const odd of [null, 7, [], {}, { sheet: 7 }, { sheet: 'a', version: -1, name: 'x', entries: [] }, { sheet: 'a', version: 1, name: 'x', entries: [1] }, { sheet: 'a', version: 1, name: 'x', entries: [], r_at: [7] }, { sheet: 'a', version: 1.5, name: 'x', entries: [] }]) {
  want(!openSheet('foam', odd, openText)?.sheet, `a foam sheet out of ${JSON.stringify(odd)}`);
}

// Hostile jobs by every way in. What is refused leaves the shelf alone; what is taken is plain data.
const base = openText(JSON.stringify(all.find(({ name }) => name.endsWith('larkspur-lane')).job)).job;
const put = (change) => JSON.stringify({ ...base, ...change });
const nested = (deep) => `{"format":"foamwright-job","version":2,"id":"x","next_id":1,"x":${'['.repeat(deep)}${']'.repeat(deep)}}`;
const refusedTexts = {
  deep: nested(32), deeper: nested(100_000), 'wrong surfaces': put({ surfaces: 7 }), 'wrong name': put({ name: {} }), 'wrong id': put({ id: 7 }), 'wrong entry': put({ entries: [{ field: 1, text: 2 }] }),
  'huge next_id': put({ next_id: 1e300 }), 'negative next_id': put({ next_id: -1 }), 'huge surface id': put({ surfaces: [{ id: 2 ** 40, shape: 'strip' }] }), newer: put({ version: 99 }), 'no version': put({ version: 0 }),
  foreign: '{"format":"other","version":1}', list: '[]', word: '"x"', nothing: 'null', torn: put({}).slice(0, -9), 'no job': '{}', 'unknown shape': put({ surfaces: [{ id: 1, shape: '__proto__' }] }), long: put({ note: 'x'.repeat(2_000_000) }),
};
for (const [name, hostile] of Object.entries(refusedTexts)) {
  want('refused' in openText(hostile), `${name}: opened as a file`);
  const link = await unpack(deflateRawSync(hostile).toString('base64url'));
  want('refused' in link || 'refused' in openText(link.text), `${name}: opened as a link`);
  const place = bench();
  const frame = readBackup(`{"format":"foamwright-backup","version":1,"jobs":[{"id":"x","revision":1,"saved_at":1,"job":${hostile}}]}`);
  const found = 'backup' in frame ? plan(frame.backup, { shelf: place.shelf, sheets: {}, open: openText, ...how }) : [];
  want(found.every(({ state }) => state === 'left_out'), `${name}: not left out of a backup`);
  takeJobs(place.shelf, found, how);
  want(place.map.size === 0, `${name}: the shelf has changed`);
}
const odd = ['<script>alert(1)</script>', '"><img src=x onerror=alert(1)>', '=1+1', '\0\x07', '\u202e\u2028', '{{name}}', '__proto__', 'constructor', 'x'.repeat(9_000)];
for (const words of odd) {
  const texts = { name: words, place: words, note: words, surfaces: base.surfaces.map((one) => ({ ...one, name: words, entries: one.entries.map((entry) => ({ ...entry, text: words })) })), foams: base.foams.map((one) => ({ ...one, name: words })), kits: base.kits.map((one) => ({ ...one, name: words })), readings: base.readings.map((one) => ({ ...one, name: words })) };
  const opened = openText((await carried(put(texts))).text);
  alike(opened.job, { ...base, ...texts }, `${words.slice(0, 20)}: changed`);
}
// JSON text may hold keys that reach into a program, and halves of characters that no text can hold.
for (const [name, extra] of [['__proto__', '{"polluted":1}'], ['constructor', '{"prototype":{"polluted":1}}'], ['toString', '1']]) {
  const opened = openText(`{${JSON.stringify(name)}:${extra},${put({}).slice(1)}`);
  alike(opened.job, base, `${name}: something of it stays`);
  want({}.polluted === undefined && Object.getPrototypeOf(opened.job ?? {}) === Object.prototype, `${name}: reaches out of the job`);
}
const half = openText((await carried(put({ name: 'a\ud800b' }))).text).job?.name;
want(half === 'a\ufffdb' || half === 'a\ud800b', `half a character: ${JSON.stringify(half)}`);

// The message of every job, in both languages: its figures are the sheet's, and what a person typed stays within its line.
for (const language of ['en', 'es']) {
  for (const file of readdirSync(`www/words/${language}`)) give(file.replace('.json', ''), JSON.parse(readFileSync(`www/words/${language}/${file}`, 'utf8')), language);
  for (const { name, job: stored, now } of all) {
    const { job } = openText(JSON.stringify(stored));
    const typed = 'two\nlines <b>{n}</b>';
    for (const shown of [job, { ...job, name: typed, place: typed, surfaces: job.surfaces.map((one) => ({ ...one, name: typed })) }]) {
      const estimate = shipped.estimate(shown, now);
      const message = messageOf({ job: shown, estimate, keeping: 'kept' }, now.ms);
      const w = figures(shown.units);
      const { quantity, purchase, spraying } = estimate;
      want(!/\b(move|sheet|kits|ready|page|surface)\.\w|undefined|NaN|\[object/.test(message), `${name}, ${language}: a gap in the message: ${message}`);
      want(shown !== job || !/[{}]/.test(message), `${name}, ${language}: a placeholder in the message`);
      for (const one of estimate.surfaces.filter((one) => one.area)) want(message.includes(w.area(one.area.net_ft2.likely)), `${name}, ${language}: no area of ${one.id}`);
      for (const one of estimate.surfaces.filter((one) => one.depth)) want(message.includes(w.depth(one.depth.aim_in.likely)), `${name}, ${language}: no depth of ${one.id}`);
      if (quantity.surfaces) want(message.includes(w.foam(quantity.to_spray_up.likely)), `${name}, ${language}: no board feet`);
      if (spraying.lifts) want(message.includes(t('move.passes_line', { n: spraying.lifts })), `${name}, ${language}: no passes`);
      want(message.includes(t(`ready.verdict_${estimate.readiness.verdict}`)) && message.endsWith(t('move.governs_line')), `${name}, ${language}: no verdict or caution`);
      if (purchase.stock_kits) want(message.includes(w.foam(purchase.from_stock)), `${name}, ${language}: nothing of the kits at hand`);
      want(message.split('\n').length <= shown.surfaces.length + 10, `${name}, ${language}: a name broke out of its line`);
      // What an embedded estimate sends says the same, and nothing of what was typed.
      const sent = totals({ job: shown, estimate }, language);
      // A surface that gets no foam, because its depth or its area is nothing, is not worked out there.
      const counted = estimate.surfaces.filter((one) => one.in_place?.likely > 0);
      const areas = counted.reduce((sum, one) => sum + one.area.net_ft2.likely, 0);
      want(sent.board_feet === quantity.to_spray_up.likely && Math.abs(sent.area_ft2 - areas) <= 0.05 + 1e-9, `${name}, ${language}: other totals are sent: ${JSON.stringify(sent)}`);
      want(sent.kits.every((kit) => message.includes(kit.name)) && (sent.price === null || sent.price.total === purchase.price.total), `${name}, ${language}: other kits or prices are sent`);
      want(sent.surfaces === counted.length && sent.complete === (quantity.of > 0 && counted.length === quantity.of && Boolean(purchase.buy?.enough) && !purchase.too_big), `${name}, ${language}: complete or not`);
      want(shown === job || !JSON.stringify(sent).includes('two'), `${name}, ${language}: a name is sent`);
    }
  }
}

for (const line of faults) console.log(line);
console.log(`${all.length} jobs by file, link and backup, ${Object.keys(refusedTexts).length} hostile ones three ways: ${checked} checks, ${faults.length} fail`);
process.exit(faults.length || checked < 200 ? 1 : 0);
