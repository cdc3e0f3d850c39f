// @ts-check
/** What is known of a surface's foam while a measure is missing: so much for every so much of it. */
import { figures, ranged } from './figures.js';
import { el } from './list.js';
import { byId, worked } from './parts.js';
import { t } from './words.js';

/** @param {import('./store.js').Store} store @param {import('./core.js').SurfaceEstimate | undefined} one */
export function untilText(store, one) {
  const until = one?.until;
  if (!until) return '';
  const w = figures(store.job.units);
  return t(`takeoff.until_${until.by}`, { feet: ranged(until.feet, w.foam), area: w.area(until.area_ft2.likely), run: w.length(until.run_length) });
}

/** The same with its working and the lifts of the depth. @param {import('./store.js').Store} store @param {number} id */
export function untilThen(store, id) {
  const one = store.estimate && byId(store.estimate.surfaces, id);
  const text = untilText(store, one);
  return text && el('p', 'note pad', worked(text, 'surface', id, 'until.feet'), one?.lifts ? ` ${t('takeoff.until_lifts', { n: one.lifts.count })}` : '');
}
