// @ts-check
/**
 * How a figure of the frame was reached: the steps of the full tool, less what the page around leaves out.
 *
 * @typedef {import('./settings.js').Settings} Settings
 */
import { el } from '../list.js';
import { need } from '../words.js';
import { ready as table, words, workingSheet } from '../working.js';
import { examples } from './samples.js';

/** Resolves when the table of steps and its words are there. */
export const ready = () => Promise.all([table(), need(...words, 'fields', 'sources')]);

/**
 * Which steps a working does without: what the page around leaves out on the sheet is not told behind a figure either.
 * What is sprayed how, in passes and with which waits, is for whoever sprays; so is what stands too high and is trimmed.
 * @param {Settings['sections']} sections
 */
export const left = (sections) => (/** @type {Pick<import('../core.js').Step, 'scope' | 'result' | 'unit'>} */ { scope, result, unit }) => (
  unit === 'usd' ? !sections.has('price')
    : /^(lifts|spraying)\.|^depth\.most_in/.test(result) ? !sections.has('spraying')
      : (scope === 'kit' || result.startsWith('purchase.')) && !sections.has('kits'));

/**
 * The working of a figure; what in it follows from our examples is called so first.
 * @param {import('../store.js').Store} store @param {Settings} settings @param {import('../view.js').Route} route @param {() => [string, string]} back
 */
export function working(store, settings, route, back) {
  const { top, sheet, foot, update } = workingSheet(store, route, back, left(settings.sections));
  const ours = examples(settings);
  return { inside: [top, ...(ours ? [el('div', 'pad top', ours)] : []), sheet, foot], update };
}
