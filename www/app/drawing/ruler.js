// @ts-check
/** A section through one surface, with the ruler on which every rule is a mark. */
import { fan, room } from './fan.js';
import { hatched } from './hatches.js';
import { d, drawing, foam, line, r2, rect, s, text, wide } from '../svg.js';

/**
 * @typedef {{at: number, what: string, sub: string, kind: 'ink' | 'aim' | 'most', dash?: boolean}} Level
 * A mark on the ruler: where, its name, a line below it; dashed where its figure decides nothing.
 *
 * @typedef {{hatch: import('./hatches.js').Hatch, thick: number, name: string, open?: boolean}} Layer  Its thickness in inches; `open` where that is not known.
 *
 * @typedef {{k: number, floor: number, reach: number}} Scale
 * Pixels to an inch, the height at which depth is nought, and how far the ruler reaches, in inches.
 *
 * @typedef {object} Cut
 * @property {number} aim
 * @property {number} promised
 * @property {number} most
 * @property {number} [cavity]
 * @property {boolean} [unbroken]  no member at the side
 * @property {boolean} [over]  the foam covers the members' edges
 * @property {boolean} [metric]  the ruler in centimeters
 * @property {number} lifts
 * @property {Level[]} levels
 * @property {number} [shared]  marks that have no label of their own now, but could at another aim
 * @property {[number, number]} [gap]  the least and the most, where they cross
 * @property {Layer[]} behind  from the foam outward; one of no name and no thickness where nothing was entered
 * @property {Layer[]} fill  in front of the foam between the members
 * @property {Layer[]} front  on the room side, from the members inward
 * @property {Scale} [held]  the scale stays as it is while the aim is dragged
 * @property {{lift: (n: number) => string, aim: string, behind: string, member: string, cross: string}} words
 */

/** Where the parts of the section stand, in pixels from the left. */
const [LEFT, RIGHT, RULER] = [70, 178, 222];
/** Where the first label may stand. */
const TOP = 26;
/** The side of a square, in inches. */
const SQUARE = { us: 1, metric: 2 / 2.54 };
/** What a figure of the ruler stands for, in inches, and how its lines are cut up: the lines of a figure where they are far enough apart for each, and how long every so many of them is. */
const BLADES = {
  us: { figure: 1, fine: [[64, 16], [32, 8], [0, 4]], long: [[1, 26], [2, 19], [4, 13], [8, 9]] },
  metric: { figure: 1 / 2.54, fine: [[64, 10], [0, 2]], long: [[1, 26], [2, 16]] },
};
/** Room on the ruler above the deepest mark, so that the aim can be dragged there. */
const SPARE = 0.5;

/** How high a depth stands. @param {Scale} scale @param {number} inches */
export const heightOf = ({ k, floor }, inches) => floor - inches * k;

/** The depth at a height, on the ruler. @param {Scale} scale @param {number} y */
export const depthAt = ({ k, floor, reach }, y) => Math.max(0, Math.min(reach, (floor - y) / k));

/** The nearest line of the ruler, never none. @param {number} inches @param {number} step */
export const snapped = (inches, step) => Math.max(1, Math.round(inches / step)) * step;

/** What a drawing of this width shows of the left part: on a narrow page the member is cut narrower. @param {number} width */
const cutOff = (width) => (width < 440 ? 30 : 0);

/** How thick layers are together. @param {Layer[]} layers */
const thick = (layers) => layers.reduce((sum, one) => sum + one.thick, 0);

/** How high a layer behind is drawn: to scale, as long as it stays legible and leaves room. @param {Layer} one @param {number} k */
const band = (one, k) => Math.max(one.thick ? 8 : 34, Math.min(40, one.thick * k));

/** The top of what stands in front of the foam. @param {Cut} cut */
function tops({ aim, cavity, fill, front, over }) {
  const filled = fill.length ? Math.min(aim + thick(fill), Math.max(aim, cavity ?? Infinity)) : aim;
  const edge = Math.max(over ? aim : 0, cavity ?? 0, filled);
  return { filled, edge, all: front.length ? edge + thick(front) : filled };
}

/**
 * The scale: as large as fits, with every mark and its label on it.
 * @param {Cut} cut @param {number} width @returns {Scale}
 */
export function scaleOf(cut, width) {
  const deepest = Math.max(0.75, cut.aim, cut.most, cut.cavity ?? 0, tops(cut).all, ...cut.levels.map((one) => one.at));
  const reach = cut.held?.reach ?? deepest + SPARE;
  const k = cut.held?.k ?? Math.min(80, 380 / reach);
  const labels = room(cut, width + cutOff(width) - RULER);
  return { k, reach, floor: Math.max(cut.held?.floor ?? 0, TOP + reach * k, TOP + labels) };
}

