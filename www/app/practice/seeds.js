// @ts-check
/** Seeds as they come from elsewhere: typed, pasted, out of a link of an exercise or of a class sheet. */

/** @typedef {import('./core.js').Practice} Practice */

/** A class sheet holds at most so many. */
export const MOST_EXERCISES = 20;

/** The seeds of a text: one, or several with commas, or a link that ends in them. @param {string} text @returns {string[]} */
export function seedsOf(text) {
  const carried = /#\/(?:exercise|class)\/([^/?#\s]*)/.exec(text)?.[1];
  let plain = carried ?? text;
  try {
    plain = decodeURIComponent(plain);
  } catch { /* it is judged as it stands */ }
  return plain.split(/[,;\s]+/).filter(Boolean);
}

/**
 * The seeds that give an exercise, in the one way to write them and none twice, and what is wrong with the others.
 * @param {Practice} core @param {readonly string[]} seeds @param {import('../core.js').Units} units
 */
export function sorted(core, seeds, units) {
  /** @type {import('./core.js').Exercise[]} */
  const exercises = [];
  /** @type {{seed: string, why: 'form' | 'newer' | 'none' | 'twice' | 'many'}[]} */
  const refused = [];
  for (const seed of seeds) {
    const { exercise, refused: why } = core.exercise(seed, units);
    if (!exercise) refused.push({ seed: seed.slice(0, 40), why: /** @type {'form' | 'newer' | 'none'} */ (why || 'none') });
    else if (exercises.some((one) => one.seed === exercise.seed)) refused.push({ seed: exercise.seed, why: 'twice' });
    else if (exercises.length === MOST_EXERCISES) refused.push({ seed: exercise.seed, why: 'many' });
    else exercises.push(exercise);
  }
  return { exercises, refused };
}

/** A number of the device's own dice, 0 to 65,535. */
export const dice = () => crypto.getRandomValues(new Uint16Array(1))[0];

/** Topics as the bits that the core takes. @param {readonly string[]} all  every topic, in order @param {ReadonlySet<string>} chosen */
export const bits = (all, chosen) => all.reduce((sum, topic, bit) => sum + (chosen.has(topic) ? 2 ** bit : 0), 0);

/**
 * Draws a seed that is not among these; '' where the level has none of the topics, or no other.
 * @param {Pick<Practice, 'find'>} core @param {number} level @param {number} topics @param {ReadonlySet<string>} [without] @param {() => number} [throws]
 */
export function draw(core, level, topics, without = new Set(), throws = dice) {
  let from = throws();
  for (let tries = 0; tries < 200; tries += 1) {
    const seed = core.find(level, topics, from);
    if (!seed || !without.has(seed)) return seed;
    // The next one after it: chance chose where to begin.
    from = (Number.parseInt(seed.split('-')[2], 16) + 1) % 65_536;
  }
  return '';
}

/** The link of a class sheet: nothing but its seeds. @param {readonly string[]} seeds @param {string} page  the address of this page */
export const linkOf = (seeds, page) => `${page.split('#')[0]}#/class/${seeds.join(',')}`;
