// @ts-check
/**
 * The answers of a class sheet as a file, `www/answers-v1.schema.json`: which exercises, and what was entered for each step.
 * There is no name in it. A file is judged before anything of it is shown: too long, too deep, foreign, newer or damaged is
 * refused with the reason and the place; what is not known is left out.
 *
 * @typedef {import('./progressdoc.js').Answer} Answer
 * @typedef {import('../core.js').Units} Units
 * @typedef {{seed: string, units: Units, steps: Answer[], seen: boolean}} Answered
 *   an exercise: its units, in which its answers are read, and whether answers or help had been seen before they were given
 *
 * @typedef {object} AnswerFile
 * @property {Units} units  of the page that saved it, in which an exercise without answers is drawn
 * @property {string} language
 * @property {string[]} seeds  the class sheet, in its order
 * @property {Answered[]} answers
 * @property {number} saved  milliseconds since 1970 UTC
 *
 * @typedef {{file: AnswerFile} | {refused: 'too_long' | 'too_deep' | 'damaged' | 'foreign' | 'newer' | 'wrong' | 'twice' | 'too_many', at: string, version: number}} ReadFile
 */
import { MOST_BYTES } from '../files.js';
import { Fault, isPlain, tooDeep } from '../sheetform.js';

export const FORMAT = 'foamwright-answers';
export const VERSION = 1;
const MOST_SEEDS = 20;
const MOST_STEPS = 60;
/** The last moment that a date can hold, in milliseconds. */
const LAST_DAY = 8.64e15;
const SEED = /^[0-9]{1,4}-[0-9]-[0-9a-f]{4}$/;

/** The text of an answer file. @param {AnswerFile} file */
export function answersText({ units, language, seeds, answers, saved }) {
  const tidy = answers.map(({ seed, units, seen, steps }) => ({ seed, units, ...(seen ? { seen } : {}), steps }));
  return `${JSON.stringify({ format: FORMAT, version: VERSION, units, language, seeds, answers: tidy, saved }, null, 1)}\n`;
}

/** A name for it that says which sheet it belongs to, and no more. @param {readonly string[]} seeds */
export const answersName = (seeds) => `answers-${seeds[0] ?? 'none'}-${seeds.length}.json`;

/** Reads the text of an answer file. @param {string} text @returns {ReadFile} */
export function readAnswers(text) {
  const refuse = (/** @type {any} */ refused, at = '', version = 0) => ({ refused, at, version });
  if (new TextEncoder().encode(text).length > MOST_BYTES) return refuse('too_long');
  if (tooDeep(text)) return refuse('too_deep');
  /** @type {unknown} */
  let value;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return refuse('damaged');
  }
  if (!isPlain(value) || value.format !== FORMAT) return refuse('foreign');
  const version = Number.isSafeInteger(value.version) ? Number(value.version) : 0;
  if (version < 1) return refuse('wrong', 'version');
  if (version > VERSION) return refuse('newer', 'version', version);
  try {
    return { file: fileOf(value) };
  } catch (error) {
    if (error instanceof Fault) return refuse(error.message, error.at);
    throw error;
  }
}

/** @param {Record<string, unknown>} value @returns {AnswerFile} */
function fileOf(value) {
  const { saved } = value;
  const units = unitsOf(value.units, 'units');
  const language = text(value.language, 'language', /^[a-z]{2,3}(-[A-Za-z0-9]{1,8})*$/, 20);
  if (typeof saved !== 'number' || !(saved >= 0 && saved <= LAST_DAY)) throw new Fault('wrong', 'saved');
  const seeds = list(value.seeds, 'seeds', 1, MOST_SEEDS, (one, at) => text(one, at, SEED, 11));
  seeds.forEach((seed, at) => {
    if (seeds.indexOf(seed) < at) throw new Fault('twice', `seeds[${at}]`);
  });
  const answers = list(value.answers, 'answers', 0, MOST_SEEDS, (one, at) => {
    if (!isPlain(one)) throw new Fault('wrong', at);
    if (one.seen !== undefined && typeof one.seen !== 'boolean') throw new Fault('wrong', `${at}.seen`);
    return { seed: text(one.seed, `${at}.seed`, SEED, 11), units: unitsOf(one.units, `${at}.units`), seen: one.seen === true, steps: list(one.steps, `${at}.steps`, 0, MOST_STEPS, answerOf) };
  });
  answers.forEach(({ seed }, at) => {
    if (!seeds.includes(seed)) throw new Fault('wrong', `answers[${at}].seed`);
    if (answers.findIndex((one) => one.seed === seed) < at) throw new Fault('twice', `answers[${at}].seed`);
  });
  return { units, language, seeds, answers, saved };
}

/** @param {unknown} value @param {string} at @returns {Units} */
function unitsOf(value, at) {
  if (value !== 'us' && value !== 'metric') throw new Fault('wrong', at);
  return value;
}

/** @param {unknown} one @param {string} at @returns {Answer} */
function answerOf(one, at) {
  if (!isPlain(one)) throw new Fault('wrong', at);
  const { hints, shown, sense } = one;
  if (!Number.isInteger(hints) || Number(hints) < 0 || Number(hints) > 99) throw new Fault('wrong', `${at}.hints`);
  if (typeof shown !== 'boolean') throw new Fault('wrong', `${at}.shown`);
  return {
    text: text(one.text, `${at}.text`, /^/, 300), unit: text(one.unit, `${at}.unit`, /^[a-z0-9_]*$/, 20),
    ...(sense === undefined ? {} : { sense: text(sense, `${at}.sense`, /^[a-z0-9_]+$/, 40) }), hints: Number(hints), shown,
  };
}

/** @param {unknown} value @param {string} at @param {RegExp} form @param {number} most @returns {string} */
function text(value, at, form, most) {
  // Counted as a schema does, by characters.
  if (typeof value !== 'string' || [...value].length > most || !form.test(value)) throw new Fault('wrong', at);
  return value;
}

/** @template T @param {unknown} value @param {string} at @param {number} least @param {number} most @param {(one: unknown, at: string) => T} make @returns {T[]} */
function list(value, at, least, most, make) {
  if (!Array.isArray(value) || value.length < least) throw new Fault('wrong', at);
  if (value.length > most) throw new Fault('too_many', at);
  return value.map((one, index) => make(one, `${at}[${index}]`));
}
