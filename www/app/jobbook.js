// @ts-check
/**
 * What can be done with whole jobs: open, begin, copy, rename, delete, save to a file and take in from one.
 *
 * @typedef {import('./job.js').Job} Job
 */
import { apply } from './changes.js';
import { isSample, loadCatalogue, starters } from './catalogue.js';
import { download, fileName, openFile, openText, openValue, textOf } from './files.js';
import { hush, notify } from './notices.js';
import { getPrefs, setPrefs } from './prefs.js';
import { same } from './same.js';
import { copy } from './share.js';
import { newId } from './shelf.js';
import { go, to } from './view.js';
import { t } from './words.js';

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

/** A new job with the person's own sheets, or with the samples. */
export async function newJob() {
  await loadCatalogue();
  store.keepNow();
  /** @type {Job} */
  let job = {
    format: 'foamwright-job', version: 4, id: newId(), next_id: 1, units: getPrefs().units ?? 'us', name: '', place: '', note: '',
    entries: [], foam: 0, surfaces: [], foams: [], kits: [], stock: [], readings: [], rounds: [], warming: [], forecast: [], events: [],
  };
  for (const sheet of starters('foam')) job = apply(job, { do: 'add_foam', sheet });
  for (const sheet of starters('kit')) job = apply(job, { do: 'add_kit', sheet });
  await begin(job);
  if ([...job.foams, ...job.kits].some(isSample)) {
    notify('samples', 'watch', t('jobs.starts_with_samples'), t('jobs.starts_with_samples_do'), { presses: [[t('page.to_settings'), () => go(to('settings'))]] });
  }
}

/** A copy of a job of the shelf, opened. @param {string} id */
export async function duplicateJob(id) {
  const record = shelf.look(id);
  if (record) await begin({ ...record.job, id: newId(), name: t('jobs.copy_of', { name: nameOf(record.job) }) });
}

/** @param {Job} job */
async function begin(job) {
  await store.open(job);
  setPrefs({ job: job.id });
  shelfChanged();
}

/** @param {string} id @param {string} name */
export function renameJob(id, name) {
  if (id === store.job.id) {
    store.dispatch({ do: 'text', field: 'name', text: name });
    return;
  }
  const record = shelf.take(id);
  if (record) shelf.keepNow({ ...record.job, name });
  shelfChanged();
}

/** Deletes a job; it can be put back until the notice is put away. @param {string} id */
export async function deleteJob(id) {
  const name = nameOf(shelf.look(id)?.job ?? { name: '' });
  store.keepNow();
  await store.settled();
  const text = shelf.remove(id);
  if (text === undefined) return;
  const photos = import('./photobox.js').then(({ removeJob }) => removeJob(id)).catch(() => undefined);
  const open = store.job.id === id;
  if (open) {
    setPrefs({ job: '' });
    await openFirst();
  }
  shelfChanged();
  notify('deleted', 'watch', t('jobs.deleted', { name }), '', {
    focus: true,
    presses: [[t('jobs.put_back'), () => {
      shelf.restore(id, text);
      void photos.then((putBack) => putBack?.());
      if (open) void openJob(id).then(shelfChanged);
      shelfChanged();
    }]],
  });
}

/** Saves the open job, or one of the shelf, to a file. @param {string} [id] */
export function saveFile(id) {
  const job = !id || id === store.job.id ? store.job : shelf.look(id)?.job;
  if (job) download(fileName(job), textOf(job));
}

/** Copies the open job as text, for a message. @returns {Promise<boolean>} */
export function copyJob() {
  return copy(textOf(store.job));
}

/** Takes in a job file. What is on the shelf stays as it is. @param {File} file */
export async function takeIn(file) {
  hush('refused');
  hush('both');
  await bring(await openFile(file), 'file', file.name);
}

/** Takes in the job that a link carries, by the same rules as a file. @param {string} carried */
export async function takeLink(carried) {
  hush('refused');
  hush('both');
  const { unpack } = await import('./link.js');
  const got = await unpack(carried);
  await bring('text' in got ? openText(got.text) : { refused: got.refused, figures: {} }, 'link');
}

/** What a job from elsewhere may call itself here; under any other id it gets one of ours. */
const ID = /^[\w-]{1,64}$/;
/** Ids count up from 1; a counter near the end of its range is no job's. */
const MOST_ID = 2_000_000_000;

/** @param {import('./files.js').Opened} opened @param {'file' | 'link'} by @param {string} [name] */
async function bring(opened, by, name = '') {
  if ('job' in opened && opened.job.next_id > MOST_ID) opened = { refused: 'damaged', figures: { version: 0, detail: 'next_id' } };
  if (!('job' in opened)) {
    if (by === 'file' && opened.refused === 'not_a_job' && opened.figures.detail === 'foamwright-backup') {
      notify('refused', 'watch', t('jobs.is_backup', { name }), t('jobs.is_backup_do'), { presses: [[t('jobs.backup'), () => go(to('backup'))]] });
      return;
    }
    notify('refused', 'hold', t(by === 'link' ? 'jobs.not_opened_link' : 'jobs.not_opened', { name }), t(`jobs.refused.${opened.refused}`, opened.figures));
    return;
  }
  const { job } = opened;
  const anew = job.id.startsWith('sample-') || !ID.test(job.id);
  store.keepNow();
  await store.settled();
  const here = anew ? undefined : shelf.look(job.id)?.job;
  const unclear = !anew && !here && shelf.text(job.id) !== undefined;
  if (!here) {
    await begin(anew || unclear ? { ...job, id: newId() } : job);
    go(to('sheet'));
  } else if (same(here, job)) {
    await openJob(job.id);
    go(to('sheet'));
  } else {
    notify('both', 'watch', t('jobs.exists', { name: nameOf(here) }), t(`jobs.exists_${by}`), {
      presses: [[t('jobs.keep_both'), () => void begin({ ...job, id: newId(), name: t(`jobs.from_${by}`, { name: nameOf(job) }) }).then(() => go(to('sheet')))]],
    });
  }
}

/** The shelf itself, for a backup of all of it. */
export const theShelf = () => shelf;

/** Shows what the shelf holds now, after it was changed as a whole. @param {string[]} ids  that were changed or are gone */
export async function reopen(ids) {
  if (ids.includes(store.job.id)) {
    if (shelf.look(store.job.id)) await openJob(store.job.id);
    else await openFirst();
  }
  shelfChanged();
}
