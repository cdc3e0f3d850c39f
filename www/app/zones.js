// @ts-check
/** Where a place lies: ZIP code or county to climate zone. */
import { call } from './calls.js';

/**
 * Looks a ZIP code or a part of a county's name up.
 * @param {string} text @param {boolean} [_withCounties] whether the counties are to be named
 * @returns {Promise<import('./core.js').Found>}
 */
export async function findPlace(text, _withCounties) {
  return call('find_place', new Uint8Array(), new Uint8Array(), text) ?? { zones: [], counties: [] };
}
