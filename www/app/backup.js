// @ts-check
/**
 * Everything that a person has here in one file: every job of the shelf, their own sheets, and what they chose
 * for new jobs (not what belongs to the device: look, language, the job that was open last). A backup is merged
 * by id, then revision or version: first as a list of what would change, and only what is on the list is done.
 *
 * @typedef {import('./shelf.js').Record} Record
 * @typedef {import('./shelf.js').Shelf} Shelf
 * @typedef {import('./changes.js').Sheet} Sheet
 * @typedef {import('./files.js').Opened} Opened
 * @typedef {{[part: string]: Sheet[]}} Sheets
 *
 * @typedef {object} Backup
 * @property {number} made  milliseconds since 1970 UTC; 0 where the file does not say
 * @property {unknown[]} jobs
 * @property {[string, unknown][]} sheets  each with its part: foam, kit, …
 * @property {{units?: import('./core.js').Units}} prefs
 *
 * @typedef {'new' | 'newer_there' | 'both' | 'newer_here' | 'same' | 'left_out'} State
 *   the first three change something: taken in, put over the older one here, kept beside the one here
 *
 * @typedef {object} Item
 * @property {string} key
 * @property {string} kind  `job`, `foam`, `kit`, … or `prefs`
 * @property {string} name
 * @property {State} state
 * @property {string} [why]  of what is left out
 * @property {{[name: string]: string | number}} [figures]
 * @property {number} [here]  when the one here was saved, or its version
 * @property {number} [there]
 * @property {Record} [record]
 * @property {string} [text]  the one here as it lies
 * @property {Sheet} [sheet]
 */
import { same } from './same.js';

export const FORMAT = 'foamwright-backup';
export const VERSION = 1;
/** More than any browser's local storage holds, in characters. */
export const MOST_TEXT = 20_000_000;
/** A job goes 32 deep and stands three levels down. */
const MOST_DEPTH = 35;
const PARTS = ['foam', 'kit', 'owned'];
/** Ids are made here, of few characters; anything else is not given a place on the shelf. */
const ID = /^[\w-]{1,64}$/;

/** @param {{records: Record[], sheets: Sheets, prefs: {units?: import('./core.js').Units}, now: number}} all */
export function backupText({ records, sheets, prefs, now }) {
  const jobs = records.map(({ id, revision, saved_at, job }) => ({ id, revision, saved_at, job }));
  return `${JSON.stringify({ format: FORMAT, version: VERSION, made: now, jobs, sheets, prefs: prefs.units ? { units: prefs.units } : {} }, null, 1)}\n`;
}

/** Reads a backup's frame; what is in it is judged piece by piece later. @param {string} text @returns {{backup: Backup} | {refused: string, figures: {[name: string]: string | number}}} */
export function readBackup(text) {
  const refuse = (/** @type {string} */ refused, figures = {}) => ({ refused, figures: { version: 0, detail: '', ...figures } });
  if (text.length > MOST_TEXT) return refuse('too_long_backup');
  if (deeper(text, MOST_DEPTH)) return refuse('too_deep');
  /** @type {any} */
  let all;
  try {
    all = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return refuse('not_json');
  }
  if (all?.format !== FORMAT) return refuse('no_backup');
  if (!Number.isSafeInteger(all.version) || all.version < 1) return refuse('damaged', { detail: 'version' });
  if (all.version > VERSION) return refuse('newer', { version: all.version });
  if (!Array.isArray(all.jobs)) return refuse('damaged', { detail: 'jobs' });
  const units = all.prefs?.units;
  return {
    backup: {
      made: Number.isFinite(all.made) ? all.made : 0,
      jobs: all.jobs,
      sheets: PARTS.flatMap((part) => {
        const list = all.sheets && Object.hasOwn(all.sheets, part) ? all.sheets[part] : [];
        return Array.isArray(list) ? list.map((one) => /** @type {[string, unknown]} */ ([part, one])) : [];
      }),
      prefs: units === 'us' || units === 'metric' ? { units } : {},
    },
  };
}

