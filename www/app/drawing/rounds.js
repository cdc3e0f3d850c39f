// @ts-check
/** Rounds of readings: time across, temperature upward. Surfaces by name, the air, the dew point and the spread above it. */
import { d, drawing, fit, line, s, text } from '../svg.js';
import { broad, degrees, legend, spread, stroke, through } from './degrees.js';

/**
 * @typedef {{of: 'surface' | 'air' | 'dew', name: string, points: {ms: number, value: number}[]}} Course  °F
 * @param {Course[]} courses
 * @param {{spread?: number, times: {ms: number, name: string}[]}} about
 * @param {{label: string, surface: string, air: string, dew: string, least: string}} names
 * @param {{width: number, metric: boolean}} how
 * @returns {SVGElement}
 */
export function roundsDrawing(courses, { spread: above, times }, names, { width, metric }) {
  const left = 42;
  const right = width - Math.min(200, width * 0.36);
  const top = 20;
  const end = 226;
  const all = courses.flatMap((one) => one.points);
  const first = Math.min(...all.map((one) => one.ms));
  const last = Math.max(...all.map((one) => one.ms), first + 60_000);
  const x = (/** @type {number} */ ms) => left + ((ms - first) / (last - first)) * (right - left);
  const dew = courses.find((one) => one.of === 'dew');
  const scale = degrees([...all.map((one) => one.value), ...(dew && above !== undefined ? dew.points.map((one) => one.value + above) : [])], { metric, left, right, top, end });
  const { y } = scale;
  /** @type {(Node | undefined)[]} */
  const parts = [...scale.lines, line('rule', d('M', left, end, 'H', width))];
  // A line and a time for each round that has room.
  let free = -Infinity;
  times.forEach(({ ms, name }, index) => {
    const at = x(ms);
    parts.push(line('grid', d('M', at, top, 'V', end + 6)));
    const half = broad(name) / 2;
    const middle = Math.max(half + 4, Math.min(at, width - half - 4));
    const after = times.slice(index + 1).at(-1);
    const before_last = after ? Math.min(x(after.ms), width - half - 4) - half - 6 : Infinity;
    if (middle - half < free || middle + half > before_last) return;
    parts.push(text('m', middle, end + 22, name));
    free = middle + half + 8;
  });
  const path = (/** @type {{ms: number, value: number}[]} */ points, more = 0) => /** @type {[number, number][]} */ (points.map((one) => [x(one.ms), y(one.value + more)]));
  if (dew && above !== undefined) parts.push(through('holdln', path(dew.points, above)));
  const kinds = { surface: 'ln bold', air: 'cut', dew: 'cut dash' };
  for (const one of [...courses].reverse()) parts.push(through(kinds[one.of], path(one.points)));
  courses.forEach((one, index) => {
    for (const [cx, cy] of path(one.points)) {
      // Each spot its own shape of dot, so that lines that cross can be told apart.
      parts.push(one.of !== 'surface' ? undefined : index % 3 === 0 ? s('circle', { class: 'box0', cx, cy, r: 4 }) : index % 3 === 1 ? s('rect', { class: 'box0', x: cx - 4, y: cy - 4, width: 8, height: 8 }) : s('path', { class: 'box0', d: d('M', cx, cy - 5.5, 'L', cx + 5, cy + 4, 'H', cx - 5, 'Z') }));
    }
  });
  // Names at the end of their lines, moved apart.
  const ends = courses.flatMap((one) => {
    const [at] = path(one.points.slice(-1));
    return at ? [{ name: one.name, kind: one.of === 'surface' ? '' : 'b', x: at[0], y: at[1] }] : [];
  }).sort((a, b) => a.y - b.y);
  const rows = spread(ends.map((one) => Math.max(top + 4, one.y)), 16, end - 2);
  ends.forEach((one, index) => {
    const row = rows[index] ?? one.y;
    parts.push(line('hair', d('M', one.x + 5, one.y, 'L', right + 10, row, 'h', 4)), text(`${one.kind} halo`, right + 18, row + 4.5, fit(one.name, width - right - 20, 18)));
  });
  const below = legend([
    ...(courses.some((one) => one.of === 'surface') ? [{ name: names.surface, sample: stroke('ln bold') }] : []),
    ...(courses.some((one) => one.of === 'air') ? [{ name: names.air, sample: stroke('cut') }] : []),
    ...(dew ? [{ name: names.dew, sample: stroke('cut dash') }] : []),
    ...(dew && above !== undefined ? [{ name: names.least, sample: stroke('holdln') }] : []),
  ], end + 46, width);
  return drawing(width, below.end, names.label, [...parts, ...below.parts]);
}
