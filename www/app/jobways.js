// @ts-check
/**
 * What is done with whole jobs: begin, copy, rename, delete, save to a file and take in from one.
 *
 * @typedef {import('./job.js').Job} Job
 */
import { apply } from './changes.js';
import { isSample, loadCatalogue, starters } from './catalogue.js';
import { download, fileName, openFile, openText, textOf } from './files.js';
import { nameOf, openFirst, openJob, shelfChanged, theShelf, theStore } from './jobbook.js';
import { hush, notify } from './notices.js';
import { getPrefs, setPrefs } from './prefs.js';
import { same } from './same.js';
import { copy } from './share.js';
import { newId } from './shelf.js';
import { go, to } from './view.js';
import { need, t } from './words.js';

const store = theStore();
const shelf = theShelf();

/** A new job with the person's own sheets, or with the samples. */
export async function newJob() {
  await Promise.all([loadCatalogue(), need('jobs')]);
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
  const [opened] = await Promise.all([openFile(file), need('jobs')]);
  await bring(opened, 'file', file.name);
}

/** Takes in the job that a link carries, by the same rules as a file. @param {string} carried */
export async function takeLink(carried) {
  hush('refused');
  hush('both');
  const [{ unpack }] = await Promise.all([import('./link.js'), need('jobs')]);
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
