// @ts-check
/**
 * What the core has to say, as far as it belongs into an estimate: nothing about readings, weather or the day, and
 * nothing that a field says itself.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('../core.js').At} At
 * @typedef {import('../job.js').Surface} Surface
 */
import { nameIn, openingName } from '../named.js';
import { findingNote } from '../parts.js';
import { has, label, t } from '../words.js';

/** Findings of the whole estimate: of the job, and those of a sheet that the visitor has to know. The rest is for whoever fills in the sheets. */
const OVERALL = new Set(['too_big', 'no_kits', 'not_enough_kits', 'burns_too_fast', 'kit_unusable', 'mass_short']);
/** Parts of a surface. */
const SURFACE = new Set(['surface', 'opening', 'leg']);

/** A finding as a note. */
export const noteOf = findingNote;

/** @param {Store} store */
const all = ({ estimate }) => estimate?.findings ?? [];

/** Whether a finding is about this surface or what hangs on it. @param {At} at @param {Surface} surface */
function about({ part, id }, surface) {
  if (part === 'surface') return id === surface.id;
  return (part === 'opening' ? surface.openings : part === 'leg' ? surface.legs ?? [] : []).some((one) => one.id === id);
}

/** Findings of a surface that no field of its card says. @param {Store} store @param {Surface} surface @param {Set<string>} shown fields on the card */
export function aside(store, surface, shown) {
  return all(store).filter(({ at, severity, code }) => {
    if (!about(at, surface) || severity === 'note' && code !== 'opening_not_placed') return false;
    // Nobody has begun to walk around it.
    if (code === 'legs_few' && !surface.legs?.length) return false;
    return at.part === 'surface' ? !shown.has(at.field) : at.part === 'opening' && ['', 'place'].includes(at.field);
  });
}

/** Findings of the whole estimate. @param {Store} store */
export const overall = (store) => all(store).filter(({ at, code }) => !SURFACE.has(at.part) && OVERALL.has(code));

/** Findings that may be said on the sheet: for these there have to be words. @param {Store} store */
export const sayable = (store) => all(store).filter(({ at, code }) => SURFACE.has(at.part) || OVERALL.has(code));

/** What keeps a surface from being worked out: each blank, and each text that cannot be taken, with its name. @param {Store} store @param {Surface} surface */
export function lacks(store, surface) {
  return all(store).filter(({ severity, at }) => severity === 'stop' && about(at, surface) && has(`fields.${at.field}`))
    .map(({ at }) => ({ at, name: nameAt(surface, at) }));
}

/** @param {Surface} surface @param {At} at */
function nameAt(surface, { part, id, field }) {
  if (part === 'surface') return nameIn(surface.shape, field);
  return [part === 'opening' && openingName(surface, id), label(part, field)].filter(Boolean).join(', ');
}

/** What is still needed, in words. @param {Store} store @param {Surface} surface */
export function lacking(store, surface) {
  const names = lacks(store, surface).map((one) => one.name);
  return names.length ? t('surface.lacking', { fields: names.join(' · ') }) : '';
}
