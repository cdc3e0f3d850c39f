// @ts-check
/** Every surface of a job to scale, side by side: at one scale as far as that is legible. */
import { elevation, shownOf } from './drawing/elevation.js';
import { nameOf, squareWords } from './drawn.js';
import { figures, ranged } from './figures.js';
import { el } from './list.js';
import { mark } from './marks.js';
import { byId, to } from './parts.js';
import { square } from './svg.js';
import { outlineOf, toScale } from './toscale.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

/** A drawing is legible from so many pixels along its longer side and across. */
const LONG = 54;
const THIN = 5;
/** How wide a card is at least, and a drawing at a scale of its own. */
const CARD = 156;
const OWN = 300;

/**
 * The drawings, and what their common scale is; nothing while no area is known.
 * @param {Store} store @param {number} width of the sheet, in pixels @param {boolean} [paper] on paper nothing is pressed
 */
export function contact(store, width, paper = false) {
  const { job } = store;
  const w = figures(job.units);
  const known = job.surfaces.map((surface) => ({ surface, ...outlineOf(store, surface.id) }));
  const outlines = known.flatMap((one) => one.outline ?? []);
  if (!outlines.length) return undefined;
  const k = commonScale(outlines, width, w.metric);
  const cards = known.map(({ surface, outline, area }) => {
    const title = paper ? el('b', '', nameOf(surface)) : el('a', { href: to('surface', surface.id) }, nameOf(surface));
    if (!outline || !area) return el('li', '', title, el('p', 'note', mark('none'), ' ', t('paper.not_drawn')));
    const common = fits(outline, k, width, w.metric);
    const { svg, said, scale, width: broad, height } = toScale(store, surface, outline, area, common ? { width: CARD, k, whole: true } : { width: Math.min(width, OWN), whole: true });
    svg.setAttribute('width', String(Math.round(broad)));
    svg.setAttribute('height', String(Math.round((height * Math.round(broad)) / broad)));
    const depth = store.estimate && byId(store.estimate.surfaces, surface.id)?.depth;
    return el('li', common ? '' : 'own', title, svg,
      el('p', '', t('paper.drawn_net', { net: ranged(area.net_ft2, w.area) }), ' · ', depth ? t('takeoff.aim_short', { depth: ranged(depth.aim_in, w.depth) }) : t('paper.no_depth')),
      svg.getAttribute('data-tinted') === 'net' && outline.view === 'elevation' && area.many === '' ? undefined : el('p', 'note', said),
      common ? undefined : el('p', 'note', t('paper.own_scale', { scale })));
  });
  const { count } = square(k, w.metric);
  return { cards: el('ul', 'contact', ...cards), scale: squareWords(w.metric, count) };
}

/** The largest scale at which an outline is not wider than the sheet. @param {import('./core.js').Outline} outline @param {number} width @param {boolean} metric */
function widest(outline, width, metric) {
  const drawn = (/** @type {number} */ k) => elevation(outline, { width: 0, metric, label: '', letters: new Map(), whole: true, k }).width;
  let k = Math.min(width / Math.max(1, outline.width_in), (width * 0.6) / Math.max(1, outline.height_in));
  for (let time = 0; time < 6 && drawn(k) > width; time += 1) k *= Math.min(0.97, (width - 2) / drawn(k));
  return k;
}

/** Whether it is legible at a scale, and fits. @param {import('./core.js').Outline} outline @param {number} k @param {number} width @param {boolean} metric */
const fits = (outline, k, width, metric) => k <= widest(outline, width, metric) * 1.0001
  && k * Math.max(outline.width_in, outline.height_in) >= LONG && k * Math.min(outline.width_in, outline.height_in) >= THIN;

/** The scale at which most are legible; the largest of several. @param {import('./core.js').Outline[]} outlines @param {number} width @param {boolean} metric */
function commonScale(outlines, width, metric) {
  const all = outlines.map((one) => ({ long: Math.max(one.width_in, one.height_in), short: Math.min(one.width_in, one.height_in), most: widest(one, width, metric), broken: shownOf(one) !== undefined }));
  const good = (/** @type {number} */ k) => all.filter((one) => k <= one.most * 1.0001 && k * one.long >= LONG && k * one.short >= THIN).length;
  const tried = all.filter((one) => !one.broken).map((one) => one.most).sort((a, b) => b - a);
  return (tried.length ? tried : all.map((one) => one.most)).reduce((best, k) => (good(k) > good(best) ? k : best));
}
