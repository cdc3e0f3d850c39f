// @ts-check
/**
 * An exercise while somebody works at it: its answers as they were typed, the hints taken, how it was marked last. No page.
 *
 * @typedef {import('./core.js').Practice} Practice
 * @typedef {import('./core.js').Exercise} Exercise
 * @typedef {import('./core.js').Marked} Marked
 * @typedef {import('./core.js').StepMark} StepMark
 * @typedef {import('./progressdoc.js').Answer} Answer
 * @typedef {import('../core.js').Units} Units
 * @typedef {'hint' | 'how' | 'show'} Help  the hint's words, the formula with its figures, the answer
 *
 * @typedef {object} Keeping  where answers are kept
 * @property {(seed: string, units: Units) => Answer[]} answers
 * @property {(seed: string, units: Units, steps: readonly (readonly [number, Answer])[]) => void} keep  the answers of these steps, and of no other
 * @property {(seed: string, units: Units, exercise: Exercise, marked: Marked) => void} marked
 * @property {(seed: string, units: Units) => void} again
 * @property {(seed: string, units: Units) => void} opened
 * @property {(seed: string, units: Units) => boolean} isOpened
 */
import { same } from '../same.js';
import { judged } from './answers.js';
import { begun } from './progressdoc.js';

/** What a hint costs, of the point that a step gives. */
export const HINT = 0.25;

/**
 * The help that comes next at a step: its words, then its formula, then its answer. What a step has not is left out.
 * @param {{hints: number, shown: boolean}} answer @param {{words: boolean, how: boolean}} has @returns {Help | undefined}
 */
export function nextHelp({ hints, shown }, { words, how }) {
  if (shown) return undefined;
  /** @type {Help[]} */
  const all = [...(words ? /** @type {const} */ (['hint']) : []), ...(how ? /** @type {const} */ (['how']) : []), 'show'];
  return all[Math.min(hints, all.length - 1)];
}

/** The helps that a step has given already. @param {{hints: number, shown: boolean}} answer @param {{words: boolean, how: boolean}} has @returns {Help[]} */
export function given({ hints, shown }, { words, how }) {
  const all = [...(words ? /** @type {const} */ (['hint']) : []), ...(how ? /** @type {const} */ (['how']) : [])];
  return [...all.slice(0, hints), ...(shown ? /** @type {const} */ (['show']) : [])];
}

/** What a right answer still gives after the hints that were taken. @param {{hints: number, shown: boolean}} answer */
export const worth = ({ hints, shown }) => (shown ? 0 : Math.max(0, 1 - HINT * hints));

/** Whether a mark closes its step. @param {StepMark | undefined} mark */
export const isRight = (mark) => mark?.verdict === 'right' || mark?.verdict === 'carried';

/** @param {{unit: string}} step @returns {Answer} */
const blank = (step) => ({ text: '', unit: step.unit, hints: 0, shown: false });

/**
 * Throws where the core cannot work the exercise out: there is nothing to mark by then.
 * @param {Practice} core @param {Keeping} keeping @param {Exercise} exercise @param {Units} units
 */
export function createSession(core, keeping, exercise, units) {
  const { seed, steps } = exercise;
  const solved = core.solve(seed, units);
  if (solved.length !== steps.length || solved.some((one) => !Number.isFinite(one.value))) throw new Error(`${seed} is not solved`);
  /** The marks as they stand; of an answer that was changed since, none. @type {(StepMark | undefined)[]} */
  let marks = steps.map(() => undefined);
  let marking = 0;
  /** Whether steps were given up since it was started over. */
  let gave = false;

  /** The answers as they are kept. @returns {Answer[]} */
  const kept = () => {
    const there = keeping.answers(seed, units);
    return steps.map((step, at) => ({ ...blank(step), ...there[at], unit: there[at]?.unit || step.unit }));
  };

  const session = {
    exercise, units, solved,
    /** @type {Answer[]} */
    answers: kept(),
    /** The last marking as a whole. @type {Marked | undefined} */
    marked: undefined,
    /** How often it was marked since it was opened. */
    get marking() { return marking; },
    /** Whether steps were given up for the worked solution. */
    get gave() { return gave; },

    /** @param {number} at */
    mark: (at) => marks[at],
    /** Whether a step is right, carried on rightly or shown. @param {number} at */
    closed: (at) => session.answers[at]?.shown === true || isRight(marks[at]),
    /** The first step that is not. */
    firstOpen: () => steps.findIndex((_, at) => !session.closed(at)),
    /** The right answers that a line beside a step must not give away: those of other steps that are open. @param {number} at @returns {import('./pieces.js').Open[]} */
    open: (at) => steps.flatMap((step, other) => (other === at || session.closed(other) || step.choices.length ? [] : [{ n: other + 1, value: solved[other]?.value ?? NaN, kind: step.kind }])),

    /** Something was typed or pressed. @param {number} at @param {Partial<Answer>} change */
    answer(at, change) {
      session.answers[at] = { ...session.answers[at], ...change };
      marks[at] = undefined;
      keep(at);
    },

    /** The next help of a step. @param {number} at @param {Help} help */
    help(at, help) {
      const one = session.answers[at];
      session.answers[at] = help === 'show' ? { ...one, shown: true } : { ...one, hints: one.hints + 1 };
      if (help === 'show') marks[at] = undefined;
      keep(at);
    },

    /** Shows every step that is not right; what was answered since the last marking is marked first. @returns {true} where nothing was thrown */
    giveUp() {
      session.judge();
      const open = steps.flatMap((_, at) => (session.closed(at) ? [] : [at]));
      for (const at of open) session.answers[at] = { ...session.answers[at], shown: true };
      keep(...open);
      if (open.length) session.judge();
      gave = open.length > 0;
      return true;
    },

    /** The worked solution is looked at. */
    look() {
      if (!keeping.isOpened(seed, units)) keeping.opened(seed, units);
    },

    /** Takes over what was answered, forgotten or put back elsewhere; what it changes loses its mark. @returns {number[]} the steps that it changed */
    reload() {
      const there = kept();
      const changed = steps.flatMap((_, at) => (same(there[at], session.answers[at]) ? [] : [at]));
      for (const at of changed) {
        session.answers[at] = there[at];
        marks[at] = undefined;
      }
      if (changed.length && !there.some(begun)) forget();
      return changed;
    },

    /** Judges all answers as they stand. @returns {boolean} whether there was anything to judge */
    judge() {
      const result = mark();
      if (result) keeping.marked(seed, units, exercise, result);
      return result !== undefined;
    },

    /** Forgets answers, hints and marks; that any were seen is kept. */
    again() {
      session.answers = steps.map(blank);
      forget();
      keeping.again(seed, units);
    },
  };

  function mark() {
    const result = judged(core, exercise, session.answers, units);
    if (!result) return undefined;
    session.marked = result;
    marks = [...result.steps];
    marking += 1;
    return result;
  }

  /** No marks, as at first. */
  function forget() {
    session.marked = undefined;
    marks = steps.map(() => undefined);
    gave = false;
  }

  /** @param {...number} changed */
  function keep(...changed) {
    keeping.keep(seed, units, changed.map((at) => [at, session.answers[at]]));
  }

  // Who has looked at the worked solution finds it again as it was, after a reload too.
  if (keeping.isOpened(seed, units)) mark();
  return session;
}

/** @typedef {ReturnType<typeof createSession>} Session */
