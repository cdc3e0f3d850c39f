// @ts-check
/** Class sheets in hand: the one that is put together, held while the page is open, and the one that was opened last. */
import { to } from '../view.js';
import { t } from '../words.js';
import { sheet } from './kept.js';

/** The one that a teacher is putting together. */
export const draft = {
  levels: /** @type {Set<number>} */ (new Set([1])),
  topics: /** @type {Set<string>} */ (new Set()),
  count: '6',
  seeds: /** @type {string[]} */ ([]),
};

/** Where an exercise leads back to: the class sheet that it stands on, if that is the one opened last, else practice. @param {string} seed @returns {[string, string]} fragment and words */
export function backFrom(seed) {
  const seeds = sheet();
  return seeds.includes(seed) ? [to('class', seeds.join(',')), t('practice.class')] : [to('practice'), t('practice.title')];
}
