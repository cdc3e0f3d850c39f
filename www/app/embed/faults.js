// @ts-check
/**
 * What is wrong with a host's settings, said to the owner of the page in the console: where, why, what was wanted, and
 * what stands there now. Visitors never see it; for them a default stands. The sentences: `faulttext.js`.
 *
 * @typedef {import('../words.js').Figures} Figures
 * @typedef {{at: string, why: string, want: string, now: string, figures: Figures}} Fault
 *   `at`: the key with its place, as `kits[2].entries[0].text`. The other three are words of the page `embed_faults`.
 */

/** A console is read by a person: so many are told, and how many more there are. */
const MOST_TOLD = 40;
const LONGEST_QUOTE = 40;

/** What a person does not see in a text: control characters, marks that turn the direction of writing, and the like. */
export const UNSEEN = /[\u0000-\u001F\u007F-\u009F\u00AD\u061C\u200B-\u200F\u2028-\u202E\u2060-\u206F\uFEFF]/;
const EVERY_UNSEEN = new RegExp(UNSEEN, 'g');

/** Faults as they are found. */
export class Faults {
  constructor() {
    /** @type {Fault[]} */
    this.list = [];
    this.more = 0;
  }

  /** @param {string} at @param {string} why @param {string} want @param {string} now @param {Figures} [figures] */
  add(at, why, want, now, figures = {}) {
    if (this.list.length < MOST_TOLD) this.list.push({ at: quoted(at, 120), why, want, now, figures });
    else this.more += 1;
  }

  /** All that are told; the last one says how many are not. @returns {Fault[]} */
  told() {
    return this.more ? [...this.list, { at: '', why: 'more', want: '', now: '', figures: { n: this.more } }] : this.list;
  }
}

/** A text as it can be shown in one line. @param {string} text @param {number} most */
function quoted(text, most) {
  const plain = text.slice(0, most + 1).replace(EVERY_UNSEEN, '\uFFFD');
  return plain.length > most ? `${plain.slice(0, most - 1)}…` : plain;
}

/** A value as its owner knows it again. @param {unknown} value */
export function shown(value) {
  if (typeof value === 'string') return `"${quoted(value, LONGEST_QUOTE)}"`;
  if (Array.isArray(value)) return '[…]';
  if (typeof value === 'object' && value !== null) return '{…}';
  return quoted(String(value), LONGEST_QUOTE);
}
