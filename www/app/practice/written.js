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

/** A mistake in a few words; each that the core names has some. @param {string} slip */
export const slipName = (slip) => t(`practice.slip.${slip}`);

/** Points, or both parts of a score. @param {number} points @param {number} [of] */
export const score = (points, of) => (of === undefined ? number(points, 2) : t('practice.score', { points: number(points, 2), of: number(of) }));

/**
 * A figure by what it measures. A date stands as the language writes it, a pitch as a carpenter does; a count that is not
 * whole keeps two places, since that it is not whole is the point.
 * @param {import('../core.js').Kind} kind @param {number} value @param {Units} units
 */
export function written(kind, value, units) {
  if (kind === 'count' && Math.abs(value - Math.round(value)) > 1e-9) return value.toFixed(2);
  if (kind === 'pitch' && Number.isFinite(value)) return `${number(12 * value, 2)}/12`;
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

/**
 * What a known mistake gives in a step, as it is written; empty where nobody could write it, or where it reads as the right
 * answer does: then there is nothing to look for.
 * @param {StepForm} step @param {number} value @param {number} right @param {Units} units
 */
export function slipText(step, value, right, units) {
  const text = answerText(step, value, units);
  return !text || text === '–' || text === answerText(step, right, units) ? '' : text;
}

/** An answer as it was typed: a choice by its word, a bare number with the unit of its box. @param {StepForm} step @param {import('./progress.js').Answer | undefined} answer */
export function typedText(step, answer) {
  const text = answer?.text.trim() ?? '';
  if (step.choices.includes(text)) return choiceName(text);
  // A file from elsewhere may name a unit that there is not.
  const unit = answer?.unit && /^[\d.,/ -]+$/.test(text) && has(`fields.unit.${answer.unit}`) ? t(`fields.unit.${answer.unit}`) : '';
  return unit ? `${text}\u00a0${unit}` : text;
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
