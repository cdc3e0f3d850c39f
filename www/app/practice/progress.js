// @ts-check
/**
 * What a student has answered, kept on this device under one key: the last exercises with their answers, and for good the
 * sum of each topic. No name, nothing sent. Where storage is refused or full it holds until the page is closed.
 *
 * Several tabs write the same key. Each keeps what it has seen as well, and what it writes is both put together: of one
 * exercise the later state, of the sums those that go further. So a write that crosses another one loses nothing.
 *
 * @typedef {{text: string, unit: string, sense?: string, hints: number, shown: boolean}} Answer
 *   as typed, with the unit of its box and the meaning pressed; `hints` taken, and whether the step was shown
 * @typedef {{done: number, points: number, of: number}} Sum
 * @typedef {Record<string, Sum>} Sums
 *
 * @typedef {object} Kept  one exercise
 * @property {string} seed
 * @property {number} at  when it was last touched
 * @property {Answer[]} answers  by step
 * @property {{points: number, of: number, topics: Record<string, [number, number]>}} [score]  as it was marked last: points, of so many, and both by topic
 *
 * @typedef {object} Doc
 * @property {'foamwright-practice'} format
 * @property {number} version
 * @property {{n: number, at: number}} reset  the how-manieth reset, and when; nothing older counts
 * @property {{until: number, topics: Sums}} past  what the exercises gave that are no longer kept, up to which one
 * @property {Kept[]} exercises  the last touched first
 */
import { readKey, writeKey } from '../prefs.js';
import { same } from '../same.js';

export const KEY = 'foamwright-practice';
const FORMAT = 'foamwright-practice';
const VERSION = 1;

/** So many exercises are kept with their answers. */
export const MOST_KEPT = 200;
const MOST_STEPS = 60;

/** @returns {Doc} */
const blank = () => ({ format: FORMAT, version: VERSION, reset: { n: 0, at: 0 }, past: { until: 0, topics: {} }, exercises: [] });

/**
 * @typedef {object} Box  where the document lies
 * @property {() => unknown} get
 * @property {(doc: Doc) => boolean} put  whether it is kept
 */

/** @param {Box} box @param {() => number} clock */
export function createProgress(box, clock) {
  /** All that this tab has seen or done. */
  let mine = blank();
  let kept = true;
  /** Never two alike: what is touched later is later. */
  let last = 0;
  const now = () => (last = Math.max(clock(), last + 1));

  function state() {
    return joined(stored(), mine);
  }

  function stored() {
    return read(box.get());
  }

  /** @param {Doc} doc */
  function write(doc) {
    mine = trimmed(doc);
    // What a newer version of this page keeps is not written over.
    kept = !newer(box.get()) && box.put(mine);
  }

  /** @param {string} seed @param {(before: Kept | undefined) => Partial<Kept>} change */
  function touch(seed, change) {
    const doc = state();
    const before = doc.exercises.find((one) => one.seed === seed);
    const after = { seed, answers: before?.answers ?? [], ...(before?.score ? { score: before.score } : {}), ...change(before), at: now() };
    write({ ...doc, exercises: [after, ...doc.exercises.filter((one) => one.seed !== seed)] });
  }

  return {
    /** The answers of an exercise by step; none where it was not begun. @param {string} seed @returns {Answer[]} */
    answers(seed) {
      return state().exercises.find((one) => one.seed === seed)?.answers ?? [];
    },

    /** Keeps the answers of an exercise. @param {string} seed @param {Answer[]} answers */
    keep(seed, answers) {
      const tidy = answers.slice(0, MOST_STEPS).map(tidied);
      // Looking at an exercise is not beginning it.
      const before = this.answers(seed);
      if (JSON.stringify(tidy) === JSON.stringify(before) || !before.length && !tidy.some(begun)) return;
      touch(seed, () => ({ answers: tidy }));
    },

    /**
     * Takes down how an exercise was marked; what counts is the last time. One without any answer does not count.
     * @param {string} seed
     * @param {{steps: readonly {topic: string}[]}} exercise
     * @param {{steps: readonly {verdict: string, points: number}[], points: number, of: number}} marked
     */
    marked(seed, exercise, marked) {
      if (marked.steps.every((step) => step.verdict === 'blank')) return;
      /** @type {Record<string, [number, number]>} */
      const topics = {};
      exercise.steps.forEach(({ topic }, at) => {
        const sum = (topics[topic] ??= [0, 0]);
        sum[0] += marked.steps[at]?.points ?? 0;
        sum[1] += 1;
      });
      touch(seed, () => ({ score: { points: marked.points, of: marked.of, topics } }));
    },

    /** What was done in each topic so far. @returns {Sums} */
    byTopic() {
      const { past, exercises } = state();
      return exercises.reduce((sums, one) => added(sums, one), past.topics);
    },

    /** The exercises that were touched last, the latest first. @returns {Kept[]} */
    recent() {
      return state().exercises;
    },

    /** Forgets everything. @returns {() => void} what puts it back, together with all that was done since */
    reset() {
      const before = state();
      write({ ...blank(), reset: { n: before.reset.n + 1, at: now() } });
      return () => {
        const since = state();
        const again = { ...before, reset: { n: since.reset.n + 1, at: before.reset.at } };
        write({ ...joined({ ...since, reset: again.reset, past: again.past }, again), past: sum(before.past, since.past) });
      };
    },

    /** Another tab has written: what it did not know of is written again. */
    heard() {
      const there = stored();
      const both = trimmed(joined(there, mine));
      if (same(both, there)) mine = both;
      else write(both);
    },

    /** Whether the device keeps it; otherwise it holds until the page is closed. */
    isKept: () => kept,
  };
}

