// @ts-check
/** A foam's data sheet, as the job holds it. */
import { fieldsOf } from './calls.js';
import { find } from './changes.js';
import { field } from './field.js';
import { el, list } from './list.js';
import { grouped, mountSheet } from './sheets.js';
import { t } from './words.js';

export const words = ['settings'];

const GROUPS = /** @type {const} */ ([
  ['density', ['density']],
  ['windows', ['conditioning', 'cylinder_least', 'cylinder_most', 'air_least', 'air_most', 'surface_least', 'surface_most']],
  ['lifts', ['largest_lift', 'least_lift', 'wait', 'cure', 'reentry', 'reentry_workers']],
  ['care', ['open_days', 'purge_days', 'storage_least', 'storage_most']],
  ['fire', ['flame', 'smoke', 'tested_thickness', 'permeance']],
]);

/** @param {HTMLElement} root @param {import('./store.js').Store} store @param {import('./view.js').Route} route @returns {import('./view.js').View} */
export function mount(root, store, route) {
  const { id } = route;
  const rows = el('ul', 'rows listed');
  const add = el('button', {
    type: 'button', class: 'do line wide',
    click: () => {
      const row = store.job.next_id;
      store.dispatch({ do: 'add_r_row', foam: id });
      void store.settled().then(() => document.getElementById(`r_row-${row}-thickness`)?.focus());
    },
  }, t('settings.add_row'));
  const more = el('section', '', el('h2', 'bar', t('settings.listed')), el('p', 'note', t('settings.listed_note')), rows, el('div', 'dos', add));
  /** @returns {number[]} */
  const rowIds = () => find(store.job, 'foam', id)?.r_at.map((/** @type {{id: number}} */ one) => one.id) ?? [];
  return mountSheet(root, store, 'foam', id, {
    groups: grouped(GROUPS, fieldsOf('foam')), more,
    onUpdate: () => list(rows, rowIds(), (row) => row, (row) => listedRow(store, row)),
  });
}

/** @param {import('./store.js').Store} store @param {number} id @returns {import('./list.js').Row<number>} */
function listedRow(store, id) {
  const thickness = field({ store, part: 'r_row', id, field: 'thickness', quiet: true });
  const r = field({ store, part: 'r_row', id, field: 'r', quiet: true });
  const gone = el('button', { type: 'button', class: 'link', click: () => store.dispatch({ do: 'remove', part: 'r_row', id }) }, t('settings.remove_row'));
  return {
    node: el('li', 'pair', el('div', 'fields', thickness.node, r.node), el('div', 'moves', gone)),
    update() {
      thickness.update();
      r.update();
      gone.setAttribute('aria-label', t('settings.remove_row_of', { thickness: thickness.input.value || '–' }));
    },
  };
}
