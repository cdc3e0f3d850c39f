// @ts-check
/** Every surface's drawing on paper. */
import { contact } from '../contact.js';
import { el } from '../list.js';
import { breadth } from '../parts.js';
import { t } from '../words.js';
import { leaf, LEAF_WIDTH, section } from './leaf.js';

/** @param {import('../store.js').Store} store @param {HTMLElement} root */
export function drawings(store, root) {
  const at = (/** @type {number} */ width, /** @type {string} */ kind) => {
    const shown = contact(store, width, true);
    return shown && el('div', kind, el('p', 'note', t('paper.one_scale', { scale: shown.scale })), shown.cards);
  };
  const paper = at(LEAF_WIDTH, 'on-paper');
  const room = Math.min(LEAF_WIDTH, Math.max(264, breadth(root) - 72));
  return leaf(store, 'drawings', paper ? section(t('paper.name.drawings'), el('div', 'drawn', paper, at(room, 'on-screen'))) : el('p', 'note', t('paper.none_drawn')));
}
