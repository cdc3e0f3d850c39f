// @ts-check
/** The dates of a job in words, and as a calendar file. */
import { ics, minute } from './ics.js';
import { locale, t } from './words.js';
import { wall } from './wallclock.js';

/** @typedef {import('./core.js').Dated} Dated */
/** @typedef {import('./store.js').Store} Store */

/** What a date is, whose, and what there is to know. @param {Dated} one */
export function said(one) {
  const what = t(`calendar.${one.of}`);
  return {
    what: one.name ? t('calendar.of', { what, name: one.name }) : what,
    why: t(`calendar.${one.of}_why`, { n: Math.floor(one.every_days ?? 0), last: one.until === undefined ? '' : dayOf(one.until) }),
  };
}

/** A whole day, with its year: a kit's date may be years ahead. @param {number} minutes */
export const dayOf = (minutes) => new Date(minutes * 60_000).toLocaleDateString(locale(), { timeZone: 'UTC', weekday: 'short', month: 'short', day: 'numeric', year: 'numeric' });

/** When. @param {Dated} one */
export const when = (one) => (one.all_day ? dayOf(one.at) : wall(minute(one)));

/** Whether the kits should be in the warm room by now: that moment is behind, the spraying is not. @param {Dated} one @param {readonly Dated[]} all */
const missed = (one, all) => one.of === 'warm_up' && one.past && !all.some((other) => other.of === 'spray' && other.past);

/** Whether something should be done already. @param {Dated} one @param {readonly Dated[]} all @param {number} at  minutes by the clock on the wall */
export const overdue = (one, all, at) => missed(one, all) || (one.of === 'purge' && !one.past && one.at + 1440 <= at);

/** The dates that are not behind us, and the others. @param {readonly Dated[]} all @returns {[Dated[], Dated[]]} */
export function split(all) {
  const gone = (/** @type {Dated} */ one) => one.past && !missed(one, all);
  return [all.filter((one) => !gone(one)), all.filter(gone)];
}

/** What is still ahead as a calendar file. @param {Pick<Store, 'job' | 'estimate'>} store @param {import('./core.js').Now} now */
export const calendarFile = ({ job, estimate }, now) => ics(split(estimate?.calendar ?? [])[0], said, job, now);
