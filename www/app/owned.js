// @ts-check
/** A kit that is already there: what its label says, when it was opened and what is left in it. */
import { fieldsOf } from './calls.js';
import { caution } from './parts.js';
import { grouped, mountSheet } from './sheets.js';
import { keepOwned } from './stock.js';
import { el } from './list.js';
import { t } from './words.js';

export const words = ['settings', 'stock'];

const GROUPS = /** @type {const} */ ([
  ['owned_label', ['label_yield', 'expires', 'state']],
  ['owned_opened', ['opened', 'last_purge']],
  ['owned_a', ['a_label', 'a_weight', 'a_left']],
  ['owned_b', ['b_label', 'b_weight', 'b_left']],
  ['owned_with', ['nozzles', 'storage', 'use']],
]);

/** What a sealed kit is not asked. */
const OPENED = new Set(['owned_opened', 'owned_a', 'owned_b']);

/** @param {HTMLElement} root @param {import('./store.js').Store} store @param {import('./view.js').Route} route @returns {import('./view.js').View} */
export function mount(root, store, route) {
  const care = el('div', { class: 'says', id: 'owned-care' }, caution('stock.purge_caution'), caution('stock.storage_caution'));
  const view = mountSheet(root, store, 'owned', route.id, {
    groups: grouped(GROUPS, fieldsOf('owned')), more: care, back: ['stock', t('stock.title')],
    onUpdate() {
      const kit = store.job.stock.find((one) => one.id === route.id);
      const sealed = kit?.entries.find((one) => one.field === 'state')?.text === 'sealed';
      for (const key of OPENED) root.querySelector(`#group-${key}`)?.toggleAttribute('hidden', sealed);
    },
  });
  // The kit on the shelf is the same thing as the one in the job: leaving its page writes it down.
  return { ...view, unmount: () => keepOwned(store, route.id) };
}
