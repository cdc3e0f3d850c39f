// @ts-check
/** What a surface's depth is made up of: old foam and patches. */
import { field, fieldId, line } from './field.js';
import { figures, ranged } from './figures.js';
import { el, list } from './list.js';
import { byId, press, redraw, row, worked } from './parts.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store @typedef {import('./core.js').Depth} Depth */

/** Patches of a surface: fields, and what each adds to the sum. @param {Store} store @param {number} id */
export function patches(store, id) {
  const rows = el('div');
  const sum = el('div');
  const node = el('div', 'full', el('h2', 'bar', t('depth.patches')), el('p', 'note', t('depth.patches_why')), rows,
    el('div', 'dos', press(t('depth.add_patch'), 'add-patch', () => {
      const patch = store.job.next_id;
      store.dispatch({ do: 'add_patch', surface: id });
      void store.settled().then(() => document.getElementById(fieldId('patch', patch, 'area'))?.focus());
    })), sum);
  const one = (/** @type {number} */ patch) => {
    const called = line({ store, part: 'patch', id: patch, field: 'name', label: t('depth.patch_name') });
    const fields = ['area', 'share', 'depth'].map((name) => field({ store, part: 'patch', id: patch, field: name, quiet: true, hint: name === 'share' ? t('depth.share_hint') : '' }));
    const title = el('b');
    const said = el('p', 'note');
    return {
      node: el('section', { class: 'patch', id: `patch-${patch}` }, el('h3', '', title), el('div', 'fields', called.node, ...fields.map((it) => it.node)), said,
        press(t('depth.remove_patch'), `remove-patch-${patch}`, () => store.dispatch({ do: 'remove', part: 'patch', id: patch }), 'line')),
      update: (/** @type {{name: string}} */ it, /** @type {number} */ at) => {
        title.textContent = it.name?.trim() || t('depth.patch', { n: at + 1 });
        for (const shown of [called, ...fields]) shown.update();
        const w = figures(store.job.units);
        const laid = store.estimate && byId(store.estimate.surfaces, id)?.lines?.patches.find((found) => found.id === patch);
        said.textContent = !laid ? '' : t('depth.patch_sum', { area: w.area(laid.area_ft2.likely), depth: w.depth(laid.add_in.likely), feet: w.foam(laid.feet.likely) })
          + ' ' + (laid.promised_r === undefined ? t('takeoff.no_r') : t('depth.r_at', { r: w.r(laid.promised_r), depth: w.depth(laid.promised_r_at_in) }));
      },
    };
  };
  return {
    node,
    update: () => {
      list(rows, byId(store.job.surfaces, id)?.patches ?? [], (patch) => patch.id, (patch) => one(patch.id));
      const w = figures(store.job.units);
      const estimate = store.estimate && byId(store.estimate.surfaces, id);
      const lines = estimate?.lines;
      const figure = (/** @type {import('./figures.js').Band} */ band, /** @type {string} */ path) => worked(ranged(band, w.foam), 'surface', id, path);
      redraw(sum, [lines && estimate?.in_place ? el('ul', 'rows',
        lines.patches.length ? row(t('depth.rest'), w.area(lines.rest_ft2.likely), figure(lines.rest, 'lines.rest')) : undefined,
        lines.patches.length ? row(t('depth.with_patches'), '', figure(lines.flat, 'lines.flat')) : undefined,
        lines.uneven.likely > 0 ? row(t('depth.uneven'), '', figure(lines.uneven, 'lines.uneven')) : undefined,
        lines.fill ? row(t('depth.fill'), '', figure(lines.fill, 'lines.fill')) : undefined,
        row(t('depth.in_place'), '', figure(estimate.in_place, 'in_place'))) : undefined]);
    },
  };
}

/** What there is and what is added. @param {Store} store @param {number} id @param {Depth | undefined | null} depth */
export function oldFoam(store, id, depth) {
  const w = figures(store.job.units);
  const there = depth?.existing;
  const lines = store.estimate && byId(store.estimate.surfaces, id)?.lines;
  if (!there) return undefined;
  return el('ul', 'rows',
    row(t('depth.found'), t('depth.found_ends', { thin: w.depth(there.depth_in.low), thick: w.depth(there.depth_in.high) }), w.depth(there.depth_in.likely)),
    row(t('depth.add'), t('depth.add_why'), worked(ranged(there.add_in, w.depth), 'surface', id, 'depth.existing.add_in')),
    lines ? row(t('depth.short'), t('depth.short_why'), worked(ranged(lines.rest, w.foam), 'surface', id, 'lines.rest')) : undefined);
}
