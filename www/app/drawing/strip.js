// @ts-check
/** All surfaces at one scale. */
import { drawing, fit, foam, grid, line, rect, s, square, text, wide } from '../svg.js';

/**
 * @typedef {{name: string, sub: string, w: number, h: number, voids: import('../core.js').Rect[]}} Strip
 * A surface: its name, a line below it, its size in inches and its holes.
 */

/**
 * @param {Strip[]} surfaces @param {{width: number, metric: boolean, label: string}} how
 * @returns {{svg: SVGElement, square: number}} the drawing, and what a square is in feet or meters
 */
export function allSurfaces(surfaces, { width, metric, label }) {
  const left = 16;
  const room = width - 2 * left;
  const longest = Math.max(1, ...surfaces.map((one) => one.w));
  const tallest = Math.max(1, ...surfaces.map((one) => one.h));
  const k = Math.min(room / longest, 108 / tallest);
  const { inches, count } = square(k, metric);
  const { defs, fill } = foam();
  /** @type {Node[]} */
  const parts = [];
  let x = left;
  let y = 12;
  let tall = 0;
  const next = () => {
    if (tall) y += tall + 14;
    x = left;
    tall = 0;
  };
  for (const one of surfaces) {
    const w = Math.max(1.8, one.w * k);
    const h = Math.max(1.8, one.h * k);
    const long = w > room * 0.5;
    const beside = Math.max(wide(one.name, 14), wide(one.sub, 14)) + 10;
    if (long || x + w + Math.min(beside, 150) > width - left) next();
    if (long) {
      parts.push(text('halo b', left, y + 11, fit(one.name, room * 0.62, 14)));
      parts.push(text('halo q e', width - left, y + 11, fit(one.sub, room * 0.38, 14)));
      parts.push(...outline(one, left, y + 18, w, h, k, fill));
      tall = h + 18;
      next();
    } else {
      const down = Math.max(0, (30 - h) / 2);
      parts.push(...outline(one, x, y + down, w, h, k, fill));
      const most = Math.min(beside, width - left - x - w);
      const middle = y + down + h / 2;
      parts.push(text('halo b', x + w + 8, middle - 2, fit(one.name, most, 14)));
      parts.push(text('halo q', x + w + 8, middle + 13, fit(one.sub, most, 14)));
      x += w + most + 16;
      tall = Math.max(tall, h, 30);
    }
  }
  if (tall) y += tall + 12;
  const height = Math.max(60, y);
  return { svg: drawing(width, height, label, [defs, grid(width, height, left, height - 8, inches * k), ...parts]), square: count };
}

/** @param {Strip} one @param {number} x @param {number} y @param {number} w @param {number} h @param {number} k @param {string} fill */
function outline(one, x, y, w, h, k, fill) {
  const thin = h < 5;
  /** @type {Node[]} */
  const parts = [thin ? rect('foamfill', x, y, w, h) : s('rect', { x, y, width: w, height: h, fill })];
  for (const hole of one.voids) parts.push(rect('void', x + hole.x_in * k, y + (one.h - hole.y_in - hole.h_in) * k, hole.w_in * k, hole.h_in * k));
  parts.push(rect('ln', x, y, w, h));
  if (thin) parts.push(line('tick', `M${x - 4} ${y + h / 2 + 4}L${x + 4} ${y + h / 2 - 4}M${x + w - 4} ${y + h / 2 + 4}L${x + w + 4} ${y + h / 2 - 4}`));
  return parts;
}
