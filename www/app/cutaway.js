// @ts-check
/** A surface's section with its ruler and the marks on it, as the depth screen and the papers draw it. */
import { entryOf } from './changes.js';
import { hatchOf } from './drawing/hatches.js';
import { section } from './drawing/ruler.js';
import { nameOf } from './drawn.js';
import { figures } from './figures.js';
import { levels } from './levels.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store @typedef {import('./core.js').Depth} Depth @typedef {import('./drawing/ruler.js').Layer} Layer */

/** The section at a width. @param {Store} store @param {import('./job.js').Surface} surface @param {Depth} depth @param {number | undefined} passes @param {number} width */
export const cutaway = (store, surface, depth, passes, width) => ruled(store, surface, depth, passes, width).svg;

/**
 * The same with its scale and where the grip stands. `left` is how many marks had no room.
 * @param {Store} store @param {import('./job.js').Surface} surface @param {Depth} depth @param {number | undefined} passes @param {number} width
 * @param {import('./drawing/ruler.js').Scale} [held]
 */
export function ruled(store, surface, depth, passes, width, held) {
  const w = figures(store.job.units);
  const { levels: marks, left, shared, gap } = levels(depth, w, { passes, zone: zoneName(store) });
  const { behindWords, ...layers } = cutOf(store, surface.id, depth);
  const drawn = section({
    aim: depth.aim_in.likely, promised: depth.promised_in, most: depth.most_in, cavity: depth.cavity_in, lifts: passes ?? 1, metric: w.metric, levels: marks, shared, gap, held, ...layers,
    words: { lift: (n) => t('spraying.pass', { n }), aim: t('takeoff.aim_short', { depth: w.depth(depth.aim_in.likely) }), behind: behindWords, member: t('depth.member'), cross: gap ? t('depth.cross', { gap: w.depth(depth.window.gap_in) }) : '' },
  }, { width, label: t('depth.section_label', { name: nameOf(surface), aim: w.depth(depth.aim_in.likely), promised: w.depth(depth.promised_in), most: w.depth(depth.most_in) }) });
  return { ...drawn, left };
}

/** The climate zone as the maps write it: 4C, 5A, 7; empty where nobody has said. @param {Store} store */
export const zoneName = (store) => (store.estimate?.place.zone ?? '').toUpperCase();

/** What a component's foam is sprayed on, where nobody has said what it is built of. @type {Record<string, import('./drawing/hatches.js').Hatch>} */
const ON = { attic_floor: 'board', mass_wall_inside: 'masonry', mass_wall_outside: 'masonry', basement_wall: 'masonry', crawl_wall: 'masonry' };

/**
 * @param {Store} store @param {number} id @param {Depth} depth
 * @returns {{behind: Layer[], fill: Layer[], front: Layer[], unbroken: boolean, over: boolean, behindWords: string}}
 */
function cutOf(store, id, depth) {
  const says = (/** @type {string} */ field) => entryOf(store.job, 'surface', id, field)?.text;
  const layers = depth.assembly?.layers ?? [];
  /** @param {import('./core.js').Position} position @returns {Layer[]} */
  const at = (position) => layers.filter((one) => one.position === position).map((one) => ({
    hatch: one.airy ? 'batt' : hatchOf(one.material), thick: one.thickness_in ?? 0, name: one.material === 'typed' ? '' : t(`fields.choice.made_of.${one.material}`),
  }));
  const mass = ON[depth.component ?? ''] === 'masonry';
  const fill = at('cavity');
  // A fill of no known thickness takes the rest of the cavity; where that is not known either it is drawn without an end.
  const rest = Math.max(0, (depth.cavity_in ?? 0) - depth.aim_in.likely - fill.reduce((sum, one) => sum + one.thick, 0));
  const open = fill.filter((one) => !one.thick).length;
  const outside = at('outside').reverse();
  return {
    behind: outside.length ? outside : [{ hatch: ON[depth.component ?? ''] ?? 'wood', thick: 0, name: '' }],
    fill: fill.map((one) => (one.thick ? one : rest > 0 ? { ...one, thick: rest / open } : { ...one, thick: depth.cavity_in === undefined ? 2 : 0, open: true })).filter((one) => one.thick > 0),
    front: at('inside').map((one) => (one.thick ? one : { ...one, thick: 0.1 })),
    unbroken: says('runs') === 'across' || (mass && depth.cavity_in === undefined && says('runs') !== 'between'),
    over: says('over_edges') === 'yes',
    behindWords: t(mass && !outside.length ? 'depth.behind_masonry' : 'depth.behind'),
  };
}
