// @ts-check
/** A group once it is out of the warm room: how long it stays usable there. */
import { field } from './field.js';
import { figures } from './figures.js';
import { el } from './list.js';
import { byId, note, redraw, row } from './parts.js';
import { secondsLeft, shown } from './timers.js';
import { lastOf, readings } from './warmread.js';
import { about, before, dayTime, leftEarly, under } from './warmwords.js';
import { span, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

/** The instants at which a group that has left starts to leave its window, and at which it is not to be used any more. @param {Store} store @param {number} id */
export function instants(store, id) {
  const out = byId(store.job.warming ?? [], id)?.moved_out;
  const cool = byId(store.estimate?.conditioning ?? [], id)?.cool_down;
  const at = (/** @type {number | undefined} */ wall) => (wall === undefined || !out ? undefined : (wall - out.offset_min) * 60_000);
  return { starts: at(cool?.starts_at), spent: at(cool?.use_by), hot: cool?.hot ?? false, use_by: cool?.use_by };
}

/** A countdown that the tick of the screen writes. @param {number} until */
const countdown = (until) => el('span', { class: 'timer large', role: 'timer', 'aria-live': 'off', 'data-until': until }, shown(secondsLeft(until, Date.now())));

/** Said of kits that are not within the window when they leave. @param {Store} store @param {number} id */
function outside(store, id) {
  const cool = byId(store.estimate?.conditioning ?? [], id)?.cool_down;
  if (cool?.use_by_min === undefined || cool.use_by_min > 0) return undefined;
  const w = figures(store.job.units);
  const from = cool.hot ? about(w, cool.from_f) : under(w, cool.from_f, cool.limit_f);
  // It counts from the last reading, or from the estimate where that is colder.
  const read = lastOf(readings(store, byId(store.job.warming ?? [], id)));
  return note('hold', t(read && Math.abs(read.f - cool.from_f) < 0.05 ? 'warm.out_not_read' : 'warm.out_not', { from }), t(cool.hot ? 'warm.out_past_hot_do' : 'warm.out_not_do'));
}

/** The clock of a group that has left. @param {Store} store @param {number} id */
export function clockOf(store, id) {
  const { starts, spent, hot, use_by } = instants(store, id);
  const here = Date.now();
  const already = outside(store, id);
  if (already) return [already];
  // What left too early has no time until which it may be used; its note says why.
  const group = byId(store.job.warming ?? [], id);
  if (group && leftEarly(byId(store.estimate?.conditioning ?? [], id)?.warm_up, group)) return [];
  if (spent !== undefined && spent <= here) return [note('hold', t('warm.out_past'), t(hot ? 'warm.out_past_hot_do' : 'warm.out_past_do'))];
  return [
    starts !== undefined && starts > here ? el('p', 'warm-clock', el('span', '', t(hot ? 'warm.out_heats_in' : 'warm.out_cools_in')), countdown(starts)) : undefined,
    spent === undefined || use_by === undefined ? undefined : el('p', 'warm-clock', el('span', '', t('warm.out_use_in', { time: dayTime(before(use_by)) })), countdown(spent)),
  ];
}

/** @param {Store} store @param {number} id @param {HTMLElement} drawing */
export function warmOut(store, id, drawing) {
  const fields = ['out_place', 'out_air', 'out_pack'].map((name) => field({ store, part: 'warming', id, field: name, quiet: true }));
  const rows = el('ul', 'rows');
  const says = el('div', 'says');
  const node = el('div', 'group', el('h3', '', t('warm.out')), fields[0]?.node, el('div', 'fields one', fields[1]?.node), fields[2]?.node, says, rows, drawing);
  return {
    node,
    update() {
      for (const one of fields) one.update();
      const cool = byId(store.estimate?.conditioning ?? [], id)?.cool_down;
      const w = figures(store.job.units);
      const limit = cool ? w.temp(cool.limit_f) : '';
      const lasts = (/** @type {number} */ minutes) => span(Math.floor(minutes + 1e-6));
      rows.hidden = !cool || cool.use_by_min === 0;
      const already = outside(store, id);
      redraw(says, [already, !cool ? el('p', 'note', t('warm.out_lacks')) : cool.use_by_min === undefined && cool.starts_min === undefined ? el('p', 'note', t('warm.out_never')) : undefined]);
      redraw(rows, cool ? [
        cool.starts_min === undefined || already ? undefined : row(t(cool.hot ? 'warm.out_heats' : 'warm.out_cools'), t('warm.out_from', { from: about(w, cool.from_f), limit }), t('warm.out_after', { span: lasts(cool.starts_min) })),
        cool.use_by_min === undefined || already ? undefined : row(t('warm.out_use'), t('warm.out_use_sub'), lasts(cool.use_by_min)),
        cool.hose_min === undefined || already ? undefined : row(t('warm.out_hose'), t('warm.out_hose_sub', { limit }), lasts(cool.hose_min)),
      ] : []);
    },
  };
}
