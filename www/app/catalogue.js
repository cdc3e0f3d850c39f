// @ts-check
/**
 * The sheets that are kept on this device: foams, kits on offer, and kits that are already there. A new job can
 * start from them or from our invented samples. A job holds copies; a higher version here means that the
 * catalogue has moved on. Where storage is refused the catalogue holds until the page is closed, and says so.
 *
 * @typedef {import('./changes.js').Sheet} Sheet
 * @typedef {'foam' | 'kit' | 'owned'} SheetPart
 * @typedef {Record<SheetPart, Sheet[]> & {[part: string]: Sheet[]}} Sheets
 */
import { readKey, writeKey } from './prefs.js';
import { newId } from './shelf.js';

const KEY = 'foamwright.sheets';
const FILES = /** @type {const} */ ({ foam: 'foams', kit: 'kits' });

/** The parts that a sheet may be of. */
export const PARTS = /** @type {const} */ (['foam', 'kit', 'owned']);

/** @type {Sheets} */
const samples = { foam: [], kit: [], owned: [] };

/** What could not be kept: it holds while the page is open. @type {Sheets | undefined} */
let memory;

/** Fetches the samples; without them only the person's own sheets are on offer. */
export async function loadCatalogue() {
  await Promise.all(/** @type {const} */ (['foam', 'kit']).map(async (part) => {
    if (samples[part].length) return;
    try {
      const answer = await fetch(new URL(`./sample/${FILES[part]}.json`, import.meta.url));
      if (answer.ok) samples[part] = await answer.json();
    } catch { /* offline before the copy was complete */ }
  }));
}

/** The person's own sheets of a kind. @param {SheetPart} part @returns {Sheet[]} */
export function own(part) {
  const all = (memory ?? readKey(KEY, /** @type {Record<string, unknown>} */ ({})))[part];
  return Array.isArray(all) ? all.filter(sound) : [];
}

/** All of the person's own sheets. @returns {Sheets} */
export function allOwn() {
  return { foam: own('foam'), kit: own('kit'), owned: own('owned') };
}

/** Whether the catalogue is kept on the device; otherwise it holds until the page is closed. */
export const isKept = () => memory === undefined;

/** Every sheet of a kind on offer; an own one stands before a sample of the same id. @param {SheetPart} part @returns {Sheet[]} */
export function sheets(part) {
  const mine = own(part);
  return [...mine, ...samples[part].filter((one) => !mine.some((other) => other.sheet === one.sheet))];
}

/** What a new job starts with: the person's own sheets, or the samples where there are none. @param {'foam' | 'kit'} part @returns {Sheet[]} */
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
 * Whether a kit is used belongs to the job and stays there.
 * @param {SheetPart} part
 * @param {{sheet: string, name: string, entries: Sheet['entries'], r_at?: {entries: Sheet['entries']}[]}} copy
 * @returns {Sheet} what was kept
 */
export function keepSheet(part, copy) {
  const known = own(part).find((one) => one.sheet === copy.sheet);
  /** @type {Sheet} */
  const sheet = {
    sheet: known ? known.sheet : newId(), version: (known?.version ?? 0) + 1, name: copy.name, entries: lasting(part, copy.entries),
    ...(part === 'foam' ? { r_at: (copy.r_at ?? []).map((row) => row.entries) } : {}),
  };
  putSheet(part, sheet);
  return sheet;
}

/** The entries that go into the catalogue. @param {SheetPart} part @param {Sheet['entries']} entries */
export const lasting = (part, entries) => (part === 'owned' ? entries.filter((one) => one.field !== 'use') : entries);

/** Puts a sheet into the catalogue as it is, in place of one of the same id. @param {SheetPart} part @param {Sheet} sheet */
export function putSheet(part, sheet) {
  const mine = own(part);
  const known = mine.some((one) => one.sheet === sheet.sheet);
  return keepAll({ ...allOwn(), [part]: known ? mine.map((one) => (one.sheet === sheet.sheet ? sheet : one)) : [...mine, sheet] });
}

/** A second sheet with the same figures. @param {SheetPart} part @param {Sheet} sheet @param {string} name @returns {Sheet} */
export function duplicateSheet(part, sheet, name) {
  const copy = { ...sheet, sheet: newId(), version: 1, name };
  putSheet(part, copy);
  return copy;
}

/** Takes an own sheet out of the catalogue; jobs keep their copies. @param {SheetPart} part @param {string} sheet */
export function dropSheet(part, sheet) {
  return keepAll({ ...allOwn(), [part]: own(part).filter((one) => one.sheet !== sheet) });
}

/** Whether a sheet is one of our invented ones. @param {{sheet: string}} copy */
export function isSample(copy) {
  return copy.sheet.startsWith('sample-');
}

/** Keeps the whole catalogue. @param {Sheets} all @returns {boolean} whether the device took it; it holds either way */
export function keepAll(all) {
  memory = writeKey(KEY, all) ? undefined : all;
  return memory === undefined;
}

/** Keeps all of them at once, for a backup, or changes nothing. @param {{[part: string]: Sheet[]}} all @returns {boolean} whether they are kept */
export function keepAllOwn(all) {
  if (!writeKey(KEY, all)) return false;
  memory = undefined;
  return true;
}

/** @param {any} one @returns {one is Sheet} */
function sound(one) {
  return one && typeof one.sheet === 'string' && Number.isSafeInteger(one.version) && Array.isArray(one.entries);
}
