// @ts-check
/** One surface to scale: foam, every counted member, openings, faces, dimension lines that can be pressed. */
import { drawing, grid, s, square, wide } from '../svg.js';
import { drawEdges, placeEdges, standOut } from './edges.js';
import { body } from './faces.js';
import { figureAt, inRows, keyOf, level, pressable, upright } from './lines.js';

/**
 * @typedef {{width: number, metric: boolean, label: string, letters: Map<number, string>, active?: string,
 *   press?: (at: import('../core.js').At) => void, pressLabel?: (dimension: {at: import('../core.js').At, text: string}) => string,
 *   faceName?: (name: string) => string, notFoamed?: string, k?: number, whole?: boolean}} How
 * Without `press` nothing leads to a field. `k`: a scale that is given, in pixels to an inch; the drawing is then as
 * wide as it has to be. `whole`: only the dimensions that run along a whole side, and those of edges.
 * @typedef {{left: import('./lines.js').Placed[], top: import('./lines.js').Placed[], bottom: import('./lines.js').Placed[]}} Sides
 */

const APART = 26;

/** Longer than so many times its height, a run is broken off after so many. */
const LONG = 24;
const PART = 8;
/** The same where layers over one another are dimensioned: larger, so that each can be told. */
const LAYERED = 5;

/** How much of a long run is drawn, in inches; nothing where all of it is. @param {import('../core.js').Outline} whole */
export function shownOf(whole) {
  const layers = whole.dimensions.filter((one) => one.side === 'left').length > 1;
  return !whole.faces.length && whole.width_in > LONG * whole.height_in && whole.height_in > 0 ? (layers ? LAYERED : PART) * whole.height_in : undefined;
}

/**
 * @param {import('../core.js').Outline} whole @param {How} how
 * @returns {{svg: SVGElement, square: number, inches: number, shown?: number, width: number, height: number}}
 *   `square`, `inches`: a square of the grid in feet or meters, and in inches; `shown`: how much of a long run is drawn, in inches
 */
export function elevation(whole, how) {
  // A run so long and thin that nothing could be told on it: its left part to scale, broken off.
  const shown = how.k === undefined ? shownOf(whole) : undefined;
  const outline = shown === undefined ? whole : part(whole, shown);
  const sides = { left: rowsOf(outline, 'left', how), top: rowsOf(outline, 'top', how), bottom: rowsOf(outline, 'bottom', how) };
  const { k, width, height, x0, y0, edges, out, leftAt, topAt, bottomAt } = laid(outline, sides, how);
  const [w, h] = [outline.width_in * k, outline.height_in * k];
  const floor = y0 + h;
  const { inches, count } = square(k, how.metric);
  const { defs, parts: inside } = body(outline, { x0, y0, w, h, k, broken: shown !== undefined }, how);
  /** @type {Node[]} */
  const lines = drawEdges(edges, x0, floor, how);
  for (const side of /** @type {const} */ (['left', 'top', 'bottom'])) {
    const list = sides[side];
    const last = rows(list) - 1;
    // The outermost first, so that the place to press of an inner one lies above it.
    for (const one of [...list].reverse()) {
      const on = one.at.field !== '' && how.active === keyOf(one.at);
      const from = side === 'left' ? x0 - out.left - leftAt[one.row] : side === 'top' ? y0 - out.top - topAt[one.row] : floor + out.bottom + bottomAt[one.row];
      const parts = side === 'left' ? upright(one, from, floor, k, x0, on, list) : level(one, from, x0, k, side === 'top' ? y0 : floor, on, list);
      lines.push(one.at.field === '' || !how.press ? s('g', { 'aria-hidden': 'true' }, ...parts) : pressable(one, parts, how, side, one.row === last, from, x0, floor, k));
    }
  }
  const svg = drawing(width, height, how.label, []);
  if (how.press) svg.setAttribute('role', 'group');
  svg.append(s('g', how.press ? { role: 'img', 'aria-label': how.label } : {}, defs, grid(width, height, x0, floor, inches * k), ...inside), ...lines);
  return { svg, square: count, inches, shown, width, height };
}

/** @param {import('./lines.js').Placed[]} list */
const rows = (list) => list.reduce((most, one) => Math.max(most, one.row + 1), 0);

