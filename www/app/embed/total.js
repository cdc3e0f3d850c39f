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
import { bare, figures, isRange } from '../figures.js';
import { el } from '../list.js';
import { nameOf } from '../named.js';
import { byId, redraw, row, worked } from '../parts.js';
import { to } from '../view.js';
import { t } from '../words.js';
import { examples } from './samples.js';
import { focusField } from './drawingpart.js';
import { amissNotes, lacks, noteOf, overall, unreadCharge } from './told.js';

/** How large a figure stands in its cell. @param {string} figure */
const size = (figure) => (figure.length > 7 ? 'long longer' : figure.length > 5 ? 'long' : '');

/** @param {Store} store @param {Settings} settings */
export function totalPart(store, settings) {
  const block = el('div', 'block');
  const yet = el('div');
  const rows = el('div');
  const notes = el('div', 'says');
  const node = el('section', { class: 'total', 'aria-labelledby': 'total' }, el('h2', { id: 'total', class: 'vh' }, t('embed.answer')), block, el('div', 'pad', yet, rows, notes));
  const has = (/** @type {import('./settings.js').Section} */ one) => settings.sections.has(one);

  /** @param {Estimate} all */
  function cells({ quantity, purchase, spraying }) {
    const w = figures(store.job.units);
    const none = quantity.surfaces === 0;
    const partly = !none && quantity.surfaces < quantity.of;
    const up = quantity.to_spray_up;
    const big = purchase.too_big;
    const kits = big ? big.largest_kits : purchase.buy?.kits;
    const { price } = purchase;
    /** @param {string} figure @param {string} below @param {string} [working] @param {string} [kind] */
    const cell = (figure, below, working = '', kind = '') => (working && !none
      ? el('a', { class: `fig ${kind}`, href: to('working', 'job', 0, working) }, el('b', size(figure), figure), el('span', '', below))
      : el('div', kind, el('b', size(figure), figure), el('span', '', below)));
    const part = partly ? 'part' : '';
    return [
      cell(none ? '–' : bare(w.foam(up.likely)), none || !partly && !isRange(up) ? t('sheet.board_feet', { n: none ? 0 : up.likely })
        : partly ? t('embed.feet_partly', { n: quantity.surfaces, of: quantity.of }) : t('embed.feet_range', { low: bare(w.foam(up.low)), high: bare(w.foam(up.high)) }), 'quantity.to_spray_up', part),
      has('kits') && cell(none || kits === undefined ? '–' : String(kits), big ? t('page.too_big') : t(partly ? 'embed.kits_partly' : 'sheet.kits_n', { n: kits ?? 0 }), big ? '' : 'purchase.buy.left', big ? 'big' : part),
      has('spraying') && cell(spraying.lifts && !none ? String(spraying.lifts) : '–', t('sheet.passes_n', { n: spraying.lifts }), 'spraying.lifts', part),
      has('price') && cell(none || !price || big ? '–' : w.money(price.total), partly ? t('embed.price_partly') : t('embed.total'), price && !big ? 'purchase.price.total' : '', part),
    ];
  }

  /** What is missing, surface by surface; a press goes to the first field that is. @param {Estimate} all */
  function missing({ quantity }) {
    if (quantity.surfaces === quantity.of) return [];
    if (quantity.of === 1) return [el('p', 'note top', t('embed.begin'))];
    const open = store.job.surfaces.flatMap((surface) => {
      const lack = lacks(store, surface);
      return lack.length ? [el('li', 'press', el('button', { type: 'button', class: 'press', 'data-key': `lack-${surface.id}`, click: () => focusField(fieldId(lack[0].at.part, lack[0].at.id, lack[0].at.field)) },
        el('span', 'k', el('b', 'act', nameOf(surface)), el('small', '', t('surface.lacking', { fields: lack.map((one) => one.name).join(' · ') })))))] : [];
    });
    return [el('p', 'note top', t('embed.partly', { n: quantity.surfaces, of: quantity.of })), open.length ? el('ul', 'rows', ...open) : undefined];
  }

  /** The kits by name and count. @param {Estimate} all */
  function kits({ purchase: { buy, sizes } }) {
    const w = figures(store.job.units);
    if (!buy?.kits) return undefined;
    return el('ul', 'rows', ...buy.buy.map(({ kit, count }) => row(byId(store.job.kits, kit)?.name || t('kits.unnamed'),
      t('embed.on_label', { amount: w.foam(sizes.find((one) => one.kit === kit)?.label) }), t('embed.count', { n: count }))),
    row(t(buy.left < 0 ? 'kits.short' : 'kits.left'), '', worked(w.foam(Math.abs(buy.left)), 'job', 0, 'purchase.buy.left')));
  }

  /** What the price is made of. @param {Estimate} all */
  function price({ purchase }) {
    const w = figures(store.job.units);
    const found = purchase.price;
    if (!found) return el('p', 'note top', t(unreadCharge(store) ? 'embed.no_charges' : 'embed.no_price'));
    return el('ul', 'rows plain', row(t('embed.price_kits'), '', worked(w.money(found.kits), 'job', 0, 'purchase.buy.cost')),
      found.tax ? row(t('embed.price_tax'), w.rate(found.tax_pct), worked(w.money(found.tax), 'job', 0, 'purchase.price.tax')) : undefined,
      found.delivery ? row(t('embed.price_delivery'), '', w.money(found.delivery)) : undefined,
      row(el('b', '', t('embed.sum')), '', worked(w.money(found.total), 'job', 0, 'purchase.price.total'), 'sum'));
  }

  function update() {
    const all = store.estimate;
    if (!all) return;
    const whole = all.quantity.of > 0 && all.quantity.surfaces === all.quantity.of;
    const { buy, too_big: big } = all.purchase;
    redraw(block, cells(all));
    block.dataset.cells = String(block.children.length);
    redraw(yet, missing(all));
    redraw(rows, whole && !big ? [has('kits') && kits(all), has('price') && buy?.kits ? price(all) : undefined] : []);
    redraw(notes, [...overall(store).map(noteOf), ...amissNotes(store, settings), examples(settings)]);
  }

  return { node, update };
}
