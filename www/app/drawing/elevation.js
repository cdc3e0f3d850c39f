// @ts-check
/** One surface to scale: foam, every counted member, openings, dimension lines that can be pressed. */
import { d, drawing, fit, foam, grid, line, r2, rect, s, square, text, wide } from '../svg.js';

/**
 * @typedef {{width: number, metric: boolean, label: string, letters: Map<number, string>, active: string,
 *   press: (at: import('../core.js').At) => void, pressLabel: (dimension: import('../core.js').Dimension) => string}} How
 */

const APART = 26;

/**
 * @param {import('../core.js').Outline} outline @param {How} how
 * @returns {{svg: SVGElement, square: number}}
 */
export function elevation(outline, how) {
  const { width } = how;
  const sides = { top: [], bottom: [], left: [] };
  for (const one of outline.dimensions) sides[one.side].push(one);
  const rows = (/** @type {import('../core.js').Dimension[]} */ list) => list.reduce((most, one) => Math.max(most, one.row + 1), 0);
  const leftRoom = sides.left.length ? 22 + 22 * rows(sides.left) : 16;
  const topRoom = 16 + APART * rows(sides.top);
  const k = Math.min((width - leftRoom - 14) / Math.max(1, outline.width_in), (width * 0.82) / Math.max(1, outline.height_in));
  const w = outline.width_in * k;
  const h = outline.height_in * k;
  const x0 = leftRoom + Math.max(0, (width - leftRoom - 14 - w) / 2);
  const y0 = topRoom;
  const floor = y0 + h;
  const height = floor + (sides.bottom.length ? 8 + APART * rows(sides.bottom) + 20 : 16);
  const { inches, count } = square(k, how.metric);
  const { defs, fill } = foam(true);

  /** A rectangle of the outline, whose y runs up. @param {import('../core.js').Rect} at */
  const place = (at) => [x0 + at.x_in * k, floor - (at.y_in + at.h_in) * k, at.w_in * k, at.h_in * k];

  /** @type {Node[]} */
  const still = [defs, grid(width, height, x0, floor, inches * k), s('rect', { x: x0, y: y0, width: w, height: h, fill })];
  for (const { rect: at } of outline.members) {
    const [x, y, ww, hh] = place(at);
    still.push(rect(k < 0.5 ? 'wood fine' : 'wood', x, y, ww, hh));
  }
  for (const one of outline.openings) {
    const [x, y, ww, hh] = place(one.rect);
    const letter = how.letters.get(one.id) ?? '';
    still.push(rect('void', x, y, ww, hh), line('hair', d('M', x, y + hh, 'L', x + ww, y, 'M', x, y, 'L', x + ww, y + hh)));
    if (letter && ww > 18 && hh > 18) {
      still.push(s('circle', { class: 'paper', cx: x + ww / 2, cy: y + hh / 2, r: 11 }), text('m lg', x + ww / 2, y + hh / 2 + 6, letter));
    }
  }
  still.push(rect('cut', x0, y0, w, h));

  /** @type {Node[]} */
  const lines = [];
  for (const side of /** @type {const} */ (['left', 'top', 'bottom'])) {
    const list = sides[side];
    const last = rows(list) - 1;
    let below = -Infinity;
    let belowRow = -1;
    for (const one of list) {
      const on = one.at.field !== '' && how.active === `${one.at.part}-${one.at.id}-${one.at.field}`;
      const parts = side === 'left'
        ? upright(one, x0 - 18 - one.row * 22, floor, k, x0, on)
        : level(one, side === 'top' ? y0 - 14 - one.row * APART : floor + 26 + one.row * APART, x0, k, side === 'top' ? y0 : floor, on);
      if (side !== 'left') {
        if (one.row !== belowRow) below = -Infinity;
        belowRow = one.row;
        below = figure(parts, one, side === 'top' ? y0 - 14 - one.row * APART : floor + 26 + one.row * APART, x0, k, on, below, one.row === last);
      }
      lines.push(one.at.field === '' ? s('g', { 'aria-hidden': 'true' }, ...parts) : pressable(one, parts, how, side, last, x0, y0, floor, k));
    }
  }
  const svg = drawing(width, height, how.label, []);
  svg.setAttribute('role', 'group');
  svg.append(s('g', { role: 'img', 'aria-label': how.label }, ...still), ...lines);
  return { svg, square: count };
}

