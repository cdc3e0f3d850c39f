// @ts-check
/**
 * A calendar file: RFC 5545, lines that end in CRLF and hold at most 75 octets. Times are local and float, without a
 * zone: they are those of the clock on the wall at the site. The name of an event is the same each time the job is
 * written, so that a calendar puts the new date in place of the old one.
 *
 * @typedef {import('./core.js').Dated} Dated
 * @typedef {Dated & {gone?: boolean}} Event  `gone`: it stood in a file before and is not so any more
 * @typedef {{what: string, why: string}} Said
 */

/** How long before it has to be done a phone says so. Only what has to be begun a day ahead rings. */
const RING = '-PT1H';

/** The second from which the editions of a file are counted: 2026-01-01. */
const EDITIONS_FROM = Date.UTC(2026, 0) / 1000;

/** @param {readonly Event[]} dates @param {(one: Event) => Said} said @param {Pick<import('./job.js').Job, 'id' | 'place'>} job @param {import('./core.js').Now} now */
export function ics(dates, said, job, now) {
  const stamp = `${time(Math.floor(now.ms / 60_000))}Z`;
  // Later files win over earlier ones: a whole number that grows (RFC 5545, section 3.8.7.4).
  const edition = Math.max(0, Math.floor(now.ms / 1000) - EDITIONS_FROM);
  return ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Foamwright//Foamwright//EN', 'CALSCALE:GREGORIAN',
    ...dates.flatMap((one) => event(one, said(one), job, stamp, edition)), 'END:VCALENDAR'].map((line) => `${folded(line)}\r\n`).join('');
}

/** @param {Event} one @param {Said} said @param {Pick<import('./job.js').Job, 'id' | 'place'>} job @param {string} stamp @param {number} edition */
function event(one, { what, why }, job, stamp, edition) {
  const every = Math.max(1, Math.floor(one.every_days ?? 0));
  return ['BEGIN:VEVENT', `UID:${escaped(`${job.id}-${one.of}-${one.part}-${one.id}`)}@foamwright`, `DTSTAMP:${stamp}`,
    one.all_day ? `DTSTART;VALUE=DATE:${date(one.at)}` : `DTSTART:${time(minute(one))}`,
    ...(one.every_days && one.until !== undefined ? [`RRULE:FREQ=DAILY;INTERVAL=${every};UNTIL=${one.all_day ? date(one.until) : time(one.until)}`] : []),
    `SUMMARY:${escaped(what)}`, `DESCRIPTION:${escaped(why)}`, ...(job.place.trim() ? [`LOCATION:${escaped(job.place.trim())}`] : []),
    'TRANSP:TRANSPARENT', `SEQUENCE:${edition}`, ...(one.gone ? ['STATUS:CANCELLED'] : []),
    ...(one.of === 'warm_up' ? ['BEGIN:VALARM', 'ACTION:DISPLAY', `DESCRIPTION:${escaped(what)}`, `TRIGGER:${RING}`, 'END:VALARM'] : []),
    'END:VEVENT'];
}

/** The whole minute of a date: what has to be done by then never later, what is over by then never sooner. @param {Dated} one */
export const minute = (one) => (one.of === 'warm_up' ? Math.floor(one.at) : Math.ceil(one.at));

/** @param {number} minutes since 1970 by some clock */
const time = (minutes) => new Date(minutes * 60_000).toISOString().slice(0, 19).replace(/[-:]/g, '');

/** @param {number} minutes */
const date = (minutes) => time(minutes).slice(0, 8);

/** A text within a line; controls have no place in one. @param {string} text */
export const escaped = (text) => text.replace(/[\\;,]/g, '\\$&').replace(/\r\n|\r|\n/g, '\\n').replace(/[\0-\x08\x0b-\x1f\x7f]/g, ' ');

/** A line in pieces of at most 75 octets, never within a character. @param {string} line */
export function folded(line) {
  let text = '';
  let octets = 0;
  for (const char of line) {
    const point = char.codePointAt(0) ?? 0;
    const size = point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
    if (octets + size > 75) {
      text += '\r\n ';
      octets = 1;
    }
    text += char;
    octets += size;
  }
  return text;
}
