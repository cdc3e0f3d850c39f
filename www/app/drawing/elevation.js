// @ts-check
/** One surface to scale: foam, every counted member, openings, dimension lines that can be pressed. */
import { d, drawing, fit, foam, fresh, grid, line, r2, rect, s, square, text, wide } from '../svg.js';

/**
 * @typedef {{width: number, metric: boolean, label: string, letters: Map<number, string>, active: string,
 *   press: (at: import('../core.js').At) => void, pressLabel: (dimension: import('../core.js').Dimension) => string}} How
 */

const APART = 26;

/**
 * @param {import('../core.js').Outline} whole @param {How} how
 * @returns {{svg: SVGElement, square: number, shown?: number}} `shown`: how much of a long run is drawn, in inches
 */
export function elevation(whole, how) {
  const { width } = how;
  // A run so long and thin that nothing could be told on it: its left part to scale, broken off.
  const layers = whole.dimensions.filter((one) => one.side === 'left').length > 1;
  const shown = whole.width_in > LONG * whole.height_in && whole.height_in > 0 ? (layers ? LAYERED : PART) * whole.height_in : undefined;
  const outline = shown === undefined ? whole : part(whole, shown);
  const sides = { left: inRows(outline, 'left'), top: inRows(outline, 'top'), bottom: inRows(outline, 'bottom') };
  const rows = (/** @type {Placed[]} */ list) => list.reduce((most, one) => Math.max(most, one.row + 1), 0);
  const scale = (/** @type {number} */ room) => Math.min((width - room - 14) / Math.max(1, outline.width_in), (width * 0.82) / Math.max(1, outline.height_in));
  // What is too short for its figure along the line has it level beside the line, and needs more room there.
  const short = scale(22 + 34 * rows(sides.left));
  for (const one of sides.left) one.flat = one.at.field !== '' && (one.to_in - one.from_in) * short < wide(one.text, 13.5) + 2;
  const leftAt = stack(rows(sides.left), 18, (row) => sides.left.reduce((most, one) => (one.row === row && one.flat ? Math.max(most, wide(one.text, 13.5) + 14) : most), 22));
  const leftRoom = sides.left.length ? leftAt[leftAt.length - 1] + 4 : 16;
  const k = scale(leftRoom);
  // A figure that stands under its line pushes what is under that away.
  const hangs = (/** @type {Placed[]} */ list, /** @type {number} */ row) => (list.some((one) => one.row === row && figureAt(one, k, list) === 'below') ? 15 : 0);
  const bottomAt = stack(rows(sides.bottom), 26, (row) => APART + hangs(sides.bottom, row));
  const topAt = stack(rows(sides.top), 14 + hangs(sides.top, 0), (row) => APART + hangs(sides.top, row + 1));
  const topRoom = 2 + topAt[topAt.length - 1];
  const w = outline.width_in * k;
  const h = outline.height_in * k;
  const x0 = leftRoom + Math.max(0, (width - leftRoom - 14 - w) / 2);
  const y0 = topRoom;
  const floor = y0 + h;
  const height = floor + (sides.bottom.length ? bottomAt[bottomAt.length - 1] + 2 : 16);
  const { inches, count } = square(k, how.metric);
  const { defs, fill } = foam(true);
  // What is no rectangle cuts off everything that stands out of it.
  const corners = outline.polygon.map(([x, y]) => `${r2(x0 + x * k)},${r2(floor - y * k)}`).join(' ');
  const clip = corners ? fresh() : '';
  const inside = corners ? s('g', { 'clip-path': `url(#${clip})` }) : s('g');
  if (corners) defs.append(s('clipPath', { id: clip }, s('polygon', { points: corners })));

  /** A rectangle of the outline, whose y runs up. @param {import('../core.js').Rect} at */
  const place = (at) => [x0 + at.x_in * k, floor - (at.y_in + at.h_in) * k, at.w_in * k, at.h_in * k];

  /** @type {Node[]} */
  const still = [defs, grid(width, height, x0, floor, inches * k), inside];
  inside.append(s('rect', { x: x0, y: y0, width: w, height: h, fill }));
  for (const { rect: at } of outline.members) {
    const [x, y, ww, hh] = place(at);
    inside.append(rect(k < 0.5 ? 'wood fine' : 'wood', x, y, ww, hh));
  }
  for (const one of outline.openings) {
    const [x, y, ww, hh] = place(one.rect);
    const letter = how.letters.get(one.id) ?? '';
    inside.append(rect('void', x, y, ww, hh), line('hair', d('M', x, y + hh, 'L', x + ww, y, 'M', x, y, 'L', x + ww, y + hh)));
    if (letter && ww >= 24 && hh >= 24) {
      still.push(s('circle', { class: 'paper', cx: x + ww / 2, cy: y + hh / 2, r: 11 }), text('m lg', x + ww / 2, y + hh / 2 + 6, letter));
    }
  }
  for (const at of outline.strips) still.push(line('hair', d('M', x0, floor - at * k, 'H', x0 + w)));
  for (const at of outline.bays) still.push(line('hair', d('M', x0 + at * k, y0, 'V', floor)));
  if (corners) still.push(s('polygon', { class: 'cut', points: corners }));
  else if (shown === undefined) still.push(rect('cut', x0, y0, w, h));
  else {
    // The break: open at the right, with the zigzag of a broken-off part.
    const [right, middle] = [x0 + w, y0 + h / 2];
    still.push(line('cut', d('M', right, y0, 'H', x0, 'V', floor, 'H', right)),
      line('cut', d('M', right, y0 - 6, 'V', middle - 6, 'L', right - 5, middle - 2, 'L', right + 5, middle + 2, 'L', right, middle + 6, 'V', floor + 6)));
  }

  /** @type {Node[]} */
  const lines = [];
  for (const side of /** @type {const} */ (['left', 'top', 'bottom'])) {
    const list = sides[side];
    const last = rows(list) - 1;
    // The outermost first, so that the place to press of an inner one lies above it.
    for (const one of [...list].reverse()) {
      const on = one.at.field !== '' && how.active === `${one.at.part}-${one.at.id}-${one.at.field}`;
      const from = side === 'left' ? x0 - leftAt[one.row] : side === 'top' ? y0 - topAt[one.row] : floor + bottomAt[one.row];
      const parts = side === 'left' ? upright(one, from, floor, k, x0, on, list) : level(one, from, x0, k, side === 'top' ? y0 : floor, on, list);
      lines.push(one.at.field === '' ? s('g', { 'aria-hidden': 'true' }, ...parts) : pressable(one, parts, how, side, one.row === last, from, x0, floor, k));
    }
  }
  const svg = drawing(width, height, how.label, []);
  svg.setAttribute('role', 'group');
  svg.append(s('g', { role: 'img', 'aria-label': how.label }, ...still), ...lines);
  return { svg, square: count, shown };
}

