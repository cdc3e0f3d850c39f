// @ts-check
/** Readings against the label's windows, all on one axis, with the dew point and the spread above it. */
import { barred, d, drawing, fit, line, markAt, rect, s, text, wide } from '../svg.js';

/**
 * @typedef {{name: string, sub: string, value?: number, least?: number, most?: number, mark: import('../svg.js').MarkKind,
 *   figure: string, remark: string, surface: boolean}} Row
 * Temperatures in °F.
 */

const LEFT = 128;
const ROW = 46;

/**
 * @param {Row[]} rows
 * @param {{point?: number, least?: number, label: string, plain: string}} dew
 * @param {{width: number, label: string, metric: boolean}} how
 * @returns {SVGElement}
 */
export function readingsAxis(rows, dew, { width, label, metric }) {
  const seen = rows.flatMap((one) => [one.value, one.least, one.most]).concat(dew.point, dew.least).filter((one) => one !== undefined);
  const low = Math.min(42, ...seen.map((one) => one - 4));
  const high = Math.max(94, ...seen.map((one) => one + 4));
  const right = width - 16;
  const x = (/** @type {number} */ f) => LEFT + ((f - low) / (high - low)) * (right - LEFT);
  const top = 30;
  const end = top + rows.length * ROW;
  /** @type {Node[]} */
  const parts = [];
  // The axis: a line every 5 degrees, a figure where there is room.
  const shown = metric ? (/** @type {number} */ f) => ((f - 32) * 5) / 9 : (/** @type {number} */ f) => f;
  const back = metric ? (/** @type {number} */ c) => (c * 9) / 5 + 32 : (/** @type {number} */ f) => f;
  const span = shown(high) - shown(low);
  const step = span > 120 ? 20 : metric ? 5 : span > 70 ? 10 : 5;
  const named = metric ? (span > 60 ? 20 : 10) : span > 90 ? 20 : 10;
  for (let t = Math.ceil(shown(low) / step) * step; t <= shown(high); t += step) {
    const main = t % named === 0;
    parts.push(line(main ? 'grid main' : 'grid', d('M', x(back(t)), 24, 'V', end + 2)));
    if (main) parts.push(text('m', Math.min(x(back(t)), width - 14), 19, `${t < 0 ? '−' : ''}${Math.abs(t)}°`));
  }
  // Below the dew point and its spread, across the surfaces' rows.
  const firstSurface = rows.findIndex((one) => one.surface);
  const surfacesTop = firstSurface < 0 ? end : top + firstSurface * ROW + 2;
  if (dew.least !== undefined && firstSurface >= 0) {
    const { defs, fill } = barred();
    parts.push(defs, s('rect', { x: LEFT, y: surfacesTop, width: Math.max(0, x(dew.least) - LEFT), height: end - surfacesTop, fill, opacity: '.45' }));
  }
  rows.forEach((row, index) => {
    const y = top + index * ROW;
    parts.push(line('rule', d('M', 0, y, 'H', width)));
    if (row.mark === 'hold') parts.push(rect('holdwash', 0, y + 0.5, width, ROW - 1));
    if (row.least !== undefined && row.most !== undefined && row.most >= row.least) {
      parts.push(rect('box0', x(row.least), y + 11, x(row.most) - x(row.least), 24));
    }
    parts.push(text('b md', 16, y + 21, fit(row.name, LEFT - 20, 16)), text('q', 16, y + 37, fit(row.sub, LEFT - 18, 13.5)));
    if (row.value === undefined) {
      const from = row.least === undefined ? LEFT : x(row.least);
      parts.push(markAt('none', from + 16, y + 23, 19), text('halo b q', from + 31, y + 28, row.figure));
      return;
    }
    const at = x(row.value);
    const room = (/** @type {string} */ what) => [at - 17 - wide(what, 17) > LEFT, at + 17 + wide(what, 17) < width - 4];
    const whole = row.figure + (row.remark ? ', ' + row.remark : '');
    const remark = row.remark && room(whole).some(Boolean) ? row.remark : '';
    const [left, right] = room(remark ? whole : row.figure);
    const before = left && (!right || (row.least !== undefined && row.value < row.least));
    const kind = `lg halo${row.mark === 'hold' ? ' hold onhold' : ''}${before ? ' e' : ''}`;
    parts.push(markAt(row.mark, at, y + 23, 21));
    parts.push(s('text', { class: kind, x: before ? at - 15 : at + 15, y: y + 29 }, row.figure, remark ? s('tspan', { class: 'q md' }, ', ' + remark) : undefined));
  });
  parts.push(line('rule', d('M', 0, end, 'H', width)));
  let height = end + 8;
  if (dew.point !== undefined && dew.least !== undefined) {
    parts.push(line('cut dash', d('M', x(dew.point), surfacesTop, 'V', end + 6)));
    if (firstSurface >= 0) parts.push(line('holdln', d('M', x(dew.least), surfacesTop, 'V', end + 4)));
    const said = wide(dew.label, 16) > width - 24 ? dew.plain : dew.label;
    parts.push(text('b md', Math.max(12, Math.min(x(dew.point) - 4, width - 8 - wide(said, 16))), end + 22, said));
    height = end + 28;
  }
  return drawing(width, height, label, parts);
}
