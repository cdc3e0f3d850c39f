import { test } from 'node:test';
import assert from 'node:assert/strict';
import { escaped, folded, ics } from '../../www/app/ics.js';

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
