// @ts-check
/**
 * The ways out where the least depth lies above the most: each with what follows from it, one of them chosen. A
 * way that is chosen stays in the list though nothing crosses any more; pressing it again takes it back.
 */
import { call, now } from './calls.js';
import { apply, entryOf } from './changes.js';
import { fieldId } from './field.js';
import { figures } from './figures.js';
import { dashed, uFactor } from './levels.js';
import { el } from './list.js';
import { byId, note, to } from './parts.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store @typedef {import('./core.js').Depth} Depth @typedef {import('./core.js').Mark} Mark @typedef {import('./core.js').Rule} Rule */

/** Rules of the energy code that one of its ways stands for. @type {Rule[]} */
const CODE = ['code_r', 'code_u', 'fill_cavity', 'fill_floor', 'small_ceiling'];

/** Whether a mark could bear on the surface, chosen or not. @param {Mark} mark */
const within = (mark) => ['applies', 'not_chosen', 'not_said', 'beyond_sheet'].includes(mark.stands);

/**
 * The least and the most over all marks that apply, those from memory too: they warn.
 * @param {Depth} depth
 */
function bounds({ marks, window }) {
  const all = (/** @type {import('./core.js').Bound} */ bound) => marks.filter((one) => one.bound === bound && one.stands === 'applies' && one.at_in !== undefined && one.at_in !== null);
  const least = all('least').reduce((/** @type {Mark | undefined} */ known, one) => (known && (known.at_in ?? 0) >= (one.at_in ?? 0) ? known : one), undefined);
  const most = all('most').reduce((/** @type {Mark | undefined} */ known, one) => (known && (known.at_in ?? 0) <= (one.at_in ?? 0) ? known : one), undefined);
  const gap = least && most ? (least.at_in ?? 0) - (most.at_in ?? 0) : 0;
  return { least, most, gap: window.gap_in ?? (gap > 1e-6 ? gap : undefined), sure: window.gap_in !== undefined && window.gap_in !== null };
}

/**
 * What would follow from some changes, worked out in full: board feet and passes of this surface.
 * @param {Store} store @param {number} id @param {import('./changes.js').Change[]} changes
 */
function after(store, id, changes) {
  const job = changes.reduce(apply, store.job);
  const found = call('estimate', job, now());
  const one = found && byId(found.surfaces, id);
  return one?.in_place ? { feet: one.in_place.likely, passes: one.lifts?.count ?? 0 } : undefined;
}

/** A way as a row. @param {string} key @param {string} why @param {(() => void) | string} does @param {boolean} [chosen] */
function out(key, why, does, chosen) {
  const inside = [el('span', 'k', el('b', '', t(`depth.out.${key}`)), el('small', '', why)), el('span', 'v act', t(chosen ? 'depth.chosen' : 'depth.choose_way'))];
  return el('li', 'press' + (chosen ? ' here' : ''), typeof does === 'string' ? el('a', { class: 'press', href: does }, ...inside)
    : el('button', { type: 'button', class: 'press', 'data-key': `out-${key}`, 'aria-pressed': String(!!chosen), click: does }, ...inside));
}

/** The way through the code that was chosen, where no depth follows from it: to be taken back. @param {Store} store @param {number} id */
export function wayTaken(store, id) {
  const path = entryOf(store.job, 'surface', id, 'code_path')?.text ?? 'r_value';
  if (path === 'r_value') return undefined;
  return el('div', '', el('h2', 'bar', t('depth.ways_taken')), note('none', t('depth.way_chosen'), t('depth.way_chosen_do')), el('ul', 'rows',
    out(path === 'u_factor' ? 'ufactor' : path, '', () => store.dispatch({ do: 'entry', part: 'surface', id, field: 'code_path', text: '' }), true)));
}

/**
 * @param {Store} store @param {number} id @param {Depth} depth @param {number} sheet the foam's
 * @param {boolean} quick leaves out what takes the core's time, while the aim is dragged
 */
