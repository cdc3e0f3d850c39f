// The calendar file of every whole job, as read by ical.js, beside the dates of its estimate, as JSON.
//
//   node tests/checks/calendars.mjs SITE [FOLDER WITH node_modules]

import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { use } from '../../www/app/calls.js';
import { calendarFile, withdrawn } from '../../www/app/dates.js';
import { give } from '../../www/app/words.js';
import { core, jobs } from './shipped.mjs';

const require = createRequire(resolve(process.argv[3] ?? 'target/tools', 'package.json'));
const ICAL = require('ical.js');
ICAL.design.strict = true;

const shipped = await core(process.argv[2]);
use(shipped);

/** The events as Mozilla's parser has them; what comes again, each time that it comes. */
function opened(text) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    const times = [];
    const every = event.iterator();
    for (let next = every.next(); next && times.length < 500; next = every.next()) times.push(next.toString());
    const alarm = component.getFirstSubcomponent('valarm');
    return {
      uid: event.uid, status: component.getFirstPropertyValue('status'), edition: event.sequence, summary: event.summary, description: event.description, location: event.location, day: event.startDate.isDate,
      zone: event.startDate.zone.tzid, times, stamp: component.getFirstPropertyValue('dtstamp').toString(), rings: alarm?.getFirstPropertyValue('trigger').toString() ?? null,
    };
  });
}

const entries = (given) => Object.entries(given).map(([field, text]) => ({ field, text }));
const DAY = 86_400_000;
const ODD = ['a, b; c\\d', 'two\r\nlines', '𝒳 ñ – '.repeat(20), '=1+1 "quoted": x'];

/** The job with everything that makes a date, its foam sprayed an hour ago. */
function busy(job, now, at) {
  const day = (after) => new Date(now.ms + now.offset_min * 60_000 + after * DAY).toISOString().slice(0, 10);
  const without = (list, names) => list.filter((one) => !names.includes(one.field));
  const id = job.next_id;
  const kit = (next, given) => ({ id: id + next, sheet: '', version: 0, name: ODD[(at + next) % ODD.length], entries: entries(given) });
  const stamp = { ms: now.ms - 3_600_000, offset_min: now.offset_min };
  return {
    ...job, next_id: id + 20, place: ODD[at % ODD.length],
    entries: [...without(job.entries, ['spray_date', 'spray_time', 'certificate_due']), ...entries({ spray_date: day(at % 3), spray_time: '1:30 pm', certificate_due: day(9) })],
    foams: job.foams.map((foam) => ({ ...foam, entries: [...without(foam.entries, ['reentry', 'cure', 'purge_days']), ...entries({ reentry: '24 h', cure: '30 h', purge_days: '5 d' })] })),
    stock: [
      kit(1, { label_yield: '480', state: 'opened', opened: day(-6), a_left: '60', b_left: '50' }),
      kit(2, { label_yield: '480', state: 'sealed', expires: day(400) }),
      kit(3, { label_yield: '480', state: 'sealed', expires: day(-2) }),
    ],
    warming: [{ id: id + 4, name: ODD[(at + 3) % ODD.length], entries: entries({ cylinder: 'medium', start: '45 F', room: '75 F' }), log: [] }],
    events: job.surfaces.length ? [
      ...job.surfaces.slice(0, 1).map((one) => ({ id: id + 5, what: 'lift', key: '', surface: one.id, lift: 1, at: stamp })),
      { id: id + 6, what: 'step', key: 'stop', surface: 0, lift: 0, at: stamp },
    ] : [],
  };
}

const files = [];
for (const language of ['en', 'es']) {
  for (const file of readdirSync(`www/words/${language}`)) give(file.replace('.json', ''), JSON.parse(readFileSync(`www/words/${language}/${file}`, 'utf8')), language);
  const add = (name, job, now, estimate) => {
    const text = calendarFile({ job, estimate }, now);
    files.push({ job: name, language, id: job.id, place: job.place, now, dates: estimate.calendar, gone: withdrawn({ job, estimate }, now), text, events: opened(text) });
  };
  jobs().forEach(({ name, job: stored, now }, at) => {
    const { job } = shipped.job_open(JSON.stringify(stored));
    add(name, job, now, shipped.estimate(job, now));
    const full = busy(job, now, at);
    add(`${name}, busy`, full, now, shipped.estimate(full, now));
    // The exhaust goes off: the hours that the file before gave do not hold any more.
    const off = { ...full, next_id: full.next_id + 1, events: [...full.events, { id: full.next_id, what: 'exhaust_off', key: '', surface: 0, lift: 0, at: { ...now, ms: now.ms - 1_800_000 } }] };
    add(`${name}, exhaust off`, off, now, shipped.estimate(off, now));
  });
  // Each kind of date there is, with parts of minutes, which no job above need have.
  const [{ job, now }] = jobs();
  const kinds = Object.keys(JSON.parse(readFileSync('www/words/en/calendar.json', 'utf8'))).filter((key) => key.endsWith('_why')).map((key) => key.slice(0, -4));
  const wall = Math.floor(now.ms / 60_000) + now.offset_min;
  add('every kind', job, now, { calendar: kinds.map((of, id) => ({ of, part: 'job', id, name: ODD[id % ODD.length], at: wall + 100 * id + 60.25, all_day: false, past: false })) });
}
process.stdout.write(JSON.stringify(files));
