// @ts-check
/** The dates of a job in words, and as a calendar file. */
import { ics, minute } from './ics.js';
import { locale, t } from './words.js';
import { wall, wallOf } from './wallclock.js';

/** @typedef {import('./core.js').Dated} Dated */
/** @typedef {import('./store.js').Store} Store */

/** What a date is, whose, and what there is to know. @param {import('./ics.js').Event} one */
export function said(one) {
  const what = one.gone ? t('calendar.gone', { what: t(`calendar.${one.of}`) }) : t(`calendar.${one.of}`);
  if (one.gone) return { what: one.name ? t('calendar.of', { what, name: one.name }) : what, why: t('calendar.gone_do') };
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

/**
 * What a file written before may still hold, while it is not so any more: hours before going back in that do not run
 * now, kits that left too early to be ready. It stands at the earliest moment that it could have been.
 * @param {Pick<Store, 'job' | 'estimate'>} store @param {import('./core.js').Now} now @returns {import('./ics.js').Event[]}
 */
export function withdrawn({ job, estimate }, now) {
  const all = estimate?.calendar ?? [];
  const lacks = (/** @type {Dated['of']} */ of, /** @type {number} */ id) => !all.some((one) => one.of === of && one.id === id);
  /** @param {Dated['of']} of @param {Dated['part']} part @param {number} id @param {string} name @param {number} at @returns {import('./ics.js').Event} */
  const gone = (of, part, id, name, at) => ({ of, part, id, name, at, all_day: false, every_days: undefined, until: undefined, past: false, gone: true });
  const day = estimate?.day;
  const last = day?.last_spray_ms;
  const hours = /** @type {const} */ ([['reentry_workers', day?.reentry_workers_min], ['reentry', day?.reentry_min]])
    .flatMap(([of, min]) => (min === undefined || last === undefined || !lacks(of, 0) ? [] : [gone(of, 'job', 0, '', wallOf({ ...now, ms: last }) + min)]));
  const kits = (job.warming ?? []).flatMap(({ id, name, moved_in, moved_out }) => {
    const up = estimate?.conditioning?.find((one) => one.id === id)?.warm_up;
    return !moved_in || !moved_out || !up || !lacks('ready', id) ? [] : [gone('ready', 'warming', id, name.trim(), wallOf(moved_in) + (up.plan_min ?? up.label_min))];
  });
  return [...hours, ...kits];
}

/** What is still ahead as a calendar file, and what is not so any more. @param {Pick<Store, 'job' | 'estimate'>} store @param {import('./core.js').Now} now */
export const calendarFile = (store, now) => ics([...split(store.estimate?.calendar ?? [])[0], ...withdrawn(store, now)], said, store.job, now);
