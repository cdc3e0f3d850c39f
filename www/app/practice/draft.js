// @ts-check
/** Class sheets in hand, held while the page is open. */
import { to } from '../view.js';
import { t } from '../words.js';

/** The one that a teacher is putting together. */
export const draft = {
  levels: /** @type {Set<number>} */ (new Set([1])),
  topics: /** @type {Set<string>} */ (new Set()),
  count: '6',
  seeds: /** @type {string[]} */ ([]),
};

/** The class sheet that was opened last, so that its exercises lead back to it. */
export const sheet = { seeds: /** @type {string[]} */ ([]) };

/** Where an exercise leads back to: the class sheet that it stands on, else practice. @param {string} seed @returns {[string, string]} fragment and words */
export const backFrom = (seed) => (sheet.seeds.includes(seed) ? [to('class', sheet.seeds.join(',')), t('practice.class')] : [to('practice'), t('practice.title')]);
