// @ts-check
/**
 * The shelf: one key a job, plain JSON `{id, revision, tab, saved_at, job}`. This tab writes only over the
 * revision that it read; otherwise both are kept. The shelf is a draft, the job file is the record.
 *
 * @typedef {import('./job.js').Job} Job
 * @typedef {import('./store.js').Kept} Kept
 * @typedef {{id: string, revision: number, tab: string, saved_at: number, job: Job}} Record
 *
 * @typedef {object} Drawer  where texts are put: the core's shelf functions, or a map in a test
 * @property {() => boolean} available
 * @property {() => string[]} keys
 * @property {(key: string) => string | undefined} get
 * @property {(key: string, text: string) => 'full' | 'blocked' | undefined} put
 * @property {(key: string) => boolean} remove
 *
 * @typedef {object} Listed
 * @property {string} id
 * @property {Record} [record]
 * @property {string} [damaged]  the text as it is, where it is no record; it is left alone
 */

export { newId } from './newid.js';

/** How long another tab may hold the lock before this one goes on without it, in ms. */
const PATIENCE = 400;

/**
 * @param {Drawer} drawer
 * @param {{tab: string, clock: () => number, locks?: LockManager}} about
 */
export function createShelf(drawer, { tab, clock, locks }) {
  /** The revision of each job that this tab read or wrote last. @type {Map<string, number>} */
  const read = new Map();
  /** What storage refused, for as long as this tab is open. @type {Map<string, Record>} */
  const memory = new Map();

  /** @param {string} id @returns {Record | undefined} */
  function stored(id) {
    const text = drawer.get(id);
    return text === undefined ? undefined : parse(text, id);
  }

  /** @param {string} id @returns {string | undefined} */
  function text(id) {
    return memory.has(id) ? JSON.stringify(memory.get(id)) : drawer.get(id);
  }

  /** @param {Job} job @returns {Kept} */
  function keepNow(job) {
    const there = stored(job.id);
    const known = read.get(job.id) ?? 0;
    if (there && there.revision !== known) return 'conflict';
    // A record that cannot be understood is never written over.
    if (!there && drawer.get(job.id) !== undefined) return 'conflict';
    const record = { id: job.id, revision: known + 1, tab, saved_at: clock(), job };
    const fault = drawer.available() ? drawer.put(job.id, JSON.stringify(record)) : 'blocked';
    if (fault) {
      memory.set(job.id, { ...record, revision: known });
      return fault === 'full' ? 'full' : 'memory';
    }
    memory.delete(job.id);
    read.set(job.id, record.revision);
    return 'kept';
  }

  return {
    keepNow,

    /** @param {() => Job} latest @returns {Promise<Kept>} */
    async keep(latest) {
      if (!locks) return keepNow(latest());
      const patience = new AbortController();
      const timer = setTimeout(() => patience.abort(), PATIENCE);
      try {
        return await locks.request(`foamwright.job.${latest().id}`, { signal: patience.signal }, () => {
          clearTimeout(timer);
          return keepNow(latest());
        });
      } catch {
        return keepNow(latest());
      } finally {
        clearTimeout(timer);
      }
    },

    /** Every job on the shelf, the last saved first. @returns {Listed[]} */
    list() {
      /** @type {Map<string, Listed>} */
      const all = new Map();
      for (const id of drawer.keys()) {
        const text = drawer.get(id) ?? '';
        const record = parse(text, id);
        all.set(id, record ? { id, record } : { id, damaged: text });
      }
      for (const [id, record] of memory) all.set(id, { id, record });
      return [...all.values()].sort((a, b) => (b.record?.saved_at ?? 0) - (a.record?.saved_at ?? 0) || (a.id < b.id ? -1 : 1));
    },

    /** Reads a job in order to work on it. @param {string} id @returns {Record | undefined} */
    take(id) {
      const record = memory.get(id) ?? stored(id);
      if (record) read.set(id, record.revision);
      return record;
    },

    /** Looks at a job without taking it. @param {string} id */
    look(id) {
      return memory.get(id) ?? stored(id);
    },

    /** Whether the shelf holds a state of this job that this tab has not read. @param {string} id */
    moved(id) {
      const there = stored(id);
      return there !== undefined && there.revision !== (read.get(id) ?? 0);
    },

    /** A job as it lies, whether or not it can be understood. @param {string} id */
    text,

    /**
     * Puts a text in the place of another, only if that one still lies there; undefined is no job at all.
     * @param {string} id @param {string | undefined} from @param {string | undefined} to
     * @returns {'kept' | 'moved' | 'full' | 'memory'}
     */
    swap(id, from, to) {
      if (text(id) !== from) return 'moved';
      if (to !== undefined) {
        const fault = drawer.available() ? drawer.put(id, to) : 'blocked';
        if (fault) return fault === 'full' ? 'full' : 'memory';
      } else if (drawer.get(id) !== undefined) drawer.remove(id);
      memory.delete(id);
      read.delete(id);
      return 'kept';
    },

    /** Takes a job off the shelf. @param {string} id @returns {string | undefined} its text, to put it back */
    remove(id) {
      const gone = text(id);
      memory.delete(id);
      read.delete(id);
      drawer.remove(id);
      return gone;
    },

    /** Puts a removed job back as it was. @param {string} id @param {string} gone */
    restore(id, gone) {
      if (drawer.get(id) === undefined && drawer.put(id, gone)) {
        const record = parse(gone, id);
        if (record) memory.set(id, record);
      }
    },
  };
}

/** @typedef {ReturnType<typeof createShelf>} Shelf */

/** @param {string} text @param {string} id @returns {Record | undefined} */
function parse(text, id) {
  try {
    const record = JSON.parse(text);
    const sound = record && record.id === id && Number.isSafeInteger(record.revision) && record.job && record.job.id === id;
    return sound ? record : undefined;
  } catch {
    return undefined;
  }
}
