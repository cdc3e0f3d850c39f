// @ts-check
/**
 * What each key of the tape pad writes: a text and a key in, the new text out. Fields stay plain text, so what
 * a key writes is what a keyboard would: `7' 6 1/2"`.
 *
 * @typedef {'us' | 'metric' | 'member' | 'few'} Pad
 */

/** The fractions of an inch that have a key, the largest first. */
export const FRACTIONS = ['1/2', '1/4', '1/8', '1/16'];

/** A length as the keys write it: feet, whole inches, a fraction, the mark of inches. */
const LENGTH = /^(?:(\d+)')?\s*(?:(\d+)(?![\d/]))?\s*(?:(\d+)\/(\d+))?("?)$/;

/** Lumber of which only the size is pressed. */
export const LUMBER = ['2×4', '2×6', '2×8', '2×10'];

/** @type {Partial<Record<import('./core.js').Kind, string[]>>} */
const FEW = { count: ['', ''], zip: ['', ''], temperature: ['-', '.'], pitch: ['/', '.'], area: ['×', '.'], member: ['×', '.'] };

/**
 * The keys of a field, row by row; an empty string is no key. `back` takes back, `next` goes on.
 * @param {import('./core.js').Kind} kind
 * @param {import('./core.js').Unit | undefined} unit  of the box
 * @param {readonly string[]} recent  readings to press again
 * @param {boolean} [left]  for the left thumb
 * @returns {{pad: Pad, rows: string[][]}}
 */
export function keysOf(kind, unit, recent, left = false) {
  const us = unit === 'ft' || unit === 'in';
  /** @type {Pad} */
  const pad = kind === 'length' ? (us ? 'us' : 'metric') : kind === 'member' && us ? 'member' : 'few';
  if (pad === 'few') {
    const [first = '', last = ''] = FEW[kind] ?? ['', '.'];
    const rows = [['7', '8', '9', 'back'], ['4', '5', '6', 'next'], ['1', '2', '3'], [first, '0', last]];
    return { pad, rows: left ? rows.map((row) => (row.length > 3 ? [row[3] ?? '', ...row.slice(0, 3)] : row)) : rows };
  }
  const units = { us: ['ft', 'in', '+'], metric: ['m', 'mm', '+'], member: ['×', 'in', '1/2'] }[pad];
  const last = { us: FRACTIONS, metric: ['.', ...recent], member: LUMBER }[pad];
  const rows = [['7', '8', '9'], ['4', '5', '6'], ['1', '2', '3'], ['back', '0']].map((row, at) => {
    const more = [units[at] ?? 'next', last[at] ?? ''];
    return left ? [...more.reverse(), ...(at === 3 ? row.reverse() : row)] : [...row, ...more];
  });
  return { pad, rows };
}

/**
 * The text after a press.
 * @param {string} text  what stands before the caret
 * @param {string} key
 * @returns {string} the same text where the key has nothing to do
 */
export function press(text, key) {
  if (/^\d$/.test(key)) return (/['"a-z]$/i.test(text) ? text + ' ' : text) + key;
  if (key === 'back') return back(text);
  if (FRACTIONS.includes(key)) return fraction(text, key);
  if (LUMBER.includes(key)) return key;
  const figure = /\d$/.test(text);
  switch (key) {
    case 'ft': return figure && !/['/]/.test(term(text)) ? `${text}'` : text;
    case 'in': return figure ? `${text}"` : text;
    case 'm': case 'mm': return figure ? `${text} ${key}` : text;
    case '/': case '×': return figure ? text + key : text;
    case '.': return /[./]\d*$/.test(text) ? text : text + key;
    case '-': return text.trim() ? text : key;
    case '+': return plus(text);
    // A reading that is pressed again stands alone, or joins a sum that waits for its next length.
    default: return text.endsWith('+ ') ? text + key : key;
  }
}

/** The last length of a sum. @param {string} text */
const term = (text) => text.slice(text.lastIndexOf('+') + 1).trimStart();

/** @param {string} text */
function plus(text) {
  const done = text.trimEnd();
  if (!done || done.endsWith('+')) return text;
  // Digits after feet are inches, and another length after them must not change that.
  return `${done}${/'\s*\d+$/.test(term(done)) ? '"' : ''} + `;
}

/** Takes back what the last key wrote, as far as the text alone tells. @param {string} text */
export function back(text) {
  const shorter = text.replace(/( \+ | ?\d+\/\d+"|"| ?mm| ?m|.)$/u, '');
  return shorter.endsWith('+') ? `${shorter} ` : shorter.replace(/([^+]) +$/, '$1');
}

/** Adds a fraction of an inch; past a whole inch it carries. @param {string} text @param {string} key */
function fraction(text, key) {
  const last = term(text);
  const [, feet, inches, over, under] = LENGTH.exec(last) ?? [];
  const plain = LENGTH.test(last) && (!under || ['2', '4', '8', '16'].includes(under));
  if (!plain) return `${text.trimEnd()} ${key}"`;
  const sixteenths = 16 / Number(key.slice(2)) + (over && under ? (Number(over) * 16) / Number(under) : 0);
  let whole = Number(inches ?? 0) + Math.floor(sixteenths / 16);
  let foot = Number(feet ?? 0);
  if (feet && whole === 12 && sixteenths >= 16) [foot, whole] = [foot + 1, 0];
  let [part, of] = [sixteenths % 16, 16];
  while (part && part % 2 === 0) [part, of] = [part / 2, of / 2];
  const parts = [feet && `${foot}'`, whole || !part && !feet ? String(whole) : '', part ? `${part}/${of}` : ''].filter(Boolean).join(' ');
  return text.slice(0, text.length - last.length) + parts + (whole || part ? '"' : '');
}
