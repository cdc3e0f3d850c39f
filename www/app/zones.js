// @ts-check
/**
 * Place → climate zone. The packed tables are fetched when a place is first looked up: the zones for any place,
 * the names of the counties only where one has to be named. Afterwards they are here, and in the offline copy.
 *
 * @typedef {import('./core.js').Found} Found
 */
import { call } from './calls.js';

/** @type {Map<string, Uint8Array>} */
const tables = new Map();
/** @type {Map<string, Promise<void>>} */
const coming = new Map();
const NOTHING = new Uint8Array();

/** Fetches a table once; a failure is not kept, so the next look-up asks again. @param {string} name */
function need(name) {
  if (tables.has(name)) return Promise.resolve();
  let fetched = coming.get(name);
  if (!fetched) {
    fetched = (async () => {
      const answer = await fetch(new URL(`./${name}.bin`, import.meta.url));
      if (!answer.ok) throw new Error(`${name}.bin: ${answer.status}`);
      tables.set(name, new Uint8Array(await answer.arrayBuffer()));
    })().finally(() => coming.delete(name));
    coming.set(name, fetched);
  }
  return fetched;
}

/**
 * Looks up a ZIP code (`81230`, `81230-1234`), a county's code (`#08051`) or a county's name or a part of it, with or
 * without its state. `withCounties`: the counties are wanted by name, which a name always needs. Rejects where a
 * table cannot be had: offline before the copy was complete, or the host fails.
 * @param {string} text
 * @param {boolean} [withCounties]
 * @returns {Promise<Found>}
 */
export async function findPlace(text, withCounties = false) {
  await Promise.all([need('zones'), withCounties || !/^\s*#?\d/.test(text) ? need('counties') : undefined]);
  const found = call('find_place', tables.get('zones') ?? NOTHING, tables.get('counties') ?? NOTHING, text);
  if (!found) throw new Error('no core');
  return found;
}

/** Looks up a county that was chosen before, by its code. @param {number | string} code */
export const findCounty = (code) => findPlace(`#${String(code).padStart(5, '0')}`, true);

/** A packed table, fetched once. @param {string} name */
export async function packed(name) {
  await need(name);
  return tables.get(name) ?? NOTHING;
}
