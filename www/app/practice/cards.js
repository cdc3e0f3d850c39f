// @ts-check
/**
 * What stands beside the question of an exercise, each kind by its word. A kind that is not known here shows nothing.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./core.js').Exercise} Exercise
 * @typedef {Exercise['shown'][number]} Shown
 * @typedef {object} About
 * @property {Store} store  with the exercise's job
 * @property {Exercise} exercise
 * @property {Shown} shown
 * @property {number} nth  the how-manieth of its kind, from 1
 * @property {number} count  how many of its kind there are
 * @property {number} width  of a drawing from edge to edge
 */
import { dewTableCard, forecastCard, readingsCard } from './aircards.js';
import { codeTableCard, layersCard, placeCard, rUnitsCard } from './builtcards.js';
import { dayCard, warmingCard } from './chartcards.js';
import { foamCard, foamUnitsCard, kitsCard } from './goodscards.js';
import { probesCard, tapeCard } from './tapecards.js';

/** @type {Record<string, (about: About) => HTMLElement | undefined>} */
const CARDS = {
  tape: tapeCard, foam: foamCard, kits: kitsCard, readings: readingsCard, probes: probesCard, warming: warmingCard, day: dayCard, forecast: forecastCard,
  dew_table: dewTableCard, code_table: codeTableCard, layers: layersCard, place: placeCard, foam_units: foamUnitsCard, r_units: rUnitsCard,
};

/** The card of what is shown; a drawing of a surface is none, it stands under the question. @param {About} about @returns {HTMLElement | undefined} */
export const cardOf = (about) => (Object.hasOwn(CARDS, about.shown.what) ? CARDS[about.shown.what]?.(about) : undefined);
