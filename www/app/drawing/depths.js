// @ts-check
/** Depths: bars of every surface at one scale. */
import { d, drawing, fit, foam, line, rect, s, text, twoLines } from '../svg.js';

/**
 * @typedef {{name: string, sub: string, aim: number, promised: number, most: number, cavity?: number, figures: string, rest: string, lifts?: number}} Bar
 * Depths in inches; `figures` is written bold below the bar and `rest` after it.
 */

/** Where the bars start and how high a row is: names stand before the bar, above it where that is too narrow. @param {number} width */
const laid = (width) => (width < 340 ? { left: 0, row: 84, top: 30 } : { left: 112, row: 62, top: 8 });

/** @param {Bar[]} bars @param {{width: number, label: string}} how @returns {SVGElement} */
export function depthBars(bars, { width, label }) {
  const { left, row, top } = laid(width);
  const { defs, fill } = foam();
  const deepest = Math.max(1, ...bars.map((one) => Math.max(one.aim, one.most, one.cavity ?? 0)));
  const k = Math.min(28, (width - left - 8) / deepest);
  /** @type {Node[]} */
  const parts = [defs];
  bars.forEach((bar, index) => {
    const y = top + index * row;
    parts.push(...name(bar, left, y, width), ...body(bar, left + 1, y, k, fill), below(bar, left, y));
  });
  return drawing(width, bars.length * row + 2, label, parts);
}

/** @param {Bar} bar @param {number} left @param {number} y */
const below = (bar, left, y) => s('text', { class: 'lg md', x: left, y: y + 47 }, bar.figures, s('tspan', { class: 'q' }, bar.rest));

/** @param {Bar} bar @param {number} left @param {number} y @param {number} width */
function name(bar, left, y, width) {
  if (left === 0) return [text('b md', 0, y - 12, fit(bar.name, width * 0.6, 16)), text('q e', width, y - 12, fit(bar.sub, width * 0.38, 13.5))];
  const lines = twoLines(bar.name, left - 8, 16);
  const parts = lines.map((one, at) => text('b md', 0, y + 14 + at * 17, one));
  if (lines.length === 1 && bar.sub) parts.push(text('q', 0, y + 30, bar.sub));
  return parts;
}

/** @param {Bar} bar @param {number} x @param {number} y @param {number} k @param {string} fill */
function body(bar, x, y, k, fill) {
  /** @type {Node[]} */
  const parts = [];
  const end = x + bar.aim * k;
  if (bar.cavity) parts.push(rect('ln', x, y, bar.cavity * k, 26));
  parts.push(s('rect', { x, y, width: Math.max(0, bar.aim * k), height: 26, fill }), line('foamedge', d('M', x, y, 'H', end, 'V', y + 26, 'H', x)));
  for (let lift = 1; lift < (bar.lifts ?? 1); lift += 1) parts.push(line('foamedge', d('M', x + (bar.aim * k * lift) / (bar.lifts ?? 1), y, 'v', 26)));
  parts.push(line('cut', d('M', x, y - 4, 'v', 34)));
  const promised = x + bar.promised * k;
  parts.push(line('ln', d('M', promised, y - 6, 'v', 38)), line('inkfill', d('M', promised, y - 6, 'l -7 -1 7 7z')));
  parts.push(line('holdln', d('M', x + bar.most * k, y - 6, 'v', 38)));
  return parts;
}

/**
 * Lifts of every surface at one scale: a block a lift, numbered.
 * @param {(Bar & {lifts: number})[]} bars @param {{width: number, label: string}} how @returns {SVGElement}
 */
export function liftBars(bars, { width, label }) {
  const { defs, fill } = foam();
  const deepest = Math.max(1, ...bars.map((one) => one.aim));
  const { left, row, top } = laid(width);
  const k = Math.min(56, (width - left - 10) / deepest);
  /** @type {Node[]} */
  const parts = [defs];
  bars.forEach((bar, index) => {
    const y = top + index * row;
    const each = (bar.aim / bar.lifts) * k;
    parts.push(...name(bar, left, y, width), s('rect', { x: left + 1, y, width: bar.aim * k, height: 26, fill }));
    for (let lift = 0; lift < bar.lifts; lift += 1) {
      const x = left + 1 + lift * each;
      parts.push(rect('ln bold', x, y, each, 26));
      if (each > 17) parts.push(text('m b md halo onfoam', x + each / 2, y + 19, String(lift + 1)));
    }
    parts.push(line('cut', d('M', left + 1, y - 4, 'v', 34)), below(bar, left, y));
  });
  return drawing(width, bars.length * row + 2, label, parts);
}
