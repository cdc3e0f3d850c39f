// @ts-check
/** A surface's section with its ruler and the marks on it, as the depth screen and the papers draw it. */
import { section } from './drawing/ruler.js';
import { nameOf } from './drawn.js';
import { figures } from './figures.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store @typedef {import('./core.js').Depth} Depth @typedef {import('./drawing/ruler.js').Level} Level */

/** The section at a width. @param {Store} store @param {import('./job.js').Surface} surface @param {Depth} depth @param {number | undefined} passes @param {number} width */
export function cutaway(store, surface, depth, passes, width) {
  const w = figures(store.job.units);
  return section({
    aim: depth.aim_in.likely, promised: depth.promised_in, most: depth.most_in, cavity: depth.cavity_in, lifts: passes ?? 1,
    levels: levels(store, depth, passes), gap: crossing(depth),
    words: { lift: (n) => t('spraying.pass', { n }), aim: t('depth.aim_short', { depth: w.depth(depth.aim_in.likely) }), behind: t('depth.behind'), member: t('depth.member'), cross: depth.window.gap_in === undefined ? '' : t('depth.cross', { gap: w.depth(depth.window.gap_in) }) },
  }, { width, label: t('depth.section_label', { name: nameOf(surface), aim: w.depth(depth.aim_in.likely), promised: w.depth(depth.promised_in), most: w.depth(depth.most_in) }) });
}

/** The marks on the ruler. @param {Store} store @param {Depth} depth @param {number} [passes] @returns {Level[]} */
function levels(store, depth, passes) {
  const w = figures(store.job.units);
  /** @type {Level[]} */
  const list = [
    { at: depth.most_in, what: t('depth.level_most', { depth: w.depth(depth.most_in) }), sub: t(depth.most_in === depth.exposed_most_in ? 'depth.level_exposed_sub' : 'depth.level_most_sub'), kind: 'most' },
    { at: depth.aim_in.likely, what: t('depth.level_aim', { depth: w.depth(depth.aim_in.likely) }), sub: passes ? t('spraying.passes', { n: passes }) : '', kind: 'aim' },
    { at: depth.promised_in, what: t('depth.level_promised', { depth: w.depth(depth.promised_in) }), sub: depth.promised_r === undefined ? t('depth.no_r') : t('depth.level_r', { r: w.r(depth.promised_r) }), kind: 'ink' },
  ];
  if (depth.cavity_in !== undefined) list.push({ at: depth.cavity_in, what: t('depth.level_cavity', { depth: w.depth(depth.cavity_in) }), sub: '', kind: 'ink' });
  const limit = depth.exposed_most_in;
  if (limit !== undefined && depth.most_in !== limit) list.push({ at: limit, what: t('depth.level_most', { depth: w.depth(limit) }), sub: t('depth.level_exposed_sub'), kind: 'most' });
  const needed = depth.window.least_in ?? depth.needed_in;
  if (needed !== undefined && needed !== depth.promised_in) list.push({ at: needed, what: t('depth.level_needed', { depth: w.depth(needed), r: w.r(depth.target_r) }), sub: '', kind: 'ink' });
  return list;
}

/** Where least and most cross, in inches. @param {Depth} depth @returns {[number, number] | undefined} */
const crossing = ({ window: { gap_in: gap, least_in: least, most_in: most } }) => (gap === undefined || least === undefined || most === undefined ? undefined : [least, most]);
