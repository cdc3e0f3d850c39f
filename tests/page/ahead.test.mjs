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
  const line = of({ job: { units: 'us', warming: [], entries: [], ...job }, estimate: { conditioning: [], weather: { days: [] }, moisture: { at: [] }, day: {}, people: {}, calendar: [], ...estimate } });
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
  const group = (id, warm_up, cool_down) => ({ id, warm_up: { label_min: DAY, plan_min: DAY, decides: 'label', late: false, ...warm_up }, cool_down });
  const job = { warming: [{ id: 1, name: 'Near' }, { id: 2, name: 'Far' }] };
  const one = { warming: job.warming.slice(0, 1) };
  const at = today * DAY + 18 * 60;
  assert.match(said('warm', { conditioning: [group(1, { in_by: at })] }, one).text, /^Indoors by .* 6:00 PM; the label’s 24 h decide$/);
  assert.match(said('warm', { conditioning: [group(1, { in_by: at, decides: 'curve' })] }, one).text, /the slow edge of the curve decides$/);
  // Of two groups the one that presses first, by its name.
  assert.match(said('warm', { conditioning: [group(1, { in_by: at + 5 }), group(2, { in_by: at })] }, job).text, /^Indoors by .*6:00 PM.*: Far$/);
  assert.match(said('warm', { conditioning: [group(1, { ready_at: at + 0.5 })] }, one).text, /^Warmed through by .*6:01 PM/);
  assert.match(said('warm', { conditioning: [group(1, { ready_at: at }, { use_by: at + 70 })] }, one).text, /^Use by .*7:10 PM$/);
  assert.match(said('warm', { conditioning: [group(1, {})] }, one).text, /^24 h in the warm room/);
  const never = said('warm', { conditioning: [group(1, { plan_min: undefined })] }, one);
  assert.deepEqual([never.kind, never.text], ['hold', 'This room does not bring them to temperature']);
  const late = said('warm', { conditioning: [group(1, { in_by: at, late: true })] }, one);
  assert.ok(late.kind === 'hold' && /Too late/.test(late.text), late.text);
  assert.equal(said('warm', { conditioning: [{ id: 1 }] }, one).kind, 'none');
});

test('the hours of the day of spraying; outside is a hold, near the edge is measured first', () => {
  const stretch = (says, from, to) => ({ says, from_min: from * 60, to_min: to * 60 });
  const day = (...stretches) => ({ day: today + 1, stretches });
  const outside = [stretch('outside', 0, 10), stretch('outside', 19, 24)];
  const weather = (days, spray_day) => ({ weather: { days, spray_day } });
  const inside = said('hours', weather([day(outside[0], stretch('inside', 10, 19), outside[1])], 0));
  assert.ok(inside.kind === undefined && /^Inside 10:00 AM – 7:00 PM on /.test(inside.text), inside.text);
  const near = said('hours', weather([day(outside[0], stretch('measure_first', 11, 16))]));
  assert.ok(near.kind === 'watch' && /^Measure first: 11:00 AM – 4:00 PM/.test(near.text), near.text);
  assert.equal(said('hours', weather([day(...outside)], 0)).kind, 'hold');
  // Days that are behind us say nothing.
  assert.equal(said('hours', weather([{ ...day(stretch('inside', 10, 19)), day: today - 1 }])).kind, 'none');
});

test('moist air, people and the next date', () => {
  const at = [{ changes: 0.5, dew_f: 60 }, { changes: 1, dew_f: 55 }];
  assert.match(said('moist', { moisture: { at, spread_f: 5 } }).text, /^Dew point 55 temperature at 1 number air changes/);
  assert.match(said('moist', { moisture: { at, spread_f: 5, coldest_f: 50, least_changes: 4 } }).text, /^From 4 number air changes .* 5 temperature_step above/);
  assert.equal(said('moist', { moisture: { at, spread_f: 5, coldest_f: 50 } }).kind, 'hold');
  assert.match(said('people', { day: { reentry_min: DAY }, people: { exhaust: { wanted: 200, changes: 10 } } }).text, /^Out for the label’s 24 h after the last spraying\. Exhaust 200 airflow for 10 number air changes/);
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
