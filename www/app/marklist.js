// @ts-check
/** Where each mark of the ruler comes from, a line of reason and one of source; then what is not drawn, and why not. */
import { zoneName } from './cutaway.js';
import { figures } from './figures.js';
import { codeRow, drawn, facts } from './levels.js';
import { el } from './list.js';
import { src, to } from './parts.js';
import { has, t } from './words.js';

/** @typedef {import('./store.js').Store} Store @typedef {import('./core.js').Depth} Depth @typedef {import('./core.js').Mark} Mark */

/** Each rule with its place and whether it applies: the marks of the ruler from the deepest down first. @param {Store} store @param {Depth} depth @param {number} sheet */
export function rules(store, depth, sheet) {
  const w = figures(store.job.units);
  const zone = zoneName(store);
  const shown = depth.marks.filter(drawn).sort((a, b) => (b.at_in ?? 0) - (a.at_in ?? 0));
  const others = depth.marks.filter((mark) => mark.stands === 'applies' && !shown.includes(/** @type {any} */ (mark)));
  const off = depth.marks.filter((mark) => mark.stands !== 'applies');
  const lacks = (/** @type {Mark} */ mark) => (mark.lacks.length ? el('span', '', ' ', ...mark.lacks.flatMap((name, at) => [at ? ', ' : '', el('a', { href: to('foam', sheet) }, t(`fields.${name}`))]), '.') : '');
  return el('ul', 'rows', ...[...shown, ...others, ...off].map((mark) => {
    const stands = mark.stands === 'applies';
    const short = `depth.mark_short.${mark.rule}`;
    // A rule that could name no depth is called by its short name.
    const rule = (mark.at_in === undefined || mark.at_in === null) && has(short) ? t(short) : t(`depth.rule.${mark.rule}`, facts(mark, w, depth.target_r, zone));
    return el('li', 'tall',
      el('b', '', stands ? rule : t('depth.not_drawn', { rule })),
      el('p', 'note', t(`depth.stands.${mark.stands}`), lacks(mark)),
      src([mark.section && t('depth.section', { section: mark.section, edition: mark.edition }), mark.printed && t('depth.printed', { row: codeRow(mark.printed) }), t(`depth.trust.${mark.trust}`)].filter(Boolean).join('; ')));
  }));
}
