// @ts-check
/**
 * The one place that holds the open job, its estimate and its undo stack. Views read it, dispatch changes to
 * it and are told when something is new. The draft is kept on the shelf before the estimate runs, so that a
 * trap in the core can never take an entry with it.
 *
 * @typedef {import('./job.js').Job} Job
 * @typedef {import('./core.js').Estimate} Estimate
 * @typedef {import('./changes.js').Change} Change
 *
 * @typedef {'sample' | 'kept' | 'memory' | 'full' | 'new'} Keeping
 *   `sample`: shown, never stored; `new`: nothing written yet; `kept`: on the shelf; `memory` (storage is
 *   refused) and `full`: only in this tab.
 *
 * @typedef {object} Store
 * @property {Job} job
 * @property {Estimate | undefined} estimate  the last one worked out; undefined only before the first
 * @property {Keeping} keeping
 * @property {boolean} stuck  the core trapped on this very job and is not asked again until it changes
 * @property {(change: Change) => void} dispatch
 * @property {() => boolean} undo
 * @property {() => boolean} redo
 * @property {boolean} canUndo
 * @property {boolean} canRedo
 * @property {(fn: (event: StoreEvent) => void) => () => void} subscribe
 * @property {(job: Job, keeping?: Keeping, anew?: (job: Job) => Job) => Promise<void>} open  with `anew`, what can be undone stays, made anew
 * @property {() => void} adopt  the person hangs something on the job without changing it: a sample becomes their own, a new job is kept
 * @property {() => void} refresh  estimates again (time has passed, the core is back)
 * @property {() => void} keepNow  writes at once, for a page that is going away
 * @property {() => Promise<void>} settled  when everything dispatched so far is kept and estimated
 *
 * @typedef {{kind: 'estimate' | 'opened' | 'copied' | 'split', from?: Job}} StoreEvent
 *   `copied`: the sample was edited and is the person's own job now. `split`: another tab had written the
 *   job; this tab goes on with a copy.
 *
 * @typedef {'kept' | 'memory' | 'full' | 'conflict'} Kept
 * @typedef {object} Keeper  It knows which revision this tab read of each job, and writes over no other.
 * @property {(latest: () => Job) => Promise<Kept>} keep  asks for the job only when its turn has come
 * @property {(job: Job) => Kept} keepNow
 *
 * @typedef {object} Needs
 * @property {(job: Job) => Estimate | undefined} estimate
 * @property {Keeper} shelf
 * @property {() => string} newId
 * @property {(job: Job) => string} [copyName]  the name of a copy from the other tab
 */

import { apply, mergeKey } from './changes.js';

const MOST_UNDO = 200;

/**
 * @param {Needs} needs
 * @returns {Store}
 */
export function createStore(needs) {
  /** @type {Set<(event: StoreEvent) => void>} */
  const told = new Set();
  /** @type {Job[]} */
  let past = [];
  /** @type {Job[]} */
  let future = [];
  let lastKey = '';
  /** The job as it was last written; writing it again is no use. @type {Job | undefined} */
  let written;
  /** @type {Promise<void> | undefined} */
  let running;
  let again = false;

  const tell = (/** @type {StoreEvent} */ event) => { for (const fn of [...told]) fn(event); };

  /** @type {Store} */
  const store = {
    job: /** @type {any} */ (undefined),
    estimate: undefined,
    keeping: 'new',
    stuck: false,
    get canUndo() { return past.length > 0; },
    get canRedo() { return future.length > 0; },

    dispatch(change) {
      const next = apply(store.job, change);
      if (next === store.job) return;
      const key = mergeKey(change);
      if (!(key && key === lastKey && past.length)) {
        past.push(store.job);
        if (past.length > MOST_UNDO) past.shift();
      }
      lastKey = key;
      future = [];
      put(next);
    },

    undo() {
      const before = past.pop();
      if (!before) return false;
      future.push(store.job);
      lastKey = '';
      put(before);
      return true;
    },

    redo() {
      const after = future.pop();
      if (!after) return false;
      past.push(store.job);
      lastKey = '';
      put(after);
      return true;
    },

    subscribe(fn) {
      told.add(fn);
      return () => told.delete(fn);
    },

    async open(job, keeping = 'new', anew) {
      await store.settled();
      past = anew ? past.map(anew) : [];
      future = anew ? future.map(anew) : [];
      lastKey = '';
      store.job = job;
      store.keeping = keeping;
      store.stuck = false;
      written = store.keeping === 'new' ? undefined : job;
      reckon();
      tell({ kind: 'opened' });
      if (store.keeping === 'new') await run();
    },

    adopt() {
      if (store.keeping === 'sample') put(store.job);
      else void run();
    },

    refresh() {
      if (!store.job) return;
      reckon();
      tell({ kind: 'estimate' });
    },

    keepNow() {
      if (!store.job || store.keeping === 'sample' || written === store.job) return;
      took(store.job, needs.shelf.keepNow(store.job));
    },

    async settled() {
      while (running) await running;
    },
  };

  /** @param {Job} job */
  function put(job) {
    const now = store.job;
    // An undone thing's id is not given to another thing, and a job keeps its identity through undo.
    store.job = { ...job, id: now.id, next_id: Math.max(job.next_id, now.next_id) };
    store.stuck = false;
    if (store.keeping === 'sample') {
      store.job = { ...store.job, id: needs.newId() };
      store.keeping = 'new';
      tell({ kind: 'copied' });
    }
    void run();
  }

  /** Keeps, then estimates, then tells; what is dispatched meanwhile makes one more round. */
  function run() {
    if (running) {
      again = true;
      return running;
    }
    running = (async () => {
      do {
        again = false;
        if (written !== store.job && store.keeping !== 'sample') {
          let job = store.job;
          const kept = await needs.shelf.keep(() => (job = store.job));
          took(job, kept);
        }
        reckon();
        tell({ kind: 'estimate' });
      } while (again);
    })().finally(() => { running = undefined; });
    return running;
  }

  /** @param {Job} job @param {Kept} kept */
  function took(job, kept) {
    if (kept === 'conflict') split();
    else store.keeping = kept;
    if (kept === 'kept') written = job;
  }

  /** Another tab wrote over the revision that this one read: both are kept. */
  function split() {
    const from = store.job;
    store.job = { ...from, id: needs.newId(), name: needs.copyName?.(from) ?? from.name };
    written = undefined;
    took(store.job, needs.shelf.keepNow(store.job));
    tell({ kind: 'split', from });
  }

  function reckon() {
    if (store.stuck) return;
    const estimate = needs.estimate(store.job);
    if (estimate) store.estimate = estimate;
  }

  return store;
}