export function waysOut(store, id, depth, sheet, quick) {
  const w = figures(store.job.units);
  const path = entryOf(store.job, 'surface', id, 'code_path')?.text ?? 'r_value';
  const covered = entryOf(store.job, 'surface', id, 'exposure')?.text === 'covered';
  const { least, most, gap, sure } = bounds(depth);
  const rim = depth.marks.find((one) => one.rule === 'rim_exposed');
  const coverChosen = covered && rim?.stands === 'covered' && (least?.at_in ?? 0) > (rim.at_in ?? 0);
  const pathChosen = path !== 'r_value' && depth.marks.some((one) => CODE.includes(one.rule) && within(one));
  // What the code asks may also be beyond the foam sheet, or more than is promised.
  const short = depth.marks.some((one) => CODE.includes(one.rule) && (one.stands === 'beyond_sheet' || (one.stands === 'applies' && (one.at_in ?? 0) > (one.bound === 'mean' ? depth.aim_in.likely : depth.promised_in) + 1e-6)));
  if (gap === undefined && !coverChosen && !pathChosen && !short) return undefined;

  const estimate = store.estimate;
  const of = (/** @type {Rule} */ rule) => depth.marks.find((one) => one.rule === rule && within(one));
  const choose = (/** @type {string} */ way) => store.dispatch({ do: 'entry', part: 'surface', id, field: 'code_path', text: path === way ? '' : way });
  const here = estimate && byId(estimate.surfaces, id)?.in_place?.likely;
  /** What an aim takes more than now. @param {number} inches @param {import('./changes.js').Change[]} [also] */
  const costs = (inches, also = []) => {
    const text = quick ? '' : call('write', 'length', inches, store.job.units === 'metric' ? 'metric' : 'inches');
    const then = text ? after(store, id, [...also, { do: 'aim', id, text, run: 0 }]) : undefined;
    return then && here !== undefined ? t(then.feet >= here ? 'depth.out_more' : 'depth.out_less', { aim: w.depth(inches), feet: w.foam(Math.abs(then.feet - here)), passes: t('spraying.passes', { n: then.passes }) }) : '';
  };
  const join = (/** @type {(string | undefined | false)[]} */ ...bits) => bits.filter(Boolean).join(' ');

  const rows = [];
  const target = least?.rule === 'target';
  const [row, u, fill, small] = [of('code_r'), of('code_u'), of('fill_cavity') ?? of('fill_floor'), of('small_ceiling')];
  const known = row || u || fill || small;

  if (u || path === 'u_factor') {
    const there = depth.assembly?.u;
    rows.push(out('ufactor', join(
      there !== undefined && t('depth.out_why.u_now', { u: uFactor(there, w), depth: w.depth(depth.assembly?.foam_in) }),
      u?.asks !== undefined && u.asks !== null && t(dashed(u) ? 'depth.out_why.u_asks_memory' : 'depth.out_why.u_asks', { u: uFactor(u.asks, w) }),
      u && (u.at_in === undefined || u.at_in === null ? t(there === undefined ? 'depth.out_why.u_unbuilt' : 'depth.out_why.u_never') : t('depth.out_why.u_mean', { depth: w.depth(u.at_in) })),
      t('depth.out_why.accept')), () => choose('u_factor'), path === 'u_factor'));
  }
  if (most?.rule === 'rim_exposed' || most?.rule === 'tested_thickness' || coverChosen) {
    const cost = depth.cover?.cost;
    const aim = (least?.at_in ?? 0) + depth.under_in;
    rows.push(out('cover', join(
      t('depth.out_why.cover', { depth: w.depth(least?.at_in) }),
      depth.aim_in.likely < aim - 1e-6 && costs(aim, [{ do: 'entry', part: 'surface', id, field: 'exposure', text: 'covered' }]),
      cost === undefined || cost === null ? t('depth.out_why.cover_cost_open') : t('depth.out_why.cover_cost', { cost: w.money(cost) })),
    () => store.dispatch({ do: 'entry', part: 'surface', id, field: 'exposure', text: covered ? '' : 'covered' }), coverChosen));
  }
  if (fill) rows.push(out('fill', join(t('depth.out_why.fill', { depth: w.depth(fill.at_in ?? depth.cavity_in) }), fill.at_in ? costs(fill.at_in) : '', t('depth.out_why.accept')), () => choose('fill'), path === 'fill'));
  if (small?.at_in) rows.push(out('small_ceiling', t('depth.out_why.small_ceiling', { depth: w.depth(small.at_in) }), () => choose('small_ceiling'), path === 'small_ceiling'));
  const asks = target ? depth.target_r : least?.asks;
  if (most?.at_in && gap !== undefined) {
    rows.push(out('foam', asks ? t('depth.out_why.foam', { r: w.r(asks), depth: w.depth(most.at_in), each: w.r(asks / most.at_in) }) : t('depth.out_why.foam_deep', { depth: w.depth(most.at_in) }), to('foam', sheet)));
  }
  if (known || path === 'accepted') rows.push(out('accepted', t('depth.out_why.accepted'), () => choose('accepted'), path === 'accepted'));
  if (known || path === 'none') rows.push(out('none', join(depth.promised_r === undefined ? '' : t('depth.out_why.none_r', { r: w.r(depth.promised_r) }), t('depth.out_why.none')), () => choose('none'), path === 'none'));
  if (target && gap !== undefined) rows.push(out('target', t('depth.out_why.target', { depth: w.depth(most?.at_in) }), () => document.getElementById(fieldId('surface', id, 'target_r'))?.focus()));
  if (!known && !store.estimate?.place.zone) rows.push(out('place', t('depth.out_why.place'), to('place')));

  // Where two rules that decide cross, the finding above says so.
  const said = gap === undefined ? (coverChosen || pathChosen) && note('none', t('depth.way_chosen'), t('depth.way_chosen_do')) : sure ? undefined : note('watch', t('depth.cross_memory'), t('depth.cross_memory_do'));
  return el('div', '', el('h2', 'bar', gap === undefined ? t(coverChosen || pathChosen ? 'depth.ways_taken' : 'depth.ways_code') : t('depth.ways_out', { gap: w.depth(gap) })), said || undefined, el('ul', 'rows', ...rows));
}
