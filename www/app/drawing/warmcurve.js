// @ts-check
/** Temperatures against time: the curves of a cylinder, the label's window, and under the axis how long each takes. */
import { d, drawing, line, r2, rect, s, text, wide } from '../svg.js';
import { locale } from '../words.js';

/**
 * @typedef {{kind: string, f: number[], dots?: string, name?: string}} Curve  `dots`: a dash pattern of its own
 * @typedef {{min: number, name: string, main?: boolean}} Reach  a length of time from the start
 *
 * @typedef {object} Chart
 * @property {number[]} min  minutes from the start, for all curves
 * @property {number} end  how much of it is drawn
 * @property {number} [from]  what the clock on the wall shows at the start; hours are written without it
 * @property {Curve[]} curves  in °F
 * @property {[number[], number[]]} [band]  between these two
 * @property {{least: number, most: number, name: string}} box  the label's window
 * @property {Reach[]} reaches
 * @property {number} [limit]  what the lengths of time run to, in °F; the least of the window otherwise
 * @property {{min: number, name: string}} [by]  the heavy upright
 * @property {{min: number, low: number, likely: number, high: number, name: string}} [now]
 * @property {{min: number, f: number, of: 'skin' | 'liquid'}[]} [read]  what was read
 */

const LEFT = 46;
const TOP = 34;
const TALL = 176;
const ROW = 27;

/** Steps of the time axis, in minutes. */
const STEPS = [5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440, 2880, 5760];

/** Where the last drawn value of a curve is, so that it ends at the edge. @param {number[]} at @param {number[]} f @param {number} end @returns {[number, number][]} */
export function cut(at, f, end) {
  /** @type {[number, number][]} */
  const points = [];
  for (let i = 0; i < Math.min(at.length, f.length); i += 1) {
    const [t, v] = [at[i] ?? 0, f[i] ?? 0];
    if (t > end) {
      const [t0, v0] = points[points.length - 1] ?? [t, v];
      if (t > t0) points.push([end, v0 + ((v - v0) * (end - t0)) / (t - t0)]);
      break;
    }
    points.push([t, v]);
  }
  return points;
}

/**
 * @param {Chart} chart @param {{width: number, label: string, metric: boolean}} how
 * @returns {SVGElement}
 */
