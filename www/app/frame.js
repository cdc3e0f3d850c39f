// @ts-check
/** The desktop's right side: the whole sheet in its frame, changing as one types, with the title block at its foot. */
import { titleBlock } from './answer.js';
import { depths, kits, lifts, nameOf, readings } from './drawn.js';
import { bare, figures, unitOf } from './figures.js';
import { el } from './list.js';
import { byId, findingNote, redraw, table, to, worked } from './parts.js';
import { t } from './words.js';

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const main = el('div', 'scroll-y');
  const block = titleBlock();
  root.append(el('div', 'frame', el('div', 'title', el('h2', '', t('sheet.job_sheet')), el('span', 'note', t('sheet.as_you_type'))), main, block.node));

  function update() {
    const { job, estimate } = store;
    block.update(store);
    if (!estimate) return;
    const w = figures(job.units);
    const q = estimate.quantity;
    const here = location.hash.match(/^#\/(?:surface|depth)\/(\d+)/)?.[1];
    const grave = estimate.findings[estimate.readiness.blame ?? -1];
    const odd = estimate.findings.find((one) => one.at.part === 'surface' && one.severity !== 'note' && one.code !== 'needed');
    const all = Math.max(280, (main.clientWidth || 600) - 40);
    const each = all >= 586 ? (all - 26) / 2 : all;
    const bars = depths(store, each);
    const cylinders = kits(store, each);
    const passes = lifts(store, each);
    const axis = readings(store, each);
    const rows = estimate.surfaces.flatMap((one) => {
      const surface = byId(job.surfaces, one.id);
      if (!surface) return [];
      const { area, depth } = one;
      const cell = (/** @type {string} */ text, /** @type {string} */ path) => (text ? worked(text, 'surface', one.id, path) : '–');
      return [{ kind: String(one.id) === here ? 'pick' : '', cells: [el('a', { href: to('surface', one.id) }, one.in_place && !one.bought ? t('sheet.with_left', { name: nameOf(surface) }) : nameOf(surface)),
        cell(area ? bare(w.area(area.net_ft2.likely)) : '', 'area.net_ft2'), el('b', '', cell(depth ? bare(w.depth(depth.aim_in.likely)) : '', 'depth.aim_in')),
        depth ? bare(w.depth(depth.promised_in)) : '–', depth ? bare(w.depth(depth.most_in)) : '–', depth?.promised_r === undefined ? '–' : bare(w.r(depth.promised_r)).replace(/^R-/, ''),
        one.lifts ? String(one.lifts.count) : '–', el('b', '', cell(one.in_place ? bare(w.foam(one.in_place.likely)) : '', 'in_place'))] }];
    });
    const extra = (/** @type {string} */ name, /** @type {string} */ value, /** @type {string} */ path) => ({ cells: [name, '', '', '', '', '', '', worked(value, 'job', 0, path)] });
    redraw(main, [
      el('section', '', rows.length ? table(t('sheet.job_sheet'), [t('sheet.col_surface'), t('sheet.col_net', { unit: unitOf(w.area(1)) }), t('sheet.col_aim', { unit: unitOf(w.depth(1)) }), t('sheet.col_promise'), t('sheet.col_most'), t('sheet.col_r'), t('sheet.col_passes'), t('sheet.col_bdft')], [
        ...rows,
        ...(q.allowances.over_depth_pct.likely > 0 ? [extra(t('sheet.over_depth', { pct: w.pct(q.allowances.over_depth_pct.likely) }), bare(w.foam(q.over_depth.likely)), 'quantity.over_depth')] : []),
        ...(q.allowances.other_waste_pct.likely > 0 ? [extra(t('sheet.other_waste', { pct: w.pct(q.allowances.other_waste_pct.likely) }), bare(w.foam(q.other_waste.likely)), 'quantity.other_waste')] : []),
        { kind: 'sum', cells: [el('b', '', t('sheet.to_spray')), '', '', '', '', '', el('b', '', String(estimate.spraying.lifts)), el('b', '', worked(bare(w.foam(q.to_spray.likely)), 'job', 0, 'quantity.to_spray'))] },
      ]) : el('p', 'note', t('sheet.measure_none'))),
      bars || cylinders ? el('section', 'two', el('div', '', el('h3', '', t('sheet.depth')), bars), el('div', '', el('h3', '', t('sheet.kits')), cylinders ?? el('p', 'note', t('kits.none_fit')))) : undefined,
      odd ? el('section', '', surfaceNote(odd)) : undefined,
      grave ? el('section', '', findingNote(grave)) : undefined,
      axis || passes ? el('section', 'two', el('div', '', el('h3', '', t('sheet.ready')), axis), el('div', '', el('h3', '', t('sheet.spray')), passes)) : undefined,
    ]);
  }

  /** @param {import('./core.js').Finding} found */
  function surfaceNote(found) {
    const node = findingNote(found);
    const surface = byId(store.job.surfaces, found.at.id);
    if (surface) node.querySelector('b')?.prepend(nameOf(surface) + ': ');
    return node;
  }

  return { title: '', update };
}
