// @ts-check
/**
 * Which surfaces are worked out, as an estimate that goes to somebody has to mean it: each has an area and a depth, and
 * its openings lie within it. The core also works out a wall that a window typed in the wrong unit takes away whole.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('../core.js').At} At
 * @typedef {import('../job.js').Surface} Surface
 */
import { shapeForms } from '../calls.js';
import { entryOf } from '../changes.js';

/** Openings that take away more than the surface is. */
const EXCEED = 'openings_exceed';

/** Whether a finding is about this surface or what hangs on it. @param {At} at @param {Surface} surface */
export function about({ part, id }, surface) {
  if (part === 'surface') return id === surface.id;
  return (part === 'opening' ? surface.openings : part === 'leg' ? surface.legs ?? [] : []).some((one) => one.id === id);
}

/** Whether a surface is worked out. @param {Pick<Store, 'estimate'>} store @param {Surface} surface */
export function settled({ estimate }, surface) {
  const one = estimate?.surfaces.find(({ id }) => id === surface.id);
  if (!one?.in_place) return false;
  const deep = one.in_place.likely > 0 || (one.area?.net_ft2.likely ?? 0) > 0 && (one.depth?.aim_in.likely ?? 0) > 0;
  return deep && !estimate?.findings.some(({ at, code, severity }) => severity === 'stop' && (at.part !== 'surface' || code === EXCEED) && about(at, surface));
}

/** So many surfaces are worked out, of so many. @param {Pick<Store, 'job' | 'estimate'>} store */
export const worked = (store) => ({ n: store.job.surfaces.filter((one) => settled(store, one)).length, of: store.job.surfaces.length });

/**
 * Where to look where no blank keeps a surface from being worked out: at the openings that are too large, or at the
 * measure that is nothing.
 * @param {Store} store @param {Surface} surface @returns {At}
 */
export function amissAt({ job, estimate }, surface) {
  const one = estimate?.surfaces.find(({ id }) => id === surface.id);
  const wide = estimate?.findings.some(({ at, code }) => code === EXCEED && about(at, surface));
  if (wide && surface.openings.length) return { part: 'opening', id: surface.openings[0].id, field: 'width' };
  const asked = shapeForms().find(({ shape }) => shape === surface.shape)?.entries.filter(({ field }) => entryOf(job, 'surface', surface.id, field)) ?? [];
  const nothing = asked.find(({ field }) => !/[1-9]/.test(entryOf(job, 'surface', surface.id, field)?.text ?? ''));
  const field = (one?.area?.net_ft2.likely ?? 0) > 0 ? 'depth' : (nothing ?? asked[0])?.field ?? 'depth';
  return { part: 'surface', id: surface.id, field };
}