/** @param {Answer} answer */
export const begun = ({ text, hints, shown }) => text.trim() !== '' || hints > 0 || shown;

/** @param {Answer} answer @returns {Answer} */
const tidied = ({ text, unit, sense, hints, shown }) => ({ text: text.slice(0, 300), unit, ...(sense ? { sense } : {}), hints, shown });

/** @param {Sums} sums @param {Kept} one @returns {Sums} */
function added(sums, { score }) {
  const all = { ...sums };
  for (const [topic, [points, of]] of Object.entries(score?.topics ?? {})) {
    const { done, points: before, of: all_of } = all[topic] ?? { done: 0, points: 0, of: 0 };
    all[topic] = { done: done + 1, points: before + points, of: all_of + of };
  }
  return all;
}

/** Both sums, of what went before a reset and of what fell out since. @param {Doc['past']} one @param {Doc['past']} other @returns {Doc['past']} */
function sum(one, other) {
  const topics = { ...one.topics };
  for (const [topic, { done, points, of }] of Object.entries(other.topics)) {
    const before = topics[topic] ?? { done: 0, points: 0, of: 0 };
    topics[topic] = { done: before.done + done, points: before.points + points, of: before.of + of };
  }
  return { until: Math.max(one.until, other.until), topics };
}

/** Two states of the same thing put together. @param {Doc} one @param {Doc} other @returns {Doc} */
function joined(one, other) {
  const [late, early] = other.reset.n > one.reset.n ? [other, one] : [one, other];
  // A later reset settles the sums; without one, those that go further hold the others.
  const past = late.reset.n > early.reset.n || late.past.until >= early.past.until ? late.past : early.past;
  const whole = past === late.past ? late : early;
  /** @type {Map<string, Kept>} */
  const all = new Map();
  for (const doc of [one, other]) {
    for (const it of doc.exercises) {
      if (it.at <= late.reset.at) continue;
      // It fell out there, and is in the sums.
      if (it.at <= past.until && doc !== whole && !whole.exercises.some((known) => known.seed === it.seed)) continue;
      const known = all.get(it.seed);
      if (!known || known.at < it.at) all.set(it.seed, it);
    }
  }
  return { format: FORMAT, version: VERSION, reset: late.reset, past, exercises: [...all.values()].sort((a, b) => b.at - a.at || (a.seed < b.seed ? -1 : 1)) };
}

