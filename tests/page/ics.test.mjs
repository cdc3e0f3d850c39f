import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { calendarFile, withdrawn } from '../../www/app/dates.js';
import { escaped, folded, ics } from '../../www/app/ics.js';
import { give } from '../../www/app/words.js';

const NOW = { ms: Date.UTC(2026, 9, 14, 21, 10, 45), offset_min: -300 };
const JOB = { id: 'job-1', place: '12 Larkspur Lane; back door, left' };
const DAY = 1440;
const at = (day, hour = 0, minute = 0) => Date.UTC(2026, 9, day, hour, minute) / 60_000;
const said = (one) => ({ what: `${one.of} ${one.name}`.trim(), why: 'Label, sheet; and law' });
const dated = (one) => ({ of: 'spray', part: 'job', id: 0, name: '', at: at(16, 13, 30), all_day: false, past: false, ...one });
const written = (...dates) => ics(dates, said, JOB, NOW);
/** The lines of a file, put together again as RFC 5545, section 3.1, says. */
const lines = (text) => text.replace(/\r\n[ \t]/g, '').split('\r\n');
const has = (text, ...wanted) => { for (const line of wanted) assert.ok(lines(text).includes(line), `${line} in\n${text}`); };

// RFC 5545, section 3.1: lines end in CRLF and should be no longer than 75 octets without it.
test('folding counts octets and cuts no character', () => {
  for (const letter of ['a', 'ñ', '–', '𝒳']) {
    for (let n = 0; n < 200; n += 1) {
      for (const lead of ['', 'a', 'ab', 'abc']) {
        const line = lead + letter.repeat(n);
        const text = folded(line);
        for (const part of text.split('\r\n')) {
          const bytes = new TextEncoder().encode(part);
          assert.ok(bytes.length <= 75, `${bytes.length} octets`);
          assert.ok(!new TextDecoder().decode(bytes).includes('\uFFFD'));
        }
        assert.equal(text.replace(/\r\n /g, ''), line);
      }
    }
  }
  assert.equal(folded('a'.repeat(75)), 'a'.repeat(75));
  assert.equal(folded('a'.repeat(76)), `${'a'.repeat(75)}\r\n a`);
  assert.equal(folded('a'.repeat(75 + 74 + 1)), `${'a'.repeat(75)}\r\n ${'a'.repeat(74)}\r\n a`);
});

// RFC 5545, section 3.3.11.
test('a text keeps its commas, semicolons, backslashes and lines, and no control', () => {
  assert.equal(escaped('a, b; c\\d\r\ne\nf'), 'a\\, b\\; c\\\\d\\ne\\nf');
  assert.equal(escaped('a\0b\x07c\x7f'), 'a b c ');
  assert.equal(escaped('10:30 "quoted"'), '10:30 "quoted"');
});

test('local times float, whole days are dates, the stamp is in UTC', () => {
  const text = written(dated({}), dated({ of: 'certificate', at: at(20), all_day: true }));
  assert.ok(text.startsWith('BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:') && text.endsWith('END:VCALENDAR\r\n'));
  has(text, 'DTSTART:20261016T133000', 'DTSTART;VALUE=DATE:20261020', 'DTSTAMP:20261014T211000Z', 'LOCATION:12 Larkspur Lane\\; back door\\, left', 'DESCRIPTION:Label\\, sheet\\; and law');
  assert.ok(!/[^\r]\n|\r[^\n]/.test(text), 'every line ends in CRLF');
  assert.ok(!ics([dated({})], said, { id: 'x', place: ' ' }, NOW).includes('LOCATION'));
});

test('within the minute: into the room never later, out of the waiting never sooner', () => {
  const half = at(15, 18) + 0.5;
  has(written(dated({ of: 'warm_up', at: half })), 'DTSTART:20261015T180000');
  for (const of of ['ready', 'reentry', 'reentry_workers', 'cured']) has(written(dated({ of, at: half })), 'DTSTART:20261015T180100');
});

test('a purge comes again up to its last day', () => {
  const purge = dated({ of: 'purge', part: 'owned', id: 50, at: at(17), all_day: true, every_days: 7, until: at(31) });
  has(written(purge), 'RRULE:FREQ=DAILY;INTERVAL=7;UNTIL=20261031');
  // Half a day never makes it later, and never is it none at all.
  has(written({ ...purge, every_days: 7.5 }), 'RRULE:FREQ=DAILY;INTERVAL=7;UNTIL=20261031');
  has(written({ ...purge, every_days: 0.5 }), 'RRULE:FREQ=DAILY;INTERVAL=1;UNTIL=20261031');
  assert.ok(!written(dated({})).includes('RRULE'));
});

