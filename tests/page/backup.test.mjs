import { test } from 'node:test';
import assert from 'node:assert/strict';
import { backupText, changes, mergeSheets, plan, readBackup, takeJobs } from '../../www/app/backup.js';
import { createShelf } from '../../www/app/shelf.js';

const job = (id, name = '', more = {}) => ({ format: 'foamwright-job', version: 4, id, next_id: 1, name, foams: [], kits: [], stock: [], ...more });
const record = (id, revision, saved_at, name = '', more = {}) => ({ id, revision, tab: 'there', saved_at, job: job(id, name, more) });
const sheet = (id, version, name = id) => ({ sheet: id, version, name, entries: [{ field: 'price', text: String(version) }] });

/** In place of the core's reader: the head is looked at, the rest believed. */
function open(text) {
  const value = JSON.parse(text);
  if (value.format !== 'foamwright-job') return { refused: 'not_a_job', figures: {} };
  return value.version > 4 ? { refused: 'newer', figures: { version: value.version } } : { job: value };
}

function bench(records = [], state = {}) {
  const map = new Map(records.map((one) => [one.id, typeof one === 'string' ? one : JSON.stringify(one)]));
  const drawer = {
    available: () => state.fault !== 'blocked', keys: () => [...map.keys()], get: (key) => map.get(key),
    put: (key, text) => {
      if (state.fault) return state.fault;
      const held = [...map].reduce((sum, [id, one]) => sum + (id === key ? 0 : one.length), text.length);
      if (held > (state.room ?? Infinity)) return 'full';
      map.set(key, text);
      return undefined;
    },
    remove: (key) => map.delete(key),
  };
  return { map, state, shelf: createShelf(drawer, { tab: 'here', clock: () => 99 }) };
}

let made = 0;
const how = { tab: 'here', now: 77, newId: () => `copy-${++made}`, copyName: (name) => `${name}, from the backup` };
const read = (all) => readBackup(typeof all === 'string' ? all : backupText({ sheets: {}, prefs: {}, now: 5, records: [], ...all }));
const planned = (all, shelf, sheets = {}, units) => plan(read(all).backup, { shelf, sheets, units, open, ...how });
const states = (items) => items.map((item) => [item.name, item.state]);

test('a backup restored on an empty device gives the same shelf', () => {
  const records = [record('a', 3, 10, 'A'), record('b', 1, 20, 'B')];
  const { shelf, map } = bench();
  const items = planned({ records }, shelf);
  assert.deepEqual(states(items), [['A', 'new'], ['B', 'new']]);
  assert.equal(map.size, 0, 'the list alone changes nothing');
  assert.deepEqual(takeJobs(shelf, items, how).ids, ['a', 'b']);
  for (const one of records) assert.deepEqual(JSON.parse(map.get(one.id)), { ...one, tab: 'here' });
  assert.deepEqual(states(planned({ records }, shelf)), [['A', 'same'], ['B', 'same']]);
});

test('by id and revision; where revision and clock disagree both are kept', () => {
  const { shelf, map } = bench([record('old', 2, 10, 'mine'), record('new', 9, 90, 'mine'), record('even', 4, 40, 'mine'), record('apart', 9, 10, 'mine'), record('ahead', 2, 90, 'mine'), record('like', 1, 1, 'like')]);
  const items = planned({ records: [record('old', 5, 50, 'theirs'), record('new', 5, 50, 'theirs'), record('even', 4, 50, 'theirs'), record('apart', 5, 50, 'theirs'), record('ahead', 5, 50, 'theirs'), record('like', 7, 7, 'like')] }, shelf);
  assert.deepEqual(items.map(({ state }) => state), ['newer_there', 'newer_here', 'both', 'both', 'both', 'same']);
  const before = new Map(map);
  const done = takeJobs(shelf, items.filter(changes), how);
  assert.equal(shelf.look('old').job.name, 'theirs');
  for (const id of ['new', 'even', 'apart', 'ahead', 'like']) assert.equal(map.get(id), before.get(id), `${id} is untouched`);
  const copies = shelf.list().filter((one) => one.id.startsWith('copy-'));
  assert.deepEqual(copies.map((one) => one.record.job.name), ['theirs, from the backup', 'theirs, from the backup', 'theirs, from the backup']);
  assert.ok(copies.every((one) => one.record.job.id === one.id));
  assert.deepEqual(planned({ records: [record('even', 4, 50, 'theirs')] }, shelf)[0].state, 'same', 'not a second copy');
  assert.ok(done.undo().every((one) => one.back));
  assert.deepEqual(map, before, 'all is as it was');
});

test('what was changed after the restore is not taken back', () => {
  const { shelf, map } = bench([record('a', 1, 1, 'mine')]);
  const done = takeJobs(shelf, planned({ records: [record('a', 2, 2, 'theirs'), record('b', 1, 1, 'B')] }, shelf), how);
  shelf.take('a');
  shelf.keepNow(job('a', 'worked on'));
  assert.deepEqual(done.undo(), [{ id: 'b', back: true }, { id: 'a', back: false }]);
  assert.deepEqual([...map.keys()], ['a']);
  assert.equal(shelf.look('a').job.name, 'worked on');
});

test('all or nothing: a full, blocked or moved shelf stays as it was', () => {
  const records = [record('a', 2, 2, 'theirs'), record('b', 1, 1, 'B')];
  for (const [state, fault] of [[{ room: 250 }, 'full'], [{ fault: 'blocked' }, 'memory']]) {
    for (const list of [records, records.toReversed()]) {
      const { shelf, map } = bench([record('a', 1, 1, 'mine')], state);
      const before = new Map(map);
      assert.deepEqual(takeJobs(shelf, planned({ records: list }, shelf), how), { fault });
      assert.deepEqual(map, before);
    }
  }
  const { shelf, map } = bench([record('a', 1, 1, 'mine')]);
  const items = planned({ records: records.toReversed() }, shelf);
  map.set('a', JSON.stringify(record('a', 2, 3, 'another tab')));
  const before = new Map(map);
  assert.deepEqual(takeJobs(shelf, items, how), { fault: 'moved' });
  assert.deepEqual(map, before);
});

