// @ts-check
/** Making SVG by hand: elements, marks and hatches. Classes and presentation attributes only. */

const NS = 'http://www.w3.org/2000/svg';
let made = 0;

/** A name that no other drawing on the page has, for patterns and clip paths. */
export const fresh = () => 'g' + (made += 1);

/** Coordinates to a hundredth of a pixel. @param {number} value */
export const r2 = (value) => Math.round(value * 100) / 100;

/**
 * One SVG element.
 * @param {string} tag
 * @param {Record<string, string | number | undefined>} [attrs]
 * @param {...(Node | string | undefined)} inside
 * @returns {SVGElement}
 */
export function s(tag, attrs = {}, ...inside) {
  const node = /** @type {SVGElement} */ (document.createElementNS(NS, tag));
  for (const [name, value] of Object.entries(attrs)) {
    if (value !== undefined) node.setAttribute(name, typeof value === 'number' ? String(r2(value)) : value);
  }
  for (const one of inside) if (one !== undefined) node.append(one);
  return node;
}

/** A path of a class. @param {string} kind @param {string} d */
export const line = (kind, d) => s('path', { class: kind, d });

/** @param {string} kind @param {number} x @param {number} y @param {number} width @param {number} height */
export const rect = (kind, x, y, width, height) =>
  s('rect', { class: kind, x, y, width: Math.max(0, width), height: Math.max(0, height) });

/** @param {string} kind @param {number} x @param {number} y @param {...(string | Node)} what */
export const text = (kind, x, y, ...what) => s('text', { class: kind, x, y }, ...what);

/** Path data: numbers are rounded, strings kept. @param {...(string | number)} parts */
export const d = (...parts) => parts.map((one) => (typeof one === 'number' ? r2(one) : one)).join(' ');

/**
 * A drawing with its label.
 * @param {number} width @param {number} height @param {string} label @param {(Node | undefined)[]} inside
 */
export const drawing = (width, height, label, inside) =>
  s('svg', { class: 'd', viewBox: `0 0 ${r2(width)} ${r2(height)}`, role: 'img', 'aria-label': label }, ...inside);

/** Closed-cell foam: circles on the drawing tint. @param {boolean} [wide] */
export function foam(wide = false) {
  const id = fresh();
  const size = wide ? 26 : 18;
  const cells = wide
    ? [[5, 6, 1.9], [17, 4, 1.2], [20, 16, 2.1], [8, 20, 1.3], [12.5, 12, 0.8]]
    : [[4, 5, 2.3], [12.5, 3.5, 1.4], [13, 12, 2.7], [5, 14, 1.5], [8.6, 9, 0.9]];
  const defs = s('defs', {}, s('pattern', { id, width: size, height: size, patternUnits: 'userSpaceOnUse' },
    rect('foamfill', 0, 0, size, size),
    s('g', { class: 'cell' }, ...cells.map(([cx, cy, r]) => s('circle', { cx, cy, r })))));
  return { defs, fill: `url(#${id})` };
}

