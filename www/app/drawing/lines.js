// @ts-check
/** Dimension lines along the sides of a drawing: their rows, their figures, and the places to press. */
import { d, fit, line, r2, rect, s, text, wide } from '../svg.js';

/** @typedef {import('./elevation.js').How} How */

/**
 * @typedef {import('../core.js').Dimension & {past?: boolean}} Broken `past`: it runs on beyond the break
 * @typedef {Broken & {row: number, flat?: boolean}} Placed `flat`: its figure stands level beside an upright line
 */

const MOST_ROWS = 4;

/**
 * The dimensions of one side in rows: chains that repeat another are left out, what spans the whole side runs
 * outermost, and no more rows than can be read.
 * @param {import('../core.js').Outline} outline @param {import('../core.js').Side} side @returns {Placed[]}
 */
export function inRows(outline, side) {
  const whole = side === 'left' ? outline.height_in : outline.width_in;
  /** @type {Map<number, Broken[]>} */
  const rows = new Map();
  for (const one of /** @type {Broken[]} */ (outline.dimensions)) if (one.side === side) rows.set(one.row, [...rows.get(one.row) ?? [], one]);
  /** @type {Map<string, Broken[]>} */
  const distinct = new Map();
  for (const [, row] of [...rows].sort(([a], [b]) => a - b)) {
    const shape = row.map((one) => `${one.from_in} ${one.past ? one.text : one.to_in}`).join();
    if (!distinct.has(shape)) distinct.set(shape, row);
  }
  const spans = (/** @type {Broken[]} */ row) => row.length === 1 && row[0].from_in === 0 && row[0].to_in >= whole - 0.01;
  const all = [...distinct.values()];
  const inner = all.filter((row) => !spans(row));
  const outer = all.filter(spans);
  return [...inner.slice(0, MOST_ROWS - outer.length), ...outer].flatMap((row, at) => row.map((one) => ({ ...one, row: at })));
}

/**
 * Where the figure of a level dimension stands: above the line, beside it where it is too short and there is room, below otherwise.
 * @param {Placed} one @param {number} k @param {Placed[]} all @param {number} [size]
 */
export function figureAt(one, k, all, size = one.row === 0 ? 12.5 : 13.5) {
  const long = wide(one.text, size) + 6;
  const same = all.filter((other) => other.row === one.row);
  if (long <= (one.to_in - one.from_in) * k || same.length === 1 && one.from_in === 0) return 'above';
  const next = Math.min(...same.filter((other) => other.from_in >= one.to_in - 0.01).map((other) => other.from_in), 1e6);
  return (next - one.to_in) * k > long + 8 ? 'beside' : one.at.field ? 'below' : '';
}

/** A level dimension. @param {Placed} one @param {number} y @param {number} x0 @param {number} k @param {number} edge @param {boolean} on @param {Placed[]} all */
export function level(one, y, x0, k, edge, on, all) {
  const a = x0 + one.from_in * k;
  const b = x0 + one.to_in * k;
  const away = Math.sign(y - edge);
  const size = one.row === 0 && !on ? 12.5 : 13.5;
  const kind = `halo b${size === 12.5 ? ' sm' : ''}${on ? ' on' : ''}`;
  const stands = figureAt(one, k, all);
  const figure = stands === 'above' ? text('m ' + kind, Math.max((a + b) / 2, wide(one.text, size) / 2 + 3), y - 5, one.text)
    : stands === 'beside' ? text(kind, b + 8, y + 5, one.text)
      : stands ? text('m ' + kind, (a + b) / 2, y + 14, one.text) : undefined;
  // What runs on past a break has no end here.
  return [
    line('hair', d('M', a, edge + 4 * away, 'V', y + 5 * away, ...(one.past ? [] : ['M', b, edge + 4 * away, 'V', y + 5 * away]))),
    line(on ? 'on' : 'dim', d('M', a - 4, y, 'H', one.past ? b + 14 : b + 4)),
    line(on ? 'on tick' : 'tick', d('M', a - 4, y + 4, 'L', a + 4, y - 4, ...(one.past ? [] : ['M', b - 4, y + 4, 'L', b + 4, y - 4]))),
    ...(figure ? [figure] : []),
  ];
}

