// @ts-check
/** The question of an exercise with all that it needs: the figures that it names, the drawings, the cards. */
import { el } from '../list.js';
import { src } from '../parts.js';
import { t } from '../words.js';
import { cardOf } from './cards.js';
import { plainly } from './plain.js';
import { drawingCard } from './todraw.js';
import { written } from './written.js';

/** @typedef {import('../store.js').Store} Store @typedef {import('./core.js').Exercise} Exercise */

/** The words that drawings and cards are said with. */
export const QUESTION_WORDS = ['takeoff', 'sheet', 'surface', 'ready', 'depth', 'hours', 'inspector', 'settings', 'practice', 'exercises'];

/** @param {Exercise} exercise @param {import('../core.js').Units} units */
export function questionText({ scene, given }, units) {
  return t(`exercises.scene.${scene}.ask`, Object.fromEntries(given.map(({ key, text, value, kind }) => [key, text ? plainly(text) : written(kind, value, units)])));
}

/** The text, and where a published example was read. @param {Exercise} exercise @param {import('../core.js').Units} units */
export const asked = (exercise, units) => [el('p', 'quest', questionText(exercise, units)), ...(exercise.source ? [el('div', 'pad ex-from', src(t(`sources.${exercise.source}`)))] : [])];

/** Whether a step asks for pieces of framing to be counted: then a drawing does not show them. @param {Exercise['steps'][number]} step */
export const counts = (step) => step.topic === 'framing' && step.kind === 'count';

/** No drawing is laid out for less than a phone has, whatever a page that is hidden or goes to print says of its room. @param {number} width */
const roomy = (width) => Math.max(280, width);

/** @param {Store} store with the exercise's job @param {Exercise} exercise @param {number} width @param {{framing: boolean, hatch?: import('./todraw.js').Hatch}} [how] */
export function drawings(store, exercise, width, { framing, hatch } = { framing: !exercise.steps.some(counts) }) {
  const outlines = exercise.shown.filter((one) => one.what === 'outline');
  // A step that asks for a measure of a surface has its name.
  const asked = exercise.steps.map((step) => step.key);
  return outlines.flatMap(({ id }) => drawingCard(store, id, { width: roomy(width), framing, hatch, asked, several: outlines.length > 1 }) ?? []);
}

/** @param {Store} store with the exercise's job @param {Exercise} exercise @param {number} width */
export function cards(store, exercise, width) {
  /** @type {Map<string, number>} */
  const seen = new Map();
  return exercise.shown.flatMap((shown) => {
    const nth = (seen.get(shown.what) ?? 0) + 1;
    seen.set(shown.what, nth);
    return cardOf({ store, exercise, shown, nth, count: exercise.shown.filter((one) => one.what === shown.what).length, width: roomy(width) }) ?? [];
  });
}

/** The whole question, as it stands on paper. @param {Store} store with the exercise's job @param {Exercise} exercise @param {number} width @returns {HTMLElement[]} */
export const question = (store, exercise, width) => [...asked(exercise, store.job.units), ...drawings(store, exercise, width), ...cards(store, exercise, width)];