test('only the warm-up rings', () => {
  has(written(dated({ of: 'warm_up', part: 'warming', id: 7 })), 'BEGIN:VALARM', 'ACTION:DISPLAY', 'TRIGGER:-PT1H', 'END:VALARM');
  for (const of of ['spray', 'purge', 'reentry']) assert.ok(!written(dated({ of })).includes('VALARM'));
});

test('an event keeps its name when its date moves, and shares it with none', () => {
  const uids = (text) => lines(text).filter((line) => line.startsWith('UID:'));
  const dates = [dated({}), dated({ of: 'warm_up', part: 'warming', id: 7 }), dated({ of: 'purge', part: 'owned', id: 50 }), dated({ of: 'purge', part: 'owned', id: 51 }), dated({ of: 'opened_ends', part: 'owned', id: 50 })];
  const first = uids(written(...dates));
  assert.equal(first[1], 'UID:job-1-warm_up-warming-7@foamwright');
  assert.equal(new Set(first).size, dates.length);
  const later = ics(dates.map((one) => ({ ...one, at: one.at + DAY, name: 'renamed' })), said, JOB, { ...NOW, ms: NOW.ms + 9e7 });
  assert.deepEqual(uids(later), first);
  assert.notDeepEqual(uids(ics(dates, said, { ...JOB, id: 'job-2' }, NOW)), first);
});

// RFC 5545, sections 3.8.1.11 and 3.8.7.4.
test('what is withdrawn keeps the name of its event, is cancelled, and every later file has a greater number', () => {
  const kept = dated({ of: 'reentry', at: at(17, 15) });
  const before = written(kept);
  const after = ics([{ ...kept, gone: true }], said, JOB, { ...NOW, ms: NOW.ms + 60_000 });
  const one = (text, name) => lines(text).find((line) => line.startsWith(`${name}:`));
  assert.equal(one(before, 'UID'), one(after, 'UID'));
  assert.deepEqual([one(before, 'STATUS'), one(after, 'STATUS')], [undefined, 'STATUS:CANCELLED']);
  const number = (text) => Number(one(text, 'SEQUENCE').slice(9));
  assert.ok(Number.isInteger(number(before)) && number(after) > number(before) && number(after) < 2 ** 31);
});

test('hours that do not run any more take back what the file before gave; the title says so too', () => {
  give('calendar', JSON.parse(readFileSync('www/words/en/calendar.json', 'utf8')), 'en');
  const last = NOW.ms - 3_600_000;
  const job = { ...JOB, warming: [] };
  const hours = { last_spray_ms: last, reentry_min: DAY, reentry_workers_min: 60 };
  const wallLast = last / 60_000 - 300;
  const running = { day: { ...hours, reentry_ms: last + DAY * 60_000 }, calendar: [dated({ of: 'reentry', at: wallLast + DAY }), dated({ of: 'reentry_workers', at: wallLast + 60, past: true })], conditioning: [] };
  const first = calendarFile({ job, estimate: running }, NOW);
  assert.ok(!first.includes('CANCELLED'));
  const off = calendarFile({ job, estimate: { day: { ...hours, reentry_held: 'exhaust_off' }, calendar: [], conditioning: [] } }, NOW);
  const uid = (text) => lines(text).find((line) => line.startsWith('UID:') && line.includes('-reentry-'));
  assert.equal(uid(off), uid(first));
  has(off, 'STATUS:CANCELLED', 'SUMMARY:Withdrawn: Label’s hours before going back in over at the earliest – no clearance');
  assert.equal(lines(off).filter((line) => line === 'STATUS:CANCELLED').length, 2);
  // Before anything was sprayed, and where the sheet is silent, nothing was given that could be taken back.
  for (const day of [{ reentry_min: DAY }, { last_spray_ms: last }]) assert.ok(!calendarFile({ job, estimate: { day, calendar: [], conditioning: [] } }, NOW).includes('VEVENT'));
});

test('kits that left too early take back the moment at which they were to be measured', () => {
  const came = { ms: NOW.ms - 4 * 3_600_000, offset_min: -300 };
  const warming = [{ id: 7, name: 'Near', entries: [], log: [], moved_in: came, moved_out: NOW }];
  const conditioning = [{ id: 7, warm_up: { label_min: DAY, plan_min: 2_000, decides: 'curve', late: false } }];
  const [one, ...more] = withdrawn({ job: { ...JOB, warming }, estimate: { calendar: [], conditioning } }, NOW);
  assert.deepEqual([one.of, one.id, one.name, one.at, more.length], ['ready', 7, 'Near', came.ms / 60_000 - 300 + 2_000, 0]);
  const calendar = [dated({ of: 'ready', part: 'warming', id: 7 })];
  assert.equal(withdrawn({ job: { ...JOB, warming }, estimate: { calendar, conditioning } }, NOW).length, 0);
});
