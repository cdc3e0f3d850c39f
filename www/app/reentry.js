// @ts-check
/**
 * When the label's hours are over, for those who live there and for workers; never a clearance. A time is given only
 * where every foam sheet gives the hours, the spraying is over, the exhaust runs and nothing smells.
 */
import { now } from './calls.js';
import { el, list, say } from './list.js';
import { note, press, redraw, to } from './parts.js';
import { clock, locale, number, span, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {'silent' | 'before' | 'spraying' | 'smell' | 'off' | 'time'} State how the hours stand */
/** @typedef {{state: State, min?: number, ms?: number, more: number, foam?: number}} Hours `more`: minutes that were added; `foam`: a sheet that is silent */

const DAY_MS = 86_400_000;

/** An instant with its weekday, whatever day it is read on; with its date where the weekday does not name it. @param {number} ms */
export const instant = (ms) => `${new Date(ms).toLocaleDateString(locale(), Math.abs(ms - Date.now()) < 6 * DAY_MS ? { weekday: 'short' } : { month: 'short', day: 'numeric' })} ${clock(ms, ms)}`;

/** Hours of a label, never rounded down, and never to days. @param {number} min */
export const inHours = (min) => `${number(Math.ceil(min / 0.6 - 1e-6) / 100, 2)}\u00a0h`;

/** A span that has to go by: to the minute after, from two days on in whole hours, never less than it is. @param {number} min */
export function waits(min) {
  const whole = Math.ceil(min - 1e-6);
  return whole < 2880 ? span(whole) : `${number(Math.ceil(whole / 60))}\u00a0h`;
}

/** The mark with which the exhaust went off, while it is off: the line of the checklist turns it on as the press does, and off where it is left out. @param {Store} store */
export function exhaustOff(store) {
  const last = store.job.events.filter((one) => one.what === 'exhaust_off' || one.what === 'exhaust_on' || (one.what === 'step' || one.what === 'skip') && one.key === 'air').pop();
  return last?.what === 'exhaust_off' || last?.what === 'skip' ? last : undefined;
}

/** How the hours of the label stand. @param {Store} store @param {'all' | 'workers'} who @returns {Hours} */
export function hours(store, who) {
  const { estimate } = store;
  const day = estimate?.day;
  const at = /** @type {any} */ (day ?? {});
  const key = who === 'workers' ? 'reentry_workers' : 'reentry';
  /** @type {number | undefined} */
  const min = at[`${key}_min`] ?? undefined;
  /** @type {number | undefined} */
  const ms = at[`${key}_ms`] ?? undefined;
  const foam = estimate?.foams.find((one) => /** @type {any} */ (one)[`${key}_min`] === undefined)?.id;
  if (min === undefined) return { state: 'silent', more: 0, foam };
  const last = day?.last_spray_ms;
  if (last === undefined) return { state: 'before', min, more: 0 };
  if (ms === undefined) return { state: at.reentry_held === 'smell' ? 'smell' : at.reentry_held === 'exhaust_off' ? 'off' : 'spraying', min, more: 0 };
  return { state: 'time', min, ms, more: Math.max(0, Math.round((ms - last) / 60_000 - min)) };
}

/** Why it is that time, or why none is given. @param {Store} store @param {Hours} found @param {'all' | 'workers'} who @returns {(Node | string)[]} */
export function reasons(store, found, who) {
  const { state, min, more, foam } = found;
  if (min === undefined) {
    return [t('people.silent_do'), ' ', ...(foam === undefined ? [] : [el('a', { href: to('foam', foam) }, t('people.foam_sheet'))])];
  }
  const key = who === 'workers' ? 'reentry_workers_min' : 'reentry_min';
  const from = store.estimate?.foams.find((one) => /** @type {any} */ (one)[key] === min)?.id;
  const label = el('span', '', t('people.label_is'), ' ', from === undefined ? inHours(min) : el('a', { href: to('foam', from) }, inHours(min)), ' ', t('people.after_last'));
  if (state !== 'time') return [label, state === 'smell' || state === 'off' ? '. ' : ', ', t(`people.${state}_do`)];
  const last = store.estimate?.day.last_spray_ms;
  return [label, last === undefined ? '.' : ` (${instant(last)})`, more ? t('people.plus_off', { span: waits(more) }) : '.'];
}

/** The presses for the exhaust: off, and on again. @param {Store} store @param {() => boolean} fresh a press that is not one too many */
export function exhaustPress(store, fresh) {
  const off = exhaustOff(store);
  const what = off ? 'exhaust_on' : 'exhaust_off';
  return [
    off && note('hold', t('day.exhaust_is_off', { time: clock(off.at.ms) }), t('day.exhaust_is_off_do')),
    el('div', 'dos no-print', press(t(`day.${what}_now`), 'exhaust', () => { if (fresh()) store.dispatch({ do: 'add_event', what, now: now() }); }, off ? 'wide big' : 'line wide big')),
  ];
}

/** What was marked of the exhaust, newest first, each with a press that takes it away. @param {Store} store */
export function exhaustLog(store) {
  const rows = el('ul', 'rows');
  const none = el('p', 'note', t('people.exhaust_none'));
  return {
    node: el('div', '', rows, none),
    update() {
      const marks = store.job.events.filter((one) => one.what === 'exhaust_off' || one.what === 'exhaust_on').reverse();
      rows.hidden = !marks.length;
      none.hidden = marks.length > 0;
      list(rows, marks, (one) => one.id, ({ id }) => {
        const when = el('small');
        const what = el('b');
        const gone = el('button', { type: 'button', class: 'link no-print', click: () => store.dispatch({ do: 'remove', part: 'event', id }) }, t('day.remove'));
        return {
          node: el('li', '', el('span', 'k', what, when), gone),
          update(one) {
            say(what, t(`day.event.${one.what}`));
            say(when, instant(one.at.ms));
            gone.setAttribute('aria-label', t('day.remove_of', { what: `${t(`day.event.${one.what}`)}, ${clock(one.at.ms)}` }));
          },
        };
      });
    },
  };
}

/** Draws the answer: nobody back in before, or that no time is given. @param {HTMLElement} node @param {Store} store */
export function drawAnswer(node, store) {
  const all = hours(store, 'all');
  const workers = hours(store, 'workers');
  /** @param {Hours} found @param {'all' | 'workers'} who */
  const first = (found, who) => (found.state === 'time' && found.ms !== undefined ? t(`people.${who}_time`, { time: instant(found.ms) }) : t(`people.${who}_${found.min === undefined ? 'silent' : 'none'}`));
  redraw(node, [
    el('p', 'when', t('people.for_all')),
    el('h2', { class: 'what', id: 'answer-title' }, first(all, 'all')),
    el('p', 'why', ...reasons(store, all, 'all')),
    el('p', 'each', first(workers, 'workers')),
    workers.min === undefined && workers.foam === all.foam ? undefined : el('p', 'why', ...reasons(store, workers, 'workers')),
    note('watch', t('people.governs'), t('people.governs_do')),
  ]);
}
