// @ts-check
/** What stands beside the axis of readings: wood, wind, forecast and storage, what to read again and by when, and what would turn GO into HOLD. */
import { checkName } from './drawn.js';
import { bare, figures } from './figures.js';
import { el } from './list.js';
import { mark } from './marks.js';
import { byId, row, worked } from './parts.js';
import { clock, span, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').Check} Check */

const STATE = /** @type {const} */ ({ inside: 'go', close: 'go', outside: 'hold', old: 'none', not_read: 'none' });
const BESIDE = new Set(['wood_moisture', 'wind', 'night_low', 'storage']);

/** How many limits are named. */
const NEAREST = 3;

/** Readings that are not on the axis, each a row. @param {Store} store */
export function besideAxis(store) {
  const checks = (store.estimate?.readiness.checks ?? []).filter((one) => BESIDE.has(one.of));
  return checks.length ? el('ul', 'rows', ...checks.map((one) => besideRow(store, one))) : undefined;
}

/** @param {Store} store @param {Check} one */
function besideRow(store, one) {
  const w = figures(store.job.units);
  const write = one.of === 'wind' ? w.speed : one.of === 'wood_moisture' ? w.pct : w.temp;
  const value = one.value ?? one.value_f;
  const limit = one.of === 'wood_moisture' && one.most !== undefined ? t('ready.wood_below', { limit: write(one.most) })
    : one.of === 'wind' ? (one.most === undefined ? t('ready.no_limit') : t('ready.wind_at_most', { limit: write(one.most) }))
      : one.of === 'night_low' && one.least_f !== undefined ? t('ready.night_least', { least: w.temp(one.least_f) }) : '';
  const room = one.inside_by === undefined ? undefined
    : worked(t(one.inside_by < 0 ? 'ready.over_by' : 'ready.under_by', { by: write(Math.abs(one.inside_by)) }), 'check', one.id, 'inside_by');
  const age = one.age_min === undefined ? '' : t('ready.age', { age: span(one.age_min) });
  const below = [age, limit].filter(Boolean).join(', ');
  return row(checkName(one), el('span', '', below, below && room ? ', ' : '', room),
    el('span', 'with-mark', // Without a limit nothing was passed.
      one.of === 'wind' && one.most === undefined ? '' : mark(STATE[one.state]), value === undefined ? t('ready.not_read') : one.state === 'old' ? t('ready.old_axis') : write(value)));
}

/** When each thing grows old, the first to do so first. @param {Store} store */
export function readAgain(store) {
  const found = store.estimate?.readiness;
  if (!found?.next.length) return undefined;
  const name = (/** @type {import('./core.js').Next} */ one) => {
    if (one.part === 'owned') return byId(store.job.stock, one.id)?.name.trim() || t('ready.kit');
    const check = byId(found.checks, one.id);
    return check ? checkName(check) : '';
  };
  return el('ul', 'rows', ...found.next.map((one) => row(name(one), '', t('ready.next_by', { time: clock(one.until_ms) }))));
}

/** What would have to change for GO to become HOLD: the nearest limits first. @param {Store} store */
export function turns(store) {
  const found = store.estimate?.readiness;
  if (!found || found.verdict !== 'go') return [];
  const w = figures(store.job.units);
  const rows = found.nearest.slice(0, NEAREST).flatMap((at) => {
    const one = found.checks[at];
    if (!one || one.inside_by_f === undefined || one.value_f === undefined || one.least_f === undefined || one.most_f === undefined) return [];
    const falls = one.value_f - one.least_f <= one.most_f - one.value_f;
    return [row(t(falls ? 'ready.turns_falls' : 'ready.turns_rises', { name: checkName(one), limit: w.temp(falls ? one.least_f : one.most_f) }), '',
      worked(t('ready.turns_room', { room: bare(w.step(one.inside_by_f)) + '°' }), 'check', one.id, 'inside_by_f'))];
  });
  return rows.length ? [el('h2', 'bar', t('ready.turns')), el('ul', 'rows', ...rows)] : [];
}

/** When to read what holds the work again: the words of its rule. @param {Store} store */
export function whenAgain(store) {
  const found = store.estimate?.readiness;
  const at = found?.verdict === 'hold' && found.blame !== undefined ? store.estimate?.findings[found.blame]?.at : undefined;
  if (!at) return '';
  const of = at.part === 'reading' ? byId(found?.checks ?? [], at.id)?.of ?? '' : at.part;
  const group = /** @type {Record<string, string>} */ ({ cylinder_a: 'cylinder', cylinder_b: 'cylinder', dew_point: 'humidity' })[of] ?? of;
  return AGAIN.has(group) ? t(`ready.again_${group}`) : '';
}

const AGAIN = new Set(['cylinder', 'air', 'humidity', 'surface', 'wood_moisture', 'wind', 'night_low', 'storage', 'owned', 'job']);