/** Longer than so many times its height, a run is broken off after so many. */
const LONG = 24;
const PART = 8;
/** The same where layers over one another are dimensioned: larger, so that each can be told. */
const LAYERED = 5;

/** How far each row of dimensions is from the drawing, and where the last one ends. @param {number} count @param {number} first @param {(row: number) => number} step */
function stack(count, first, step) {
  const at = [first];
  for (let row = 0; row < count; row += 1) at.push(at[row] + step(row));
  return at;
}

/**
 * The left part of an outline; a dimension that runs past it ends at the break with its whole length written.
 * @param {import('../core.js').Outline} whole @param {number} shown @returns {import('../core.js').Outline}
 */
function part(whole, shown) {
  const within = (/** @type {import('../core.js').Rect} */ at) => ({ ...at, w_in: Math.min(at.w_in, shown - at.x_in) });
  return {
    ...whole, width_in: shown,
    members: whole.members.filter((one) => one.rect.x_in < shown).map((one) => ({ ...one, rect: within(one.rect) })),
    openings: whole.openings.filter((one) => one.rect.x_in < shown).map((one) => ({ ...one, rect: within(one.rect) })),
    dimensions: whole.dimensions.filter((one) => one.side === 'left' || one.from_in < shown).map((one) => (one.side === 'left' ? one : { ...one, to_in: Math.min(one.to_in, shown), past: one.to_in > shown })),
    bays: whole.bays.filter((at) => at < shown),
  };
}

/**
 * @typedef {import('../core.js').Dimension & {past?: boolean}} Broken `past`: it runs on beyond the break
 * @typedef {Broken & {row: number, flat?: boolean}} Placed `flat`: its figure stands level beside an upright line
 */

const MOST_ROWS = 4;

/**
 * The dimensions of one side in rows: chains that repeat another are left out, what spans the whole side runs
 * outermost, and no more rows than can be read.
 * @param {import('../core.js').Outline} outline @param {import('../core.js').Side} side @returns {Placed[]}
 */
function inRows(outline, side) {
  const whole = side === 'left' ? outline.height_in : outline.width_in;
  /** @type {Map<number, Broken[]>} */
  const rows = new Map();
  for (const one of /** @type {Broken[]} */ (outline.dimensions)) if (one.side === side) rows.set(one.row, [...rows.get(one.row) ?? [], one]);
  /** @type {Map<string, Broken[]>} */
  const distinct = new Map();
  for (const [, row] of [...rows].sort(([a], [b]) => a - b)) {
    const shape = row.map((one) => `${one.from_in} ${one.past ? one.text : one.to_in}`).join();
    if (!distinct.has(shape)) distinct.set(shape, row);
  }
  const spans = (/** @type {Broken[]} */ row) => row.length === 1 && row[0].from_in === 0 && row[0].to_in >= whole - 0.01;
  const all = [...distinct.values()];
  const inner = all.filter((row) => !spans(row));
  const outer = all.filter(spans);
  return [...inner.slice(0, MOST_ROWS - outer.length), ...outer].flatMap((row, at) => row.map((one) => ({ ...one, row: at })));
}

/**
 * Where the figure of a level dimension stands: above the line, beside it where it is too short and there is room, below otherwise.
 * @param {Placed} one @param {number} k @param {Placed[]} all @param {number} [size]
 */
