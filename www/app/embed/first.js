// @ts-check
/**
 * The job that the frame begins with: the host's foams, kits and prices, and the surfaces that the host wants to be
 * measured. It is an ordinary job document, so that the full tool opens it as it is.
 *
 * @typedef {import('../job.js').Job} Job
 * @typedef {import('./settings.js').Settings} Settings
 */
import { unitOf } from '../calls.js';
import { apply } from '../changes.js';

/** The shapes whose words come with the first visit: those that a homeowner meets. */
export const USUAL = /** @type {const} */ (['rim_run', 'footprint', 'framed_wall', 'framed_floor', 'framed_slope', 'rectangle', 'typed_area']);

/**
 * @param {Settings} settings
 * @param {() => string} newId
 * @param {Job} [kept]  what the visitor has entered already stays, with these settings
 * @returns {Job}
 */
export function jobFrom(settings, newId, kept) {
  /** @type {Job} */
  let job = {
    format: 'foamwright-job', version: 4, id: newId(), next_id: kept?.next_id ?? 1, units: settings.units, name: '', place: '', note: '',
    entries: charges(settings), foam: 0, surfaces: [], foams: [], kits: [], stock: [], readings: [], rounds: [], warming: [], forecast: [], events: [],
  };
  for (const sheet of settings.foams) job = apply(job, { do: 'add_foam', sheet });
  for (const sheet of settings.kits) job = apply(job, { do: 'add_kit', sheet });
  if (kept?.surfaces.length) {
    // A foam that was chosen stays chosen where the settings have it again.
    const anew = (/** @type {number} */ id) => {
      const { sheet } = kept.foams.find((one) => one.id === id) ?? {};
      return job.foams.find((one) => one.sheet === sheet)?.id;
    };
    const { surfaces } = apply(kept, { do: 'units', units: settings.units, unitOf });
    return { ...job, foam: anew(kept.foam) ?? job.foam, surfaces: surfaces.map((one) => ({ ...one, foam: anew(one.foam) ?? 0 })) };
  }
  const start = settings.start.length ? settings.start : [{ shape: settings.surfaces[0], name: '', entries: [] }];
  for (const { shape, name: called, entries } of start) {
    job = apply(job, { do: 'add_surface', shape, name: called, entries: deep(entries, settings.depths[0]) });
  }
  return job;
}

/** What is added to the price of the kits. @param {Settings} settings */
const charges = ({ sales_tax, delivery }) => [{ field: 'sales_tax', text: sales_tax }, { field: 'delivery', text: delivery }].filter((one) => one.text.trim() !== '');

/** A surface's entries with a depth: its own, or the first on offer. @param {import('../core.js').Entered[]} entries @param {string | undefined} depth */
const deep = (entries, depth) => (depth === undefined || entries.some((one) => one.field === 'depth') ? entries : [...entries, { field: 'depth', text: depth }]);
