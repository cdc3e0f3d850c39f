// @ts-check
/** Surfaces of more than one depth on paper: foam that is there, patches, and what an uneven ground takes more. */
import { groundForms } from '../calls.js';
import { nameOf } from '../drawn.js';
import { bare, figures, ranged, unitOf } from '../figures.js';
import { el } from '../list.js';
import { byId } from '../parts.js';
import { t } from '../words.js';
import { entered, lines, section, told, unmeasured } from './leaf.js';

/** @typedef {import('../store.js').Store} Store */
/** @typedef {import('../parts.js').Child} Child */

/** What is said of such a surface under its name: the old foam, and what its ground asks. @param {import('../job.js').Surface} surface */
function about(surface) {
  const on = surface.entries.find((entry) => entry.field === 'ground')?.text;
  const asked = groundForms().find((one) => one.ground === on)?.entries ?? [];
  return ['existing_same', 'uneven', 'ground', ...asked.map((one) => one.field)];
}

/** Each line of each such surface; nothing where the job has none. @param {Store} store */
export function layered(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const rows = job.surfaces.flatMap((surface) => {
    const one = estimate ? byId(estimate.surfaces, surface.id) : undefined;
    const there = surface.entries.some((entry) => entry.field === 'existing' && entry.text.trim());
    const parts = one?.lines;
    if (!there && !surface.patches.length && !(parts && (parts.uneven.likely > 0 || parts.fill))) return [];
    const old = one?.depth?.existing;
    const found = old ? ranged(old.depth_in, (value) => bare(w.depth(value))) : there ? unmeasured() : t('paper.none_entered');
    const asked = about(surface);
    const saying = entered(store, 'surface', surface.entries.filter((entry) => asked.includes(entry.field)));
    const whole = surface.patches.length ? t('paper.without_patches', { name: nameOf(surface) }) : nameOf(surface);
    /** @param {import('../figures.js').Band} band @param {(value: number) => string} write */
    const short = (band, write) => ranged(band, (value) => bare(write(value)));
    /** @type {{cells: Child[], kind?: string}[]} */
    const all = [parts && one?.depth ? { cells: [told(whole, saying), short(parts.rest_ft2, w.area), found, short(one.depth.aim_in, w.depth), short(parts.add_in, w.depth), short(parts.rest, w.foam), one.depth.promised_r === undefined ? t('paper.no_r') : w.r(one.depth.promised_r)] }
      : { cells: [told(whole, saying), unmeasured(), found, '', '', '', ''] }];
    for (const [at, patch] of surface.patches.entries()) {
      const laid = parts?.patches.find((it) => it.id === patch.id);
      const name = t('paper.part_of', { name: nameOf(surface), part: patch.name?.trim() || t('depth.patch', { n: at + 1 }) });
      all.push({ cells: laid ? [name, short(laid.area_ft2, w.area), found instanceof Node ? unmeasured() : found, short(laid.depth_in, w.depth), short(laid.add_in, w.depth), short(laid.feet, w.foam), laid.promised_r === undefined ? t('paper.no_r') : w.r(laid.promised_r)] : [name, unmeasured(), '', '', '', '', ''] });
    }
    if (parts && parts.uneven.likely > 0) all.push({ cells: [t('paper.part_of', { name: nameOf(surface), part: t('depth.uneven') }), '', '', '', '', short(parts.uneven, w.foam), ''] });
    if (parts?.fill) all.push({ cells: [t('paper.part_of', { name: nameOf(surface), part: t('depth.fill') }), '', '', '', '', short(parts.fill, w.foam), ''] });
    if (parts && one?.in_place && all.length > 1) all.push({ kind: 'sum', cells: [t('paper.part_of', { name: nameOf(surface), part: t('depth.in_place') }), '', '', '', '', el('b', '', short(one.in_place, w.foam)), ''] });
    return all;
  });
  if (!rows.length) return undefined;
  return section(t('paper.layered'), lines(t('paper.layered'), [[t('sheet.col_surface')], [t('sheet.col_net', { unit: unitOf(w.area(1)) }), 'r'], [t('paper.there', { unit: unitOf(w.depth(1)) }), 'r'], [t('sheet.col_aim', { unit: unitOf(w.depth(1)) }), 'r'], [t('paper.to_add', { unit: unitOf(w.depth(1)) }), 'r'], [t('sheet.col_bdft'), 'r'], [t('paper.r_promised'), 'r']], rows),
    el('p', 'note', t('paper.layered_note')));
}
