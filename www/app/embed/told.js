// @ts-check
/**
 * What the core has to say, as far as it belongs into an estimate: nothing about readings, weather or the day, and
 * nothing that a field says itself.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('../core.js').Finding} Finding
 */
import { has, label, t } from '../words.js';
import { nameIn } from '../named.js';
import { findingNote } from '../parts.js';

/** Findings of the whole job that bear on the estimate. */
const OF_JOB = new Set(['too_big', 'no_kits', 'not_enough_kits']);
/** Findings of sheets that the visitor has to know; the rest is for whoever fills in the sheets. */
const OF_SHEETS = new Set(['burns_too_fast', 'kit_unusable', 'mass_short']);

/** A finding as a note. */
export const noteOf = findingNote;

/** Findings of a surface that no field of its card says. @param {Store} store @param {number} id @param {Set<string>} shown fields on the card */
export function aside({ job, estimate }, id, shown) {
  const surface = job.surfaces.find((one) => one.id === id);
  return (estimate?.findings ?? []).filter(({ at, severity, code }) => (severity !== 'note' || code === 'opening_not_placed') && !(code === 'legs_few' && !surface?.legs?.length) && (at.part === 'surface'
    ? at.id === id && !shown.has(at.field)
    : at.part === 'opening' && ['', 'place'].includes(at.field) && surface?.openings.some((one) => one.id === at.id)));
}

/** Findings of the whole estimate. @param {Store} store */
export const overall = ({ estimate }) => (estimate?.findings ?? []).filter(({ at, code }) => (at.part === 'surface' || at.part === 'opening' ? false : OF_JOB.has(code) || OF_SHEETS.has(code)));

/** Findings that may be said on the sheet: for these there have to be words. @param {Store} store */
export const sayable = ({ estimate }) => (estimate?.findings ?? []).filter(({ at, code }) => ['surface', 'opening', 'leg'].includes(at.part) || OF_JOB.has(code) || OF_SHEETS.has(code));

/** What keeps a surface from being worked out, a blank or a text that cannot be taken: part, id and field of each, and what it is called. @param {Store} store @param {import('../job.js').Surface} surface */
export function lacks({ estimate }, surface) {
  return (estimate?.findings ?? []).filter(({ severity, at }) => severity === 'stop' && has(`fields.${at.field}`) && (at.part === 'surface' && at.id === surface.id
    || at.part === 'opening' && surface.openings.some((one) => one.id === at.id) || at.part === 'leg' && (surface.legs ?? []).some((one) => one.id === at.id)))
    .map(({ at }) => ({ at, name: at.part === 'surface' ? nameIn(surface.shape, at.field) : label(at.part, at.field) }));
}

/** What is still needed, in words. @param {Store} store @param {import('../job.js').Surface} surface */
export function lacking(store, surface) {
  const names = lacks(store, surface).map((one) => one.name);
  return names.length ? t('surface.lacking', { fields: names.join(' · ') }) : '';
}
