// @ts-check
/** What the things of a job are called: surfaces, their fields and openings, a square of the grid. */
import { byId } from './parts.js';
import { has, label, t } from './words.js';

/** The letters of a surface's openings, in their order: A, B, … AA. @param {import('./job.js').Surface} surface */
export function letters(surface) {
  return new Map(surface.openings.map((one, at) => [one.id, (at >= 26 ? String.fromCharCode(64 + Math.floor(at / 26)) : '') + String.fromCharCode(65 + (at % 26))]));
}

/** What a surface is called. @param {import('./job.js').Surface} surface */
export const nameOf = (surface) => surface.name.trim() || t(`takeoff.shape.${surface.shape}`);

/** What a field of a surface is called with this shape. @param {string} shape @param {string} name */
export const nameIn = (shape, name) => (has(`surface.${shape}.${name}`) ? t(`surface.${shape}.${name}`) : label('surface', name));

/** What an opening is called: its name, or its letter. @param {import('./job.js').Surface} surface @param {number} id */
export function openingName(surface, id) {
  return byId(surface.openings ?? [], id)?.name?.trim() || t('surface.opening', { letter: letters(surface).get(id) ?? '' });
}

/** What a square of the grid is. @param {boolean} metric @param {number} n feet or meters */
export const squareWords = (metric, n) => t(metric ? 'sheet.square_m' : n < 1 ? 'sheet.square_in' : 'sheet.square_ft', { n });
