// @ts-check
/** How the warm-up screen writes its hours, its times, and the one answer of a group. */
import { call, fieldRow } from './calls.js';
import { locale, number, span, t } from './words.js';
import { dayOf, timeOf, wall, wallOf } from './wallclock.js';

/** @typedef {import('./core.js').Conditioning} Conditioning */

/** A length of time to plan with: whole hours, minutes where it is short. Up, where less would be too little. @param {number} minutes @param {boolean} [up] */
export function hours(minutes, up = false) {
  if (minutes < 120) return span(up ? Math.ceil(minutes) : minutes);
  return t('warm.hours', { n: number(up ? Math.ceil(minutes / 60 - 1e-6) : Math.round(minutes / 60)) });
}

/** The hours of a label, as they stand there; never fewer. @param {number} minutes */
export const labelHours = (minutes) => t('warm.hours', { n: number(Math.ceil(minutes / 6 - 1e-6) / 10, 1) });

/** An estimated temperature, in whole degrees of the job's scale. @param {import('./figures.js').Figures} w @param {number} f */
export const about = (w, f) => w.temp(w.metric ? (Math.round(((f - 32) * 5) / 9) * 9) / 5 + 32 : Math.round(f));

/** The same of what may be short of a limit: it is never written as the limit before it is there. @param {import('./figures.js').Figures} w @param {number} f @param {number} limit */
export function under(w, f, limit) {
  const shown = (/** @type {number} */ one) => (w.metric ? ((one - 32) * 5) / 9 : one);
  if (f >= limit - 1e-6 || Math.round(shown(f)) < shown(limit)) return about(w, f);
  const whole = Math.floor(shown(f));
  return w.temp(w.metric ? (whole * 9) / 5 + 32 : whole);
}

/** Weekday and time: `Tue 6:00 PM`. @param {number} minutes by the clock on the wall */
export const dayTime = (minutes) => `${new Date(minutes * 60_000).toLocaleDateString(locale(), { timeZone: 'UTC', weekday: 'short' })}\u00a0${timeOf(minutes).replace(/ /g, '\u00a0')}`;

/** A time that must not be missed is written to the minute before, one to wait for to the minute after. @param {number} minutes */
export const before = (minutes) => Math.floor(minutes + 1e-6);
/** @param {number} minutes */
export const after = (minutes) => Math.ceil(minutes - 1e-6);

/** When spraying begins, by the clock on the wall, as the core reads its day and time; none without a day. @param {import('./store.js').Store} store */
export function sprayAt(store) {
  const read = (/** @type {'date' | 'clock'} */ kind, /** @type {string} */ name, /** @type {string} */ blank) => {
    const text = store.job.entries.find((one) => one.field === name)?.text.trim() || blank;
    const echo = text ? call('read', text, kind, kind, undefined, 'metric') : undefined;
    return echo?.state === 'read' ? echo.text : '';
  };
  const day = Date.parse(`${read('date', 'spray_date', '')}T00:00Z`) / 60_000;
  const time = /^(\d+):(\d\d)/.exec(read('clock', 'spray_time', fieldRow('job', 'spray_time')?.default ?? ''));
  return Number.isFinite(day) && time ? day + Number(time[1]) * 60 + Number(time[2]) : undefined;
}

/** When a group that left early would have been ready; none where nobody can say. @param {Conditioning['warm_up']} up @param {Moves} moves */
export function wasDue(up, { moved_in, moved_out }) {
  const due = up?.ready_at ?? (moved_in && up?.plan_min !== undefined ? wallOf(moved_in) + up.plan_min : undefined);
  return due !== undefined && moved_out && due > wallOf(moved_out) ? due : undefined;
}

/** Whether a group left before it was ready, or left with nobody to say when that were. @param {Conditioning['warm_up']} up @param {Moves} moves */
export const leftEarly = (up, { moved_out }) => moved_out !== undefined && (up?.ready_at === undefined || wallOf(moved_out) < up.ready_at);

/**
 * How a group stands, and the moment that goes with it, by the clock on the wall.
 * @typedef {{moved_in?: import('./core.js').Now, moved_out?: import('./core.js').Now}} Moves
 * @typedef {'spent' | 'use_by' | 'lacks' | 'over' | 'ready' | 'never' | 'hour' | 'late' | 'in_by' | 'hours'} Stand
 *   `spent`: left too early, or not usable any more; `hour`: this room does it by day, but not for that hour; without
 *   an hour it does not keep them warm at night.
 * @param {Conditioning | undefined} found @param {Moves} moves @param {number} at now, by the clock on the wall @param {number} [spray] when spraying begins
 * @returns {{is: Stand, time?: number}}
 */
export function standOf(found, moves, at, spray = found?.warm_up?.spray_at) {
  const up = found?.warm_up;
  const cool = found?.cool_down;
  if (moves.moved_out) {
    // What left too early, or is outside its window, has no time until which it may be used.
    if (cool?.use_by === undefined || cool.use_by <= at || leftEarly(up, moves)) return { is: 'spent' };
    return { is: 'use_by', time: before(cool.use_by) };
  }
  if (!up) return { is: 'lacks' };
  if (up.ready_at !== undefined) return { is: up.ready_at <= at ? 'over' : 'ready', time: after(up.ready_at) };
  if (up.slow_min === undefined) return { is: 'never' };
  if (up.in_by !== undefined && up.late && spray !== undefined) return { is: 'late', time: spray };
  if (up.in_by !== undefined) return { is: 'in_by', time: before(up.in_by) };
  return spray !== undefined || moves.moved_in || up.plan_min === undefined ? { is: 'hour', time: spray } : { is: 'hours' };
}

/** The largest figure of a group. @param {Conditioning | undefined} found @param {Moves} moves @param {number} at @param {number} [spray] @returns {{text: string, below: string}} */
export function answerOf(found, moves, at, spray) {
  const { is, time } = standOf(found, moves, at, spray);
  const plan = found?.warm_up?.plan_min;
  const text = t(`warm.ans.${is}`, { time: time === undefined ? '' : dayTime(time), hours: plan === undefined ? '' : hours(plan, true) });
  if (is === 'lacks') return { text, below: t('warm.lacks') };
  if (time === undefined || is === 'use_by') return { text, below: '' };
  return { text, below: is === 'over' ? t('warm.over_do', { time: wall(time) }) : is === 'ready' ? `${dayOf(time)}. ${t('warm.ready_do')}` : dayOf(time) };
}

/** Which of the two decides, as a sentence. @param {NonNullable<Conditioning['warm_up']>} up */
export function won(up) {
  if (up.plan_min === undefined || up.slow_min === undefined) return '';
  const figures = { label: labelHours(up.label_min), slow: hours(up.slow_min, true) };
  return t(up.decides === 'label' ? 'warm.why_label' : 'warm.why_curve', figures);
}
