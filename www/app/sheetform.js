// @ts-check
/**
 * The form of a sheet that comes from elsewhere: in a catalogue file, or among the settings of an embedded
 * estimator. Only what is known is copied, field by field, so that nothing of the other side's objects is kept;
 * the first thing that is wrong is thrown as a `Fault` with its place. What the figures mean is the core's to say.
 *
 * @typedef {import('./catalogue.js').Sheet} Sheet
 * @typedef {import('./catalogue.js').SheetPart} SheetPart
 */

const DEEPEST = 32;
const MOST_ENTRIES = 200;

/** What is wrong with a value, and where. */
export class Fault extends Error {
  /** @param {string} why @param {string} at */
  constructor(why, at) {
    super(why);
    this.at = at;
  }
}

/** @param {unknown} value @returns {value is Record<string, unknown>} */
export const isPlain = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether brackets lie deeper than sheets ever do; told without parsing. @param {string} text */
export function tooDeep(text) {
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i += 1) {
    const mark = text[i];
    if (quoted) {
      if (mark === '\\') i += 1;
      else if (mark === '"') quoted = false;
    } else if (mark === '"') quoted = true;
    else if (mark === '{' || mark === '[') depth += 1;
    else if (mark === '}' || mark === ']') depth -= 1;
    if (depth > DEEPEST) return true;
  }
  return false;
}

/** A list of sheets of which no id stands twice. @param {SheetPart} part @param {unknown} value @param {string} at @param {number} most @returns {Sheet[]} */
export function sheetsOf(part, value, at, most) {
  const seen = new Set();
  return listOf(value, at, most, (one, here) => {
    const sheet = sheetOf(part, one, here);
    if (seen.has(sheet.sheet)) throw new Fault('twice', here);
    seen.add(sheet.sheet);
    return sheet;
  });
}

/** @template T @param {unknown} value @param {string} at @param {number} most @param {(one: unknown, at: string) => T} make @returns {T[]} */
function listOf(value, at, most, make) {
  if (!Array.isArray(value)) throw new Fault('wrong', at);
  if (value.length > most) throw new Fault('too_many', at);
  return value.map((one, index) => make(one, `${at}[${index}]`));
}

/** @param {unknown} value @param {string} at @param {number} most @returns {string} */
function textOf(value, at, most) {
  if (typeof value !== 'string' || value.length > most) throw new Fault('wrong', at);
  return value;
}

/** @param {SheetPart} part @param {unknown} one @param {string} at @returns {Sheet} */
export function sheetOf(part, one, at) {
  if (!isPlain(one)) throw new Fault('wrong', at);
  const id = textOf(Object.hasOwn(one, 'sheet') ? one.sheet : undefined, `${at}.sheet`, 64);
  if (!/^[A-Za-z0-9_-]+$/.test(id) || id.startsWith('sample-')) throw new Fault('wrong', `${at}.sheet`);
  const version = one.version;
  if (!Number.isSafeInteger(version) || Number(version) < 1 || Number(version) > 1e9) throw new Fault('wrong', `${at}.version`);
  const given = (/** @type {string} */ name, /** @type {unknown} */ otherwise) => (Object.hasOwn(one, name) ? one[name] : otherwise);
  const r_at = listOf(given('r_at', []), `${at}.r_at`, MOST_ENTRIES, entriesOf);
  return {
    sheet: id, version: Number(version), name: textOf(given('name', ''), `${at}.name`, 200), entries: entriesOf(given('entries', []), `${at}.entries`),
    ...(part === 'foam' ? { r_at } : {}),
  };
}

/** Entries as typed. @param {unknown} value @param {string} at @returns {Sheet['entries']} */
export function entriesOf(value, at) {
  return listOf(value, at, MOST_ENTRIES, (one, here) => {
    if (!isPlain(one)) throw new Fault('wrong', here);
    /** @type {any} */
    const entry = { field: textOf(one.field, `${here}.field`, 40), text: textOf(one.text, `${here}.text`, 300) };
    if (!/^[a-z][a-z0-9_]*$/.test(entry.field)) throw new Fault('wrong', `${here}.field`);
    for (const name of /** @type {const} */ (['unit', 'sense'])) {
      if (one[name] === undefined || one[name] === null) continue;
      entry[name] = textOf(one[name], `${here}.${name}`, 20);
    }
    return entry;
  });
}