/**
 * A section through the foam of one surface with a ruler from the face behind it. The grip stands at the aim, as
 * shares of the drawing's width and height.
 * @param {Cut} cut @param {{width: number, label: string}} how
 * @returns {{svg: SVGElement, scale: Scale, height: number, grip: [number, number]}}
 */
export function section(cut, { width, label }) {
  const scale = scaleOf(cut, width);
  const { k, floor, reach } = scale;
  const off = cutOff(width);
  const end = width + off;
  const height = floor + cut.behind.reduce((sum, one) => sum + band(one, k), 0) + 30;
  const up = (/** @type {number} */ inches) => heightOf(scale, inches);
  const parts = [...squares(k * SQUARE[cut.metric ? 'metric' : 'us'], floor, height, end), ...behind(cut, scale, off), ...front(cut, up), ...member(cut, up, off), ...foamed(cut, up), ...ruled(scale, BLADES[cut.metric ? 'metric' : 'us'])];
  parts.push(...fan(cut, up, floor, RULER, end));
  const svg = drawing(width, height, label, parts);
  svg.setAttribute('viewBox', `${off} 0 ${r2(width)} ${r2(height)}`);
  return { svg, scale, height, grip: [(RIGHT - off) / width, up(cut.aim) / height] };
}

/** The grid, its squares so many pixels wide. @param {number} k @param {number} floor @param {number} height @param {number} end */
function squares(k, floor, height, end) {
  let path = '';
  for (let x = RIGHT - Math.ceil(RIGHT / k) * k; x < end; x += k) if (x > 0) path += `M${r2(x)} 0V${r2(height)}`;
  for (let y = floor; y > 0; y -= k) path += `M0 ${r2(y)}H${end}`;
  return [line('grid', path)];
}

/** What is behind, cut across. @param {Cut} cut @param {Scale} scale @param {number} off @returns {Node[]} */
function behind({ behind: layers, words }, { k, floor }, off) {
  /** @type {Node[]} */
  const parts = [];
  let y = floor;
  for (const one of layers) {
    const high = band(one, k);
    parts.push(...hatched(one.hatch, 0, y, RULER, high));
    if (one.name && high >= 18) parts.push(text('halo', off + 8, y + high / 2 + 5, one.name));
    y += high;
  }
  return [...parts, line('cut', d('M', 0, floor, 'H', RULER)), text('q', off + 8, y + 20, words.behind)];
}

/** What stands in front: fill between the members, then the room side. @param {Cut} cut @param {(inches: number) => number} up @returns {Node[]} */
function front(cut, up) {
  const { aim, promised, fill, front: inner, unbroken } = cut;
  const { filled, edge } = tops(cut);
  const left = unbroken ? 0 : LEFT;
  /** @type {Node[]} */
  const parts = [];
  const share = thick(fill) ? (filled - aim) / thick(fill) : 0;
  let at = aim;
  fill.forEach((one, index) => {
    const top = at + one.thick * share;
    // The first reaches down to the lowest of the foam, whose face is uneven.
    parts.push(...hatched(one.hatch, left, up(top), RIGHT - left, up(index ? at : Math.min(aim, promised)) - up(top), one.open), ...named(one, left, up(top), up(at)));
    at = top;
  });
  at = edge;
  for (const one of inner) {
    parts.push(...hatched(one.hatch, 0, up(at + one.thick), RIGHT, up(at) - up(at + one.thick)), ...named(one, left, up(at + one.thick), up(at)));
    at += one.thick;
  }
  return parts;
}

/** The name of a layer, where there is room for it. @param {Layer} one @param {number} left @param {number} top @param {number} foot */
const named = (one, left, top, foot) => (foot - top >= 22 && wide(one.name, 13.5) <= RIGHT - left - 12 ? [text('halo', left + 8, (top + foot) / 2 + 5, one.name)] : []);

