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
import { findingNote, note } from '../parts.js';
import { has, label, t } from '../words.js';

/** Findings of the whole estimate that are told as the core tells them. */
const OVERALL = new Set(['too_big', 'burns_too_fast']);
/** The sheets of the host's list, and what comes to the price: no field here says what is wrong with them, and only the host can mend it. */
const LISTED = new Set(['foam', 'r_row', 'kit']);
const UNSOUND = new Set(['kit_unusable', 'mass_short']);
const CHARGES = new Set(['sales_tax', 'delivery']);
const NO_KITS = new Set(['no_kits', 'not_enough_kits']);
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

/** Whether tax or delivery are in the list and cannot be read. @param {Store} store */
export const unreadCharge = (store) => all(store).some(({ at, severity }) => at.part === 'job' && CHARGES.has(at.field) && severity === 'stop');

/**
 * What is amiss with the host's list, as a visitor has to know it; its owner is told more in the console.
 * @param {Store} store @returns {('unread' | 'no_kits')[]}
 */
export function amiss(store) {
  const unread = unreadCharge(store) || all(store).some(({ at, code, severity }) => LISTED.has(at.part) && (severity === 'stop' || UNSOUND.has(code)));
  const few = all(store).some(({ at, code }) => at.part === 'purchase' && NO_KITS.has(code));
  return [...(unread ? [/** @type {const} */ ('unread')] : []), ...(few ? [/** @type {const} */ ('no_kits')] : [])];
}

/** The same as notes. @param {Store} store @param {{company: string}} settings */
export const amissNotes = (store, { company }) => amiss(store).map((one) => note('watch', t(`embed.${one}`, { company: company || t('embed.host') }), t('embed.unread_do')));

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
