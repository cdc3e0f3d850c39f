// @ts-check
/** A press that sets the climate zone. No zone is ever set without one. */
import { el } from './list.js';
import { press } from './parts.js';
import { answerTo, zoneName } from './workline.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

/** What "one warmer, of the same letter" would be called where the United States have no such zone. */
const NOWHERE = ['0a', '1b', '2c'];

/** The zones one step warmer on the map; none where the United States have none. @param {string} zone @returns {string[]} */
export function warmer(zone) {
  if (zone === '8') return ['7'];
  // Zone 7 has no letter, zone 6 has two.
  if (zone === '7') return ['6a', '6b'];
  const next = `${Number(zone[0]) - 1}${zone.slice(1)}`;
  return NOWHERE.includes(next) ? [] : [next];
}

/** A county's federal code as it is written. @param {number} county */
export const countyCode = (county) => String(county).padStart(5, '0');

/** What a press of an offer enters: the zone, and the county that it came from; none where it came from elsewhere. @param {string} zone @param {number} [county] */
export const chosenPlace = (zone, county) => [{ field: 'zone', text: zone }, { field: 'county', text: county === undefined ? '' : countyCode(county) }];

/**
 * "Use zone 5A"; "Zone 5A: chosen" once it is.
 * @param {Store} store @param {string} zone @param {{county?: number, name?: string, keep?: boolean}} [from]
 *   where the zone comes from; `keep` leaves the county as it stands
 */
export function zoneOffer(store, zone, { county, name = '', keep = false } = {}) {
  const { job } = store;
  const is = answerTo(job, 'job', 0, 'zone') === zone && (!name || county === undefined || answerTo(job, 'job', 0, 'county') === countyCode(county));
  const figures = { zone: zoneName(zone), name };
  const text = t(name ? (is ? 'place.county_chosen' : 'place.county_use') : is ? 'place.chosen' : 'place.use', figures);
  const all = chosenPlace(zone, county);
  const button = press(text, `zone-${zone}-${name ? county : ''}`, () => store.dispatch({ do: 'entries', part: 'job', id: 0, entries: keep ? all.slice(0, 1) : all }));
  button.setAttribute('aria-pressed', String(is));
  return button;
}

/** Offers beside one another, to choose one. @param {string} name @param {Node[]} offers */
export const offers = (name, offers) => el('div', { class: 'meanings', role: 'group', 'aria-label': name }, ...offers);
