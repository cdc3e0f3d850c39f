// @ts-check
/**
 * The answer: board feet, kits and price; the kits by name; what the price is made of; what the core has to say.
 * While a surface is not worked out yet, nothing is totaled as if it were: it says what is missing.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 * @typedef {import('../core.js').Estimate} Estimate
 */
import { fieldId } from '../field.js';
import { figures } from '../figures.js';
import { el } from '../list.js';
import { nameOf } from '../named.js';
import { byId, redraw, row, worked } from '../parts.js';
import { to } from '../view.js';
import { t } from '../words.js';
import { examples } from './samples.js';
import { worked as settled } from './settled.js';
import { focusField } from './drawingpart.js';
import { inBrief } from './inbrief.js';
import { amissNotes, lacks, noteOf, overall, unreadCharge } from './told.js';

/** How large a figure stands in its cell. @param {string} figure */
const size = (figure) => (figure.length > 7 ? 'long longer' : figure.length > 5 ? 'long' : '');

/** @param {Store} store @param {Settings} settings */
export function totalPart(store, settings) {
  const block = el('div', 'block');
  const yet = el('div');
  const rows = el('div');
  const notes = el('div', 'says');
  const node = el('section', { class: 'total', 'aria-labelledby': 'total' }, el('h2', { id: 'total', class: 'vh', tabindex: -1 }, t('embed.answer')), block, el('div', 'pad', yet, rows, notes));
  const has = (/** @type {import('./settings.js').Section} */ one) => settings.sections.has(one);

  /** @param {Estimate} all */
  const cells = (all) => inBrief(store, settings, all).map(({ figure, below, working, kind }) => (working
    ? el('a', { class: `fig ${kind}`, href: to('working', 'job', 0, working) }, el('b', size(figure), figure), el('span', '', below))
    : el('div', kind, el('b', size(figure), figure), el('span', '', below))));

  /** What is missing, surface by surface; a press goes to the first field that is. */
  function missing() {
    const { n, of } = settled(store);
    if (n === of) return [];
    if (of === 1) return [el('p', 'note top', t('embed.begin'))];
    const open = store.job.surfaces.flatMap((surface) => {
      const lack = lacks(store, surface);
      return lack.length ? [el('li', 'press', el('button', { type: 'button', class: 'press', 'data-key': `lack-${surface.id}`, click: () => focusField(fieldId(lack[0].at.part, lack[0].at.id, lack[0].at.field)) },
        el('span', 'k', el('b', 'act', nameOf(surface)), el('small', '', t('surface.lacking', { fields: lack.map((one) => one.name).join(' · ') })))))] : [];
    });
    return [el('p', 'note top', t('embed.partly', { n, of })), open.length ? el('ul', 'rows', ...open) : undefined];
  }

  /** The kits by name and count. @param {Estimate} all */
  function kits({ purchase: { buy, sizes } }) {
    const w = figures(store.job.units);
    if (!buy?.kits) return undefined;
    return el('ul', 'rows', ...buy.buy.map(({ kit, count }) => row(byId(store.job.kits, kit)?.name || t('kits.unnamed'),
      t('embed.on_label', { amount: w.foam(sizes.find((one) => one.kit === kit)?.label) }), t('embed.count', { n: count }))),
    row(t(buy.left < 0 ? 'kits.short' : 'kits.left'), t('embed.left_doubt'), worked(w.foam(Math.abs(buy.left)), 'job', 0, 'purchase.buy.left')));
  }

  /** What the price is made of. @param {Estimate} all */
  function price({ purchase }) {
    const w = figures(store.job.units);
    const found = purchase.price;
    if (!found) return el('p', 'note top', t(unreadCharge(store) ? 'embed_ways.no_charges' : 'embed.no_price'));
    return el('ul', 'rows plain', row(t('embed.price_kits'), '', worked(w.money(found.kits), 'job', 0, 'purchase.buy.cost')),
      found.tax ? row(t('embed.price_tax'), w.rate(found.tax_pct), worked(w.money(found.tax), 'job', 0, 'purchase.price.tax')) : undefined,
      found.delivery ? row(t('embed.price_delivery'), '', w.money(found.delivery)) : undefined,
      row(el('b', '', t('embed.sum')), '', worked(w.money(found.total), 'job', 0, 'purchase.price.total'), 'sum'));
  }

  function update() {
    const all = store.estimate;
    if (!all) return;
    const { n, of } = settled(store);
    const whole = of > 0 && n === of;
    const { buy, too_big: big } = all.purchase;
    redraw(block, cells(all));
    block.dataset.cells = String(block.children.length);
    redraw(yet, missing());
    redraw(rows, whole && !big ? [has('kits') && kits(all), has('price') && buy?.kits ? price(all) : undefined] : []);
    redraw(notes, [...overall(store).map(noteOf), ...amissNotes(store, settings), examples(settings)]);
  }

  return { node, update };
}
