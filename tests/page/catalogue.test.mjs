// The catalogue's file: what goes out comes in again, and nothing hostile changes anything.
import assert from 'node:assert/strict';
import test from 'node:test';
import { asJob, catalogueText, compare, readCatalogue, taken } from '../../www/app/cataloguefile.js';

const kit = (sheet, version = 1, text = '160') => ({ sheet, version, name: 'Medium', entries: [{ field: 'label_yield', text }] });
const foam = { sheet: 'f1', version: 3, name: 'A <b>foam</b>', entries: [{ field: 'density', text: '30', unit: 'kg_m3' }], r_at: [[{ field: 'thickness', text: '1 in' }, { field: 'r', text: 'R-6' }]] };
const mine = () => ({ foam: [foam], kit: [kit('k1', 2)], owned: [{ ...kit('o1'), entries: [{ field: 'state', text: 'sealed' }] }] });
const file = (over) => JSON.stringify({ format: 'foamwright-catalogue', version: 1, foams: [], kits: [], owned: [], ...over });

test('what was written is read again, to the letter', () => {
  const read = readCatalogue(catalogueText(mine()));
  assert.deepEqual(read, { sheets: mine() });
  assert.deepEqual(compare(mine(), read.sheets).map((one) => one.standing), ['same', 'same', 'same']);
  assert.deepEqual(taken(mine(), []), mine());
  assert.deepEqual(readCatalogue('\uFEFF' + catalogueText(mine())), { sheets: mine() });
});

test('each sheet says how it stands against the one here', () => {
  const standing = (theirs) => compare(mine(), { foam: [], owned: [], kit: [theirs] })[0].standing;
  assert.equal(standing(kit('k9')), 'new');
  assert.equal(standing(kit('k1', 3)), 'newer');
  assert.equal(standing(kit('k1', 2)), 'same');
  assert.equal(standing(kit('k1', 2, '150')), 'other');
  assert.equal(standing(kit('k1', 1)), 'older');
});

test('only what was chosen is taken, and a version never goes back', () => {
  const offers = compare(mine(), { foam: [], owned: [], kit: [kit('k1', 1, '150'), kit('k9')] });
  const none = taken(mine(), []);
  assert.deepEqual(none, mine());
  const all = taken(mine(), offers);
  assert.deepEqual(all.kit.map((one) => [one.sheet, one.version, one.entries[0].text]), [['k1', 3, '150'], ['k9', 1, '160']]);
  assert.deepEqual(all.foam, mine().foam);
});

test('a file is refused for a plain reason, with the place', () => {
  const refused = (text) => {
    const read = readCatalogue(text);
    return [read.refused, read.at].filter(Boolean).join(' ');
  };
  assert.equal(refused('{"format": '), 'damaged');
  assert.equal(refused('[]'), 'foreign');
  assert.equal(refused('null'), 'foreign');
  assert.equal(refused('{"format":"foamwright-job","version":2}'), 'foreign');
  assert.equal(refused(file({ version: 2 })), 'newer');
  assert.equal(refused(file({ version: '1' })), 'wrong version');
  assert.equal(refused(file({ kits: {} })), 'wrong kits');
  assert.equal(refused(file({ kits: [null] })), 'wrong kits[0]');
  assert.equal(refused(file({ kits: [{ ...kit('k1'), version: 1.5 }] })), 'wrong kits[0].version');
  assert.equal(refused(file({ kits: [{ ...kit('k1'), version: 0 }] })), 'wrong kits[0].version');
  assert.equal(refused(file({ kits: [{ ...kit('../k') }] })), 'wrong kits[0].sheet');
  assert.equal(refused(file({ kits: [{ ...kit('sample-small-40') }] })), 'wrong kits[0].sheet');
  assert.equal(refused(file({ kits: [{ ...kit('k1'), name: 7 }] })), 'wrong kits[0].name');
  assert.equal(refused(file({ kits: [{ ...kit('k1'), entries: [{ field: 'price', text: 92 }] }] })), 'wrong kits[0].entries[0].text');
  assert.equal(refused(file({ kits: [{ ...kit('k1'), entries: [{ field: '__proto__', text: '1' }] }] })), 'wrong kits[0].entries[0].field');
  assert.equal(refused(file({ kits: [{ ...kit('k1'), entries: [{ field: 'price', text: '9'.repeat(301) }] }] })), 'wrong kits[0].entries[0].text');
  assert.equal(refused(file({ foams: [{ ...foam, r_at: [{ thickness: 1 }] }] })), 'wrong foams[0].r_at[0]');
  assert.equal(refused(file({ owned: [kit('o1'), kit('o1')] })), 'twice owned[1]');
  assert.equal(refused(file({ kits: Array.from({ length: 1001 }, (_, i) => kit(`k${i}`)) })), 'too_many kits');
});

test('too long and too deep are told before anything is parsed', () => {
  assert.equal(readCatalogue(file({ note: 'x'.repeat(2_000_000) })).refused, 'too_long');
  // Two bytes a letter: the limit is on the file, not on its letters.
  assert.equal(readCatalogue(file({ note: 'é'.repeat(1_000_000) })).refused, 'too_long');
  const deep = (n) => `{"format":"foamwright-catalogue","version":1,"x":${'['.repeat(n)}${']'.repeat(n)}}`;
  assert.ok('sheets' in readCatalogue(deep(31)));
  assert.equal(readCatalogue(deep(32)).refused, 'too_deep');
  assert.equal(readCatalogue('['.repeat(900_000)).refused, 'too_deep');
  // Brackets inside a text are no depth.
  assert.ok('sheets' in readCatalogue(file({ note: '[{'.repeat(500) + '\\"' })));
});

test('unknown fields are left out, prototypes stay as they are, script stays text', () => {
  const text = `{"format":"foamwright-catalogue","version":1,"__proto__":{"polluted":1},"kits":[{"sheet":"k2","version":1,"name":"<img src=x onerror=alert(1)>",
    "__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"color":"red","entries":[{"field":"price","text":"<script>","unit":null,"mood":"good"}]}]}`;
  const read = readCatalogue(text);
  assert.deepEqual(read, { sheets: { foam: [], owned: [], kit: [{ sheet: 'k2', version: 1, name: '<img src=x onerror=alert(1)>', entries: [{ field: 'price', text: '<script>' }] }] } });
  assert.equal(/** @type {any} */ ({}).polluted, undefined);
  assert.equal(Object.getPrototypeOf(read.sheets.kit[0]), Object.prototype);
});

test('as a job for the core to judge: each thing has an id of its own', () => {
  const job = asJob(mine());
  const ids = [...job.foams.flatMap((one) => [one.id, ...one.r_at.map((row) => row.id)]), ...job.kits.map((one) => one.id), ...job.stock.map((one) => one.id)];
  assert.equal(new Set(ids).size, 4);
  assert.ok(Math.max(...ids) < job.next_id);
});