/** @param {import('../core.js').Dimension} one @param {number} y @param {number} x0 @param {number} k @param {number} edge @param {boolean} on */
function level(one, y, x0, k, edge, on) {
  const a = x0 + one.from_in * k;
  const b = x0 + one.to_in * k;
  const away = Math.sign(y - edge);
  const pen = on ? 'on' : 'dim';
  return [
    line('hair', d('M', a, edge + 4 * away, 'V', y + 5 * away, 'M', b, edge + 4 * away, 'V', y + 5 * away)),
    line(pen, d('M', a - 4, y, 'H', b + 4)),
    line(on ? 'on tick' : 'tick', d('M', a - 4, y + 4, 'L', a + 4, y - 4, 'M', b - 4, y + 4, 'L', b + 4, y - 4)),
  ];
}

/** The figure of a level dimension: above its line, below where it is too narrow, left out where there is no room at all. */
function figure(/** @type {Node[]} */ parts, /** @type {import('../core.js').Dimension} */ one, /** @type {number} */ y,
  /** @type {number} */ x0, /** @type {number} */ k, /** @type {boolean} */ on, /** @type {number} */ below, /** @type {boolean} */ last) {
  const size = one.row === 0 && !on ? 12.5 : 13.5;
  const middle = x0 + ((one.from_in + one.to_in) / 2) * k;
  const long = wide(one.text, size) + 6;
  const kind = `m halo b${size === 12.5 ? ' sm' : ''}${on ? ' on' : ''}`;
  if (long <= (one.to_in - one.from_in) * k || last && one.from_in === 0 && one.to_in * k > 20) {
    parts.push(text(kind, middle, y - 5, one.text));
  } else if (middle - long / 2 > below) {
    parts.push(text(kind, middle, y + 14, one.text));
    return middle + long / 2;
  }
  return below;
}

/** @param {import('../core.js').Dimension} one @param {number} x @param {number} floor @param {number} k @param {number} x0 @param {boolean} on */
function upright(one, x, floor, k, x0, on) {
  const a = floor - one.from_in * k;
  const b = floor - one.to_in * k;
  const middle = (a + b) / 2;
  return [
    line('hair', d('M', x0 - 4, a, 'H', x - 5, 'M', x0 - 4, b, 'H', x - 5)),
    line(on ? 'on' : 'dim', d('M', x, b - 4, 'V', a + 4)),
    line(on ? 'on tick' : 'tick', d('M', x - 4, b + 4, 'L', x + 4, b - 4, 'M', x - 4, a + 4, 'L', x + 4, a - 4)),
    s('text', { class: `m halo b${on ? ' on' : ''}`, transform: `translate(${r2(x - 6)} ${r2(middle)}) rotate(-90)` }, fit(one.text, 120, 13.5)),
  ];
}

/** A dimension that leads to its field: its lines over a clear rectangle large enough for a thumb. */
function pressable(/** @type {import('../core.js').Dimension} */ one, /** @type {Node[]} */ parts, /** @type {How} */ how,
  /** @type {'left' | 'top' | 'bottom'} */ side, /** @type {number} */ last, /** @type {number} */ x0, /** @type {number} */ y0,
  /** @type {number} */ floor, /** @type {number} */ k) {
  const least = 54;
  let [x, y, w, h] = [0, 0, 0, 0];
  if (side === 'left') {
    h = Math.max(least, (one.to_in - one.from_in) * k);
    y = floor - ((one.from_in + one.to_in) / 2) * k - h / 2;
    w = least;
    x = Math.max(0, x0 - 18 - one.row * 22 - 40);
  } else {
    w = Math.max(least, (one.to_in - one.from_in) * k);
    x = x0 + ((one.from_in + one.to_in) / 2) * k - w / 2;
    const at = side === 'top' ? y0 - 14 - one.row * APART : floor + 26 + one.row * APART;
    const outer = one.row === last && last > 0;
    h = least;
    y = (side === 'top') === outer ? at - 44 : at - 12;
    if (side === 'bottom') y = outer ? at - 14 : at - 42;
  }
  const go = () => how.press(one.at);
  const node = s('g', { role: 'button', tabindex: 0, 'aria-label': how.pressLabel(one), 'data-at': `${one.at.part}-${one.at.id}-${one.at.field}` }, rect('clear', x, y, w, h), ...parts);
  node.addEventListener('click', go);
  node.addEventListener('keydown', (event) => {
    const key = /** @type {KeyboardEvent} */ (event).key;
    if (key === 'Enter' || key === ' ') {
      event.preventDefault();
      go();
    }
  });
  return node;
}
