// @ts-check
/** A section through one surface, with the ruler on which every rule is a mark. */
import { barred, d, drawing, foam, line, markAt, r2, rect, s, text, twoLines, wide } from '../svg.js';

/**
 * @typedef {{at: number, what: string, sub: string, kind: 'ink' | 'aim' | 'most', dash?: boolean}} Level
 * A mark on the ruler: where, its name, a line below it; dashed where its figure is from memory.
 */

/**
 * A section through the foam of one surface with a ruler from the face behind it.
 * @param {{aim: number, promised: number, most: number, cavity?: number, lifts: number, levels: Level[], gap?: [number, number],
 *   words: {lift: (n: number) => string, aim: string, behind: string, member: string, cross: string}}} depth
 * @param {{width: number, label: string}} how @returns {SVGElement}
 */
export function section(depth, { width, label }) {
  const top = 26;
  const deepest = Math.max(0.75, depth.aim, depth.most, depth.cavity ?? 0, ...depth.levels.map((one) => one.at));
  const k = Math.min(80, 380 / (deepest + 0.2));
  // On a narrow page the member is cut narrower, so that the names of the marks have room.
  const off = width < 440 ? 30 : 0;
  const [left, right, ruler, end] = [70, 178, 222, width + off];
  const named = depth.levels.map((one) => inLines(one, end - ruler - 36));
  const floor = Math.max(top + (deepest + 0.2) * k, top + named.reduce((sum, one) => sum + one.room, 0) + (depth.gap ? CROSS : 0));
  const height = floor + 74;
  const up = (/** @type {number} */ inches) => floor - inches * k;
  const { defs, fill } = foam();
  /** @type {Node[]} */
  const parts = [defs];
  // Grid: one square = 1 in.
  let path = '';
  for (let x = left + 108 - 3 * k; x < end; x += k) if (x > 0) path += `M${r2(x)} 0V${r2(height)}`;
  for (let y = floor; y > 0; y -= k) path += `M0 ${r2(y)}H${end}`;
  parts.push(line('grid', path));
  // What is behind, cut across; a member at the left.
  const clip = 'c' + defs.querySelector('pattern')?.id;
  parts.push(rect('woodfill', 0, floor, ruler, 34), s('clipPath', { id: clip }, rect('', 0, floor, ruler, 34)));
  let grain = '';
  for (let x = -30; x < ruler; x += 15) grain += `M${x} ${r2(floor + 46)}q10 -20 30 -46`;
  parts.push(s('path', { class: 'hair', 'clip-path': `url(#${clip})`, d: grain }), line('cut', d('M', 0, floor, 'H', ruler)), line('ln', d('M', 0, floor + 34, 'H', ruler)));
  parts.push(text('q', off + 8, floor + 54, depth.words.behind));
  const memberTop = depth.cavity ? Math.max(top - 12, up(depth.cavity)) : top - 12;
  parts.push(rect('woodfill', 0, memberTop, left, floor - memberTop));
  let hair = '';
  for (let x = 12; x < left; x += 14) hair += `M${x} ${r2(memberTop)}c-5 ${r2((floor - memberTop) * 0.2)} 6 ${r2((floor - memberTop) * 0.4)} 0 ${r2(floor - memberTop)}`;
  parts.push(line('hair', hair), line('cut', d('M', 0, memberTop, 'H', left, 'V', floor)));
  if (floor - memberTop > 90) parts.push(s('text', { class: 'halo b m', transform: `translate(${(left + off) / 2 + 4} ${r2((floor + memberTop) / 2)}) rotate(-90)` }, depth.words.member));
  // Foam: lowest point at the promise, highest under the most allowed, mean at the aim.
  const low = up(depth.promised);
  const high = up(Math.min(depth.most, 2 * depth.aim - depth.promised, depth.aim + Math.max(0, (depth.most - depth.aim) * 0.8)));
  const mid = up(depth.aim);
  const face = d('M', left, mid, 'C', 83, mid, 83, high, 96, high, 'C', 113, high, 113, low, 130, low, 'C', 145, low, 145, high, 160, high, 'C', 169, high, 169, mid, right, mid);
  parts.push(s('path', { d: face + d('V', floor, 'H', left, 'Z'), fill }), line('foamedge bold', face));
  const lifts = Math.max(1, depth.lifts);
  for (let lift = 1; lift < lifts; lift += 1) {
    const y = up((depth.aim * lift) / lifts);
    parts.push(line('foamedge', d('M', left, y, 'q 20 -5 40 0 t 40 0 t 28 -1')));
  }
  if ((depth.aim * k) / lifts > 24) {
    for (let lift = 0; lift < lifts; lift += 1) parts.push(text('halo onfoam', left + 8, up((depth.aim * lift) / lifts) - 10, depth.words.lift(lift + 1)));
  }
  parts.push(line('holdln', d('M', left, up(depth.most), 'H', right)), line('on thin', d('M', left, mid, 'H', right)), line('ln bold', d('M', left, low, 'H', right)));
  if (depth.cavity) parts.push(line('hair', d('M', left, up(depth.cavity), 'H', right)));
  if (depth.aim * k > 60) {
    parts.push(line('on', d('M', 158, floor, 'V', mid)), line('on tick', d('M', 153, floor + 5, 'l 10 -10 M', 153, mid + 5, 'l 10 -10')));
    if (depth.aim * k > 120) parts.push(s('text', { class: 'on halo onfoam m xl', transform: `translate(147 ${r2((floor + mid) / 2)}) rotate(-90)`, y: 4 }, depth.words.aim));
  }
  // The ruler.
  const rulerTop = Math.max(4, up(deepest + 0.2));
  parts.push(rect('paper', right, rulerTop, ruler - right, floor - rulerTop), line('cut', d('M', right, rulerTop, 'V', floor, 'H', ruler, 'V', rulerTop)));
  const finest = k >= 64 ? 16 : k >= 32 ? 8 : 4;
  let ticks = '';
  for (let n = 0; n / finest <= deepest + 0.15; n += 1) {
    const long = n % finest === 0 ? 26 : n % (finest / 2) === 0 ? 19 : n % (finest / 4) === 0 ? 13 : n % (finest / 8) === 0 ? 9 : 5;
    ticks += `M${right} ${r2(up(n / finest))}h${long}`;
    if (n && n % finest === 0) parts.push(text('xl', 205, up(n / finest) + 19, String(n / finest)));
  }
  parts.push(line('hair', ticks));
  parts.push(...fan(depth, up, floor, ruler, end));
  const svg = drawing(width, height, label, parts);
  svg.setAttribute('viewBox', `${off} 0 ${r2(width)} ${r2(height)}`);
  return svg;
}

