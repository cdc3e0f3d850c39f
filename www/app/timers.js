// @ts-check
/**
 * Countdowns by the clock: each knows the instant at which it ends, so that it survives a locked phone and a
 * reload. The page writes them once a second while it is shown.
 */

/** How long until an instant, in whole seconds, never below zero. A started second counts whole. @param {number} until @param {number} now */
export const secondsLeft = (until, now) => Math.max(0, Math.ceil((until - now) / 1000));

/** A span as it is read off a clock: `0:27`, `14:03`, `1:04:00`. @param {number} seconds */
export function shown(seconds) {
  const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

/**
 * What to say aloud, if anything: a countdown speaks as it starts, at ten seconds and at its end, and is
 * silent between. After a gap (a locked phone) only the last of them is said.
 * @param {number | undefined} before  seconds left when it last ticked; undefined for a new one
 * @param {number} left  seconds left now
 * @returns {'start' | 'soon' | 'end' | undefined}
 */
export function spoken(before, left) {
  if (before === undefined) return left > 0 ? 'start' : 'end';
  if (left === 0) return before > 0 ? 'end' : undefined;
  if (left > before) return 'start';
  return before > 10 && left <= 10 ? 'soon' : undefined;
}

/** Whether an instant came to pass since the last tick: what waited for it is ready now. @param {readonly number[]} instants @param {number} before @param {number} now */
export const passed = (instants, before, now) => instants.some((one) => one > before && one <= now);

/** A glove presses twice: a second press this soon is the same one. @param {() => number} clock @param {number} [gap] ms */
export function once(clock, gap = 700) {
  let last = -Infinity;
  return () => {
    const at = clock();
    if (at - last >= 0 && at - last < gap) return false;
    last = at;
    return true;
  };
}
