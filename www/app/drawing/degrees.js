// @ts-check
/** An upright axis of temperature, and what drawings over it share. Temperatures come in °F; figures stand in the job's own. */
import { d, line, rect, s, text } from '../svg.js';

/** How wide a text may be at most, also where the device has no condensed face. @param {string} what @param {number} [size] */
export const broad = (what, size = 13.5) => what.length * size * 0.64;

/** A temperature on the axis's own scale. @param {boolean} metric @param {number} f */
const shown = (metric, f) => (metric ? ((f - 32) * 5) / 9 : f);

/** @param {boolean} metric @param {number} value */
const back = (metric, value) => (metric ? (value * 9) / 5 + 32 : value);

/**
 * A scale upward, with its lines and figures.
 * @param {(number | undefined)[]} seen what has to lie on it @param {{metric: boolean, left: number, right: number, top: number, end: number}} how
 */
export function degrees(seen, { metric, left, right, top, end }) {
  const all = seen.filter((one) => one !== undefined);
  const low = Math.min(...all) - 3;
  const high = Math.max(...all) + 3;
  const y = (/** @type {number} */ f) => end - ((f - low) / (high - low)) * (end - top);
  const span = shown(metric, high) - shown(metric, low);
  const step = [1, 2, 5, 10, 20, 50, 100].find((one) => (span / one) * 24 <= end - top) ?? 200;
  /** @type {Node[]} */
  const lines = [];
  for (let t = Math.ceil(shown(metric, low) / step) * step; t <= shown(metric, high); t += step) {
    const at = y(back(metric, t));
    lines.push(line('grid', d('M', left, at, 'H', right)), text('q e', left - 6, at + 4.5, `${t < 0 ? '−' : ''}${Math.abs(t)}°`));
  }
  return { y, lines };
}

/** A broken or plain line through points. @param {string} kind @param {[number, number][]} points */
export const through = (kind, points) => line(kind, d(...points.flatMap(([x, y], at) => [at ? 'L' : 'M', x, y])));

/**
 * What stands for what, in as many rows as it takes.
 * @param {{name: string, sample: (x: number, y: number) => (Node | undefined)[]}[]} entries @param {number} top @param {number} width
 * @returns {{parts: Node[], end: number}}
 */
export function legend(entries, top, width) {
  /** @type {Node[]} */
  const parts = [];
  let x = 16;
  let y = top;
  for (const { name, sample } of entries) {
    const room = 36 + broad(name);
    if (x > 16 && x + room > width - 8) {
      x = 16;
      y += 22;
    }
    for (const one of sample(x, y)) if (one) parts.push(one);
    parts.push(text('', x + 36, y + 4.5, name));
    x += room + 14;
  }
  return { parts, end: y + 16 };
}

/** A piece of a line, for the legend. @param {string} kind */
export const stroke = (kind) => (/** @type {number} */ x, /** @type {number} */ y) => [line(kind, d('M', x, y, 'h', 28))];

/** A piece of a filled box, for the legend. @param {(x: number, y: number, width: number, height: number) => (Node | undefined)[]} make */
export const patch = (make) => (/** @type {number} */ x, /** @type {number} */ y) => make(x, y - 8, 28, 16);

/** A box that is filled with a pattern. @param {string} fill @param {number} x @param {number} y @param {number} width @param {number} height @param {string} [edge] class of its edge */
export const filled = (fill, x, y, width, height, edge = 'ln') => [
  s('rect', { x, y, width: Math.max(0, width), height: Math.max(0, height), fill, opacity: '.6' }), s('path', { class: edge, d: d('M', x, y, 'h', width, 'v', height, 'h', -width, 'Z') })];

/** A box of plain ground. @param {number} x @param {number} y @param {number} width @param {number} height */
export const plain = (x, y, width, height) => [rect('box0', x, y, width, height)];

/** Figures or names one below the other, moved apart where they would meet. @param {number[]} wanted from the top down @param {number} apart @param {number} most the lowest */
export function spread(wanted, apart, most) {
  const at = [...wanted];
  for (let i = 1; i < at.length; i += 1) at[i] = Math.max(Number(at[i]), Number(at[i - 1]) + apart);
  for (let i = at.length - 1; i >= 0; i -= 1) at[i] = Math.min(Number(at[i]), i === at.length - 1 ? most : Number(at[i + 1]) - apart);
  return at;
}
