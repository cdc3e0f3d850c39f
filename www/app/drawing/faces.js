// @ts-check
/** What is drawn to scale inside the dimension lines: the tint, faces, framing, openings and cut edges. */
import { d, fit, foam, fresh, line, r2, rect, s, text, wide } from '../svg.js';

/**
 * @typedef {{x0: number, y0: number, w: number, h: number, k: number, broken: boolean}} Where
 * Left and upper edge and size in pixels; pixels to an inch; whether the right end is broken off.
 */

/**
 * @param {import('../core.js').Outline} outline @param {Where} at @param {import('./elevation.js').How} how
 * @returns {{defs: SVGElement, parts: Node[]}}
 */
export function body(outline, { x0, y0, w, h, k, broken }, how) {
  const floor = y0 + h;
  const { defs, fill } = foam(true);
  const points = (/** @type {[number, number][]} */ corners) => corners.map(([x, y]) => `${r2(x0 + x * k)},${r2(floor - y * k)}`).join(' ');
  /** A rectangle of the outline, whose y runs up. @param {import('../core.js').Rect} one */
  const place = (one) => [x0 + one.x_in * k, floor - (one.y_in + one.h_in) * k, one.w_in * k, one.h_in * k];
  const { faces } = outline;
  const foamed = faces.filter((one) => one.foamed).map((one) => points(one.corners));
  const shapes = faces.length ? foamed : outline.polygon.length ? [points(outline.polygon)] : [];
  // What is no rectangle cuts off everything that stands out of it.
  const clip = shapes.length ? fresh() : '';
  if (clip) defs.append(s('clipPath', { id: clip }, ...shapes.map((one) => s('polygon', { points: one }))));
  const inside = s('g', { class: 'body', 'clip-path': clip ? `url(#${clip})` : undefined });
  /** @type {Node[]} */
  const over = [];
  if (shapes.length) inside.append(...shapes.map((one) => s('polygon', { class: 'tint', points: one, fill })));
  else if (!faces.length) inside.append(s('rect', { class: 'tint', x: x0, y: y0, width: w, height: h, fill }));
  for (const { rect: one } of outline.members) {
    const [x, y, ww, hh] = place(one);
    inside.append(rect(k < 0.5 ? 'wood fine' : 'wood', x, y, ww, hh));
  }
  for (const one of outline.openings) {
    const [x, y, ww, hh] = place(one.rect);
    const letter = how.letters.get(one.id) ?? '';
    inside.append(rect('void', x, y, ww, hh), line('hair', d('M', x, y + hh, 'L', x + ww, y, 'M', x, y, 'L', x + ww, y + hh)));
    if (letter && ww >= 24 && hh >= 24) over.push(s('circle', { class: 'paper', cx: x + ww / 2, cy: y + hh / 2, r: 11 }), text('m lg', x + ww / 2, y + hh / 2 + 6, letter));
  }
  /** @type {Node[]} */
  const parts = [inside];
  for (const at of outline.strips) parts.push(line('hair', d('M', x0, floor - at * k, 'H', x0 + w)));
  for (const at of outline.bays) parts.push(line('hair', d('M', x0 + at * k, y0, 'V', floor)));
  const off = faces.filter((one) => !one.foamed);
  if (off.length) {
    const bare = unfoamed();
    defs.append(bare.pattern);
    parts.push(...off.map((one) => s('polygon', { class: 'bare', points: points(one.corners), fill: bare.fill })));
  }
  parts.push(...shapes.map((one) => s('polygon', { class: 'cut', points: one })));
  if (!shapes.length && !faces.length) parts.push(...(broken ? brokenOff(x0, y0, w, h) : [rect('cut', x0, y0, w, h)]));
  for (const one of faces) parts.push(...named(one, x0, floor, k, how));
  return { defs, parts: [...parts, ...over] };
}

/** Not to be foamed: thin lines at 45°, in gray. */
function unfoamed() {
  const id = fresh();
  const pattern = s('pattern', { id, width: 9, height: 9, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' }, line('rule', 'M0 0V9'));
  return { pattern, fill: `url(#${id})` };
}

/** The break: open at the right, with the zigzag of a broken-off part. @param {number} x0 @param {number} y0 @param {number} w @param {number} h */
function brokenOff(x0, y0, w, h) {
  const [right, middle, floor] = [x0 + w, y0 + h / 2, y0 + h];
  return [line('cut', d('M', right, y0, 'H', x0, 'V', floor, 'H', right)),
    line('cut', d('M', right, y0 - 6, 'V', middle - 6, 'L', right - 5, middle - 2, 'L', right + 5, middle + 2, 'L', right, middle + 6, 'V', floor + 6))];
}

/**
 * A face's name in its middle, where it is wide and high enough there; one that is not foamed says so.
 * @param {import('../core.js').Face} face @param {number} x0 @param {number} floor @param {number} k @param {import('./elevation.js').How} how
 */
function named(face, x0, floor, k, how) {
  const name = how.faceName?.(face.name) ?? '';
  const said = [name, face.foamed ? '' : how.notFoamed ?? ''].filter(Boolean);
  if (!said.length) return [];
  const [x, y] = middle(face.corners);
  const tall = chord(face.corners.map(([p, q]) => [q, p]), x, y) * k;
  const kind = face.foamed ? 'm b halo onfoam' : 'm q halo';
  // The whole, or at least that it is not foamed.
  for (const lines of said.length > 1 ? [said, said.slice(1)] : [said]) {
    const high = lines.length * 16;
    const room = Math.min(...[-high / 2, high / 2].map((off) => chord(face.corners, y + off / k, x) * k));
    if (tall < high + 4) continue;
    const longest = Math.max(...lines.map((one) => wide(one, 13.5)));
    if (longest + 6 > room && longest > room * 1.6) continue;
    return lines.map((one, at) => text(kind, x0 + x * k, floor - y * k + 5 + (at - (lines.length - 1) / 2) * 16, fit(one, room - 6, 13.5)));
  }
  return [];
}

/** The middle of an area. @param {[number, number][]} corners @returns {[number, number]} */
function middle(corners) {
  let [area, x, y] = [0, 0, 0];
  corners.forEach(([ax, ay], at) => {
    const [bx, by] = corners[(at + 1) % corners.length];
    const twice = ax * by - bx * ay;
    area += twice;
    x += (ax + bx) * twice;
    y += (ay + by) * twice;
  });
  return area === 0 ? corners[0] : [x / (3 * area), y / (3 * area)];
}

/** How long the part of a level line inside a figure is that holds a place; 0 where the place is outside. @param {[number, number][]} corners @param {number} y @param {number} x */
export function chord(corners, y, x) {
  const cuts = corners.flatMap(([ax, ay], at) => {
    const [bx, by] = corners[(at + 1) % corners.length];
    return ay > y === by > y ? [] : [ax + ((y - ay) / (by - ay)) * (bx - ax)];
  }).sort((p, q) => p - q);
  for (let at = 0; at + 1 < cuts.length; at += 2) if (cuts[at] <= x && x <= cuts[at + 1]) return 2 * Math.min(x - cuts[at], cuts[at + 1] - x);
  return 0;
}
