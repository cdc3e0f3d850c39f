// @ts-check
/** Figures, steps and titles of an exercise in words. */
import { call } from '../calls.js';
import { figures } from '../figures.js';
import { getPrefs } from '../prefs.js';
import { has, number, t } from '../words.js';

/** @typedef {import('./core.js').Exercise} Exercise */
/** @typedef {import('./core.js').StepForm} StepForm */
/** @typedef {import('../core.js').Units} Units */

/** The units in which exercises are drawn here: what was chosen for new jobs. The open job is left alone. @returns {Units} */
export const unitsHere = () => getPrefs().units ?? 'us';

/** W/(m²·K) in 1 Btu/(h·ft²·°F), as in `figures.js`. */
const SI = 5.678263341;

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
export const written = (kind, value, units) => call('write', kind, value, kind === 'foam_volume' || units === 'us' ? 'us' : 'metric_usual') ?? '';

/** An answer of a step as it is written; of a choice its word. @param {StepForm} step @param {number} value @param {Units} units */
export function answerText(step, value, units) {
  if (!Number.isFinite(value)) return '–';
  if (step.choices.length) {
    const word = step.choices[value];
    return word === undefined ? '–' : choiceName(word);
  }
  const w = figures(units);
  // A part of a whole thing is a mistake, and is to be seen.
  if (step.kind === 'count' && !Number.isInteger(value)) return number(value, 2);
  if (step.kind === 'resistance') return resistance(value, Math.max(step.within, (step.within_pct / 100) * Math.abs(value)), units);
  if (step.kind === 'length') return step.unit === 'in' || step.unit === 'mm' ? w.depth(value) : w.length(value);
  return written(step.kind, value, units);
}

/** An R to as many places as an answer has to have. @param {number} r @param {number} within @param {Units} units */
function resistance(r, within, units) {
  const [value, usual, sign] = units === 'metric' ? [r / SI, 2, 'RSI\u00a0'] : [r, 1, 'R-'];
  const room = units === 'metric' ? within / SI : within;
  let places = usual;
  while (places < 4 && Math.abs(Number(value.toFixed(places)) - value) > room) places += 1;
  return places === usual ? written('resistance', r, units) : sign + value.toFixed(places);
}

/** @param {string} word of a choice */
export const choiceName = (word) => t(`exercises.choice.${word}`);

/** The unit in which a bare number is taken. @param {StepForm} step */
export const unitName = (step) => (step.choices.length ? '' : t(`fields.unit.${step.unit}`));

/** Within what an answer is right. @param {StepForm} step @param {Units} units */
export function within(step, units) {
  const w = figures(units);
  const value = !step.within ? ''
    : step.kind === 'length' ? w.depth(step.within) : step.kind === 'temperature' ? w.step(step.within)
      // A time of day is held in minutes.
      : written(step.kind === 'clock' ? 'duration' : step.kind, step.within, units);
  const pct = step.within_pct ? w.rate(step.within_pct) : '';
  if (!value && !pct) return t('practice.within_exact');
  return value && pct ? t('practice.within_both', { value, pct }) : t('practice.within', { value: value || pct });
}

const SIGNS = /** @type {Record<string, string>} */ ({ open: '(', close: ')', plus: ' + ', minus: ' − ', times: ' × ', over: ' ÷ ', root: '√' });

/** How an answer comes about, in signs and figures. @param {readonly import('./core.js').Piece[]} pieces @param {Units} units @param {(piece: import('./core.js').Piece) => string | undefined} [instead] what stands in place of a figure */
export const howText = (pieces, units, instead) => pieces.map((piece) => (piece.is === 'figure' ? instead?.(piece) ?? written(piece.kind, piece.value, units) : SIGNS[piece.is] ?? t(`practice.how.${piece.is}`))).join('').trim();