function figureAt(one, k, all, size = one.row === 0 ? 12.5 : 13.5) {
  const long = wide(one.text, size) + 6;
  const same = all.filter((other) => other.row === one.row);
  if (long <= (one.to_in - one.from_in) * k || same.length === 1 && one.from_in === 0) return 'above';
  const next = Math.min(...same.filter((other) => other.from_in >= one.to_in - 0.01).map((other) => other.from_in), 1e6);
  return (next - one.to_in) * k > long + 8 ? 'beside' : one.at.field ? 'below' : '';
}

/** A level dimension. @param {Placed} one @param {number} y @param {number} x0 @param {number} k @param {number} edge @param {boolean} on @param {Placed[]} all */
function level(one, y, x0, k, edge, on, all) {
  const a = x0 + one.from_in * k;
  const b = x0 + one.to_in * k;
  const away = Math.sign(y - edge);
  const size = one.row === 0 && !on ? 12.5 : 13.5;
  const kind = `halo b${size === 12.5 ? ' sm' : ''}${on ? ' on' : ''}`;
  const stands = figureAt(one, k, all);
  const figure = stands === 'above' ? text('m ' + kind, Math.max((a + b) / 2, wide(one.text, size) / 2 + 3), y - 5, one.text)
    : stands === 'beside' ? text(kind, b + 8, y + 5, one.text)
      : stands ? text('m ' + kind, (a + b) / 2, y + 14, one.text) : undefined;
  // What runs on past a break has no end here.
  return [
    line('hair', d('M', a, edge + 4 * away, 'V', y + 5 * away, ...(one.past ? [] : ['M', b, edge + 4 * away, 'V', y + 5 * away]))),
    line(on ? 'on' : 'dim', d('M', a - 4, y, 'H', one.past ? b + 14 : b + 4)),
    line(on ? 'on tick' : 'tick', d('M', a - 4, y + 4, 'L', a + 4, y - 4, ...(one.past ? [] : ['M', b - 4, y + 4, 'L', b + 4, y - 4]))),
    ...(figure ? [figure] : []),
  ];
}

/** Least distance of two figures that stand level one over the other. */
const OVER = 14;

/** An upright dimension. @param {Placed} one @param {number} x @param {number} floor @param {number} k @param {number} x0 @param {boolean} on @param {Placed[]} all */
function upright(one, x, floor, k, x0, on, all) {
  const a = floor - one.from_in * k;
  const b = floor - one.to_in * k;
  const middle = (a + b) / 2;
  const kind = `halo b${on ? ' on' : ''}`;
  // Level figures of short neighbors keep their distance, from the lowest up.
  let level = floor + 14;
  for (const other of all.filter((it) => it.row === one.row && it.flat).sort((p, q) => p.from_in - q.from_in)) {
    level = Math.min(level - OVER, floor - ((other.from_in + other.to_in) / 2) * k);
    if (other === one) break;
  }
  const figure = one.flat ? text('e ' + kind, x - 8, level + 5, one.text)
    : a - b >= wide(one.text, 13.5) || one.at.field !== '' ? s('text', { class: 'm ' + kind, transform: `translate(${r2(x - 6)} ${r2(middle)}) rotate(-90)` }, fit(one.text, 120, 13.5)) : undefined;
  return [
    line('hair', d('M', x0 - 4, a, 'H', x - 5, 'M', x0 - 4, b, 'H', x - 5)),
    line(on ? 'on' : 'dim', d('M', x, b - 4, 'V', a + 4)),
    line(on ? 'on tick' : 'tick', d('M', x - 4, b + 4, 'L', x + 4, b - 4, 'M', x - 4, a + 4, 'L', x + 4, a - 4)),
    ...(figure ? [figure] : []),
  ];
}

/** A dimension that leads to its field: its lines over a clear rectangle large enough for a thumb. */
function pressable(/** @type {Placed} */ one, /** @type {Node[]} */ parts, /** @type {How} */ how, /** @type {'left' | 'top' | 'bottom'} */ side,
  /** @type {boolean} */ outermost, /** @type {number} */ from, /** @type {number} */ x0, /** @type {number} */ floor, /** @type {number} */ k) {
  const least = 54;
  const long = Math.max(least, (one.to_in - one.from_in) * k);
  const middle = ((one.from_in + one.to_in) / 2) * k;
  let [x, y, w, h] = [x0 + middle - long / 2, from - 14, long, least];
  if (side === 'left') [x, y, w, h] = [Math.max(0, outermost ? from - 38 : from - 18), floor - middle - long / 2, least, long];
  else if (side === 'top' ? outermost : !outermost) y = from - 40;
  const go = () => how.press(one.at);
  const node = s('g', { role: 'button', tabindex: 0, 'aria-label': how.pressLabel(one), 'data-at': `${one.at.part}-${one.at.id}-${one.at.field}`, 'data-key': `at-${one.at.part}-${one.at.id}-${one.at.field}` }, rect('clear', x, y, w, h), ...parts);
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
