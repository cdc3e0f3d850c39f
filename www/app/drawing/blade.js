// @ts-check
/** The blade of a tape, drawn where a reading lies: hold the phone beside the tape, and they look alike. */
import { drawing, line, rect, s, text } from '../svg.js';

const WIDTH = 390;
const HEIGHT = 66;
const MIDDLE = WIDTH / 2;

/** A unit of the blade in pixels, its ticks, and the length of each k-th of them, the longest first. */
const BLADES = {
  us: { unit: 124, ticks: 16, lengths: /** @type {[number, number][]} */ ([[16, 40], [8, 30], [4, 22], [2, 15], [1, 9]]) },
  metric: { unit: 62, ticks: 10, lengths: /** @type {[number, number][]} */ ([[10, 40], [5, 26], [1, 12]]) },
};

/**
 * A stretch of blade under a pointer. The end of the blade is drawn where it is near.
 * @param {{at: number, low?: number, high?: number} | undefined} inches  where the pointer stands; without it, none is drawn
 * @param {boolean} metric
 * @param {string} label
 */
export function blade(inches, metric, label) {
  const { unit, ticks, lengths } = BLADES[metric ? 'metric' : 'us'];
  const scale = metric ? 2.54 : 1;
  const here = (inches?.at ?? 0) * scale;
  const x = (/** @type {number} */ value) => MIDDLE + (value - here) * unit;
  const first = Math.max(0, Math.ceil((here - MIDDLE / unit) * ticks));
  const last = Math.floor((here + MIDDLE / unit) * ticks);
  /** @type {Node[]} */
  const drawn = [];
  const left = Math.max(0, x(0));
  drawn.push(rect('paper', left, 0, WIDTH - left, HEIGHT));
  if (inches?.low !== undefined && inches.high !== undefined && inches.high > inches.low) {
    drawn.push(rect('washfill', Math.max(left, x(inches.low * scale)), 0, Math.min(WIDTH, x(inches.high * scale)) - Math.max(left, x(inches.low * scale)), HEIGHT));
  }
  let [hair, bold] = ['', ''];
  for (let tick = first; tick <= last; tick++) {
    const [every, length] = lengths.find(([every]) => tick % every === 0) ?? [1, 9];
    const path = `M${Math.round(x(tick / ticks) * 100) / 100} 0V${length}`;
    if (every * 2 >= ticks) bold += path;
    else hair += path;
  }
  drawn.push(line('hair', hair || 'M0 0'), line('ln', bold || 'M0 0'));
  if (x(0) > 0) drawn.push(line('cut', `M${left} 0V${HEIGHT}`));
  for (let whole = Math.max(1, Math.floor(first / ticks)); whole <= last / ticks; whole++) {
    drawn.push(text(metric ? 'lg halo' : 'xl halo', x(whole) + 6, 36, String(whole)));
    const below = metric ? (whole % 10 === 0 ? `${whole / 100} m` : '') : whole >= 12 ? `${Math.floor(whole / 12)}′ ${whole % 12}″` : '';
    if (below) drawn.push(text('q', x(whole) + 6, 53, below));
  }
  if (inches) drawn.push(s('path', { class: 'on pointer', d: `M${MIDDLE} 0V${HEIGHT}` }), s('path', { class: 'chalkfill', d: `M183 ${HEIGHT}L${MIDDLE} 48L207 ${HEIGHT}Z` }));
  return drawing(WIDTH, HEIGHT, label, drawn);
}
