import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { LINES } from '../../www/app/ahead.js';
import { use } from '../../www/app/calls.js';
import { give } from '../../www/app/words.js';

const PAGES = ['ahead', 'calendar', 'sheet', 'page', 'ready', 'findings', 'fields'];
for (const page of PAGES) give(page, JSON.parse(readFileSync(new URL(`../../www/words/en/${page}.json`, import.meta.url), 'utf8')), 'en');
use({ write: (kind, value) => `${value} ${kind}` });

const DAY = 1440;
const now = new Date();
const today = Math.floor((now.getTime() / 60_000 - now.getTimezoneOffset()) / DAY);
const said = (name, estimate, job = {}) => {
  const [, of] = LINES.find(([one]) => one === name);
  const line = of({ job: { units: 'us', warming: [], entries: [], events: [], ...job }, estimate: { conditioning: [], foams: [], weather: { days: [] }, moisture: { at: [] }, day: {}, people: {}, calendar: [], ...estimate } });
  // A gap in the words, a figure that nothing gave, or an undefined would be seen here.
  assert.ok(!/undefined|NaN|\{\w+\}|^(ahead|calendar)\./.test(line.text), line.text);
  return { ...line, text: line.text.replace(/[\u00a0\u202f]/g, ' ') };
};

test('where nothing was entered the line says so, and no line gives a go', () => {
  for (const [name] of LINES) {
    const line = said(name, {});
    assert.equal(line.kind, 'none', name);
    assert.match(line.text, /entered|no time is given|No dates/);
  }
});

test('kits that warm: indoors by, ready by, use by, and which of the two decides', () => {
  const group = (id, warm_up, cool_down) => ({ id, warm_up: { label_min: DAY, slow_min: 900, plan_min: DAY, decides: 'label', late: false, ...warm_up }, cool_down });
  const job = { warming: [{ id: 1, name: 'Near' }, { id: 2, name: 'Far' }] };
  const one = { warming: job.warming.slice(0, 1) };
  const at = today * DAY + 18 * 60;
  assert.match(said('warm', { conditioning: [group(1, { in_by: at })] }, one).text, /^Indoors by .* 6:00 PM; the label’s 24 h decide$/);
  assert.match(said('warm', { conditioning: [group(1, { in_by: at, decides: 'curve' })] }, one).text, /the slow edge of the curve decides$/);
  // Of two groups the one that presses first, by its name.
  assert.match(said('warm', { conditioning: [group(1, { in_by: at + 5 }), group(2, { in_by: at })] }, job).text, /^Indoors by .*6:00 PM.*: Far$/);
  const later = at + 2 * DAY;
  assert.match(said('warm', { conditioning: [group(1, { ready_at: later + 0.5 })] }, one).text, /^Ready .*6:01 PM by estimate; the label’s 24 h decide/);
  const over = said('warm', { conditioning: [group(1, { ready_at: at - 2 * DAY })] }, one);
  assert.ok(over.kind === 'watch' && /^Measure now/.test(over.text), over.text);
  assert.match(said('warm', { conditioning: [group(1, {})] }, one).text, /^24 h in the warm room/);
  const never = said('warm', { conditioning: [group(1, { plan_min: undefined, slow_min: undefined })] }, one);
  assert.deepEqual([never.kind, never.text], ['hold', 'This room does not bring them to temperature']);
  const late = said('warm', { conditioning: [group(1, { in_by: at, late: true, spray_at: at + 60 })] }, one);
  assert.ok(late.kind === 'hold' && /^Too late for spraying at .*7:00 PM: plan on 24 h/.test(late.text), late.text);
  const lateIn = said('warm', { conditioning: [group(1, { ready_at: later, late: true })] }, one);
  assert.ok(lateIn.kind === 'hold' && /^Ready .*Too late/.test(lateIn.text), lateIn.text);
  // The room does it, but the core is cold again at that hour.
  const hour = said('warm', { conditioning: [group(1, { spray_at: later })] }, one);
  assert.ok(hour.kind === 'hold' && /^Too cold when spraying begins/.test(hour.text), hour.text);
  assert.equal(said('warm', { conditioning: [{ id: 1 }] }, one).kind, 'none');
});

test('kits that are outside: a time only where they were ready, are in their window, and it is not over', () => {
  const ago = (min) => ({ ms: now.getTime() - min * 60_000, offset_min: -now.getTimezoneOffset() });
  const wallNow = now.getTime() / 60_000 - now.getTimezoneOffset();
  const warmed = { label_min: DAY, slow_min: 900, plan_min: DAY, decides: 'label', late: false };
  const line = (came, use_by, warm_up = { ...warmed, ready_at: wallNow - came + DAY }) => said('warm',
    { conditioning: [{ id: 1, warm_up, cool_down: { use_by } }] }, { warming: [{ id: 1, name: '', moved_in: ago(came), moved_out: ago(30) }] });
  const good = line(DAY + 31, wallNow + 70);
  assert.ok(good.kind === undefined && /^Use by /.test(good.text), good.text);
  for (const one of [
    line(4 * 60, wallNow + 70), // 4 of 24 hours
    line(DAY + 31, wallNow - 1), // over
    line(DAY + 31, undefined),
    line(DAY + 31, wallNow + 70, null), // nobody said how cold they came in
    line(DAY + 31, wallNow + 70, warmed), // the core says of these that they never were ready
  ]) assert.ok(one.kind === 'hold' && /^Measure first/.test(one.text), one.text);
});

