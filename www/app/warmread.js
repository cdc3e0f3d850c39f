// @ts-check
/** What was read on a group of kits while it warms: on the steel, in the liquid. */
import { call } from './calls.js';

/** @typedef {import('./job.js').WarmReading} WarmReading */
/** @typedef {{of: 'skin' | 'liquid', f: number, ms: number, offset_min: number}} Read  in °F, and when */

/** How long a reading stands for what is so now, in milliseconds: the core counts it as long. */
const FRESH_MS = 3_600_000;

/** A reading's temperature in °F, as the core reads the text. @param {import('./store.js').Store} store @param {WarmReading} one @param {string} name */
function tempOf(store, one, name) {
  const entry = one.entries.find((each) => each.field === name);
  if (!entry?.text.trim()) return undefined;
  const unit = entry.unit ?? (store.job.units === 'metric' ? 'c' : 'f');
  const echo = call('read', entry.text, 'temperature', unit, entry.sense, 'us');
  const value = echo?.state === 'read' ? Number.parseFloat(echo.text.replace('−', '-')) : NaN;
  return Number.isFinite(value) ? value : undefined;
}

/** All that was read, in the order of the log. @param {import('./store.js').Store} store @param {import('./job.js').Warming | undefined} group @returns {Read[]} */
export const readings = (store, group) => (group?.log ?? []).flatMap((one) => /** @type {const} */ (['skin', 'liquid']).flatMap((of) => {
  const f = one.taken && tempOf(store, one, of);
  return f === undefined || !one.taken ? [] : [{ of, f, ms: one.taken.ms, offset_min: one.taken.offset_min }];
}));

/** The last of them; of steel and liquid read together the liquid. @param {readonly Read[]} all @returns {Read | undefined} */
export const lastOf = (all) => all.reduce((/** @type {Read | undefined} */ known, one) => (known && known.ms > one.ms ? known : one), undefined);

/** The last reading of the steel, or of the liquid, while it stands for now. @param {readonly Read[]} all @param {Read['of']} of @param {number} at now, in milliseconds */
export const freshOf = (all, of, at) => lastOf(all.filter((one) => one.of === of && one.ms <= at && at - one.ms <= FRESH_MS));