/** Whether brackets nest deeper than this, those in quotes not counted. @param {string} text @param {number} most */
function deeper(text, most) {
  let depth = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 34) quoted = !quoted;
    else if (quoted) at += code === 92 ? 1 : 0;
    else if ((code === 91 || code === 123) && ++depth > most) return true;
    else if (code === 93 || code === 125) depth -= 1;
  }
  return false;
}

/**
 * What taking a backup in would do here. Nothing is done.
 * @param {Backup} backup
 * @param {{shelf: Shelf, sheets: Sheets, units?: string, open: (text: string) => Opened, copyName: (name: string) => string}} here
 * @returns {Item[]}
 */
export function plan(backup, { shelf, sheets, units, open, copyName }) {
  /** @type {Set<string>} */
  const met = new Set();
  const all = shelf.list();
  const jobs = backup.jobs.map((/** @type {any} */ one, at) => {
    const name = String(typeof one?.job?.name === 'string' && one.job.name.trim() || '').slice(0, 200);
    /** @param {State} state @param {Partial<Item>} [more] @returns {Item} */
    const item = (state, more = {}) => ({ key: `job-${at}`, kind: 'job', name, state, ...more });
    const leave = (/** @type {string} */ why, figures = {}) => item('left_out', { why, figures: { version: 0, detail: '', ...figures } });
    if (!one || typeof one !== 'object' || !one.job) return leave('damaged', { detail: `jobs[${at}]` });
    const opened = open(JSON.stringify(one.job));
    if (!('job' in opened)) return leave(opened.refused, opened.figures);
    const { job } = opened;
    if (one.id !== job.id || !ID.test(job.id)) return leave('damaged', { detail: 'id' });
    if (!Number.isSafeInteger(one.revision) || one.revision < 1 || one.revision > 1e9) return leave('damaged', { detail: 'revision' });
    if (met.has(job.id)) return leave('twice');
    met.add(job.id);
    const record = { id: job.id, revision: one.revision, tab: '', saved_at: Number.isFinite(one.saved_at) ? one.saved_at : 0, job };
    const text = shelf.text(job.id);
    if (text === undefined) return item('new', { record, there: record.saved_at });
    const mine = shelf.look(job.id);
    const more = { record, text, here: mine?.saved_at ?? 0, there: record.saved_at };
    // What can't be understood here is never written over.
    const known = mine && open(JSON.stringify(mine.job));
    if (known && 'job' in known && same(known.job, job)) return item('same', more);
    // The copy that an earlier restore put beside it.
    const copy = { ...job, name: copyName(job.name) };
    if (all.some((other) => other.record && other.id !== job.id && same({ ...other.record.job, id: job.id }, copy))) return item('same', more);
    if (mine && known && 'job' in known) {
      // Revision and clock have to agree: where they do not, the two went on from each other apart.
      if (record.revision > mine.revision && record.saved_at >= mine.saved_at) return item('newer_there', more);
      if (record.revision < mine.revision && record.saved_at <= mine.saved_at) return item('newer_here', more);
    }
    return item('both', more);
  });
  const others = backup.sheets.map(([part, one], at) => planSheet(part, one, at, sheets[part] ?? [], met, open, copyName));
  if (backup.prefs.units && backup.prefs.units !== units) others.push({ key: 'prefs', kind: 'prefs', name: backup.prefs.units, state: units ? 'newer_there' : 'new' });
  return [...jobs, ...others];
}

/**
 * @param {string} part @param {any} one @param {number} at @param {Sheet[]} here @param {Set<string>} met
 * @param {(text: string) => Opened} open @param {(name: string) => string} copyName
 * @returns {Item}
 */
