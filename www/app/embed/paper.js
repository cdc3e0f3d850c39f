// @ts-check
/**
 * The estimate as a leaf of paper: title, company and date, every surface with its measures, area, depth and foam,
 * the drawing, kits and price, what there is to say, and what governs. A section that the page around has left out
 * on the screen is left out here.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 */
import { mixWords, strip } from '../drawn.js';
import { bare, figures, ranged, total, unitOf } from '../figures.js';
import { el } from '../list.js';
import { found, LEAF_WIDTH, lines, measuresOf, told } from '../papers/leaf.js';
import { nameOf } from '../named.js';
import { byId, framed } from '../parts.js';
import { locale, money, need, t } from '../words.js';
import { examples } from './samples.js';
import { amissNotes, sayable } from './told.js';

/** Resolves when the words of the leaf are there. */
export const ready = () => need('embed_ways', 'takeoff', 'sheet', 'surface', 'paper', 'kits', 'fields', 'findings', 'sources');

/**
 * The leaf.
 * @param {Store} store @param {Settings} settings
 * @param {Node[]} cautions  as they stand on the sheet @param {string[]} governs  what is said of every estimate, ours first
 */
export function leaf(store, settings, cautions, governs) {
  const { sections } = settings;
  return [
    el('header', 'tb', el('h1', '', settings.title || t('embed_ways.print_title')), cell(t('embed_ways.estimate_for'), settings.company), cell(t('embed_ways.date'), day())),
    el('p', 'lead', t('embed_ways.paper_is')),
    drawn(store),
    part(t('embed_ways.surfaces'), surfaces(store, sections.has('depth'))),
    part(t('embed_ways.kits'), bought(store, sections)),
    part(t('embed_ways.told'), el('div', 'says', examples(settings), ...amissNotes(store, settings), ...sayable(store).filter((one) => one.code !== 'needed' && one.severity !== 'note').map((one) => found(store, one)), ...cautions)),
    el('div', 'governs', ...governs.map((text) => el('p', 'note', text))),
  ].filter((one) => one !== undefined);
}

const day = () => new Date().toLocaleDateString(locale(), { year: 'numeric', month: 'long', day: 'numeric' });

/** @param {string} name @param {string} text */
const cell = (name, text) => text ? el('p', '', el('span', '', name), ' ', el('b', '', text)) : undefined;

/** @param {string} name @param {HTMLElement | undefined} inside */
const part = (name, inside) => inside && el('section', '', el('h2', '', name), inside);

/** @param {Store} store */
function drawn(store) {
  const shown = strip(store, LEAF_WIDTH);
  return shown && framed(shown.svg, shown.hidden ? t('sheet.strip_more', { n: shown.hidden }) : t('sheet.strip_caption'), shown.square);
}

/** Each surface with its measures, and their sum. @param {Store} store @param {boolean} deep  with depth and R */
function surfaces(store, deep) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const area = (/** @type {number} */ value) => bare(w.area(value));
  const amount = estimate?.quantity;
  /** @type {[string, ('' | 'r')?][]} */
  const heads = [[t('embed_ways.col_surface')], [t('embed_ways.col_area', { unit: unitOf(w.area(1)) }), 'r'],
    ...(deep ? /** @type {[string, 'r'][]} */ ([[t('embed_ways.col_depth', { unit: unitOf(w.depth(1)) }), 'r'], [t('embed_ways.col_r'), 'r']]) : []), [t('embed_ways.col_foam'), 'r']];
  const rows = job.surfaces.map((surface) => {
    const one = estimate && byId(estimate.surfaces, surface.id);
    const { depth } = one ?? {};
    return { cells: [
      el('span', '', nameOf(surface), el('small', '', measuresOf(store, one, surface))),
      one?.area ? ranged(one.area.net_ft2, area) : t('embed_ways.not_yet'),
      ...(deep ? [depth ? ranged(depth.aim_in, (value) => bare(w.depth(value))) : t('embed_ways.not_yet'), depth?.promised_r === undefined ? '–' : w.r(depth.promised_r)] : []),
      one?.in_place ? ranged(one.in_place, (value) => bare(w.foam(value))) : '–',
    ] };
  });
  const areas = (estimate?.surfaces ?? []).flatMap((one) => (one.area ? [one.area.net_ft2] : []));
  const partly = amount && amount.surfaces < amount.of;
  const sum = { kind: 'sum', cells: [
    partly ? t('embed_ways.so_far', { n: amount.surfaces, of: amount.of }) : t('embed_ways.sum'),
    areas.length ? ranged(total(areas), area) : '–', ...(deep ? ['', ''] : []),
    amount?.surfaces ? el('b', '', ranged(amount.to_spray_up, (value) => bare(w.foam(value)))) : '–',
  ] };
  return lines(t('embed_ways.surfaces'), heads, [...rows, sum]);
}

/**
 * Foam, kits and price. While a surface is not worked out, each figure says how far it holds; before the first is,
 * there are no figures.
 * @param {Store} store @param {Settings['sections']} sections
 * @returns {{what: string, value: string, below?: string, sum?: boolean}[]}
 */
export function facts(store, sections) {
  const { job, estimate } = store;
  const { surfaces: n = 0, of = 0 } = estimate?.quantity ?? {};
  const { buy, too_big: big, price } = estimate?.purchase ?? {};
  const foam = byId(job.foams, job.foam)?.name;
  const w = figures(job.units);
  const enough = n > 0 && buy?.enough && !big;
  const so_far = n < of ? { below: t('embed_ways.or_more', { n, of }) } : {};
  const kits = () => (big ? t('kits.big_lead', { amount: w.foam(big.to_spray), limit: bare(w.foam(big.limit)), n: big.largest_kits, kits: big.kits_limit })
    : enough ? mixWords(store, buy.buy) : t(n > 0 ? 'kits.none_fit' : 'embed_ways.not_yet'));
  const paid = (/** @type {'kits' | 'tax' | 'delivery'} */ name) => (price && (name === 'kits' || price[name]) ? [{ what: t(`embed_ways.price_${name}`), value: money(price[name]), ...so_far }] : []);
  return [
    ...(sections.has('foam') && foam ? [{ what: t('embed_ways.foam'), value: foam }] : []),
    ...(sections.has('kits') ? [{ what: t('embed_ways.kits'), value: kits(), ...(n > 0 ? so_far : {}) }] : []),
    ...(sections.has('spraying') && estimate?.spraying.lifts ? [{ what: t('embed_ways.passes'), value: String(estimate.spraying.lifts), ...so_far }] : []),
    ...(sections.has('price') && enough && price ? [...paid('kits'), ...paid('tax'), ...paid('delivery'), { what: t('embed_ways.price_total'), value: money(price.total), sum: true, ...so_far }] : []),
  ];
}

/** The same as a table. @param {Store} store @param {Settings['sections']} sections */
function bought(store, sections) {
  const rows = facts(store, sections).map(({ what, value, below, sum }) => ({ cells: [told(what, below ? [below] : []), sum ? el('b', '', value) : value] }));
  return rows.length ? lines(t('embed_ways.kits'), [[t('embed_ways.what')], ['', 'r']], rows, 'facts') : undefined;
}
