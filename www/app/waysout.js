// @ts-check
/** The ways out where the least depth lies above the most. */
import { fieldId } from './field.js';
import { figures } from './figures.js';
import { el } from './list.js';
import { row, to } from './parts.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store @typedef {import('./core.js').Depth} Depth */

/** Ways out where the least is above the most. @param {Store} store @param {number} id @param {Depth} depth @param {number} sheet */
export function waysOut(store, id, depth, sheet) {
  const w = figures(store.job.units);
  const { gap_in: gap, most_by: by, most_in: most } = depth.window;
  if (gap === undefined || most === undefined) return undefined;
  const out = (/** @type {string} */ key, /** @type {string} */ why, /** @type {(() => void) | string} */ does) => el('li', 'press', typeof does === 'string'
    ? el('a', { class: 'press', href: does }, el('span', 'k', el('b', '', t(`depth.out.${key}`)), el('small', '', why)), el('span', 'v act', t('depth.choose_way')))
    : el('button', { type: 'button', class: 'press', 'data-key': `out-${key}`, click: does }, el('span', 'k', el('b', '', t(`depth.out.${key}`)), el('small', '', why)), el('span', 'v act', t('depth.choose_way'))));
  const exposed = by !== 'cavity';
  return el('div', '', el('h2', 'bar', t('depth.ways_out', { gap: w.depth(gap) })), el('ul', 'rows',
    exposed ? out('cover', t('depth.out_why.cover', { depth: w.depth(depth.window.least_in) }), () => store.dispatch({ do: 'entry', part: 'surface', id, field: 'exposure', text: 'covered' })) : undefined,
    out('foam', t('depth.out_why.foam', { r: w.r(depth.target_r), depth: w.depth(most) }), to('foam', sheet)),
    out('target', t('depth.out_why.target', { depth: w.depth(most) }), () => document.getElementById(fieldId('surface', id, 'target_r'))?.focus()),
    exposed ? row(t('depth.out.ufactor'), t('depth.out_why.ufactor'), '') : undefined));
}