// 60 h and 71 h are no two days: 48 h.
test('hours of a label are never cut to days', () => {
  for (const [label, plan] of [[60, 53], [71, 71.2]]) {
    const takes = said('warm', { conditioning: [{ id: 1, warm_up: { label_min: label * 60, slow_min: 900, plan_min: plan * 60, decides: 'label', late: false } }] }, { warming: [{ id: 1, name: '' }] });
    assert.equal(takes.text, `${Math.ceil(plan)} h in the warm room; the label’s ${label} h decide`);
    assert.match(said('people', { day: { reentry_min: label * 60 } }).text, new RegExp(`^Out for the label’s ${label} h after the last spraying`));
  }
});

test('while the exhaust is off, something smells or spraying goes on no hours are said to run', () => {
  for (const [reentry_held, text] of [['exhaust_off', /^The exhaust is off: no time/], ['smell', /^It still smells: no time/], [undefined, /^Spraying goes on: no time/]]) {
    const line = said('people', { day: { reentry_min: DAY, last_spray_ms: 1e12, reentry_held } });
    assert.ok(line.kind === 'hold' && text.test(line.text) && !/24/.test(line.text), line.text);
  }
  assert.match(said('people', { day: { reentry_min: DAY, last_spray_ms: 1e12, reentry_ms: 1e12 + DAY * 60_000 } }).text, /^Out for/);
});

test('the hours of the day of spraying; outside is a hold, near the edge is measured first', () => {
  const stretch = (says, from, to) => ({ says, from_min: from * 60, to_min: to * 60 });
  const day = (...stretches) => ({ day: today + 1, stretches });
  const outside = [stretch('outside', 0, 10), stretch('outside', 19, 24)];
  const weather = (days, spray_day) => ({ weather: { days, spray_day } });
  const inside = said('hours', weather([day(outside[0], stretch('inside', 10, 19), outside[1])], 0));
  assert.ok(inside.kind === undefined && /^By estimate inside about 10:00 AM – 7:00 PM on /.test(inside.text), inside.text);
  const near = said('hours', weather([day(outside[0], stretch('measure_first', 11, 16))]));
  assert.ok(near.kind === 'watch' && /^Measure first, by estimate about 11:00 AM – 4:00 PM/.test(near.text), near.text);
  assert.equal(said('hours', weather([day(...outside)], 0)).kind, 'hold');
  // To the quarter hour, and inward: 10:07 to 18:52.
  assert.match(said('hours', weather([day(stretch('inside', 10 + 7 / 60, 18 + 52 / 60))], 0)).text, /10:15 AM – 6:45 PM/);
  // Days that are behind us say nothing.
  assert.equal(said('hours', weather([{ ...day(stretch('inside', 10, 19)), day: today - 1 }])).kind, 'none');
});

test('moist air, people and the next date', () => {
  const at = [{ changes: 0.5, dew_f: 60 }, { changes: 1, dew_f: 55 }];
  assert.match(said('moist', { moisture: { at, spread_f: 5 } }).text, /^Dew point 55 temperature at 1 number air changes/);
  assert.match(said('moist', { moisture: { at, spread_f: 5, coldest_f: 50, least_changes: 2.44 } }).text, /^From 2.5 number air changes .* 5 temperature_step above/);
  assert.equal(said('moist', { moisture: { at, spread_f: 5, coldest_f: 50 } }).kind, 'hold');
  assert.match(said('people', { day: { reentry_min: DAY }, people: { exhaust: { wanted: 200, changes: 10 } } }).text, /^Out for the label’s 24 h after the last spraying, at the least\. Exhaust 200 airflow for 10 number air changes/);
  const date = (given) => ({ of: 'spray', part: 'job', id: 0, name: '', at: (today + 2) * DAY + 810, all_day: false, past: false, ...given });
  assert.match(said('calendar', { calendar: [date({})] }).text, /^Spraying: .*1:30 PM$/);
  assert.equal(said('calendar', { calendar: [date({ past: true, at: 0 })] }).kind, 'none');
  const purge = date({ of: 'purge', part: 'owned', id: 5, name: 'Opened', at: (today - 1) * DAY, all_day: true, every_days: 7, until: (today + 9) * DAY });
  const overdue = said('calendar', { calendar: [purge, date({})] });
  assert.ok(overdue.kind === 'hold' && /^Overdue: Purge the opened kit: Opened/.test(overdue.text), overdue.text);
  // Kits that should have been in the warm room yesterday, while nothing was sprayed; once it was, that is past.
  const missed = date({ of: 'warm_up', part: 'warming', id: 7, at: (today - 1) * DAY, past: true });
  assert.match(said('calendar', { calendar: [missed, date({})] }).text, /^Overdue: Move the kits/);
  assert.equal(said('calendar', { calendar: [missed, date({ past: true, at: today * DAY - 1 })] }).kind, 'none');
});
