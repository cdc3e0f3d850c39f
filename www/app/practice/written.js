// @ts-check
/** Figures, steps and titles of an exercise in words. */
import { call } from '../calls.js';
import { figures } from '../figures.js';
import { getPrefs } from '../prefs.js';
import { day, has, number, t } from '../words.js';

/** @typedef {import('./core.js').Exercise} Exercise */
/** @typedef {import('./core.js').StepForm} StepForm */
/** @typedef {import('../core.js').Units} Units */

/** The units in which exercises are drawn here: what was chosen for new jobs. The open job is left alone. @returns {Units} */
export const unitsHere = () => getPrefs().units ?? 'us';

/** What an exercise is called. @param {{scene: string}} exercise */
export const titleOf = ({ scene }) => t(`exercises.scene.${scene}.title`);

/** What a step asks. @param {StepForm} step */
export const stepName = ({ key, of }) => (of ? t('practice.step_of', { step: t(`exercises.step.${key}`), of: t(`exercises.thing.${of}`) }) : t(`exercises.step.${key}`));

/** @param {number} level */
export const levelName = (level) => t(`practice.level.${level}`);

/** A topic by name. @param {string} topic */
export const topicName = (topic) => t(`practice.topic.${topic}`);

/** A mistake in a few words. @param {string} slip */
export const slipName = (slip) => (has(`practice.slip.${slip}`) ? t(`practice.slip.${slip}`) : slip);

/** Points, or both parts of a score. @param {number} points @param {number} [of] */
export const score = (points, of) => (of === undefined ? number(points, 2) : t('practice.score', { points: number(points, 2), of: number(of) }));

/** A figure by what it measures. @param {import('../core.js').Kind} kind @param {number} value @param {Units} units */
export function written(kind, value, units) {
  const text = call('write', kind, value, kind === 'foam_volume' || units === 'us' ? 'us' : 'metric_usual') ?? '';
  return kind === 'date' ? day(text) : text;
}

/** An answer of a step as it is written; of a choice its word. @param {StepForm} step @param {number} value @param {Units} units */
export function answerText(step, value, units) {
  if (!Number.isFinite(value)) return '–';
  if (step.choices.length) {
    const word = step.choices[value];
    return word === undefined ? '–' : choiceName(word);
  }
  const w = figures(units);
  if (step.kind === 'length') return step.unit === 'in' || step.unit === 'mm' ? w.depth(value) : w.length(value);
  return written(step.kind, value, units);
}

/** @param {string} word of a choice */
export const choiceName = (word) => t(`exercises.choice.${word}`);

/** The unit in which a bare number is taken. @param {StepForm} step */
export const unitName = (step) => (step.choices.length ? '' : t(`fields.unit.${step.unit}`));

/** A thirty-second, sixteenth or eighth of an inch as it stands on a tape; any other length not at all. @param {number} inches @param {Units} units */
export function tapeParts(inches, units) {
  const parts = [32, 16, 8].find((one) => inches * one === 1);
  return units === 'us' && parts ? `1/${parts}\u00a0${t('fields.unit.in')}` : '';
}

/** Within what an answer is right. @param {StepForm} step @param {Units} units */
export function within(step, units) {
  const w = figures(units);
  const value = !step.within ? ''
    : step.kind === 'length' ? tapeParts(step.within, units) || w.depth(step.within) : step.kind === 'temperature' ? w.step(step.within)
      // A time of day is held in minutes.
      : written(step.kind === 'clock' ? 'duration' : step.kind, step.within, units);
  const pct = step.within_pct ? w.rate(step.within_pct) : '';
  if (!value && !pct) return t('practice.within_exact');
  return value && pct ? t('practice.within_both', { value, pct }) : t('practice.within', { value: value || pct });
}

const SIGNS = /** @type {Record<string, string>} */ ({ open: '(', close: ')', plus: ' + ', minus: ' − ', times: ' × ', over: ' ÷ ', root: '√' });

/** An R to two places, zeros and all. @param {number} r @param {Units} units */
const fineR = (r, units) => (units === 'metric' ? `RSI\u00a0${(r / 5.678263341).toFixed(2)}` : `R-${r.toFixed(2)}`);

/** How an answer comes about, in signs and figures. Where an R below 1 is among them every R has two places, as on the card of layers. @param {readonly import('./core.js').Piece[]} pieces @param {Units} units @param {(piece: import('./core.js').Piece) => string | undefined} [instead] what stands in place of a figure */
export function howText(pieces, units, instead) {
  const fine = pieces.some((piece) => piece.is === 'figure' && piece.kind === 'resistance' && piece.value < 1);
  const figure = (/** @type {import('./core.js').Piece} */ piece) => instead?.(piece) ?? (fine && piece.kind === 'resistance' ? fineR(piece.value, units) : written(piece.kind, piece.value, units));
  return pieces.map((piece) => (piece.is === 'figure' ? figure(piece) : SIGNS[piece.is] ?? t(`practice.how.${piece.is}`))).join('').trim();
}
