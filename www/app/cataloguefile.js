// @ts-check
/**
 * The catalogue as a file: plain JSON, `www/catalogue-v1.schema.json`. A file from elsewhere is judged before any of
 * it is taken: too long, too deep, foreign, newer or damaged is refused with the reason, what is not known is left
 * out, and what each sheet would change is told first. Nothing is ever replaced unasked.
 *
 * @typedef {import('./catalogue.js').Sheet} Sheet
 * @typedef {import('./catalogue.js').Sheets} Sheets
 * @typedef {import('./catalogue.js').SheetPart} SheetPart
 * @typedef {'new' | 'newer' | 'same' | 'older' | 'other'} Standing
 *   Against the sheet of the same id here; `other`: the same version says something else.
 * @typedef {{part: SheetPart, sheet: Sheet, standing: Standing, mine?: Sheet}} Offer
 * @typedef {{sheets: Sheets} | {refused: string, at?: string, version?: number}} Read
 */
import { MOST_BYTES } from './files.js';
import { Fault, isPlain, sheetsOf, tooDeep } from './sheetform.js';

export const FORMAT = 'foamwright-catalogue';
export const VERSION = 1;

const MOST_SHEETS = 1000;
const LISTS = /** @type {const} */ ([['foam', 'foams'], ['kit', 'kits'], ['owned', 'owned']]);

/** The catalogue as the text of its file. @param {Sheets} all */
export function catalogueText(all) {
  return `${JSON.stringify({ format: FORMAT, version: VERSION, foams: all.foam, kits: all.kit, owned: all.owned }, null, 1)}\n`;
}

/** Reads the text of a catalogue file. Nothing is taken by reading. @param {string} text @returns {Read} */
export function readCatalogue(text) {
  if (new TextEncoder().encode(text).length > MOST_BYTES) return { refused: 'too_long' };
  if (tooDeep(text)) return { refused: 'too_deep' };
  /** @type {any} */
  let file;
  try {
    file = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return { refused: 'damaged' };
  }
  if (!isPlain(file) || file.format !== FORMAT) return { refused: 'foreign' };
  const version = Number.isSafeInteger(file.version) ? Number(file.version) : 0;
  if (version < 1) return { refused: 'wrong', at: 'version' };
  if (version > VERSION) return { refused: 'newer', version };
  try {
    /** @type {Sheets} */
    const all = { foam: [], kit: [], owned: [] };
    for (const [part, name] of LISTS) all[part] = sheetsOf(part, Object.hasOwn(file, name) ? file[name] : [], name, MOST_SHEETS);
    return { sheets: all };
  } catch (error) {
    if (error instanceof Fault) return { refused: error.message, at: error.at };
    throw error;
  }
}

/**
 * A job that holds nothing but these sheets: what the core does not take of it, a job would not take either.
 * @param {Sheets} all
 */
export function asJob(all) {
  let next_id = 1;
  const copy = (/** @type {Sheet} */ one) => ({ id: next_id++, sheet: one.sheet, version: one.version, name: one.name, entries: one.entries });
  return {
    format: 'foamwright-job', version: 4, id: 'catalogue', next_id: 4_000_000,
    foams: all.foam.map((one) => ({ ...copy(one), r_at: (one.r_at ?? []).map((entries) => ({ id: next_id++, entries })) })),
    kits: all.kit.map(copy), stock: all.owned.map(copy),
  };
}

/** How each sheet of a file stands against those here. @param {Sheets} mine @param {Sheets} theirs @returns {Offer[]} */
export function compare(mine, theirs) {
  return LISTS.flatMap(([part]) => theirs[part].map((sheet) => {
    const known = mine[part].find((one) => one.sheet === sheet.sheet);
    if (!known) return { part, sheet, standing: /** @type {const} */ ('new') };
    const standing = sheet.version > known.version ? 'newer' : sheet.version < known.version ? 'older' : says(part, sheet) === says(part, known) ? 'same' : 'other';
    return { part, sheet, standing: /** @type {Standing} */ (standing), mine: known };
  }));
}

/** What a sheet says, the same for the same figures. @param {SheetPart} part @param {Sheet} sheet */
function says(part, sheet) {
  const plain = (/** @type {Sheet['entries']} */ entries) => entries.map((one) => [one.field, one.text, one.unit ?? '', one.sense ?? '']);
  return JSON.stringify([sheet.name, plain(sheet.entries), part === 'foam' ? (sheet.r_at ?? []).map(plain) : []]);
}

/**
 * The catalogue with the chosen sheets taken in. An older or other one, where it was chosen, becomes the next
 * version of the one here, so that jobs say that the catalogue has moved on.
 * @param {Sheets} mine @param {Offer[]} chosen @returns {Sheets}
 */
export function taken(mine, chosen) {
  const all = { foam: [...mine.foam], kit: [...mine.kit], owned: [...mine.owned] };
  for (const { part, sheet } of chosen) {
    const at = all[part].findIndex((one) => one.sheet === sheet.sheet);
    if (at < 0) all[part].push(sheet);
    else all[part][at] = { ...sheet, version: Math.max(sheet.version, all[part][at].version + 1) };
  }
  return all;
}
