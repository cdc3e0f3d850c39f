// @ts-check
/** Texts of a job as they stand on a tape, a label or a sheet, set for reading: `12' 6 1/2"` as 12′-6½″. */
import { fieldRow, reading } from '../calls.js';
import { day, has, label, t } from '../words.js';

/** @typedef {import('../core.js').Units} Units @typedef {import('../core.js').Part} Part */

const NBSP = '\u00a0';
/** Fractions that have a character of their own. @type {Record<string, string>} */
const ONE = { '1/2': '½', '1/4': '¼', '3/4': '¾', '1/8': '⅛', '3/8': '⅜', '5/8': '⅝', '7/8': '⅞' };

/** A number with its fraction: `6 1/2` as 6½, `6 3/16` as it is. @param {string} text */
const fraction = (text) => text.replace(/(?:(\d+) )?(\d+\/\d+)/g, (_, whole, part) => (ONE[part] ? (whole ?? '') + ONE[part] : (whole ? whole + NBSP : '') + part));

/** A text as it was typed, set for reading; one of another form stays as it is. @param {string} text */
export function plainly(text) {
  const feet = /^(\d+)' (\d+(?: \d+\/\d+)?)"$/.exec(text);
  if (feet) return `${feet[1]}′-${fraction(feet[2] ?? '')}″`;
  const alone = /^([\d ./]+)(['"])$/.exec(text);
  if (alone) return fraction(alone[1] ?? '') + (alone[2] === "'" ? '′' : '″');
  const degrees = /^(-?[\d.]+) ?([FC])$/.exec(text);
  if (degrees) return `${degrees[1].replace('-', '−')}${NBSP}°${degrees[2]}`;
  if (/^[\d ./]+ [a-z%$]+[²³]?$/i.test(text)) return fraction(text).replace(/ (?=[a-z%$])/gi, NBSP);
  if (/^\d+(?: \d+)?\/\d+$/.test(text)) return fraction(text);
  // With two places, as answers and formulas have it.
  return day(text).replace(/^RSI ([\d.]+)$/, (_, rsi) => `RSI${NBSP}${Number(Number(rsi).toFixed(2))}`);
}

/**
 * An entry of the job in words: a press by its word, a bare number with the unit of its box, anything else as typed.
 * @param {Part} part @param {import('../core.js').Entered} entry @param {Units} units
 */
export function entryText(part, { field, text, unit }, units) {
  const row = fieldRow(part, field);
  if (!row) return plainly(text);
  if (row.kind === 'choice') {
    const key = [`fields.choice.${field}.${text}`, `fields.choice.${text}`].find(has);
    return key ? t(key) : text;
  }
  if (row.kind === 'date') return day(text);
  if (!/^-?[\d.,]+$/.test(text.trim())) return plainly(text);
  // Labels are in board feet whatever the tape reads.
  if (row.kind === 'foam_volume') return `${text}${NBSP}${t('fields.unit.bd_ft')}`;
  return reading(row, text, unit ?? (units === 'metric' ? row.metric : row.us), undefined, units)?.as || text;
}

/** What an entry is called. @param {Part} part @param {string} field */
export const entryName = (part, field) => label(part, field);

/** The entries that hold something, with name and text. @param {Part} part @param {readonly import('../core.js').Entered[] | undefined} entries @param {Units} units @param {readonly string[]} [but] */
export const entriesOf = (part, entries, units, but = []) => (entries ?? []).filter((one) => one.text.trim() && !but.includes(one.field))
  .map((one) => ({ field: one.field, name: entryName(part, one.field), text: entryText(part, one, units) }));