/** Not allowed: lines at 45°. */
export function barred() {
  const id = fresh();
  const defs = s('defs', {}, s('pattern', { id, width: 8, height: 8, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
    line('hatch', 'M0 0V8')));
  return { defs, fill: `url(#${id})` };
}

const SHAPES = {
  go: () => [s('circle', { class: 's', cx: 12, cy: 12, r: 11 }), line('i', 'M7 12.5L10.7 16L17 8.5')],
  hold: () => [s('polygon', { class: 's', points: '7.5,1 16.5,1 23,7.5 23,16.5 16.5,23 7.5,23 1,16.5 1,7.5' }), line('i', 'M7 12H17')],
  watch: () => [line('s', 'M12 1.5L23.5 22H.5Z'), line('i', 'M12 9V14.2M12 18.4V18.5')],
  none: () => [s('circle', { class: 's', cx: 12, cy: 12, r: 10 })],
};

/** @typedef {keyof typeof SHAPES} MarkKind */

/** A mark: disc, octagon, triangle or broken ring. The word beside it says the same. @param {MarkKind} kind */
export const mark = (kind) =>
  s('svg', { class: 'mk ' + kind, viewBox: '0 0 24 24', 'aria-hidden': 'true' }, ...SHAPES[kind]());

/** A mark inside a drawing. @param {MarkKind} kind @param {number} x centre @param {number} y centre @param {number} size */
export const markAt = (kind, x, y, size) =>
  s('g', { class: 'mk ' + kind, transform: `translate(${r2(x - size / 2)} ${r2(y - size / 2)}) scale(${r2(size / 24)})` }, ...SHAPES[kind]());

/** A section bubble: the flag looks right when closed, down when open. @param {number} number */
export const bubble = (number) =>
  s('svg', { class: 'bub', viewBox: '0 0 44 40', 'aria-hidden': 'true' },
    s('g', { class: 'right' }, line('flag', 'M18 6.5L37.5 20L18 33.5Z'), s('circle', { cx: 18, cy: 20, r: 14 }), text('', 18, 26.3, String(number))),
    s('g', { class: 'down' }, line('flag', 'M5 20L18 37.5L31 20Z'), s('circle', { cx: 18, cy: 18, r: 14 }), text('', 18, 24.3, String(number))));

/** @type {CanvasRenderingContext2D | null | undefined} */
let pen;

/** As wide as the device's own face makes a text, in bold; 0 where nothing can be painted. @param {string} what @param {number} size */
function measured(what, size) {
  if (pen === undefined) {
    const canvas = /** @type {HTMLCanvasElement} */ (document.createElement('canvas'));
    pen = canvas.getContext?.('2d') ?? null;
  }
  if (!pen) return 0;
  // At a hundred pixels, since small sizes may be rounded to whole ones.
  pen.font = '700 100px ' + (getComputedStyle(document.documentElement).getPropertyValue('--narrow').trim() || 'sans-serif');
  return pen.measureText(what).width * size / 100;
}

/**
 * About how wide a text of a drawing is: never less than in the condensed faces of the style, more where the device has
 * none of them.
 * @param {string} what @param {number} size
 */
export const wide = (what, size) => Math.max(what.length * size * 0.455, measured(what, size));

/** A text cut to a width. @param {string} what @param {number} width @param {number} size */
export function fit(what, width, size) {
  if (wide(what, size) <= width) return what;
  let most = Math.max(3, Math.min(what.length, Math.floor(width / (size * 0.455))));
  const cut = () => what.slice(0, most - 1).trimEnd() + '…';
  while (most > 3 && wide(cut(), size) > width) most -= 1;
  return cut();
}

/** A text in at most two lines of a width. @param {string} what @param {number} width @param {number} size */
export function twoLines(what, width, size) {
  if (wide(what, size) <= width) return [what];
  const words = what.split(' ');
  let first = words.shift() ?? '';
  while (words.length && wide(first + ' ' + words[0], size) <= width) first += ' ' + words.shift();
  return words.length ? [fit(first, width, size), fit(words.join(' '), width, size)] : [fit(first, width, size)];
}

/**
 * The grid behind a drawing, from an origin outward.
 * @param {number} width @param {number} height @param {number} x0 @param {number} y0 @param {number} step
 */
export function grid(width, height, x0, y0, step) {
  let path = '';
  for (let x = x0 % step; x < width; x += step) path += `M${r2(x)} 0V${r2(height)}`;
  for (let y = y0 % step; y < height; y += step) path += `M0 ${r2(y)}H${r2(width)}`;
  return line('grid', path);
}

/**
 * How much one square of the grid is: the least round length that stays legible.
 * @param {number} k pixels to an inch @param {boolean} metric @param {number} [least] pixels
 * @returns {{inches: number, count: number}} count in feet or meters; an inch is a twelfth
 */
export function square(k, metric, least = 9) {
  const unit = metric ? 1 / 0.0254 : 12;
  const steps = metric ? [0.05, 0.25, 0.5, 1, 2, 5, 10, 20, 50, 100] : [1 / 12, 1, 2, 4, 5, 10, 20, 50, 100, 200, 500];
  const count = steps.find((one) => one * unit * k >= least) ?? 1000;
  return { inches: count * unit, count };
}
