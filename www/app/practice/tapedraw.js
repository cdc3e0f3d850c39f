// @ts-check
/**
 * A piece of a tape with a mark on it, as it is read on site: whole inches counted on from the hook, sixteenths between
 * them, and a flag at each whole foot; or centimeters and millimeters, with a flag at each whole meter. What it comes to
 * stands nowhere.
 */
import { drawing, line, r2, rect, s, text } from '../svg.js';

const HEIGHT = 104;
const BLADE = 70;

/** A unit of the blade: how many of them are 390 px long, its ticks, how long each k-th is (the longest first), how many to a flag, inches in one. */
const BLADES = {
  us: { seen: 3.1, ticks: 16, lengths: /** @type {[number, number][]} */ ([[16, 44], [8, 34], [4, 26], [2, 18], [1, 11]]), flag: 12, inches: 1 },
  metric: { seen: 6.2, ticks: 10, lengths: /** @type {[number, number][]} */ ([[10, 44], [5, 28], [1, 14]]), flag: 100, inches: 1 / 2.54 },
};

/**
 * Where a mark stands on the blade, for whoever has it read out: the last whole line before it, the ticks past that, and the
 * last flag before it.
 * @param {number} inches @param {boolean} metric
 */
export function standsAt(inches, metric) {
  const { ticks, flag, inches: unit } = BLADES[metric ? 'metric' : 'us'];
  const all = Math.round((inches / unit) * ticks);
  const whole = Math.floor(all / ticks);
  return { whole, past: all % ticks, ticks, flags: Math.floor(whole / flag), after: whole % flag };
}

/** Whether the pointer would run through a flag. @param {number} mark @param {number} left @param {number} wide */
export const meets = (mark, left, wide) => mark > left - 3 && mark < left + wide + 3;

/** @param {number} inches where the mark stands @param {{metric: boolean, label: string, width: number, flag: (n: number) => string}} how */
export function tapePiece(inches, { metric, label, width, flag: flagText }) {
  const { seen, ticks, lengths, flag, inches: unit } = BLADES[metric ? 'metric' : 'us'];
  const per = 390 / seen;
  const here = inches / unit;
  const mark = width * 0.56;
  // The mark is not in the middle, so that the eye counts from the figures and not from the edge.
  const x = (/** @type {number} */ at) => mark + (at - here) * per;
  const first = Math.max(0, Math.ceil((here - mark / per) * ticks));
  const last = Math.floor((here + (width - mark) / per) * ticks);
  const left = Math.max(0, x(0));
  /** @type {Node[]} */
  const parts = [rect('paper', left, 0, width - left, BLADE)];
  let [hair, bold] = ['', ''];
  for (let tick = first; tick <= last; tick += 1) {
    const [every, long] = lengths.find(([k]) => tick % k === 0) ?? [1, 11];
    const path = `M${r2(x(tick / ticks))} 0V${long}`;
    if (every * 2 >= ticks) bold += path;
    else hair += path;
  }
  parts.push(line('hair', hair || 'M0 0'), line('ln bold', bold || 'M0 0'));
  // The pointer is broken where figures stand, and where a flag of them lies across it.
  let broken = 46;
  for (let whole = Math.max(1, Math.floor(first / ticks)); whole <= last / ticks; whole += 1) {
    // A figure that an edge would cut reads as another one.
    const stands = (/** @type {number} */ from, /** @type {number} */ wide) => from >= 0 && from + wide <= width;
    if (whole % flag === 0) {
      const words = flagText(whole / flag);
      const wide = words.length * 8.4 + 12;
      if (stands(x(whole) + 3, wide)) {
        if (meets(mark, x(whole) + 3, wide)) broken = 68;
        parts.push(rect('inkfill', x(whole) + 3, 46, wide, 21), text('ex-flag b', x(whole) + 9, 62, words));
      }
    }
    if (stands(x(whole) + 6, 13 * String(whole).length)) parts.push(text('xl halo', x(whole) + 6, 40, String(whole)));
  }
  parts.push(line('cut', `M${left} ${BLADE}H${width}${x(0) > 0 ? `M${left} 0V${BLADE}` : ''}`));
  parts.push(s('path', { class: 'on pointer', d: `M${r2(mark)} 0V20M${r2(mark)} ${broken}V${HEIGHT - 18}` }), s('path', { class: 'chalkfill', d: `M${r2(mark - 11)} ${HEIGHT - 2}L${r2(mark)} ${HEIGHT - 22}L${r2(mark + 11)} ${HEIGHT - 2}Z` }));
  return drawing(width, HEIGHT, label, parts);
}
