// @ts-check
/** The materials list: what to buy, what is at hand, and what only a person on site can count. */
import { figures } from '../figures.js';
import { el } from '../list.js';
import { byId } from '../parts.js';
import { paid } from '../price.js';
import { nozzleWords } from '../sheet.js';
import { t } from '../words.js';
import { entered, leaf, lines, section, tick, unmeasured } from './leaf.js';

/** @typedef {import('../store.js').Store} Store */

/** What a crew counts for itself: none of it follows from the job. */
const COUNTED = ['gloves', 'cartridges', 'suits', 'eyes', 'masking', 'tape', 'purge', 'probe', 'knife', 'scrap'];

/** @param {Store} store */
export function materials(store) {
  const { job, estimate } = store;
  if (!estimate) return undefined;
  const w = figures(job.units);
  const plan = estimate.spraying;
  const has = plan.nozzles_in_cartons ?? undefined;
  return leaf(store, 'materials',
    section(t('paper.to_buy'), ...buying(store)),
    section(t('paper.at_hand'), ...shelf(store)),
    section(t('spraying.nozzles'), lines(t('spraying.nozzles'), [[t('paper.what')], [t('paper.count'), 'r'], [t('paper.got')]], [
      { cells: [el('span', '', t('spraying.nozzles_at_hand'), el('small', '', nozzleWords(plan))), el('b', '', String(plan.nozzles)), tick()] },
      { cells: [t('paper.in_cartons'), has === undefined ? unmeasured() : String(has), undefined] },
    ]), el('p', 'note', t('spraying.nozzles_note'))),
    section(t('paper.count_yourself'), lines(t('paper.count_yourself'), [[t('paper.what')], [t('paper.count'), 'w'], [t('paper.size'), 'w'], [t('paper.got')]],
      COUNTED.map((one) => ({ cells: [el('span', '', t(`paper.item.${one}`), el('small', '', t(`paper.item.${one}_why`))), undefined, undefined, tick()] })), 'write')),
    section(t('paper.sheets_used'), lines(t('paper.sheets_used'), [[t('paper.sheet')], [t('paper.catalogue')], [t('paper.says_on_it')]], [
      ...job.foams.map((foam) => ({ cells: [foam.name.trim() || t('depth.foam_unnamed'), version(foam), el('small', '', entered(store, 'foam', foam.entries).join('; ') || t('paper.blank_sheet'))] })),
      ...job.kits.map((kit) => ({ cells: [kit.name.trim() || t('kits.unnamed'), version(kit), el('small', '', entered(store, 'kit', kit.entries).join('; ') || t('paper.blank_sheet'))] })),
    ]), el('p', 'note', t('paper.foam_for', { amount: estimate.quantity.surfaces ? w.foam(estimate.quantity.to_spray_up.likely) : '–' }))));
}

/** @param {{sheet: string, version: number}} sheet */
const version = ({ sheet, version }) => (sheet ? t('paper.version', { sheet, version: String(version) }) : t('paper.own_sheet'));

/** @param {Store} store */
function buying(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const p = estimate?.purchase;
  const buy = p?.buy;
  if (!p || !buy) return [el('p', 'note', t('kits.none_fit'))];
  const rows = [...buy.buy].filter((one) => one.count > 0).map(({ kit, count }) => {
    const size = p.sizes.find((one) => one.kit === kit);
    return { label: size?.label ?? 0, cells: [el('b', '', byId(job.kits, kit)?.name || t('kits.unnamed')), size ? w.foam(size.label) : '', size ? w.foam(size.usable) : '', el('b', '', String(count)), size?.price === undefined ? t('kits.no_price') : w.money(size.price), tick()] };
  }).sort((a, b) => b.label - a.label);
  const reason = job.purchase?.reason.trim();
  return [
    p.too_big && el('p', 'lead', t('kits.big_do')),
    !buy.enough && el('p', 'lead', t('kits.short_why')),
    lines(t('paper.to_buy'), [[t('kits.kit')], [t('kits.label'), 'r'], [t('kits.usable_short'), 'r'], [t('paper.count'), 'r'], [t('paper.each'), 'r'], [t('paper.got')]], [
      ...rows,
      { kind: 'sum', cells: [t('paper.in_all'), w.foam(buy.label), w.foam(buy.usable), el('b', '', String(buy.kits)), el('b', '', buy.cost === undefined ? t('kits.no_price') : w.money(buy.cost)), undefined] },
      ...paid(p, w).map(({ of, what, below, value }) => ({ kind: of === 'total' ? 'sum' : '', cells: [below && of !== 'total' ? el('span', '', what, el('small', '', below)) : what, '', '', '', of === 'total' ? el('b', '', value) : value, undefined] })),
    ]),
    el('p', 'note', p.chosen && reason ? t('paper.reason', { reason }) : p.chosen ? t('kits.yours') : t('kits.least_cost')),
  ];
}

/** Kits that are there already. @param {Store} store */
function shelf(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  /** @type {{kit: number, counts?: string, counted?: number}[]} */
  const known = /** @type {any} */ (estimate?.purchase).stock ?? [];
  const stock = job.stock ?? [];
  if (!stock.length) return [el('p', 'note', t('paper.no_stock'))];
  return [lines(t('paper.at_hand'), [[t('kits.kit')], [t('paper.says_on_it')], [t('paper.counts'), 'r'], [t('paper.got')]], stock.map((kit) => {
    const one = known.find((it) => it.kit === kit.id);
    return { cells: [el('b', '', kit.name.trim() || t('kits.unnamed')), el('small', '', entered(store, 'owned', kit.entries).join('; ') || t('paper.blank_sheet')),
      one?.counts === 'yes' && one.counted !== undefined ? w.foam(one.counted) : t('paper.not_counted'), tick()] };
  }))];
}