/** Least distance of two figures that stand level one over the other. */
const OVER = 14;

/** An upright dimension. @param {Placed} one @param {number} x @param {number} floor @param {number} k @param {number} x0 @param {boolean} on @param {Placed[]} all */
export function upright(one, x, floor, k, x0, on, all) {
  const a = floor - one.from_in * k;
  const b = floor - one.to_in * k;
  const middle = (a + b) / 2;
  const kind = `halo b${on ? ' on' : ''}`;
  // Level figures of short neighbors keep their distance, from the lowest up.
  let level = floor + 14;
  for (const other of all.filter((it) => it.row === one.row && it.flat).sort((p, q) => p.from_in - q.from_in)) {
    level = Math.min(level - OVER, floor - ((other.from_in + other.to_in) / 2) * k);
    if (other === one) break;
  }
  const figure = one.flat ? text('e ' + kind, x - 8, level + 5, one.text)
    : a - b >= wide(one.text, 13.5) || one.at.field !== '' ? s('text', { class: 'm ' + kind, transform: `translate(${r2(x - 6)} ${r2(middle)}) rotate(-90)` }, fit(one.text, 120, 13.5)) : undefined;
  return [
    line('hair', d('M', x0 - 4, a, 'H', x - 5, 'M', x0 - 4, b, 'H', x - 5)),
    line(on ? 'on' : 'dim', d('M', x, b - 4, 'V', a + 4)),
    line(on ? 'on tick' : 'tick', d('M', x - 4, b + 4, 'L', x + 4, b - 4, 'M', x - 4, a + 4, 'L', x + 4, a - 4)),
    ...(figure ? [figure] : []),
  ];
}

/** A dimension that leads to its field: its lines over a clear rectangle large enough for a thumb. */
export function pressable(/** @type {Placed} */ one, /** @type {Node[]} */ parts, /** @type {How} */ how, /** @type {'left' | 'top' | 'bottom'} */ side,
  /** @type {boolean} */ outermost, /** @type {number} */ from, /** @type {number} */ x0, /** @type {number} */ floor, /** @type {number} */ k) {
  const long = Math.max(LEAST, (one.to_in - one.from_in) * k);
  const middle = ((one.from_in + one.to_in) / 2) * k;
  let [x, y, w, h] = [x0 + middle - long / 2, from - 14, long, LEAST];
  if (side === 'left') [x, y, w, h] = [Math.max(0, outermost ? from - 38 : from - 18), floor - middle - long / 2, LEAST, long];
  else if (side === 'top' ? outermost : !outermost) y = from - 40;
  return button(one, [rect('clear', x, y, w, h), ...parts], how);
}

/** A place to press is at least so many pixels wide and high. */
export const LEAST = 54;

/**
 * What leads to a field when it is pressed.
 * @param {{at: import('../core.js').At, text: string}} one @param {Node[]} parts @param {How} how
 */
export function button(one, parts, how) {
  const go = () => how.press?.(one.at);
  const node = s('g', { role: 'button', tabindex: 0, 'aria-label': how.pressLabel?.(one), 'data-at': keyOf(one.at), 'data-key': `at-${keyOf(one.at)}` }, ...parts);
  node.addEventListener('click', go);
  node.addEventListener('keydown', (event) => {
    const key = /** @type {KeyboardEvent} */ (event).key;
    if (key === 'Enter' || key === ' ') {
      event.preventDefault();
      go();
    }
  });
  return node;
}

/** The field of a dimension, by its place in the page. @param {import('../core.js').At} at */
export const keyOf = (at) => `${at.part}-${at.id}-${at.field}`;