function planSheet(part, one, at, here, met, open, copyName) {
  const sheet = openSheet(part, one, open);
  const key = `${part}-${at}`;
  const name = typeof one?.name === 'string' ? one.name.slice(0, 200) : '';
  const leave = (/** @type {string} */ why, detail = '') => /** @type {Item} */ ({ key, kind: part, name, state: 'left_out', why, figures: { version: 0, detail } });
  if (!sheet || !ID.test(sheet.sheet)) return leave('damaged', `${part}[${at}]`);
  if (met.has(`${part} ${sheet.sheet}`)) return leave('twice');
  met.add(`${part} ${sheet.sheet}`);
  const mine = here.find((other) => other.sheet === sheet.sheet);
  /** @type {State} */
  const state = !mine ? 'new' : same({ ...mine, version: 0 }, { ...sheet, version: 0 }) ? 'same'
    : here.some((other) => other !== mine && same({ ...other, sheet: '', version: 0 }, { ...sheet, sheet: '', version: 0, name: copyName(sheet.name) })) ? 'same'
      : sheet.version > mine.version ? 'newer_there' : sheet.version < mine.version ? 'newer_here' : 'both';
  return { key, kind: part, name: sheet.name, state, sheet, ...(mine ? { here: mine.version, there: sheet.version } : {}) };
}

/** Where a sheet of a kind stands in a job. */
const PLACES = /** @type {{[part: string]: 'foams' | 'kits' | 'stock'}} */ ({ foam: 'foams', kit: 'kits', owned: 'stock' });

/** A sheet as the core understands it, by way of a job that holds nothing else. @param {string} part @param {any} one @param {(text: string) => Opened} open @returns {Sheet | undefined} */
export function openSheet(part, one, open) {
  const place = PLACES[part];
  if (!place || !one || typeof one !== 'object') return undefined;
  const r_at = part === 'foam' && Array.isArray(one.r_at) ? one.r_at.map((/** @type {unknown} */ entries) => ({ id: 1, entries })) : undefined;
  const { sheet, version, name, entries } = one;
  const opened = open(JSON.stringify({ format: 'foamwright-job', version: 4, id: 'sheet', next_id: 1, [place]: [{ id: 1, sheet, version, name, entries, r_at }] }));
  /** @type {any} */
  const found = 'job' in opened ? opened.job[place][0] : undefined;
  if (!found) return undefined;
  return {
    sheet: found.sheet, version: found.version, name: found.name, entries: found.entries,
    ...(part === 'foam' ? { r_at: found.r_at.map((/** @type {{entries: Sheet['entries']}} */ row) => row.entries) } : {}),
  };
}

/** Whether an item changes something. @param {Item} item */
export const changes = (item) => item.state === 'new' || item.state === 'newer_there' || item.state === 'both';

/**
 * The sheets of a kind after taking these items in.
 * @param {Sheet[]} here @param {Item[]} items @param {{newId: () => string, copyName: (name: string) => string}} how
 */
export function mergeSheets(here, items, { newId, copyName }) {
  let all = here;
  for (const { state, sheet } of items) {
    if (!sheet) continue;
    if (state === 'new') all = [...all, sheet];
    if (state === 'newer_there') all = all.map((one) => (one.sheet === sheet.sheet ? sheet : one));
    if (state === 'both') all = [...all, { ...sheet, sheet: newId(), name: copyName(sheet.name) }];
  }
  return all;
}

/**
 * Puts the jobs of these items on the shelf: all of them, or none.
 * @param {Shelf} shelf @param {Item[]} items
 * @param {{tab: string, now: number, newId: () => string, copyName: (name: string) => string}} how
 * @returns {{undo: () => {id: string, back: boolean}[], ids: string[]} | {fault: 'moved' | 'full' | 'memory'}}
 */
export function takeJobs(shelf, items, { tab, now, newId, copyName }) {
  /** @type {{id: string, from: string | undefined, to: string}[]} */
  const done = [];
  const undo = () => [...done].reverse().map(({ id, from, to }) => ({ id, back: shelf.swap(id, to, from) === 'kept' }));
  for (const { record, state, text } of items) {
    if (!record) continue;
    const { job } = record;
    const beside = state === 'both' ? newId() : '';
    const next = beside ? { ...record, id: beside, revision: 1, tab, saved_at: now, job: { ...job, id: beside, name: copyName(job.name) } } : { ...record, tab };
    const step = { id: next.id, from: beside ? undefined : text, to: JSON.stringify(next) };
    const kept = shelf.swap(step.id, step.from, step.to);
    if (kept !== 'kept') {
      undo();
      return { fault: kept };
    }
    done.push(step);
  }
  return { undo, ids: done.map(({ id }) => id) };
}
