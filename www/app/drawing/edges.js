// @ts-check
/** Dimension lines along the edges of a figure, at any angle: outside it, parallel to their edge, readable upright. */
import { d, line, r2, rect, s, text, wide } from '../svg.js';
import { chord } from './faces.js';
import { button, keyOf, LEAST } from './lines.js';

/** @typedef {import('./elevation.js').How} How */
/**
 * @typedef {[number, number]} Point in pixels
 * @typedef {{one: import('../core.js').EdgeLine, a: Point, b: Point, n: Point, away: number, said: boolean, along?: number, at: Point, anchor: string, inside: boolean}} PlacedEdge
 * From `a` to `b`, outward along `n`; the line runs `away` from its edge. `along`: the figure runs with the line,
 * turned by so many degrees; otherwise it stands level. `at`: where the figure stands; `said`: whether there was room for it; `inside`:
 * whether it stands on a face, as that of a ridge does.
 */

/** How far a line runs from its edge, and its figure beyond it. */
const AWAY = 15;
const FIGURE = 10;
/** A line that would run through the figure of another moves out by so much, at most so often. */
const STEP = 16;
const STEPS = 3;
const SIZE = 13.5;

/**
 * Every edge line in its place, in pixels from the lower left corner, y down.
 * @param {import('../core.js').Outline} outline @param {number} k @returns {PlacedEdge[]}
 */
export function placeEdges({ edges, faces }, k) {
  /** @type {Point[][]} */
  const taken = [];
  return [...edges].sort((p, q) => long(q) - long(p)).map((one) => {
    /** @type {Point} */
    const a = [one.from[0] * k, -one.from[1] * k];
    /** @type {Point} */
    const b = [one.to[0] * k, -one.to[1] * k];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    const u = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    // The figure lies on the left hand, so outward is to the right: in pixels, whose y runs down.
    /** @type {Point} */
    const n = [-u[1], u[0]];
    const fits = wide(one.text, SIZE) + 6 <= length;
    const angle = (Math.atan2(u[1], u[0]) * 180) / Math.PI;
    // Never upside down; an upright one is read from the right, as all others here.
    const turned = angle >= 89.99 ? angle - 180 : angle < -90.01 ? angle + 180 : angle;
    /** @type {PlacedEdge} */
    const placed = { one, a, b, n, away: AWAY, said: true, at: [0, 0], anchor: 'm', along: fits ? turned : undefined, inside: false };
    let free = false;
    for (let step = 0; step <= STEPS && !free; step += 1) {
      placed.away = AWAY + step * STEP;
      const out = placed.away + FIGURE;
      placed.at = [(a[0] + b[0]) / 2 + n[0] * out, (a[1] + b[1]) / 2 + n[1] * out];
      placed.anchor = fits || Math.abs(n[0]) < 0.35 ? 'm' : n[0] > 0 ? '' : 'e';
      free = !taken.some((other) => meet(other, corners(placed)));
    }
    placed.inside = faces.some((face) => face.foamed && chord(face.corners, -placed.at[1] / k, placed.at[0] / k) > 0);
    placed.said = free || one.at.field !== '';
    if (placed.said) taken.push(corners(placed));
    return placed;
  });
}

/** @param {import('../core.js').EdgeLine} one */
const long = (one) => Math.hypot(one.to[0] - one.from[0], one.to[1] - one.from[1]);

/** The corners of the figure's box. @param {PlacedEdge} placed @returns {Point[]} */
function corners({ one, along, at, anchor }) {
  const w = wide(one.text, SIZE) + 4;
  const [left, right] = anchor === 'm' ? [-w / 2, w / 2] : anchor === 'e' ? [-w, 0] : [0, w];
  const turn = ((along ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [[left, -8], [right, -8], [right, 8], [left, 8]].map(([x, y]) => [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos]);
}

/** Whether two boxes meet: no side of either parts them. @param {Point[]} p @param {Point[]} q */
function meet(p, q) {
  return [p, q].every((box) => [0, 1].every((side) => {
    const [x, y] = [box[side + 1][0] - box[side][0], box[side + 1][1] - box[side][1]];
    const [of, and] = [p, q].map((one) => one.map((corner) => corner[0] * x + corner[1] * y));
    return Math.max(...of) > Math.min(...and) && Math.max(...and) > Math.min(...of);
  }));
}

/**
 * How far edge lines and their figures stand out of a drawing of this size.
 * @param {PlacedEdge[]} placed @param {number} w @param {number} h
 */
export function standOut(placed, w, h) {
  const out = { left: 0, right: 0, top: 0, bottom: 0 };
  for (const one of placed) {
    const line = [one.a, one.b].map(([x, y]) => [x + one.n[0] * (one.away + 5), y + one.n[1] * (one.away + 5)]);
    for (const [x, y] of [...line, ...(one.said ? corners(one) : [])]) {
      out.left = Math.max(out.left, -x);
      out.right = Math.max(out.right, x - w);
      out.top = Math.max(out.top, -h - y);
      out.bottom = Math.max(out.bottom, y);
    }
  }
  return out;
}

/**
 * @param {PlacedEdge[]} placed @param {number} x0 @param {number} floor the lower left corner
 * @param {How} how @returns {Node[]}
 */
export function drawEdges(placed, x0, floor, how) {
  return placed.map(({ one, a, b, n, away, said, along, at, anchor, inside }) => {
    const on = one.at.field !== '' && how.active === keyOf(one.at);
    const off = (/** @type {Point} */ [x, y], /** @type {number} */ by, /** @type {number} */ run = 0) => [x0 + x + n[0] * by - n[1] * run, floor + y + n[1] * by + n[0] * run];
    // Along the line: n turned a quarter is from b to a.
    const parts = [
      line('hair', d('M', ...off(a, 4), 'L', ...off(a, away + 5), 'M', ...off(b, 4), 'L', ...off(b, away + 5))),
      line(on ? 'on' : 'dim', d('M', ...off(a, away, 4), 'L', ...off(b, away, -4))),
      line(on ? 'on tick' : 'tick', d('M', ...off(a, away - 4, 4), 'L', ...off(a, away + 4, -4), 'M', ...off(b, away - 4, 4), 'L', ...off(b, away + 4, -4))),
    ];
    const kind = `halo b ${anchor}${on ? ' on' : ''}${inside ? ' onfoam' : ''}`;
    if (said) parts.push(s('text', { class: kind, transform: `translate(${r2(x0 + at[0])} ${r2(floor + at[1])})${along === undefined ? '' : ` rotate(${r2(along)})`}`, y: 5 }, one.text));
    if (one.at.field === '' || !how.press) return s('g', { 'aria-hidden': 'true' }, ...parts);
    const middle = off([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], away);
    const length = Math.max(LEAST, Math.hypot(b[0] - a[0], b[1] - a[1]));
    const press = rect('clear', -length / 2, -LEAST / 2, length, LEAST);
    press.setAttribute('transform', `translate(${r2(middle[0])} ${r2(middle[1])}) rotate(${r2((Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI)})`);
    return button(one, [press, ...parts], how);
  });
}
