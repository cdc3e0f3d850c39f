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
export function written(kind, value, units) {
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
  const w = figures(units);
  if (step.kind === 'resistance') return resistance(value, Math.max(step.within, (step.within_pct / 100) * Math.abs(value)), units);
  // A part of a whole thing is a mistake, and is to be seen.
  if (step.kind === 'count' && !Number.isInteger(value)) return number(value, 2);
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

/** A thirty-second, sixteenth or eighth of an inch as it stands on a tape; any other length not at all. @param {number} inches @param {Units} units */
function tapeParts(inches, units) {
  const parts = [32, 16, 8].find((one) => inches * one === 1);
  return units === 'us' && parts ? `1/${parts}\u00a0${t('fields.unit.in')}` : '';
}

/** Within what an answer is right. @param {StepForm} step @param {Units} units */
export function within(step, units) {
  const value = limit(step, units);
  const pct = step.within_pct ? figures(units).rate(step.within_pct) : '';
  if (!value && !pct) return t('practice.within_exact');
  return value && pct ? t('practice.within_both', { value, pct }) : t('practice.within', { value: value || pct });
}

const SIGNS = /** @type {Record<string, string>} */ ({ open: '(', close: ')', plus: ' + ', minus: ' − ', times: ' × ', over: ' ÷ ', root: '√' });

/** An R to two places, zeros and all. @param {number} r @param {Units} units */
const fineR = (r, units) => (units === 'metric' ? `RSI\u00a0${(r / SI).toFixed(2)}` : `R-${r.toFixed(2)}`);

/** How an answer comes about, in signs and figures. Where an R below 1 is among them every R has two places, as on the card of layers. @param {readonly import('./core.js').Piece[]} pieces @param {Units} units @param {(piece: import('./core.js').Piece) => string | undefined} [instead] what stands in place of a figure */
export function howText(pieces, units, instead) {
  const fine = pieces.some((piece) => piece.is === 'figure' && piece.kind === 'resistance' && piece.value < 1);
  const figure = (/** @type {import('./core.js').Piece} */ piece) => instead?.(piece) ?? (fine && piece.kind === 'resistance' ? fineR(piece.value, units) : written(piece.kind, piece.value, units));
  return pieces.map((piece) => (piece.is === 'figure' ? figure(piece) : SIGNS[piece.is] ?? t(`practice.how.${piece.is}`))).join('').trim();
}
