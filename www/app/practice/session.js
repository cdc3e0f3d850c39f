// @ts-check
/**
 * An exercise while somebody works at it: its answers as they were typed, the hints taken, how it was marked last. No page.
 *
 * @typedef {import('./core.js').Practice} Practice
 * @typedef {import('./core.js').Exercise} Exercise
 * @typedef {import('./core.js').Marked} Marked
 * @typedef {import('./core.js').StepMark} StepMark
 * @typedef {import('./progress.js').Answer} Answer
 * @typedef {import('../core.js').Units} Units
 * @typedef {'hint' | 'how' | 'show'} Help  the hint's words, the formula with its figures, the answer
 *
 * @typedef {object} Keeping  where answers are kept
 * @property {(seed: string) => Answer[]} answers
 * @property {(seed: string, answers: Answer[]) => void} keep
 * @property {(seed: string, exercise: Exercise, marked: Marked) => void} marked
 */
import { judged } from './answers.js';

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
 * @param {Practice} core @param {Keeping} keeping @param {Exercise} exercise @param {Units} units
 */
export function createSession(core, keeping, exercise, units) {
  const { seed, steps } = exercise;
  const kept = keeping.answers(seed);
  const solved = core.solve(seed, units);
  /** The marks as they stand; of an answer that was changed since, none. @type {(StepMark | undefined)[]} */
  let marks = steps.map(() => undefined);
  let marking = 0;

  const session = {
    exercise, units, solved,
    /** @type {Answer[]} */
    answers: steps.map((step, at) => ({ ...blank(step), ...kept[at] })),
    /** The last marking as a whole. @type {Marked | undefined} */
    marked: undefined,
    /** How often it was marked since it was opened. */
    get marking() { return marking; },

    /** @param {number} at */
    mark: (at) => marks[at],
    /** Whether a step is right, carried on rightly or shown. @param {number} at */
    closed: (at) => session.answers[at]?.shown === true || isRight(marks[at]),
    /** The first step that is not. */
    firstOpen: () => steps.findIndex((_, at) => !session.closed(at)),
    /** Whether anything was marked or shown: then the worked solution may be opened without giving anything up. */
    begun: () => session.marked !== undefined || session.answers.some((one) => one.shown),

    /** The right answers that a line beside a step must not give away: those of other steps that are open. @param {number} at @returns {import('./pieces.js').Open[]} */
    open: (at) => steps.flatMap((step, other) => (other === at || session.closed(other) || step.choices.length ? [] : [{ n: other + 1, value: solved[other]?.value ?? NaN, kind: step.kind }])),

    /** Something was typed or pressed. @param {number} at @param {Partial<Answer>} change */
    answer(at, change) {
      session.answers[at] = { ...session.answers[at], ...change };
      marks[at] = undefined;
      session.keep();
    },

    /** The next help of a step. @param {number} at @param {Help} help */
    help(at, help) {
      const one = session.answers[at];
      session.answers[at] = help === 'show' ? { ...one, shown: true } : { ...one, hints: one.hints + 1 };
      if (help === 'show') marks[at] = undefined;
      session.keep();
    },

    /** Shows every step that is not right yet. */
    giveUp() {
      session.answers.forEach((one, at) => { if (!session.closed(at)) session.answers[at] = { ...one, shown: true }; });
      session.keep();
      session.judge();
    },

    /** Judges all answers as they stand. @returns {boolean} whether there was anything to judge */
    judge() {
      const result = judged(core, exercise, session.answers, units);
      if (!result) return false;
      session.marked = result;
      marks = [...result.steps];
      marking += 1;
      keeping.marked(seed, exercise, result);
      return true;
    },

    /** Forgets answers, hints and marks. */
    again() {
      session.answers = steps.map(blank);
      session.marked = undefined;
      marks = steps.map(() => undefined);
      session.keep();
    },

    keep: () => keeping.keep(seed, session.answers),
  };
  return session;
}

/** @typedef {ReturnType<typeof createSession>} Session */
