// @ts-check
/** Says the answer to those who do not see it, once typing has come to rest. */
import { say } from '../list.js';
import { t } from '../words.js';

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
function answer({ estimate }) {
  if (!estimate) return '';
  const { quantity, purchase } = estimate;
  const amount = t('page.amount', { n: quantity.to_spray_up.likely });
  const kits = purchase.too_big ? t('page.too_big') : t('page.kits', { n: purchase.buy?.kits ?? 0 });
  const partly = quantity.surfaces < quantity.of;
  return t(partly ? 'embed.said_partly' : 'embed.said', { amount, kits, n: quantity.surfaces, of: quantity.of });
}
