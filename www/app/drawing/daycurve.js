// @ts-check
/**
 * A day ahead: 24 hours across, temperature upward. The likely course of the air, what surfaces make of it, the labels'
 * window as a box, the sun's rise and set, and below it what each stretch of the day is good for.
 */
import { barred, d, drawing, line, rect, s, text } from '../svg.js';
import { broad, degrees, filled, legend, patch, plain, stroke, through } from './degrees.js';

/**
 * @typedef {{from: number, to: number, says: import('../core.js').Says}} Part  minutes after midnight
 * @typedef {object} Day
 * @property {number[]} air °F each 15 minutes from midnight on, as are the other courses
 * @property {number[]} heated
 * @property {number[]} masonry
 * @property {number} [least] the window of the air
 * @property {number} [most]
 * @property {number} [dew]
 * @property {[number, number][]} boxes when the air is inside, likely
 * @property {number} edge how far the ends of a box may be off, in minutes
 * @property {Part[]} parts
 * @property {number} [sunrise]
 * @property {number} [sunset]
 * @property {number} [spray] when spraying begins
 *
 * @typedef {object} Names
 * @property {string} label
 * @property {string} air
 * @property {string} heated
 * @property {string} masonry
 * @property {string} window
 * @property {string} dew
 * @property {[string, string]} sunrise what it is, and when
 * @property {[string, string]} sunset
 * @property {string} spray
 * @property {Record<import('../core.js').Says, string>} says
 * @property {(minutes: number) => string} hour
 */

const LEFT = 42;
const TOP = 66;
const HIGH = 196;
const STRIP = 34;
const DAY = 1440;
/** Minutes between two figures of a course. */
const EACH = 15;

/** Diagonals far apart: measure first. */
function sparse() {
  const { defs, fill } = barred();
  const pattern = defs.firstChild;
  if (pattern && 'setAttribute' in pattern) {
    const one = /** @type {SVGElement} */ (pattern);
    one.setAttribute('width', '11');
    one.setAttribute('height', '11');
    one.setAttribute('patternTransform', 'rotate(-45)');
    one.firstChild?.replaceWith(line('hair', 'M0 0V11'));
  }
  return { defs, fill };
}

/** @param {Day} day @param {Names} names @param {{width: number, metric: boolean}} how @returns {SVGElement} */
export function dayCurve(day, names, { width, metric }) {
  const right = width - 14;
  const end = TOP + HIGH;
  const x = (/** @type {number} */ min) => LEFT + (Math.max(0, Math.min(DAY, min)) / DAY) * (right - LEFT);
  const scale = degrees([...day.air, ...day.heated, ...day.masonry, day.least, day.most, day.dew], { metric, left: LEFT, right, top: TOP, end });
  const { y } = scale;
  /** @type {(Node | undefined)[]} */
  const parts = [];

  // The window's box first: everything else lies over it.
  const { least, most } = day;
  const ends = day.edge / DAY * (right - LEFT);
  if (least !== undefined && most !== undefined) {
    const top = y(most);
    const high = y(least) - top;
    for (const [from, to] of day.boxes) {
      const [a, b] = [x(from), x(to)];
      parts.push(rect('washfill', a, top, b - a, high));
      for (const side of [...(from > 0 ? [a] : []), ...(to < DAY ? [b] : [])]) {
        const start = Math.max(LEFT, side - ends);
        parts.push(s('rect', { class: 'neutral', x: start, y: top, width: Math.min(right, side + ends) - start, height: high, opacity: '.4' }));
      }
      parts.push(line('ln bold', d('M', a, top, 'H', b, 'V', top + high, 'H', a, 'Z')));
    }
  }
  parts.push(...scale.lines);
  for (const limit of [least, most]) if (limit !== undefined) parts.push(line('hair', d('M', LEFT, y(limit), 'H', right)));

  // Hours.
  for (let hour = 0; hour <= 24; hour += 3) {
    const main = hour % 6 === 0;
    parts.push(line(main ? 'grid main' : 'grid', d('M', x(hour * 60), TOP, 'V', end + STRIP + 10)));
    if (main && hour > 0 && hour < 24) parts.push(text('m', x(hour * 60), end + STRIP + 28, names.hour(hour * 60)));
  }

  // The sun's rise and set: ticks at the foot of the drawing, named above it.
  for (const [when, [name, time]] of /** @type {const} */ ([[day.sunrise, names.sunrise], [day.sunset, names.sunset]])) {
    if (when === undefined) continue;
    const at = x(when);
    const half = Math.max(broad(name), broad(time)) / 2;
    const middle = Math.max(half + 4, Math.min(at, width - half - 4));
    parts.push(line('ln', d('M', at, 38, 'V', TOP)), line('tick', d('M', at, end - 9, 'V', end)), text('q m', middle, 16, name), text('m', middle, 32, time));
  }

  // Courses.
  const course = (/** @type {number[]} */ figures) => /** @type {[number, number][]} */ (figures.map((f, at) => [x(at * EACH), y(f)]));
  if (day.dew !== undefined) parts.push(line('hair dash', d('M', LEFT, y(day.dew), 'H', right)));
  if (day.masonry.length) parts.push(through('ln bold dash', course(day.masonry)));
  if (day.heated.length) parts.push(through('ln', course(day.heated)));
  if (day.air.length) parts.push(through('cut', course(day.air)));

  // What each stretch is good for: by pattern, and by its word where it fits.
  const measure = sparse();
  const not = barred();
  parts.push(measure.defs, not.defs);
  /** @type {Record<import('../core.js').Says, (x: number, y: number, w: number, h: number) => Node[]>} */
  const fills = { inside: plain, measure_first: (...at) => filled(measure.fill, ...at), outside: (...at) => filled(not.fill, ...at) };
  const top = end + 8;
  for (const { from, to, says } of day.parts) {
    const [a, b] = [x(from), x(to)];
    parts.push(...fills[says](a, top, b - a, STRIP - 8));
    const name = names.says[says];
    if (broad(name) + 14 < b - a) parts.push(text('b halo m', (a + b) / 2, top + 18, name));
  }

  // When spraying begins.
  if (day.spray !== undefined) {
    const at = x(day.spray);
    parts.push(line('on', d('M', at, TOP - 16, 'V', end + STRIP)));
    const before = at + broad(names.spray) + 8 > width;
    parts.push(text(`on b halo${before ? ' e' : ''}`, before ? at - 5 : at + 5, TOP - 6, names.spray));
  }

  const below = legend([
    { name: names.air, sample: stroke('cut') },
    ...(day.heated.length ? [{ name: names.heated, sample: stroke('ln') }] : []),
    ...(day.masonry.length ? [{ name: names.masonry, sample: stroke('ln bold dash') }] : []),
    ...(day.dew === undefined ? [] : [{ name: names.dew, sample: stroke('hair dash') }]),
    ...(day.boxes.length ? [{ name: names.window, sample: patch((...at) => [rect('washfill', ...at), ...filled('none', ...at, 'ln bold')]) }] : []),
    .../** @type {const} */ (['inside', 'measure_first', 'outside']).filter((says) => day.parts.some((one) => one.says === says)).map((says) => ({ name: names.says[says], sample: patch(fills[says]) })),
  ], end + STRIP + 50, width);
  return drawing(width, below.end, names.label, [...parts, ...below.parts]);
}
