// @ts-check
/** The dew point that a room settles at by its air changes, against what its coldest surface allows. */
import { barred, d, drawing, line, rect, s, text } from '../svg.js';
import { degrees, filled, legend, patch, stroke } from './degrees.js';

/**
 * @typedef {{dew: number, name: string, figure: string, yours: boolean, dashed: boolean}} Bar  °F
 * @param {Bar[]} bars
 * @param {{coldest?: number, limit?: number, outdoors?: number}} lines °F
 * @param {{label: string, over: string, fits: string, limit: string, coldest: string, outdoors: string, axis: string}} names
 * @param {{width: number, metric: boolean}} how
 * @returns {SVGElement}
 */
export function dewBars(bars, lines, names, { width, metric }) {
  const left = 42;
  const right = width - 14;
  const top = 30;
  const end = 220;
  const scale = degrees([...bars.map((one) => one.dew), lines.coldest, lines.limit, lines.outdoors === undefined ? undefined : lines.outdoors - 4], { metric, left, right, top, end });
  const { y } = scale;
  const each = (right - left) / bars.length;
  const not = barred();
  /** @type {(Node | undefined)[]} */
  const parts = [not.defs, ...scale.lines, line('rule', d('M', left, end, 'H', right))];
  const high = (/** @type {Bar} */ one) => lines.limit !== undefined && one.dew > lines.limit;
  bars.forEach((one, index) => {
    const a = left + index * each + each * 0.16;
    const w = each * 0.68;
    const at = y(one.dew);
    parts.push(...(high(one) ? filled(not.fill, a, at, w, end - at) : [rect('neutral', a, at, w, end - at)]));
    parts.push(s('path', { class: `${one.yours ? 'on' : 'ln'}${one.dashed ? ' dash' : ''}`, d: d('M', a, end, 'V', at, 'H', a + w, 'V', end) }));
  });
  if (lines.outdoors !== undefined) parts.push(line('hair dash', d('M', left, y(lines.outdoors), 'H', right)));
  if (lines.coldest !== undefined) parts.push(line('cut', d('M', left, y(lines.coldest), 'H', right)));
  if (lines.limit !== undefined) parts.push(line('holdln', d('M', left, y(lines.limit), 'H', right)));
  bars.forEach((one, index) => {
    const middle = left + (index + 0.5) * each;
    parts.push(text(`lg halo m${one.yours ? ' on' : ''}`, middle, y(one.dew) - 6, one.figure), text(`m ${one.yours ? 'b on' : 'b'}`, middle, end + 18, one.name));
  });
  parts.push(text('q e', right, end + 36, names.axis));
  const below = legend([
    ...(bars.some((one) => !high(one)) ? [{ name: names.fits, sample: patch((...at) => [rect('neutral', ...at), ...filled('none', ...at)]) }] : []),
    ...(bars.some(high) ? [{ name: names.over, sample: patch((...at) => filled(not.fill, ...at)) }] : []),
    ...(lines.coldest === undefined ? [] : [{ name: names.coldest, sample: stroke('cut') }]),
    ...(lines.limit === undefined ? [] : [{ name: names.limit, sample: stroke('holdln') }]),
    ...(lines.outdoors === undefined ? [] : [{ name: names.outdoors, sample: stroke('hair dash') }]),
  ], end + 58, width);
  return drawing(width, below.end, names.label, [...parts, ...below.parts]);
}
