// @ts-check
/** Which exercise comes next: of the same kind, or on the same level with another topic. Which one, is chance. */
import { bits, dice, draw } from './seeds.js';

/** @typedef {import('./core.js').Practice} Practice @typedef {import('./core.js').Exercise} Exercise */

/** One like this; of the book the one that comes after it. @param {Practice} core @param {Exercise} exercise @param {() => number} [throws] */
export function likeThis(core, { seed, level, topics }, throws = dice) {
  if (!level) {
    const book = core.book();
    return book.length > 1 ? book[(book.indexOf(seed) + 1) % book.length] ?? '' : '';
  }
  return draw(core, level, bits(core.topics(), new Set(topics)), new Set([seed]), throws);
}

/** One of the same level with a topic that this one does not train; '' where the level has none. @param {Practice} core @param {Exercise} exercise @param {() => number} [throws] */
export function otherTopic(core, { seed, level, topics }, throws = dice) {
  const mine = /** @type {readonly string[]} */ (topics);
  const rest = core.scenes().filter((one) => one.levels.includes(level) && one.topics.some((topic) => !mine.includes(topic)));
  const scene = rest.length ? rest[throws() % rest.length] : undefined;
  if (!scene) return '';
  return draw(core, level, bits(core.topics(), new Set(scene.topics.filter((topic) => !mine.includes(topic)))), new Set([seed]), throws);
}
