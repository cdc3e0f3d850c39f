// @ts-check
/** Which exercise comes next: of the same kind, or on the same level with another topic. Which one, is chance. */

/** @typedef {import('./core.js').Practice} Practice @typedef {import('./core.js').Exercise} Exercise */

/** A number of the device's own dice, of so many. @param {number} of */
export const dice = (of) => (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % of;

const SEEDS = 65536;

/** Topics as bits in the order of all. @param {readonly string[]} all @param {readonly string[]} wanted */
export const bits = (all, wanted) => wanted.reduce((sum, one) => (all.includes(one) ? sum | (1 << all.indexOf(one)) : sum), 0);

/** A seed that is not the present one. @param {(from: number) => string} find @param {string} seed @param {(of: number) => number} roll */
function other(find, seed, roll) {
  for (let tries = 0; tries < 8; tries += 1) {
    const found = find(roll(SEEDS));
    if (found && found !== seed) return found;
    if (!found) return '';
  }
  return '';
}

/** One like this; of the book the one that comes after it. @param {Practice} core @param {Exercise} exercise @param {(of: number) => number} [roll] */
export function likeThis(core, { seed, level, topics }, roll = dice) {
  if (!level) {
    const book = core.book();
    return book.length > 1 ? book[(book.indexOf(seed) + 1) % book.length] ?? '' : '';
  }
  return other((from) => core.find(level, bits(core.topics(), topics), from), seed, roll);
}

/** One of the same level with a topic that this one does not train; '' where the level has none. @param {Practice} core @param {Exercise} exercise @param {(of: number) => number} [roll] */
export function otherTopic(core, { seed, level, topics }, roll = dice) {
  const mine = /** @type {readonly string[]} */ (topics);
  const rest = core.scenes().filter((one) => one.levels.includes(level) && one.topics.some((topic) => !mine.includes(topic)));
  const scene = rest[roll(Math.max(1, rest.length))];
  if (!scene) return '';
  return other((from) => core.find(level, bits(core.topics(), scene.topics.filter((topic) => !mine.includes(topic))), from), seed, roll);
}
