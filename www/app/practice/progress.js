// @ts-check
/**
 * What a student has answered, kept on this device under one key: the last exercises with their answers, and for good the
 * sum of each topic. No name, nothing sent. Where storage is refused or full it holds until the page is closed.
 *
 * @typedef {import('./progressdoc.js').Units} Units
 * @typedef {import('./progressdoc.js').Answer} Answer
 * @typedef {import('./progressdoc.js').Sum} Sum
 * @typedef {import('./progressdoc.js').Sums} Sums
 * @typedef {import('./progressdoc.js').Kept} Kept
 * @typedef {import('./progressdoc.js').Doc} Doc
 *
 * @typedef {{seed: string, units: Units, steps: Answer[], seen: boolean}} Entry  of an exercise, as it goes into an answer file
 */
import { same } from '../same.js';
import { added, begun, blank, blankSheet, blankStep, helped, joined, MOST_STEPS, newer, read, sum, tidied, trimmed } from './progressdoc.js';

/**
 * @typedef {object} Box  where the document lies
 * @property {() => unknown} get
 * @property {(doc: Doc) => boolean} put  whether it is kept
 */

/**
 * A box that holds text. What this page wrote itself is not read again, so that a key that is typed costs one writing.
 * @param {() => string | null} get @param {(text: string) => boolean} put @returns {Box}
 */
export function textBox(get, put) {
  /** @type {string | null} */
  let text = null;
  /** @type {unknown} */
  let value = null;
  return {
    get() {
      const there = get();
      if (there !== text) {
        text = there;
        try {
          value = JSON.parse(there ?? 'null');
        } catch {
          value = null;
        }
      }
      return value;
    },
    put(doc) {
      const fresh = JSON.stringify(doc);
      if (!put(fresh)) return false;
      text = fresh;
      value = doc;
      return true;
    },
  };
}

