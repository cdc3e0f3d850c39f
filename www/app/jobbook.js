// @ts-check
/**
 * The jobs of the shelf, and which of them is open. What else can be done with them is in `jobways.js`, which comes
 * when it is asked for.
 *
 * @typedef {import('./job.js').Job} Job
 */
import { openText, openValue } from './files.js';
import { notify } from './notices.js';
import { getPrefs, setPrefs } from './prefs.js';
import { need, t } from './words.js';

/** @type {import('./store.js').Store} */
let store;
/** @type {import('./shelf.js').Shelf} */
let shelf;
/** @type {Set<() => void>} */
const told = new Set();

/** @param {import('./store.js').Store} theStore @param {import('./shelf.js').Shelf} theShelf */
export function keepBook(theStore, theShelf) {
  store = theStore;
  shelf = theShelf;
}

/** Tells when the shelf holds something else. @param {() => void} fn */
export function onShelf(fn) {
  told.add(fn);
  return () => told.delete(fn);
}

export function shelfChanged() {
  for (const fn of [...told]) fn();
}

/** Every job on the shelf. */
export function allJobs() {
  return shelf.list();
}

/** What a job is called, also where it has no name. @param {Pick<Job, 'name'>} job */
export function nameOf(job) {
  return job.name.trim() || t('page.unnamed');
}

/** Opens a job of the shelf. One that cannot be opened is left as it is, and said. @param {string} id @returns {Promise<boolean>} */
export async function openJob(id) {
  store.keepNow();
  const record = shelf.take(id);
  if (!record) return false;
  const opened = openValue(record.job);
  if (!('job' in opened)) {
    await need('jobs');
    notify('refused', 'hold', t('jobs.not_opened', { name: String(record.job.name ?? '') }), t(`jobs.refused.${opened.refused}`, opened.figures));
    return false;
  }
  await store.open(opened.job, 'kept');
  setPrefs({ job: id });
  return true;
}

/** The sample: never stored, and its readings were taken a few minutes ago. */
export async function openSample() {
  store.keepNow();
  const answer = await fetch(new URL('./sample/demo.json', import.meta.url));
  const opened = openText(await answer.text());
  if (!('job' in opened)) throw new Error(`sample: ${opened.refused}`);
  const { job } = opened;
  const newest = Math.max(0, ...job.readings.map((one) => one.taken?.ms ?? 0));
  const shift = Date.now() - 300_000 - newest;
  const offset_min = -new Date().getTimezoneOffset();
  const readings = job.readings.map((one) => (one.taken ? { ...one, taken: { ms: one.taken.ms + shift, offset_min } } : one));
  await store.open({ ...job, readings }, 'sample');
}

/** Opens what was open last, else the last saved, else the sample. */
export async function openFirst() {
  const { job } = getPrefs();
  const ids = shelf.list().filter((one) => one.record).map((one) => one.id);
  for (const id of job && ids.includes(job) ? [job, ...ids] : ids) {
    if (await openJob(id)) return;
  }
  await openSample();
}

/** The shelf itself, for what is done with all of it. */
export const theShelf = () => shelf;

/** What holds the open job. */
export const theStore = () => store;

/** Shows what the shelf holds now, after it was changed as a whole. @param {string[]} ids  that were changed or are gone */
export async function reopen(ids) {
  if (ids.includes(store.job.id)) {
    if (shelf.look(store.job.id)) await openJob(store.job.id);
    else await openFirst();
  }
  shelfChanged();
}
