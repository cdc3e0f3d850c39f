// @ts-check
/** A student's answers as figures: read by the estimator's own reader, so that 4½ ft, 4′-6″ and 4.5 are the same here as on a job. */
import { call } from '../calls.js';

/** @typedef {import('./progress.js').Answer} Answer */
/** @typedef {import('./core.js').StepForm} StepForm */
/** @typedef {import('../core.js').Units} Units */

/**
 * A text as the estimator reads it. A count is read as a plain number where it is no whole one: that it is none is
 * what the mark says.
 * @param {Pick<StepForm, 'kind' | 'unit'>} step @param {{text: string, unit?: string, sense?: string}} answer @param {Units} units
 */
export function readAnswer({ kind, unit: own }, { text, unit, sense }, units) {
  const read = call('read', text, kind, /** @type {any} */ (unit || own), /** @type {any} */ (sense || undefined), units);
  if (kind !== 'count' || read?.state !== 'refused') return read;
  const plain = call('read', text, 'number', 'one', /** @type {any} */ (sense || undefined), units);
  return plain?.state === 'read' ? plain : read;
}

/**
 * What was answered, in the unit that the step's kind is held in; of a choice the place of its word. NaN for a blank,
 * and for what cannot be read or has two meanings.
 * @param {StepForm} step @param {Answer | undefined} answer @param {Units} units
 */
export function valueOf(step, answer, units) {
  const text = answer?.text.trim() ?? '';
  if (!answer || !text) return NaN;
  if (step.choices.length) {
    const at = step.choices.indexOf(text);
    return at < 0 ? NaN : at;
  }
  try {
    const read = readAnswer(step, { ...answer, text }, units);
    return read?.state === 'read' ? read.likely ?? NaN : NaN;
  } catch {
    // A file from elsewhere may name a unit or a meaning that there is not.
    return NaN;
  }
}

/** Whether something was answered that could not be read. @param {StepForm} step @param {Answer | undefined} answer @param {Units} units */
export const unread = (step, answer, units) => Boolean(answer?.text.trim()) && Number.isNaN(valueOf(step, answer, units));

/**
 * Judges the answers of an exercise.
 * @param {Pick<import('./core.js').Practice, 'mark'>} core @param {import('./core.js').Exercise} exercise @param {readonly Answer[]} answers by step @param {Units} units
 */
export function judged(core, exercise, answers, units) {
  const values = Float64Array.from(exercise.steps, (step, at) => valueOf(step, answers[at], units));
  const hints = Uint8Array.from(exercise.steps, (_, at) => (answers[at]?.shown ? 255 : Math.min(answers[at]?.hints ?? 0, 254)));
  return core.mark(exercise.seed, units, values, hints);
}
