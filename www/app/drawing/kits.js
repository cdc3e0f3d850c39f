// @ts-check
/** Kits: flat outlines, lettered A and B, larger for larger kits, filled as far as they will be used. */
import { d, drawing, fit, fresh, line, r2, rect, s, text } from '../svg.js';

/**
 * @typedef {{name: string, label: number, usable: number, used: number, count: number, lines: [string, string, string]}} Kit
 * One kit, or several alike: `used` of `usable` board feet each.
 */

/** @param {Kit[]} kits @param {{width: number, label: string}} how @returns {SVGElement} */
export function kitOutlines(kits, { width, label }) {
  const largest = Math.max(1, ...kits.map((one) => one.label));
  const perRow = Math.max(1, Math.min(4, kits.length, Math.floor(width / 108)));
  const cell = width / Math.max(2, perRow);
  const rowHeight = 180;
  /** @type {Node[]} */
  const parts = [];
  kits.forEach((kit, index) => {
    const inRow = Math.min(perRow, kits.length - Math.floor(index / perRow) * perRow);
    const middle = width / 2 + ((index % perRow) - (inRow - 1) / 2) * cell;
    const y = 10 + Math.floor(index / perRow) * rowHeight;
    const scale = Math.cbrt(kit.label / largest);
    const tall = 104 * scale;
    const broad = Math.max(22, 38 * scale);
    const share = kit.usable > 0 ? Math.max(0, Math.min(1, kit.used / kit.usable)) : 0;
    for (const [letter, x] of /** @type {const} */ ([['A', middle - broad - 2], ['B', middle + 2]])) {
      parts.push(...cylinder(letter, x, y + 104 - tall, broad, tall, share));
    }
    const wide = cell - 6;
    parts.push(text('m lg', middle, y + 125, fit(kit.lines[0], wide, 17)), text('m q', middle, y + 142, fit(kit.lines[1], wide, 13.5)), text('m q', middle, y + 158, fit(kit.lines[2], wide, 13.5)));
  });
  return drawing(width, Math.ceil(kits.length / perRow) * rowHeight, label, parts);
}

/** @param {'A' | 'B'} letter @param {number} x @param {number} y @param {number} w @param {number} h @param {number} share */
function cylinder(letter, x, y, w, h, share) {
  const bottom = y + h;
  const cut = w * 0.22;
  const round = w * 0.42;
  const shape = letter === 'A'
    ? d('M', x, y + cut, 'L', x + cut, y, 'H', x + w - cut, 'L', x + w, y + cut, 'V', bottom, 'H', x, 'Z')
    : d('M', x, y + round, 'Q', x, y, x + w / 2, y, 'Q', x + w, y, x + w, y + round, 'V', bottom, 'H', x, 'Z');
  /** @type {Node[]} */
  const parts = [];
  if (share > 0) {
    const id = fresh();
    const level = bottom - h * share;
    const fill = rect('neutral', x, level, w, bottom - level);
    fill.setAttribute('clip-path', `url(#${id})`);
    parts.push(s('clipPath', { id }, s('path', { d: shape })), fill);
    if (share < 1) parts.push(s('path', { class: 'ln', d: d('M', x, level, 'h', w), 'clip-path': `url(#${id})` }));
  }
  parts.push(line(share > 0 ? 'ln bold' : 'ln bold dash', shape), text('m b md', r2(x + w / 2), bottom - 12, letter));
  return parts;
}

/**
 * One kit that is already there: A and B side by side, each filled as far as it still holds; dashed where empty
 * or not known.
 * @param {{label: number, largest: number, a: number, b: number, name: string}} kit shares from 0 to 1
 */
export function kitLeft({ label, largest, a, b, name }) {
  const scale = Math.max(0.5, Math.cbrt(Math.max(1, label) / Math.max(1, largest)));
  const tall = 74 * scale;
  const broad = Math.max(22, 32 * scale);
  const share = (/** @type {number} */ of) => Math.max(0, Math.min(1, of));
  return drawing(76, 80, name, [
    ...cylinder('A', 38 - broad - 2, 78 - tall, broad, tall, share(a)),
    ...cylinder('B', 40, 78 - tall, broad, tall, share(b)),
  ]);
}
