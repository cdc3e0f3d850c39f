// @ts-check
/**
 * Where photos are kept: in this browser's IndexedDB and nowhere else, by job and place. What it refuses is held
 * in memory for as long as the tab is open. Pictures are kept as bytes: blobs have been lost by some browsers.
 *
 * @typedef {object} Photo
 * @property {string} id
 * @property {string} job
 * @property {number} place  the surface's id; 0 is the job as a whole
 * @property {number} added  milliseconds since 1970 UTC
 * @property {number} bytes  of picture and thumb
 * @property {ArrayBuffer} thumb  a small JPEG
 *
 * @typedef {'kept' | 'full' | 'blocked'} Kept
 * @typedef {{photo: Photo, picture: ArrayBuffer}} Whole
 */

/** Projects of one owner share an origin. */
const NAME = 'foamwright.photos';
/** How long the browser may think about it before it counts as refused, in ms. */
const PATIENCE = 5000;

/** @type {Map<string, Whole>} */
const memory = new Map();
/** @type {Set<() => void>} */
const told = new Set();
/** @type {Promise<IDBDatabase> | undefined} */
let opened;

/** Tells when photos were added, removed or put back in this tab. @param {() => void} fn */
export function onPhotos(fn) {
  told.add(fn);
  return () => told.delete(fn);
}

function changed() {
  for (const fn of [...told]) fn();
}

function open() {
  if (opened) return opened;
  /** @type {Promise<IDBDatabase>} */
  const asked = new Promise((good, bad) => {
    const request = indexedDB.open(NAME, 1);
    setTimeout(() => bad(new Error('no answer')), PATIENCE);
    request.onupgradeneeded = () => {
      request.result.createObjectStore('photos', { keyPath: 'id' }).createIndex('job', 'job');
      request.result.createObjectStore('pictures');
    };
    request.onblocked = () => bad(new Error('blocked'));
    request.onerror = (event) => {
      event.preventDefault();
      bad(request.error);
    };
    request.onsuccess = () => {
      const base = request.result;
      base.onclose = () => { opened = undefined; };
      base.onversionchange = () => {
        base.close();
        opened = undefined;
      };
      good(base);
    };
  });
  opened = asked;
  asked.catch(() => { if (opened === asked) opened = undefined; });
  return asked;
}

/**
 * All or nothing; what `work` returns is read when everything is done.
 * @template T
 * @param {IDBTransactionMode} mode
 * @param {(photos: IDBObjectStore, pictures: IDBObjectStore) => () => T} work
 * @returns {Promise<T>}
 */
async function within(mode, work) {
  let base = await open();
  /** @type {IDBTransaction} */
  let all;
  try {
    all = base.transaction(['photos', 'pictures'], mode);
  } catch {
    // A browser may close it while the page sleeps: once more.
    opened = undefined;
    base = await open();
    all = base.transaction(['photos', 'pictures'], mode);
  }
  return new Promise((good, bad) => {
    const read = work(all.objectStore('photos'), all.objectStore('pictures'));
    all.oncomplete = () => good(read());
    all.onabort = () => bad(all.error ?? new Error('aborted'));
  });
}

/** Keeps a photo, or holds it in this tab where storage refuses it. @param {Whole} whole @returns {Promise<Kept>} */
export async function keep(whole) {
  /** @type {Kept} */
  let kept = 'kept';
  try {
    await within('readwrite', (photos, pictures) => {
      photos.put(whole.photo);
      pictures.put(whole.picture, whole.photo.id);
      return () => undefined;
    });
    memory.delete(whole.photo.id);
  } catch (error) {
    memory.set(whole.photo.id, whole);
    kept = /** @type {any} */ (error)?.name === 'QuotaExceededError' ? 'full' : 'blocked';
  }
  changed();
  return kept;
}

/** Holds a photo in this tab only: its job is not kept either, and nothing is left behind. @param {Whole} whole @returns {Kept} */
export function hold(whole) {
  memory.set(whole.photo.id, whole);
  changed();
  return 'blocked';
}

/** The photos of a job, the first added first. @param {string} job @returns {Promise<Photo[]>} */
export async function photosOf(job) {
  return (await list((photos) => photos.index('job').getAll(job))).filter((one) => one.job === job);
}

/** Every photo here, of all jobs. */
export function allPhotos() {
  return list((photos) => photos.getAll());
}

/** @param {(photos: IDBObjectStore) => IDBRequest<Photo[]>} ask @returns {Promise<Photo[]>} */
async function list(ask) {
  /** @type {Photo[]} */
  let kept = [];
  try {
    kept = await within('readonly', (photos) => {
      const request = ask(photos);
      return () => request.result;
    });
  } catch { /* what this tab holds, then */ }
  return [...kept, ...[...memory.values()].map((one) => one.photo)].sort((a, b) => a.added - b.added || (a.id < b.id ? -1 : 1));
}

/** The picture of a photo; undefined where it is gone. @param {string} id @returns {Promise<ArrayBuffer | undefined>} */
export async function picture(id) {
  const held = memory.get(id);
  if (held) return held.picture;
  try {
    return await within('readonly', (_, pictures) => {
      const request = pictures.get(id);
      return () => request.result;
    });
  } catch {
    return undefined;
  }
}

/**
 * Removes photos. What is gone is held for as long as the way back is.
 * @param {readonly string[]} ids
 * @returns {Promise<() => Promise<Kept>>} puts them back
 */
export async function remove(ids) {
  /** @type {Whole[]} */
  const gone = [];
  try {
    gone.push(...await within('readwrite', (photos, pictures) => {
      const asked = ids.map((id) => {
        const pair = { photo: photos.get(id), picture: pictures.get(id) };
        photos.delete(id);
        pictures.delete(id);
        return pair;
      });
      return () => asked.map((one) => ({ photo: one.photo.result, picture: one.picture.result })).filter((one) => one.photo && one.picture);
    }));
  } catch { /* nothing is kept here */ }
  for (const id of ids) {
    const held = memory.get(id);
    if (held && memory.delete(id)) gone.push(held);
  }
  changed();
  return async () => {
    /** @type {Kept} */
    let worst = 'kept';
    for (const one of gone) {
      const kept = await keep(one);
      if (kept !== 'kept') worst = kept;
    }
    return worst;
  };
}

/** Removes every photo of a job. @param {string} job */
export async function removeJob(job) {
  return remove((await photosOf(job)).map((one) => one.id));
}
