// @ts-check
/** Hatches of what stands behind foam and in front of it, each as its own kind. */
import { d, foam, fresh, line, r2, rect, s } from '../svg.js';

/** @typedef {'batt' | 'foam' | 'board' | 'wood' | 'masonry' | 'plain'} Hatch */

/** How each material of the table of fields is drawn. @type {Record<string, Hatch>} */
const OF = {
  batt: 'batt', loose_fill: 'batt', second_foam: 'foam', rigid_board: 'foam', stucco: 'masonry', face_brick: 'masonry', common_brick: 'masonry',
  concrete: 'masonry', block_8: 'masonry', gypsum_3_8: 'board', gypsum_1_2: 'board', gypsum_5_8: 'board', fiberboard_1_2: 'board', building_paper: 'plain',
  shingles: 'plain', typed: 'plain',
};

/** @param {string} material @returns {Hatch} */
export const hatchOf = (material) => OF[material] ?? 'wood';

/** A batt: one line that loops from face to face. @param {number} x @param {number} y @param {number} width @param {number} height */
function loops(x, y, width, height) {
  const step = Math.min(30, Math.max(9, height * 0.42));
  const mid = y + height / 2;
  let path = `M${r2(x - step)} ${r2(mid)}`;
  // A curve whose handles cross reaches three quarters of their height.
  const reach = height / 1.5 - 1;
  for (let at = x - step, up = true; at < x + width; at += step, up = !up) {
    const edge = mid + (up ? -reach : reach);
    path += `C${r2(at + step * 1.7)} ${r2(edge)} ${r2(at - step * 0.7)} ${r2(edge)} ${r2(at + step)} ${r2(mid)}`;
  }
  return path;
}

/** Lines at 45° on a ground, or dots. @param {'masonry' | 'board'} kind */
function pattern(kind) {
  const id = fresh();
  const size = kind === 'masonry' ? 9 : 12;
  const inside = kind === 'masonry' ? line('hair', 'M0 0V9') : s('g', { class: 'inkfill' }, ...[[3, 3], [9, 8]].map(([cx, cy]) => s('circle', { cx, cy, r: 0.9 })));
  return {
    fill: `url(#${id})`,
    defs: s('defs', {}, s('pattern', { id, width: size, height: size, patternUnits: 'userSpaceOnUse', ...kind === 'masonry' && { patternTransform: 'rotate(45)' } },
      rect('paper', 0, 0, size, size), inside)),
  };
}

/**
 * A layer cut across. One whose thickness is not known has no edge.
 * @param {Hatch} kind @param {number} x @param {number} y @param {number} width @param {number} height @param {boolean} [open] @returns {Node[]}
 */
export function hatched(kind, x, y, width, height, open) {
  const box = { x, y, width: Math.max(0, width), height: Math.max(0, height) };
  const edge = open ? s('g') : rect('ln', x, y, width, height);
  if (kind === 'masonry' || kind === 'board') {
    const { defs, fill } = pattern(kind);
    return [defs, s('rect', { ...box, fill }), edge];
  }
  if (kind === 'foam') {
    const { defs, fill } = foam(true);
    return [defs, s('rect', { ...box, fill }), edge];
  }
  const clip = fresh();
  const clipped = (/** @type {string} */ path) => [s('clipPath', { id: clip }, rect('', x, y, width, height)), s('path', { class: 'hair', 'clip-path': `url(#${clip})`, d: path })];
  if (kind === 'batt') return [rect('paper', x, y, width, height), ...clipped(loops(x, y, width, height)), edge];
  if (kind === 'plain') return [rect('paper', x, y, width, height), edge];
  let grain = '';
  for (let at = x - height; at < x + width; at += 15) grain += d('M', at, y + height, 'q', height * 0.25, -height * 0.45, height * 0.75, -height);
  return [rect('woodfill', x, y, width, height), ...clipped(grain), edge];
}