export function timeChart({ min, end, from, curves, band, box, reaches, limit = box.least, by, now, read = [] }, { width, label, metric }) {
  const right = width - 16;
  const bottom = TOP + TALL;
  const drawn = curves.map((one) => ({ ...one, points: cut(min, one.f, end) }));
  const seen = drawn.flatMap((one) => one.points.map(([, f]) => f)).concat(box.least, box.most, ...read.map((one) => one.f), ...(now ? [now.low, now.high] : []));
  const low = Math.min(...seen) - 3;
  const high = Math.max(...seen) + 3;
  const x = (/** @type {number} */ at) => LEFT + (at / end) * (right - LEFT);
  const y = (/** @type {number} */ f) => bottom - ((f - low) / (high - low)) * TALL;
  const path = (/** @type {[number, number][]} */ points) => points.map(([at, f], i) => `${i ? 'L' : 'M'}${r2(x(at))} ${r2(y(f))}`).join('');
  /** @type {Node[]} */
  const parts = [];

  // Temperature: a line every 5 or 10 degrees of the job's own scale.
  const shown = metric ? (/** @type {number} */ f) => ((f - 32) * 5) / 9 : (/** @type {number} */ f) => f;
  const back = metric ? (/** @type {number} */ c) => (c * 9) / 5 + 32 : (/** @type {number} */ f) => f;
  const step = [2, 5, 10, 20, 50].find((one) => (one / (shown(high) - shown(low))) * TALL >= 22) ?? 100;
  for (let t = Math.ceil(shown(low) / step) * step; t <= shown(high); t += step) {
    parts.push(line('grid', d('M', LEFT, y(back(t)), 'H', right)), text('e', LEFT - 6, y(back(t)) + 4.5, `${t < 0 ? '−' : ''}${Math.abs(t)}°`));
  }
  // Time: by the clock on the wall, or hours from the start.
  const every = STEPS.find((one) => (one / end) * (right - LEFT) >= 54) ?? 11520;
  const first = from === undefined ? 0 : Math.ceil(from / every) * every - from;
  let last = -Infinity;
  for (let at = first; at <= end; at += every) {
    parts.push(line('grid', d('M', x(at), TOP, 'V', bottom)));
    const said = from === undefined ? spanned(at) : clocked(from + at);
    // Some phones have no condensed face: room for a wider one.
    const half = wide(said, 13.5) * 0.65;
    const middle = Math.min(x(at), width - 4 - half);
    if (middle - half > last + 6 && middle - half > LEFT - 20) {
      parts.push(text('m', middle, bottom + 17, said));
      last = middle + half;
    }
  }

  // The label's window, closed at both ends.
  parts.push(s('rect', { class: 'ln bold', x: LEFT, y: y(box.most), width: right - LEFT, height: Math.max(0, y(box.least) - y(box.most)) }));
  if (band) {
    const lower = cut(min, band[1], end);
    const upper = cut(min, band[0], end);
    parts.push(s('path', { class: 'washfill', d: `${path(upper)}${path(lower.reverse()).replace('M', 'L')}Z` }));
  }
  for (const one of drawn) parts.push(s('path', { class: one.kind, d: path(one.points), 'stroke-dasharray': one.dots }));
  parts.push(line('cut', d('M', LEFT, TOP, 'V', bottom, 'H', right)));

  // From each length of time a thin upright down to its own dimension line, so that no two labels share a place.
  reaches.forEach((one, at) => {
    const level = bottom + 46 + at * ROW;
    const to = x(Math.min(one.min, end));
    parts.push(line(one.main ? 'ln bold' : 'hair', d('M', to, y(limit), 'V', level + 4)));
    parts.push(line('dim', d('M', LEFT, level, 'H', to)), line('tick', d('M', LEFT - 4, level + 4, 'L', LEFT + 4, level - 4)), line('tick', d('M', to - 4, level + 4, 'L', to + 4, level - 4)));
    const size = one.main ? 17 : 13.5;
    const length = wide(one.name, size);
    const kind = one.main ? 'lg halo' : 'b halo';
    const inside = to - LEFT > length + 18;
    const beside = to + 10 + length < width - 4;
    if (inside) parts.push(text(kind + ' m', (LEFT + to) / 2, level - 4, one.name));
    else if (beside) parts.push(text(kind, to + 10, level + 2, one.name));
    else parts.push(text(kind, LEFT + 6, level - 4, one.name));
  });

  const boxTop = y(box.most);
  parts.push(text('b halo', LEFT + 7, boxTop + 16, box.name));
  for (const one of drawn) {
    if (!one.name) continue;
    const [at, f] = one.points[Math.floor(one.points.length * 0.25)] ?? [0, low];
    const above = one.kind.includes('hair') && !one.dots;
    parts.push(text('halo q sm' + ' m', Math.min(x(at), right - wide(one.name, 12.5) / 2), y(f) + (above ? -5 : 17), one.name));
  }
  if (by) {
    const at = x(Math.min(by.min, end));
    const before = at > width / 2;
    parts.push(line('cut heavy', d('M', at, 24, 'V', bottom)), text('halo lg' + (before ? ' e' : ''), before ? Math.min(at + 8, right) : Math.max(at - 8, 8), 19, by.name));
  }
  if (now && now.min >= 0 && now.min <= end) {
    const at = x(now.min);
    const before = at > width / 2;
    parts.push(line('cut', d('M', at, y(now.low), 'V', y(now.high))), s('circle', { class: 'inkfill', cx: at, cy: y(now.likely), r: 5 }),
      text('halo lg' + (before ? ' e' : ''), before ? at - 10 : at + 10, Math.min(bottom - 6, y(now.likely) + 18), now.name));
  }
  for (const one of read) {
    if (one.min < 0 || one.min > end) continue;
    parts.push(one.of === 'skin' ? s('circle', { class: 'void', cx: x(one.min), cy: y(one.f), r: 4.5 }) : rect('inkfill', x(one.min) - 4.5, y(one.f) - 4.5, 9, 9));
  }
  return drawing(width, bottom + (reaches.length ? 36 + reaches.length * ROW + 4 : 28), label, parts);
}


/** @param {number} minutes */
const spanned = (minutes) => (minutes % 60 || minutes < 60 && minutes ? `${minutes}\u00a0min` : `${minutes / 60}\u00a0h`);

/** A tick of the axis: the day at midnight, else the hour. @param {number} minutes */
function clocked(minutes) {
  const at = new Date(minutes * 60_000);
  if (minutes % 1440 === 0) return at.toLocaleDateString(locale(), { timeZone: 'UTC', weekday: 'short' });
  return at.toLocaleTimeString(locale(), { timeZone: 'UTC', hour: 'numeric', ...minutes % 60 ? { minute: '2-digit' } : {} });
}
