// @ts-check
/** The question of an exercise, with the figures that it names. */
import { t } from '../words.js';
import { plainly } from './plain.js';
import { written } from './written.js';

/** @param {import('./core.js').Exercise} exercise @param {import('../core.js').Units} units */
export function question({ scene, given }, units) {
  return t(`exercises.scene.${scene}.ask`, Object.fromEntries(given.map(({ key, text, value, kind }) => [key, text ? plainly(text) : written(kind, value, units)])));
}
