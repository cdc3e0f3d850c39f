// @ts-check
/** What the foam sheet and the kit sheet have in common: the job's copy, and its place in the catalogue. */
import { isKept, isSample, keepSheet, loadCatalogue, newer } from './catalogue.js';
import { fieldRow } from './calls.js';
import { find } from './changes.js';
import { field, line, note } from './field.js';
import { el } from './list.js';
import { mark } from './marks.js';
import { notify } from './notices.js';
import { head } from './parts.js';
import { go, to } from './view.js';
import { has, t } from './words.js';

/**
 * @param {HTMLElement} root
 * @param {import('./store.js').Store} store
 * @param {'foam' | 'kit' | 'owned'} part
 * @param {number} id
 * @param {{groups: readonly (readonly [string, readonly string[]])[], more?: HTMLElement, back?: [string, string], onUpdate?: () => void, also?: (found: import('./core.js').Finding) => boolean}} about
 *   `groups`: a heading and the fields under it; `more`: what follows the groups; `also`: further findings shown here; `back`: where
 *   it leads back to, when not to the settings; such a sheet is kept and removed there
 * @returns {import('./view.js').View}
 */
export function mountSheet(root, store, part, id, { groups, more, onUpdate, also, back }) {
  if (!find(store.job, part, id)) {
    go(to(back?.[0] ?? 'settings'), true);
    return { title: '', update() {} };
  }
  const top = head({ back: back ? [to(back[0]), back[1]] : [to('settings'), t('page.to_settings')], title: ' ' });
  const heading = /** @type {HTMLElement} */ (top.querySelector('h1'));
  const name = line({ store, part, id, field: 'name', label: t(`settings.${part}_name`) });
  const fields = groups.map(([key, names]) => fieldGroup(store, part, id, key, names));
  const notes = el('div', 'says');
  const catalogue = el('div', 'dos');
  let before = '';

  root.append(el('main', '', top, el('div', 'pad tail',
    el('p', 'note', t(`settings.${part}_governs`)), notes,
    el('div', 'fields', name.node),
    ...fields.map((one) => one.node),
    more, ...(back ? [] : [el('h2', 'bar', t('settings.catalogue')), el('p', 'note', t('settings.catalogue_note')), catalogue]))));
  void loadCatalogue().then(() => update());

  function update() {
    const copy = find(store.job, part, id);
    if (!copy) {
      go(to(back?.[0] ?? 'settings'), true);
      return;
    }
    const title = copy.name.trim() || t(`settings.${part}_unnamed`);
    if (heading.textContent !== title) heading.textContent = title;
    name.update();
    for (const one of fields) one.update();
    onUpdate?.();
    const found = (store.estimate?.findings ?? []).filter((one) => (one.at.part === part && one.at.id === id && !one.at.field) || also?.(one));
    const moved = newer(part, copy);
    const signature = JSON.stringify([found, moved?.version, isSample(copy), copy.version, copy.sheet]);
    if (signature === before) return;
    before = signature;
    notes.replaceChildren(
      ...(isSample(copy) ? [el('div', 'say watch', mark('watch'), el('span', '', el('b', '', t('settings.sample')), ` ${t(`settings.${part}_sample_do`)}`))] : []),
      ...found.map(note),
      ...(moved ? [el('div', 'say watch', mark('watch'), el('div', '', el('b', '', t('settings.moved_on', { version: moved.version, mine: copy.version })), ' ', t('settings.moved_on_do'),
        el('div', 'moves', el('button', { type: 'button', class: 'do small', click: () => store.dispatch({ do: 'renew_sheet', part, id, sheet: moved }) }, t('settings.renew')))))] : []));
    catalogue.replaceChildren(
      el('button', { type: 'button', class: 'do line wide', click: keep }, t('settings.keep_sheet')),
      el('button', {
        type: 'button', class: 'do line wide',
        click: () => {
          store.dispatch({ do: 'remove', part, id });
          notify('removed', 'watch', t('settings.removed', { name: title }), '', { focus: true, presses: [[t('page.undo'), () => store.undo()]] });
          go(to('settings'), true);
        },
      }, t(`settings.remove_${part}`)));
  }

  function keep() {
    const kept = keepSheet(part, find(store.job, part, id));
    store.dispatch({ do: 'sheet_kept', part, id, sheet: kept.sheet, version: kept.version });
    if (isKept()) notify('sheet', 'go', t('settings.sheet_kept', { version: kept.version }));
    else notify('sheet', 'watch', t('settings.sheet_not_kept'), t('page.not_kept_do'));
  }

  return { title: () => heading.textContent ?? '', update };
}

/**
 * Fields under a heading. A source that several of them share is said once, under the heading.
 * @param {import('./store.js').Store} store
 * @param {import('./core.js').Part} part
 * @param {number} id
 * @param {string} key
 * @param {readonly string[]} names
 * @returns {{node: HTMLElement, update: () => void}}
 */
export function fieldGroup(store, part, id, key, names) {
  const source = (/** @type {string} */ name) => {
    const row = fieldRow(part, name);
    return row && row.source !== 'site_limit' ? row.source : '';
  };
  const all = names.map(source);
  const shared = new Set(all.filter((one, at) => one && (all.indexOf(one) !== at || !fieldRow(part, names[at])?.default)));
  const fields = names.map((name) => field({ store, part, id, field: name, source: !shared.has(source(name)) }));
  return {
    node: el('section', { id: `group-${key}` }, el('h2', 'bar', t(`settings.${key}`)), has(`settings.${key}_note`) && el('p', 'note', t(`settings.${key}_note`)),
      ...[...shared].map((one) => el('p', 'src', t(`sources.${one}`))), el('div', 'fields', ...fields.map((one) => one.node))),
    update() {
      for (const one of fields) one.update();
    },
  };
}

/** Fields in groups; what the table has beyond them comes last. @param {readonly (readonly [string, readonly string[]])[]} groups @param {{field: string}[]} rows */
export function grouped(groups, rows) {
  const placed = new Set(groups.flatMap(([, names]) => names));
  const rest = rows.map((row) => row.field).filter((one) => !placed.has(one));
  const known = new Set(rows.map((row) => row.field));
  const kept = groups.map(([key, names]) => /** @type {const} */ ([key, names.filter((one) => known.has(one))]));
  return rest.length ? [...kept, /** @type {const} */ (['other', rest])] : kept;
}
