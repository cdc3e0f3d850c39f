// @ts-check
/**
 * The foam and kit sheets that a new job can start from: our invented samples, and the person's own, which
 * are kept on this device. A job holds copies; a higher version here means that the catalogue has moved on.
 *
 * @typedef {import('./changes.js').Sheet} Sheet
 * @typedef {'foam' | 'kit'} SheetPart
 */
import { readKey, writeKey } from './prefs.js';
import { newId } from './shelf.js';

const KEY = 'foamwright.sheets';
const FILES = { foam: 'foams', kit: 'kits' };

/** @type {{foam: Sheet[], kit: Sheet[]}} */
const samples = { foam: [], kit: [] };

/** Fetches the samples; without them only the person's own sheets are on offer. */
export async function loadCatalogue() {
  await Promise.all(/** @type {SheetPart[]} */ (['foam', 'kit']).map(async (part) => {
    if (samples[part].length) return;
    try {
      const answer = await fetch(new URL(`./sample/${FILES[part]}.json`, import.meta.url));
      if (answer.ok) samples[part] = await answer.json();
    } catch { /* offline before the copy was complete */ }
  }));
}

/** The person's own sheets of a kind. @param {SheetPart} part @returns {Sheet[]} */
export function own(part) {
  const all = readKey(KEY, /** @type {Record<string, unknown>} */ ({}))[part];
  return Array.isArray(all) ? all.filter(sound) : [];
}

/** Every sheet of a kind on offer; an own one stands before a sample of the same id. @param {SheetPart} part @returns {Sheet[]} */
export function sheets(part) {
  const mine = own(part);
  return [...mine, ...samples[part].filter((one) => !mine.some((other) => other.sheet === one.sheet))];
}

/** What a new job starts with: the person's own sheets, or the samples where there are none. @param {SheetPart} part @returns {Sheet[]} */
export function starters(part) {
  const mine = own(part);
  return mine.length ? mine : part === 'foam' ? samples.foam.slice(0, 1) : samples.kit;
}

/** The catalogue's sheet, where it has moved on since the job took its copy. @param {SheetPart} part @param {{sheet: string, version: number}} copy */
export function newer(part, copy) {
  return sheets(part).find((one) => one.sheet === copy.sheet && one.version > copy.version);
}

/**
 * Puts a job's sheet into the catalogue. A sample that was changed becomes a sheet of the person's own.
 * @param {SheetPart} part
 * @param {{sheet: string, name: string, entries: Sheet['entries'], r_at?: {entries: Sheet['entries']}[]}} copy
 * @returns {Sheet | undefined} what was kept; nothing where storage is refused
 */
export function keepSheet(part, copy) {
  const mine = own(part);
  const known = mine.find((one) => one.sheet === copy.sheet);
  /** @type {Sheet} */
  const sheet = {
    sheet: known ? known.sheet : newId(), version: (known?.version ?? 0) + 1, name: copy.name, entries: copy.entries,
    ...(part === 'foam' ? { r_at: (copy.r_at ?? []).map((row) => row.entries) } : {}),
  };
  return keepOwn(part, known ? mine.map((one) => (one === known ? sheet : one)) : [...mine, sheet]) ? sheet : undefined;
}

/** Takes an own sheet out of the catalogue; jobs keep their copies. @param {SheetPart} part @param {string} sheet */
export function dropSheet(part, sheet) {
  return keepOwn(part, own(part).filter((one) => one.sheet !== sheet));
}

/** Whether a sheet is one of our invented ones. @param {{sheet: string}} copy */
export function isSample(copy) {
  return copy.sheet.startsWith('sample-');
}

/** All sheets of the person's own as they are kept, by kind. @returns {{[part: string]: Sheet[]}} */
export function allOwn() {
  return { foam: own('foam'), kit: own('kit') };
}

/** Keeps all of them at once, for a backup. @param {{[part: string]: Sheet[]}} all @returns {boolean} whether they are kept */
export function keepAllOwn(all) {
  return writeKey(KEY, all);
}

/** @param {SheetPart} part @param {Sheet[]} list */
function keepOwn(part, list) {
  return writeKey(KEY, { foam: own('foam'), kit: own('kit'), [part]: list });
}

/** @param {any} one @returns {one is Sheet} */
function sound(one) {
  return one && typeof one.sheet === 'string' && Number.isSafeInteger(one.version) && Array.isArray(one.entries);
}
