// @ts-check
/** A surface's drawing with its words: what it shows, what it does not, and what a screen reader says of it. */
import { call } from './calls.js';
import { elevation } from './drawing/elevation.js';
import { figures, ranged } from './figures.js';
import { letters, nameOf, squareWords } from './named.js';
import { byId } from './parts.js';
import { has, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').Outline} Outline */

/** What is drawn of a surface; nothing while its area is not known. @param {Store} store @param {number} id */
export function outlineOf(store, id) {
  const area = store.estimate && byId(store.estimate.surfaces, id)?.area;
  const outline = call('outline', store.job, id);
  return outline && area ? { outline, area } : undefined;
}

/**
 * A surface to scale, and the sentences under it.
 * @param {Store} store @param {import('./job.js').Surface} surface @param {Outline} outline @param {import('./core.js').SurfaceArea} area
 * @param {Partial<import('./drawing/elevation.js').How> & {width: number}} how
 */
export function toScale(store, surface, outline, area, how) {
  const w = figures(store.job.units);
  const net = ranged(area.net_ft2, w.area);
  const size = `${w.length(outline.width_in)} × ${w.length(outline.height_in)}`;
  const faces = outline.faces.map((one) => [faceName(one.name), one.foamed ? '' : t('surface.not_foamed')].filter(Boolean).join(' ')).filter(Boolean);
  const view = has(`surface.view.${outline.view}`) ? t(`surface.view.${outline.view}`) : '';
  const label = [t(outline.true_shape ? 'surface.drawing_label' : 'surface.drawing_square', { name: nameOf(surface), size, openings: outline.openings.length, pieces: outline.members.length, net }),
    view && `${view}.`, faces.length > 0 && t('surface.faces_label', { list: faces.join(', ') }), outline.edges.length > 0 && t('surface.edges_label', { list: outline.edges.map((one) => one.text).join(', ') })];
  const drawn = elevation(outline, { metric: w.metric, letters: letters(surface), faceName, notFoamed: t('surface.not_foamed'), label: label.filter(Boolean).join(' '), ...how });
  const times = area.measures.find((one) => one.field === 'times')?.value.likely;
  const exact = outline.net_drawn && drawn.shown === undefined;
  drawn.svg.setAttribute('data-tinted', exact ? 'net' : 'apart');
  drawn.svg.setAttribute('data-square', String(drawn.inches));
  if (times !== undefined) drawn.svg.setAttribute('data-times', String(times));
  const said = [view, t(drawn.shown !== undefined && outline.net_drawn ? 'surface.to_foam' : captionOf(outline, area), { net }), times !== undefined && t('surface.times', { n: times }),
    drawn.shown !== undefined && t('surface.part_drawn', { shown: w.length(drawn.shown), whole: w.length(outline.width_in) })];
  return { ...drawn, said: said.filter(Boolean).join(' · '), scale: squareWords(w.metric, drawn.square) };
}

/** A face's own name; nothing where it has none. @param {string} name */
const faceName = (name) => (name && has(`surface.face.${name}`) ? t(`surface.face.${name}`) : '');

/** What the tint means, or why it is not the area to foam. @param {Outline} outline @param {import('./core.js').SurfaceArea} area */
function captionOf(outline, area) {
  if (!outline.true_shape) return 'surface.tinted_square';
  if (outline.net_drawn) return 'surface.tinted';
  if (outline.view === 'section') return 'surface.tinted_not';
  if (area.parts.some((one) => one.field === 'cores_ft2' && one.value.likely > 0)) return 'surface.cores_apart';
  if (['share', 'spacing'].includes(area.framing_by)) return 'surface.tinted_share';
  if (outline.not_placed > 0) return 'surface.tinted_rest';
  return area.members > outline.members.length ? 'surface.tinted_many' : 'surface.tinted_apart';
}
