// @ts-check
/** Where each mark of the ruler comes from, and which are not drawn. */
import { figures } from './figures.js';
import { el } from './list.js';
import { src, to } from './parts.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store @typedef {import('./core.js').Depth} Depth */

/** Each rule with its place and whether it applies. @param {Store} store @param {Depth} depth @param {number} sheet */
export function rules(store, depth, sheet) {
  const w = figures(store.job.units);
  return el('ul', 'rows', ...depth.marks.map((mark) => el('li', 'tall',
    el('b', '', t(`depth.rule.${mark.rule}`, { depth: w.depth(mark.at_in) })),
    el('p', 'note', t(`depth.stands.${mark.stands}`), mark.lacks.length ? el('span', '', ' ', ...mark.lacks.flatMap((name, at) => [at ? ', ' : '', el('a', { href: to('foam', sheet) }, t(`fields.${name}`))]), '.') : ''),
    src([mark.section && t('depth.section', { section: mark.section, edition: mark.edition }), t(`depth.trust.${mark.trust}`)].filter(Boolean).join('; ')))));
}