/** @param {Box} box @param {() => number} clock */
export function createProgress(box, clock) {
  /** All that this tab has seen or done. */
  let mine = blank();
  let kept = true;
  /** Never two alike: what is touched later is later. */
  let last = 0;
  const now = () => (last = Math.max(clock(), last + 1));

  /** The document as it stands; `there` is what lies in the box, taken out once. */
  const state = (there = box.get()) => (there === mine ? mine : joined(read(there), mine));

  /** @param {Doc} doc @param {unknown} there  what lies in the box */
  function write(doc, there) {
    mine = trimmed(doc);
    // What a newer version of this page keeps is not written over.
    kept = !newer(there) && box.put(mine);
  }

  /** Changes an exercise; nothing is written where nothing comes of it. @param {string} seed @param {Units} units @param {(before: Kept, at: number) => Partial<Kept> | undefined} change */
  function touch(seed, units, change) {
    const there = box.get();
    const doc = state(there);
    const before = doc.exercises.find((one) => one.seed === seed) ?? { seed, at: 0, units, sheets: {}, seen: 0 };
    const at = now();
    const changed = change(before, at);
    if (changed) write({ ...doc, exercises: [{ ...before, ...changed, units, at }, ...doc.exercises.filter((one) => one.seed !== seed)] }, there);
  }

  /** @param {string} seed */
  const find = (seed) => state().exercises.find((one) => one.seed === seed);

  return {
    /** The answers of an exercise by step, in one system of units; none where it was not begun there. @param {string} seed @param {Units} units @returns {Answer[]} */
    answers(seed, units) {
      return (find(seed)?.sheets[units]?.steps ?? []).map(tidied);
    },

    /** The system of units in which an exercise was answered last; none where it was not begun. @param {string} seed @returns {Units | undefined} */
    unitsOf(seed) {
      return find(seed)?.units;
    },

    /**
     * What an answer file carries of an exercise: one system of units, that in which most was answered, on a tie the one that
     * was used last. It says `seen` where answers or help had been seen before: in the other system, or before it was
     * started over.
     * @param {string} seed @returns {Entry | undefined}
     */
    entry(seed) {
      const one = find(seed);
      if (!one) return undefined;
      const n = (/** @type {Units} */ units) => (one.sheets[units]?.steps ?? []).filter(begun).length;
      const other = /** @type {Units} */ (one.units === 'us' ? 'metric' : 'us');
      const [units, beside] = n(other) > n(one.units) ? [other, one.units] : [one.units, other];
      return { seed, units, steps: (one.sheets[units]?.steps ?? []).map(tidied), seen: one.seen > 0 || helped(one.sheets[beside]) };
    },

    /** Keeps the answers of these steps; those of other steps stay as another tab may have left them. @param {string} seed @param {Units} units @param {readonly (readonly [number, Answer])[]} steps */
    keep(seed, units, steps) {
      touch(seed, units, (before, at) => {
        const sheet = before.sheets[units] ?? blankSheet();
        const changed = steps.filter(([step, answer]) => step < MOST_STEPS && !same(tidied(answer), tidied(sheet.steps[step] ?? blankStep())));
        // Looking at an exercise is not beginning it.
        if (!changed.length || !sheet.steps.length && !changed.some(([, answer]) => begun(answer))) return undefined;
        const all = [...sheet.steps];
        for (const [step, answer] of changed) {
          while (all.length < step) all.push(blankStep());
          all[step] = { ...tidied(answer), at };
        }
        return { sheets: { ...before.sheets, [units]: { ...sheet, steps: all } } };
      });
    },

    /** The worked solution was looked at. @param {string} seed @param {Units} units */
    opened(seed, units) {
      touch(seed, units, ({ sheets }, at) => ({ sheets: { ...sheets, [units]: { ...(sheets[units] ?? blankSheet()), opened: at } } }));
    },

    /** Whether the worked solution was looked at since the exercise was started over. @param {string} seed @param {Units} units */
    isOpened(seed, units) {
      const sheet = find(seed)?.sheets[units];
      return sheet !== undefined && sheet.opened > sheet.afresh;
    },

    /** Forgets the answers of an exercise in one system of units, but not that help or answers were seen. @param {string} seed @param {Units} units */
    again(seed, units) {
      touch(seed, units, ({ sheets, seen }, at) => {
        const sheet = sheets[units];
        return sheet && { sheets: { ...sheets, [units]: { ...sheet, steps: sheet.steps.map(() => ({ ...blankStep(), at })), afresh: at } }, seen: helped(sheet) ? at : seen };
      });
    },

    /**
     * Takes down how an exercise was marked; what counts is the last time. One without any answer does not count.
     * @param {string} seed @param {Units} units
     * @param {{steps: readonly {topic: string}[]}} exercise
     * @param {{steps: readonly {verdict: string, points: number}[], points: number, of: number}} marked
     */
    marked(seed, units, exercise, marked) {
      if (marked.steps.every((step) => step.verdict === 'blank')) return;
      /** @type {Record<string, [number, number]>} */
      const topics = {};
      exercise.steps.forEach(({ topic }, at) => {
        const sum = (topics[topic] ??= [0, 0]);
        sum[0] += marked.steps[at]?.points ?? 0;
        sum[1] += 1;
      });
      touch(seed, units, (_, at) => ({ score: { at, points: marked.points, of: marked.of, topics } }));
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

    /** The seeds of the class sheet that was opened last. @returns {string[]} */
    sheet() {
      return state().sheet.seeds;
    },

    /** A class sheet was opened: its exercises lead back to it, after a reload too. @param {readonly string[]} seeds */
    openSheet(seeds) {
      const there = box.get();
      const doc = state(there);
      if (!same(doc.sheet.seeds, seeds)) write({ ...doc, sheet: { at: now(), seeds: [...seeds] } }, there);
    },

    /** Forgets everything. @returns {() => void} what puts it back, together with all that was done since */
    reset() {
      const there = box.get();
      const before = state(there);
      write({ ...blank(), reset: { n: before.reset.n + 1, at: now() } }, there);
      return () => {
        const there = box.get();
        const since = state(there);
        const again = { ...before, reset: { n: since.reset.n + 1, at: before.reset.at } };
        write({ ...joined({ ...since, reset: again.reset, past: again.past }, again), past: sum(before.past, since.past) }, there);
      };
    },

    /** Another tab has written: what it did not know of is written again. */
    heard() {
      const lies = box.get();
      const there = read(lies);
      const both = trimmed(joined(there, mine));
      if (same(both, there)) mine = both;
      else write(both, lies);
    },

    /** Whether the device keeps it; otherwise it holds until the page is closed. */
    isKept: () => kept,
  };
}