/** Room between two marks that cross. */
const CROSS = 26;

/** The name of a mark and the line below it in at most two lines each, and the room that they take. @param {Level} one @param {number} most */
function inLines(one, most) {
  const what = twoLines(one.what, most, 17);
  const sub = one.sub ? twoLines(one.sub, most, 13.5) : [];
  return { what, sub, room: 42 + (what.length - 1) * 18 + Math.max(0, sub.length - 1) * 15 };
}

/** The marks leave the ruler at their true height and fan out to labels with room between them. */
function fan(/** @type {Parameters<typeof section>[0]} */ depth, /** @type {(n: number) => number} */ up,
  /** @type {number} */ floor, /** @type {number} */ x, /** @type {number} */ end) {
  const levels = [...depth.levels].sort((a, b) => b.at - a.at);
  const names = levels.map((one) => inLines(one, end - x - 36));
  // From one mark to the next: the lines below the one and those above the other; under the higher of two marks that cross there is room to say so.
  const after = levels.map((one, at) => 42 + Math.max(0, names[at].sub.length - 1) * 15 + ((names[at + 1]?.what.length ?? 1) - 1) * 18 + (one.at === depth.gap?.[0] ? CROSS : 0));
  const first = 22 + (names[0].what.length - 1) * 18;
  /** @type {number[]} */
  const ys = levels.map((one) => up(one.at));
  for (let i = 0; i < ys.length; i += 1) ys[i] = Math.max(ys[i], i ? ys[i - 1] + after[i - 1] : first);
  let most = floor + 10 - Math.max(0, (names[names.length - 1]?.sub.length ?? 1) - 1) * 15;
  for (let i = ys.length - 1; i >= 0; i -= 1) {
    ys[i] = Math.min(ys[i], most);
    most = ys[i] - (after[i - 1] ?? 42);
  }
  /** @type {Node[]} */
  const parts = [];
  const pens = { ink: 'ln', aim: 'on', most: 'holdln' };
  const inks = { ink: 'lg halo', aim: 'lg on halo', most: 'lg hold halo' };
  if (depth.promised > depth.most) {
    const { defs, fill } = barred();
    parts.push(defs, s('rect', { x: 178, y: up(depth.promised), width: 44, height: (depth.promised - depth.most) * (up(0) - up(1)), fill, opacity: '.5' }));
    parts.push(markAt('watch', 200, (up(depth.promised) + up(depth.most)) / 2, 20));
  }
  const [least, under] = (depth.gap ?? []).map((at) => levels.findIndex((one) => one.at === at));
  if (depth.gap && least >= 0 && under >= 0) {
    const { defs, fill } = barred();
    const [high, low] = depth.gap.map(up);
    parts.push(defs, s('path', { d: d('M', x - 10, high, 'H', x + 4, 'L', x + 29, ys[least], 'H', end, 'V', ys[under], 'H', x + 29, 'L', x + 4, low, 'H', x - 10, 'Z'), fill, opacity: '.34' }));
    const y = ys[least] + CROSS + 8 + Math.max(0, names[least].sub.length - 1) * 15;
    // On a narrow page the words alone: they must not run off its edge.
    const roomy = wide(depth.words.cross, 16) < end - x - 63;
    parts.push(roomy ? markAt('watch', x + 45, y - 5, 22) : text('', 0, 0, ''), text(roomy ? 'b md halo' : 'b halo', x + (roomy ? 61 : 34), y, depth.words.cross));
  }
  levels.forEach((one, i) => {
    parts.push(line(pens[one.kind] + (one.dash ? ' dash' : ''), d('M', x - 10, up(one.at), 'H', x + 4, 'L', x + 29, ys[i], 'H', end)));
    const { what, sub } = names[i];
    what.forEach((part, at) => parts.push(text(inks[one.kind], x + 34, ys[i] - 5 - (what.length - 1 - at) * 18, part)));
    sub.forEach((part, at) => parts.push(text('q', x + 34, ys[i] + 14 + at * 15, part)));
  });
  return parts;
}
