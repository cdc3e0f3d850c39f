// @ts-check
/** Curves that are to be read off: a fine grid with figures, level lines with their names, and no mark where they meet. */
import { degrees, legend, stroke, through } from '../drawing/degrees.js';
import { cut } from '../drawing/warmcurve.js';
import { d, drawing, fit, line, text, wide } from '../svg.js';

const LEFT = 42;
const TOP = 16;

/**
 * Where a level line's name hides no curve: above the line or below it, the farther right the better. Where curves are
 * everywhere it hides at least no place where one crosses the line, since that is what is read off.
 * @param {[number, number][][]} courses in pixels @param {number} long @param {number} level @param {number} right
 */
export function clear(courses, long, level, right) {
  const last = right - 4 - long;
  for (const up of [18, 4]) {
    for (let x = last; x >= LEFT + 4; x -= 8) {
      for (const y of [level - 5, level + 15]) {
        const [top, end] = up === 18 ? [y - 18, y + 8] : [level - 4, level + 4];
        const meets = courses.some((points) => points.some(([px, py], at) => {
          const [qx, qy] = points[at + 1] ?? [px, py];
          return Math.max(px, qx) > x - 10 && Math.min(px, qx) < x + long + 10 && Math.max(py, qy) > top && Math.min(py, qy) < end;
        }));
        if (!meets) return { x, y };
      }
    }
  }
  return { x: last, y: level - 5 };
}

/**
 * @typedef {{kind: string, name: string, points: [number, number][]}} Course  minutes and °F
 * @param {Course[]} courses @param {{f: number, name: string}[]} levels
 * @param {{width: number, metric: boolean, label: string, end: number, every: number, fine: number, tall: number, when: (minutes: number) => string}} how
 *   `every`: a figure at each so many minutes; `fine`: a line
 */
export function readChart(courses, levels, { width, metric, label, end, every, fine, tall, when }) {
  const right = width - 14;
  const floor = TOP + tall;
  const x = (/** @type {number} */ min) => LEFT + (min / end) * (right - LEFT);
  const drawn = courses.map((one) => ({ ...one, points: cut(one.points.map(([min]) => min), one.points.map(([, f]) => f), end) }));
  const scale = degrees([...drawn.flatMap((one) => one.points.map(([, f]) => f)), ...levels.map((one) => one.f)], { metric, left: LEFT, right, top: TOP, end: floor });
  const seen = drawn.flatMap((one) => one.points.map(([, f]) => f)).concat(levels.map((one) => one.f));
  /** @type {(Node | undefined)[]} */
  const parts = [];
  // A line to each degree, where a degree has room: between the lines that carry figures.
  const per = metric ? 1.8 : 1;
  const one = Math.abs(scale.y(0) - scale.y(per));
  const step = [1, 2, 5, 10].find((k) => k * one >= 5);
  if (step) {
    let path = '';
    const unit = metric ? (/** @type {number} */ v) => (v * 9) / 5 + 32 : (/** @type {number} */ v) => v;
    const [low, high] = [Math.min(...seen) - 3, Math.max(...seen) + 3].map((f) => (metric ? ((f - 32) * 5) / 9 : f));
    for (let v = Math.ceil(low / step) * step; v <= high; v += step) path += d('M', LEFT, scale.y(unit(v)), 'H', right);
    parts.push(line('grid ex-fine', path || 'M0 0'));
  }
  for (let min = 0; min <= end + 1e-6; min += fine) parts.push(line(min % every === 0 ? 'grid main' : 'grid', d('M', x(min), TOP, 'V', floor)));
  parts.push(...scale.lines);
  let free = -Infinity;
  for (let min = 0; min <= end + 1e-6; min += every) {
    const words = when(min);
    const half = wide(words, 13.5) / 2;
    const middle = Math.min(Math.max(x(min), half + 2), width - half - 2);
    if (middle - half < free) continue;
    parts.push(text('m', middle, floor + 18, words));
    free = middle + half + 5;
  }
  for (const level of levels) parts.push(line('ln bold', d('M', LEFT, scale.y(level.f), 'H', right)));
  for (const course of drawn) parts.push(through(course.kind, course.points.map(([min, f]) => [x(min), scale.y(f)])));
  parts.push(line('cut', d('M', LEFT, TOP, 'V', floor, 'H', right)));
  for (const level of levels) {
    const words = fit(level.name, right - LEFT - 20, 13.5);
    const at = clear(drawn.map((course) => course.points.map(([min, f]) => /** @type {[number, number]} */ ([x(min), scale.y(f)]))), wide(words, 13.5), scale.y(level.f), right);
    parts.push(text('b halo', at.x, at.y, words));
  }
  const below = legend(drawn.map((course) => ({ name: course.name, sample: stroke(course.kind) })), floor + 42, width);
  return drawing(width, below.end, label, [...parts, ...below.parts]);
}