/** The document with no more exercises than are kept; of the others their sums. @param {Doc} doc @returns {Doc} */
function trimmed(doc) {
  const gone = doc.exercises.slice(MOST_KEPT);
  if (!gone.length) return doc;
  const topics = gone.reduce((sums, one) => added(sums, one), doc.past.topics);
  return { ...doc, past: { until: Math.max(doc.past.until, gone[0].at), topics }, exercises: doc.exercises.slice(0, MOST_KEPT) };
}

/** @param {any} value */
const newer = (value) => value?.format === FORMAT && Number.isSafeInteger(value.version) && value.version > VERSION;

/** @param {unknown} value @returns {value is number} */
const isNumber = (value) => typeof value === 'number' && Number.isFinite(value) && value >= 0;

/** What lies there, as far as it can be understood. @param {any} value @returns {Doc} */
function read(value) {
  const doc = blank();
  if (value?.format !== FORMAT || value.version !== VERSION) return doc;
  if (isNumber(value.reset?.n) && isNumber(value.reset.at)) doc.reset = { n: value.reset.n, at: value.reset.at };
  if (isNumber(value.past?.until)) doc.past = { until: value.past.until, topics: sumsOf(value.past.topics) };
  if (Array.isArray(value.exercises)) doc.exercises = value.exercises.flatMap(keptOf).slice(0, MOST_KEPT);
  return doc;
}

/** @param {any} value @returns {Sums} */
function sumsOf(value) {
  const sound = Object.entries(value && typeof value === 'object' ? value : {}).filter(([, one]) => one && isNumber(one.done) && isNumber(one.points) && isNumber(one.of));
  return Object.fromEntries(sound.map(([topic, { done, points, of }]) => [topic, { done, points, of }]));
}

/** @param {any} one @returns {Kept[]} */
function keptOf(one) {
  if (!one || typeof one.seed !== 'string' || !isNumber(one.at) || !Array.isArray(one.answers)) return [];
  const answers = one.answers.slice(0, MOST_STEPS).map((/** @type {any} */ it) => tidied({
    text: String(it?.text ?? ''), unit: String(it?.unit ?? ''), sense: typeof it?.sense === 'string' ? it.sense : undefined, hints: isNumber(it?.hints) ? it.hints : 0, shown: it?.shown === true,
  }));
  const { score } = one;
  const sound = score && isNumber(score.points) && isNumber(score.of);
  const topics = Object.entries(sound && score.topics && typeof score.topics === 'object' ? score.topics : {}).filter(([, two]) => Array.isArray(two) && isNumber(two[0]) && isNumber(two[1]));
  return [{ seed: one.seed, at: one.at, answers, ...(sound ? { score: { points: score.points, of: score.of, topics: Object.fromEntries(topics) } } : {}) }];
}

const progress = createProgress({ get: () => readKey(KEY, /** @type {unknown} */ ({})), put: (doc) => writeKey(KEY, doc) }, Date.now);

/** Those who show progress. @type {Set<() => void>} */
const told = new Set();

/** Is told when another tab has written. @param {() => void} tell @returns {() => void} ends it */
export function onProgress(tell) {
  told.add(tell);
  return () => told.delete(tell);
}

globalThis.addEventListener?.('storage', (event) => {
  if (event.key !== null && event.key !== KEY) return;
  // What somebody cleared is not put back by itself.
  if (event.newValue !== null) progress.heard();
  for (const tell of told) tell();
});

/** What could not be kept is said, once. */
function written() {
  if (!progress.isKept()) import('./kept.js').then(({ tellLost }) => tellLost(), () => undefined);
}

export const answers = (/** @type {string} */ seed) => progress.answers(seed);
export const keep = (/** @type {string} */ seed, /** @type {Answer[]} */ all) => {
  progress.keep(seed, all);
  written();
};
/** @type {typeof progress.marked} */
export const marked = (seed, exercise, marks) => {
  progress.marked(seed, exercise, marks);
  written();
};
export const byTopic = () => progress.byTopic();
export const recent = () => progress.recent();
export const reset = () => progress.reset();
export const isKept = () => progress.isKept();
