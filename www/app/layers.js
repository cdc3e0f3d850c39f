// @ts-check
/** What is asked of a surface and of its layers: pure, no page. */

/** @typedef {import('./core.js').Component} Component */
/** @typedef {{made_of: string, position: string, thickness?: string}} NewLayer */

/** @type {Component[]} */
const CAVITIES = ['attic_floor', 'roof_deck', 'wall', 'rim', 'mass_wall_inside', 'floor', 'basement_wall', 'crawl_wall'];
/** @type {Component[]} */
const PLAIN = ['mass_wall_inside', 'mass_wall_outside', 'basement_wall', 'crawl_wall', 'cold_room', 'other'];
/** Where the class of the retarder on the room side bears on the foam. @type {Component[]} */
const RETARDED = ['wall', 'rim', 'roof_deck', 'mass_wall_inside', 'basement_wall'];

/**
 * The questions that matter for a surface, in the order in which they are shown.
 * @param {{component?: Component | null, work?: import('./core.js').Work | null, zone?: string | null, runs?: string, counted?: boolean}} about  `counted`: the take-off knows the framing's share already
 * @returns {string[]}
 */
export function asked({ component, work, zone, runs, counted }) {
  const all = ['component'];
  if (!component) return all;
  const standing = work === 'alteration' || work === 'insulation_only';
  if (standing && CAVITIES.includes(component)) all.push('cavity_opened');
  if (component !== 'rim') all.push('runs');
  const members = component === 'rim' || !(runs === 'across' && PLAIN.includes(component));
  if (members) all.push('framing', ...(counted ? [] : ['framing_share']));
  if (component !== 'rim' && runs !== 'across') all.push('over_edges');
  if (RETARDED.includes(component)) all.push('inner_retarder');
  if (component === 'roof_deck' && (zone === '2b' || zone === '3b')) all.push('tile_roof');
  return all;
}

/** Materials that are cut or poured to any thickness. */
const CUT = new Set(['softwood', 'hardwood', 'stucco', 'common_brick', 'concrete']);
/** Materials whose R stands on their label and nowhere else. */
const LABELED = new Set(['typed', 'batt', 'loose_fill', 'rigid_board', 'second_foam']);

/** What a layer of a material must be told. @param {string} material @returns {'thickness' | 'layer_r' | undefined} */
export const needs = (material) => (CUT.has(material) ? 'thickness' : LABELED.has(material) ? 'layer_r' : undefined);

/** @type {[string, readonly (Component | undefined)[], NewLayer[]][]} */
const STARTERS = [
  ['wood_wall', ['wall', 'other', 'cold_room', undefined], [
    { made_of: 'bevel_siding', position: 'outside' }, { made_of: 'osb_7_16', position: 'outside' }, { made_of: 'gypsum_1_2', position: 'inside' }]],
  ['wall_batts', ['wall'], [
    { made_of: 'bevel_siding', position: 'outside' }, { made_of: 'osb_7_16', position: 'outside' }, { made_of: 'batt', position: 'cavity' }, { made_of: 'gypsum_1_2', position: 'inside' }]],
  ['rim', ['rim', undefined], [
    { made_of: 'bevel_siding', position: 'outside' }, { made_of: 'softwood', position: 'outside', thickness: '1 1/2 in' }]],
  ['roof', ['roof_deck'], [
    { made_of: 'shingles', position: 'outside' }, { made_of: 'plywood_1_2', position: 'outside' }, { made_of: 'gypsum_1_2', position: 'inside' }]],
  ['roof_batts', ['roof_deck', undefined], [
    { made_of: 'shingles', position: 'outside' }, { made_of: 'plywood_1_2', position: 'outside' }, { made_of: 'batt', position: 'cavity' }, { made_of: 'gypsum_1_2', position: 'inside' }]],
  ['ceiling', ['attic_floor'], [{ made_of: 'gypsum_1_2', position: 'inside' }]],
  ['wood_floor', ['floor'], [{ made_of: 'softwood', position: 'inside', thickness: '3/4 in' }]],
  ['block', ['mass_wall_inside', 'mass_wall_outside', 'basement_wall', 'crawl_wall', undefined], [{ made_of: 'block_8', position: 'outside' }]],
  ['concrete', ['basement_wall', 'crawl_wall', 'mass_wall_inside', 'mass_wall_outside'], [{ made_of: 'concrete', position: 'outside', thickness: '8 in' }]],
];

/** Layers that one press fills in: those that fit a component. @param {Component | null | undefined} component @returns {{name: string, layers: NewLayer[]}[]} */
export const starters = (component) =>
  STARTERS.filter(([, fits]) => fits.includes(component ?? undefined)).map(([name, , layers]) => ({ name, layers }));
