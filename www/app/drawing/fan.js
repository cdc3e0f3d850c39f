// @ts-check
/** Marks of a ruler: they leave it at their true height and fan out to labels that keep clear of each other. */
import { barred, d, line, markAt, s, text, twoLines, wide } from '../svg.js';

/** @typedef {import('./ruler.js').Level} Level @typedef {import('./ruler.js').Cut} Cut */

/** From the ruler's edge to a label. */
const LABEL = 34;
/** From one label's line to the next at least, its own second lines left out. */
const APART = 42;
/** Room between two marks that cross. */
const CROSS = 26;

/** @param {Cut} cut */
const sorted = (cut) => [...cut.levels].sort((a, b) => b.at - a.at);

/** The name of a mark and the line below it in at most two lines each. @param {Level} one @param {number} most */
function inLines(one, most) {
  const what = twoLines(one.what, most, 17);
  const sub = one.sub ? twoLines(one.sub, most, 13.5) : [];
  return { what, sub, above: (what.length - 1) * 18, below: Math.max(0, sub.length - 1) * 15 };
}

/** The room that all labels take. @param {Cut} cut @param {number} width */
export function room(cut, width) {
  const names = cut.levels.map((one) => inLines(one, width - LABEL - 2));
  return names.reduce((sum, one) => sum + APART + one.above + one.below, 0) + (cut.shared ?? 0) * (APART + 18) + (cut.gap ? CROSS : 0);
}

const PENS = { ink: 'ln', aim: 'on', most: 'holdln' };
const INKS = { ink: 'lg halo', aim: 'lg on halo', most: 'lg hold halo' };

/**
 * @param {Cut} cut @param {(inches: number) => number} up @param {number} floor
 * @param {number} x the ruler's edge @param {number} end @returns {Node[]}
 */
export function fan(cut, up, floor, x, end) {
  const levels = sorted(cut);
  const names = levels.map((one) => inLines(one, end - x - LABEL - 2));
  const ys = settled(cut, levels, names, up, floor);
  /** @type {Node[]} */
  const parts = [];
  if (cut.promised > cut.most) {
    const { defs, fill } = barred();
    parts.push(defs, s('rect', { x: x - 44, y: up(cut.promised), width: 44, height: up(cut.most) - up(cut.promised), fill, opacity: '.5' }));
    parts.push(markAt('watch', x - 22, (up(cut.promised) + up(cut.most)) / 2, 20));
  }
  parts.push(...crossing(cut, levels, names, ys, up, x, end));
  levels.forEach((one, i) => {
    parts.push(line(PENS[one.kind] + (one.dash ? ' dash' : ''), d('M', x - 10, up(one.at), 'H', x + 4, 'L', x + 29, ys[i], 'H', end)));
    const { what, sub } = names[i];
    what.forEach((part, at) => parts.push(text(INKS[one.kind], x + LABEL, ys[i] - 5 - (what.length - 1 - at) * 18, part)));
    sub.forEach((part, at) => parts.push(text('q', x + LABEL, ys[i] + 14 + at * 15, part)));
  });
  return parts;
}

/** @typedef {ReturnType<typeof inLines>[]} Names */

/**
 * The heights of the labels' lines: each as near to its mark as the others let it.
 * @param {Cut} cut @param {Level[]} levels @param {Names} names @param {(inches: number) => number} up @param {number} floor
 */
function settled(cut, levels, names, up, floor) {
  // From one to the next: the lines below the one and those above the other; under the higher of two that cross there is room to say so.
  const after = levels.map((one, at) => APART + names[at].below + (names[at + 1]?.above ?? 0) + (one.at === cut.gap?.[0] ? CROSS : 0));
  const ys = levels.map((one) => up(one.at));
  for (let i = 0; i < ys.length; i += 1) ys[i] = Math.max(ys[i], i ? ys[i - 1] + after[i - 1] : 22 + names[0].above);
  let most = floor + 10 - (names[names.length - 1]?.below ?? 0);
  for (let i = ys.length - 1; i >= 0; i -= 1) {
    ys[i] = Math.min(ys[i], most);
    most = ys[i] - (after[i - 1] ?? APART);
  }
  return ys;
}

/**
 * The hatch between the least and the most that cross, and by how much they do.
 * @param {Cut} cut @param {Level[]} levels @param {Names} names @param {number[]} ys
 * @param {(inches: number) => number} up @param {number} x @param {number} end @returns {Node[]}
 */
function crossing(cut, levels, names, ys, up, x, end) {
  if (!cut.gap) return [];
  const [least, under] = cut.gap.map((at) => levels.findIndex((one) => one.at === at));
  if (least < 0 || under < 0) return [];
  const { defs, fill } = barred();
  const [high, low] = cut.gap.map(up);
  const y = ys[least] + CROSS + 8 + names[least].below;
  // On a narrow page the words alone: they must not run off its edge.
  const roomy = wide(cut.words.cross, 16) < end - x - 63;
  return [defs, s('path', { d: d('M', x - 10, high, 'H', x + 4, 'L', x + 29, ys[least], 'H', end, 'V', ys[under], 'H', x + 29, 'L', x + 4, low, 'H', x - 10, 'Z'), fill, opacity: '.34' }),
    ...roomy ? [markAt('watch', x + 45, y - 5, 22)] : [], text(roomy ? 'b md halo' : 'b halo', x + (roomy ? 61 : LABEL), y, cut.words.cross)];
}
