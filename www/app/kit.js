// @ts-check
/** A kit's sheet: what its carton and its price tag say, as the job holds it. */
import { fieldsOf } from './calls.js';
import { grouped, mountSheet } from './sheets.js';

export const words = ['settings'];

const GROUPS = /** @type {const} */ ([['carton', ['label_yield', 'net_weight', 'gross_weight', 'nozzles']], ['shop', ['price', 'limit']]]);

/** @param {HTMLElement} root @param {import('./store.js').Store} store @param {import('./view.js').Route} route @returns {import('./view.js').View} */
export function mount(root, store, route) {
  return mountSheet(root, store, 'kit', route.id, { groups: grouped(GROUPS, fieldsOf('kit')) });
}