/** @param {import('../core.js').Outline} outline @param {import('../core.js').Side} side @param {How} how */
function rowsOf(outline, side, how) {
  const all = inRows(outline, side);
  if (!how.whole) return all;
  const length = side === 'left' ? outline.height_in : outline.width_in;
  return all.filter((one) => one.from_in === 0 && (one.past || one.to_in >= length - 0.01)).slice(-1).map((one) => ({ ...one, row: 0 }));
}

/**
 * The scale, and where everything stands.
 * @param {import('../core.js').Outline} outline @param {Sides} sides @param {How} how
 */
function laid(outline, sides, how) {
  let out = { left: 0, right: 0, top: 0, bottom: 0 };
  const scale = (/** @type {number} */ room) => how.k ?? Math.max(0.01, Math.min((how.width - room - out.left - Math.max(14, out.right)) / Math.max(1, outline.width_in), (how.width * 0.82) / Math.max(1, outline.height_in)));
  // What is too short for its figure along the line has it level beside the line, and needs more room there.
  const short = scale(22 + 34 * rows(sides.left));
  for (const one of sides.left) one.flat = one.at.field !== '' && (one.to_in - one.from_in) * short < wide(one.text, 13.5) + 2;
  const leftAt = stack(rows(sides.left), 18, (row) => sides.left.reduce((most, one) => (one.row === row && one.flat ? Math.max(most, wide(one.text, 13.5) + 14) : most), 22));
  const leftRoom = sides.left.length ? leftAt[leftAt.length - 1] + 4 : outline.edges.length ? 8 : 16;
  let k = scale(leftRoom);
  let edges = placeEdges(outline, k);
  // A smaller scale makes more figures stand out: a few times is enough.
  for (let time = 0; time < 4 && edges.length; time += 1) {
    out = standOut(edges, outline.width_in * k, outline.height_in * k);
    k = scale(leftRoom);
    edges = placeEdges(outline, k);
  }
  const [w, h] = [outline.width_in * k, outline.height_in * k];
  if (edges.length) out = standOut(edges, w, h);
  // A figure that stands under its line pushes what is under that away.
  const hangs = (/** @type {import('./lines.js').Placed[]} */ list, /** @type {number} */ row) => (list.some((one) => one.row === row && figureAt(one, k, list) === 'below') ? 15 : 0);
  const bottomAt = stack(rows(sides.bottom), 26, (row) => APART + hangs(sides.bottom, row));
  const topAt = stack(rows(sides.top), 14 + hangs(sides.top, 0), (row) => APART + hangs(sides.top, row + 1));
  const right = Math.max(14, out.right + 4);
  const width = how.k === undefined ? how.width : Math.max(how.width, leftRoom + out.left + w + right);
  const x0 = leftRoom + out.left + Math.max(0, (width - leftRoom - out.left - right - w) / 2);
  const y0 = out.top + (sides.top.length || !edges.length ? 2 + topAt[topAt.length - 1] : 8);
  const height = y0 + h + out.bottom + (sides.bottom.length ? bottomAt[bottomAt.length - 1] + 2 : edges.length ? 8 : 16);
  return { k, width, height, x0, y0, edges, out, leftAt, topAt, bottomAt };
}

/** How far each row of dimensions is from the drawing, and where the last one ends. @param {number} count @param {number} first @param {(row: number) => number} step */
function stack(count, first, step) {
  const at = [first];
  for (let row = 0; row < count; row += 1) at.push(at[row] + step(row));
  return at;
}

/**
 * The left part of an outline; a dimension that runs past it ends at the break with its whole length written.
 * @param {import('../core.js').Outline} whole @param {number} shown @returns {import('../core.js').Outline}
 */
function part(whole, shown) {
  const within = (/** @type {import('../core.js').Rect} */ at) => ({ ...at, w_in: Math.min(at.w_in, shown - at.x_in) });
  return {
    ...whole, width_in: shown,
    members: whole.members.filter((one) => one.rect.x_in < shown).map((one) => ({ ...one, rect: within(one.rect) })),
    openings: whole.openings.filter((one) => one.rect.x_in < shown).map((one) => ({ ...one, rect: within(one.rect) })),
    dimensions: whole.dimensions.filter((one) => one.side === 'left' || one.from_in < shown).map((one) => (one.side === 'left' ? one : { ...one, to_in: Math.min(one.to_in, shown), past: one.to_in > shown })),
    bays: whole.bays.filter((at) => at < shown),
  };
}
