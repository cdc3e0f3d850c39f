// @ts-check
/** Figures, steps and titles of an exercise in words. */
import { call } from '../calls.js';
import { figures, SI } from '../figures.js';
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
  if (kind === 'date') return day(text);
  // Board feet stand beside metric figures: their thousands are parted alike.
  return kind === 'foam_volume' && units === 'metric' ? text.replaceAll(',', '\u202f') : text;
}

/** A small figure with the places that it takes. @param {number} value */
const small = (value) => String(Number(value.toPrecision(2)));

/** The figure within which an answer is right. @param {Pick<StepForm, 'within' | 'kind'>} step @param {Units} units */
export function limit({ within, kind }, units) {
  if (!within) return '';
  if (kind === 'resistance') return units === 'us' ? `R-${small(within)}` : `RSI\u00a0${small(within / SI)}`;
  if (kind === 'number') return small(within);
  if (kind === 'foam_volume') return `${small(within)}\u00a0bd\u00a0ft`;
  // Of a share so many points, not a share of it.
  if (kind === 'percent') return t('practice.ex_points', { points: String(within) });
  if (kind === 'temperature') return written('temperature_step', within, units);
  // A time of day within minutes.
  if (kind === 'clock') return written('duration', within, units);
  return kind === 'length' ? tapeParts(within, units) || figures(units).depth(within) : written(kind, within, units);
}

/** An answer of a step as it is written; of a choice its word. @param {StepForm} step @param {number} value @param {Units} units */
export function answerText(step, value, units) {
  if (!Number.isFinite(value)) return '–';
  if (step.choices.length) {
    const word = step.choices[value];
    return word === undefined ? '–' : choiceName(word);
  }
  if (step.kind === 'resistance') return resistance(value, Math.max(step.within, (step.within_pct / 100) * Math.abs(value)), units);
  return inBox(step.kind, value, units, step) ?? (step.kind === 'length' ? figures(units).length(value) : written(step.kind, value, units));
}

/** A length in the line of a step whose box is in inches or millimeters: in that unit, however long it is; any other figure not at all. @param {string} kind @param {number} value @param {Units} units @param {Pick<StepForm, 'unit'> | undefined} step */
export function inBox(kind, value, units, step) {
  if (kind !== 'length' || (step?.unit !== 'in' && step?.unit !== 'mm')) return undefined;
  return call('write', 'length', value, units === 'metric' ? 'millimeters' : 'inches') ?? '';
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

/** A thirty-second, sixteenth or eighth of an inch as it stands on a tape; any other length not at all. @param {number} inches @param {Units} units */
function tapeParts(inches, units) {
  const parts = [32, 16, 8].find((one) => inches * one === 1);
  return units === 'us' && parts ? `1/${parts}\u00a0${t('fields.unit.in')}` : '';
}

/** Within what an answer is right, in the person's units; of a time of day, how one is written. @param {StepForm} step @param {Units} units */
export function tolerance(step, units) {
  const value = limit(step, units);
  const pct = step.within_pct ? `${step.within_pct}\u00a0%` : '';
  const within = !value && !pct ? t('practice.ex_exactly')
    : value && pct ? t('practice.ex_within_both', { value, pct }) : t('practice.ex_within', { value: value || pct });
  return step.kind === 'clock' ? t('practice.ex_clock_like', { within, example: written('clock', EXAMPLE[units], units) }) : within;
}

/** Ten to ten in the morning; without am and pm in the evening, since 9:50 alone may be either. */
const EXAMPLE = { us: 590, metric: 1310 };

/** An R to two places, zeros and all. Half of a hundredth goes up, on whichever side of it a sum came to lie. @param {number} r @param {Units} units */
export const fineR = (r, units) => (units === 'metric' ? `RSI\u00a0${((r + 1e-9) / SI).toFixed(2)}` : `R-${(r + 1e-9).toFixed(2)}`);