/** The member at the side. @param {Cut} cut @param {(inches: number) => number} up @param {number} off @returns {Node[]} */
function member({ cavity, unbroken, words }, up, off) {
  if (unbroken) return [];
  const floor = up(0);
  const top = cavity ? Math.max(TOP - 12, up(cavity)) : TOP - 12;
  const high = floor - top;
  let hair = '';
  for (let x = 12; x < LEFT; x += 14) hair += `M${x} ${r2(top)}c-5 ${r2(high * 0.2)} 6 ${r2(high * 0.4)} 0 ${r2(high)}`;
  return [rect('woodfill', 0, top, LEFT, high), line('hair', hair), line('cut', d('M', 0, top, 'H', LEFT, 'V', floor)),
    ...high > 90 ? [s('text', { class: 'halo b m', transform: `translate(${(LEFT + off) / 2 + 4} ${r2((floor + top) / 2)}) rotate(-90)` }, words.member)] : []];
}

/** The foam: lowest point at the promise, highest under the most allowed, mean at the aim. @param {Cut} cut @param {(inches: number) => number} up @returns {Node[]} */
function foamed(cut, up) {
  const { aim, promised, most, cavity, over, unbroken, words } = cut;
  const { defs, fill } = foam();
  const floor = up(0);
  const low = up(promised);
  const high = up(Math.min(most, 2 * aim - promised, aim + Math.max(0, (most - aim) * 0.8)));
  const mid = up(aim);
  const left = unbroken ? 0 : LEFT;
  const waves = d('C', 83, mid, 83, high, 96, high, 'C', 113, high, 113, low, 130, low, 'C', 145, low, 145, high, 160, high, 'C', 169, high, 169, mid, RIGHT, mid);
  // Over the members' edges it runs on to the left, as thick there as it stands above them.
  const edge = over && cavity !== undefined && aim > cavity ? up(cavity) : undefined;
  const begins = unbroken || edge !== undefined ? d('M', 0, mid, 'H', LEFT) : d('M', LEFT, mid);
  const ends = edge === undefined ? d('V', floor, 'H', left, 'Z') : d('V', floor, 'H', LEFT, 'V', edge, 'H', 0, 'Z');
  /** @type {Node[]} */
  const parts = [defs, s('path', { d: begins + waves + ends, fill }), line('foamedge bold', begins + waves)];
  const lifts = Math.max(1, cut.lifts);
  const each = floor - up(aim / lifts);
  for (let lift = 1; lift < lifts; lift += 1) parts.push(line('foamedge', d('M', LEFT, floor - each * lift, 'q 20 -5 40 0 t 40 0 t 28 -1')));
  for (let lift = 0; each > 24 && lift < lifts; lift += 1) parts.push(text('halo onfoam', LEFT + 8, floor - each * lift - 10, words.lift(lift + 1)));
  parts.push(line('holdln', d('M', LEFT, up(most), 'H', RIGHT)), line('on thin', d('M', LEFT, mid, 'H', RIGHT)), line('ln bold', d('M', LEFT, low, 'H', RIGHT)));
  if (cavity) parts.push(line('hair', d('M', LEFT, up(cavity), 'H', RIGHT)));
  const tall = floor - mid;
  if (tall > 60) {
    parts.push(line('on', d('M', 158, floor, 'V', mid)), line('on tick', d('M', 153, floor + 5, 'l 10 -10 M', 153, mid + 5, 'l 10 -10')));
    if (tall > 120) parts.push(s('text', { class: 'on halo onfoam m xl', transform: `translate(147 ${r2((floor + mid) / 2)}) rotate(-90)`, y: 4 }, words.aim));
  }
  return parts;
}

/** The ruler's blade, in sixteenths or millimeters where they are apart. @param {Scale} scale @param {typeof BLADES['us']} blade @returns {Node[]} */
function ruled(scale, { figure, fine, long: lengths }) {
  const { k, floor, reach } = scale;
  const up = (/** @type {number} */ inches) => heightOf(scale, inches);
  const top = Math.max(4, up(reach));
  /** @type {Node[]} */
  const parts = [rect('paper', RIGHT, top, RULER - RIGHT, floor - top), line('cut', d('M', RIGHT, top, 'V', floor, 'H', RULER, 'V', top))];
  const finest = fine.find(([from]) => k >= from)?.[1] ?? 1;
  // Figures as close as their own height stand at every fifth.
  const each = k * figure < 24 ? 5 : 1;
  let ticks = '';
  for (let n = 0; (n / finest) * figure <= reach; n += 1) {
    const y = up((n / finest) * figure);
    ticks += `M${RIGHT} ${r2(y)}h${lengths.find(([part]) => n % (finest / part) === 0)?.[1] ?? 5}`;
    if (n && n % (finest * each) === 0) parts.push(text('xl e', RULER - 5, y + 19, String(n / finest)));
  }
  return [...parts, line('hair', ticks)];
}
