// @ts-check
/** Says the answer to those who do not see it, once typing has come to rest. */
import { say } from '../list.js';
import { t } from '../words.js';
import { worked } from './settled.js';

const REST = 1200;

/** @param {HTMLElement} line a live region */
export function announcer(line) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let later;
  let before = '';
  return (/** @type {import('../store.js').Store} */ store) => {
    clearTimeout(later);
    later = setTimeout(() => {
      const words = answer(store);
      if (before && words !== before) say(line, words);
      before = words;
    }, REST);
  };
}

/** @param {import('../store.js').Store} store */
function answer(store) {
  const { estimate } = store;
  if (!estimate) return '';
  const { quantity, purchase } = estimate;
  const amount = t('page.amount', { n: quantity.to_spray_up.likely });
  const kits = purchase.too_big ? t('page.too_big') : t('page.kits', { n: purchase.buy?.kits ?? 0 });
  const { n, of } = worked(store);
  return t(n < of ? 'embed.said_partly' : 'embed.said', { amount, kits, n, of });
}