test('bad jobs are listed and left out, the rest goes on', () => {
  const { shelf, map } = bench();
  const bad = [null, 7, 'text', [], {}, { job: 1 }, { id: 'x', revision: 1, job: { format: 'other' } }, { id: 'x', revision: 1, job: job('y') }, record('r', 0, 0), record('r', 1.5, 0), record('r', 1e300, 0), record('r', '1', 0),
    record('__proto__', 1, 1), { ...record('n', 1, 1), job: { ...job('n'), version: 5 } }, record('i'.repeat(100_000), 1, 1), record('<script>', 1, 1), record('../a', 1, 1)];
  const items = planned({ records: [record('good', 1, 1, 'Good'), record('good', 2, 2, 'Twice')] }, shelf);
  assert.deepEqual(states(items), [['Good', 'new'], ['Twice', 'left_out']]);
  const text = JSON.stringify({ format: 'foamwright-backup', version: 1, jobs: [...bad, record('good', 1, 1, 'Good')] });
  const listed = plan(readBackup(text).backup, { shelf, sheets: {}, units: undefined, open, ...how });
  const odd = listed.filter((item) => item.state !== 'left_out').map((item) => item.record.id);
  assert.deepEqual(odd, ['__proto__', 'good'], 'a key of the map, as good as another');
  takeJobs(shelf, listed, how);
  assert.deepEqual([...map.keys()].sort(), ['__proto__', 'good']);
  assert.equal({}.revision, undefined);
});

test('a frame that is no backup is refused, with the reason', () => {
  const cases = {
    '': 'not_json', '[': 'not_json', '[]': 'no_backup', null: 'no_backup', '"x"': 'no_backup', '{"format":"foamwright-job","version":1}': 'no_backup',
    '{"format":"foamwright-backup"}': 'damaged', '{"format":"foamwright-backup","version":"1","jobs":[]}': 'damaged', '{"format":"foamwright-backup","version":1,"jobs":{}}': 'damaged',
    '{"format":"foamwright-backup","version":2,"jobs":[]}': 'newer',
  };
  for (const [text, why] of Object.entries(cases)) assert.equal(read(text).refused, why, text);
  const nested = (deep) => `{"format":"foamwright-backup","version":1,"jobs":${'['.repeat(deep - 1)}${']'.repeat(deep - 1)}}`;
  assert.equal(read(nested(36)).refused, 'too_deep');
  assert.ok(read(nested(35)).backup);
  assert.equal(read('['.repeat(5_000_000)).refused, 'too_deep');
  assert.ok(read(`{"format":"foamwright-backup","version":1,"jobs":[],"note":"${'['.repeat(100)}\\"${'['.repeat(100)}"}`).backup, 'brackets in quotes do not nest');
  assert.equal(read(' '.repeat(20_000_001)).refused, 'too_long_backup');
  assert.deepEqual(read('\uFEFF{"format":"foamwright-backup","version":1,"jobs":[],"sheets":[1],"prefs":{"units":"cubits","theme":"x"},"made":"x"}').backup, { made: 0, jobs: [], sheets: [], prefs: {} });
  assert.deepEqual(read('{"format":"foamwright-backup","version":1,"jobs":[],"sheets":{"__proto__":[1],"constructor":[2],"foam":7}}').backup.sheets, []);
});

test('sheets by id and version, units as a line of their own', () => {
  const { shelf } = bench();
  const here = { kit: [sheet('a', 2), sheet('b', 2), sheet('c', 2, 'mine'), sheet('d', 2)] };
  const there = { kit: [sheet('a', 3), sheet('b', 1), sheet('c', 2, 'theirs'), sheet('d', 2), sheet('e', 1), { sheet: 'f', entries: 'x' }] };
  const strict = (text) => (text.includes('"x"') ? { refused: 'damaged', figures: {} } : open(text));
  const items = plan(read({ sheets: there, prefs: { units: 'metric', theme: 'crawl', job: 'z' } }).backup, { shelf, sheets: here, units: 'us', open: strict, ...how });
  assert.deepEqual(items.map(({ state }) => state), ['newer_there', 'newer_here', 'both', 'same', 'new', 'left_out', 'newer_there']);
  const merged = mergeSheets(here.kit, items.filter((item) => item.kind === 'kit'), how);
  assert.deepEqual(merged.map((one) => [one.name, one.version]), [['a', 3], ['b', 2], ['mine', 2], ['d', 2], ['theirs, from the backup', 2], ['e', 1]]);
  assert.ok(plan(read({ sheets: there }).backup, { shelf, sheets: { kit: merged }, open: strict, ...how }).every((item) => !changes(item)), 'not a second copy');
  assert.ok(!JSON.stringify(read({ prefs: { units: 'us', theme: 'crawl', language: 'es', job: 'z' } })).includes('crawl'), 'the look stays with the device');
});

test('what lies here damaged is never written over', () => {
  const { shelf, map } = bench();
  map.set('a', '{"torn');
  const items = planned({ records: [record('a', 5, 5, 'A')] }, shelf);
  assert.equal(items[0].state, 'both');
  takeJobs(shelf, items, how);
  assert.equal(map.get('a'), '{"torn');
  assert.equal(map.size, 2);
});
