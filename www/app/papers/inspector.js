// @ts-check
/**
 * The sheet for the inspector: one page a surface with its section and marks, the three depths, what it is built of,
 * every rule with its source and whether it applies, the way that was chosen, and room for what the inspector says.
 */
import { fieldRow } from '../calls.js';
import { cutaway, zoneName } from '../cutaway.js';
import { nameOf } from '../drawn.js';
import { figures, ranged } from '../figures.js';
import { facts } from '../levels.js';
import { el } from '../list.js';
import { breadth, byId, framed, note } from '../parts.js';
import { has, t } from '../words.js';
import { entryText, fact, leaf, lines, section, told } from './leaf.js';

/** @typedef {import('../store.js').Store} Store @typedef {import('../core.js').Depth} Depth @typedef {import('../core.js').Mark} Mark */
/** @typedef {import('../job.js').Surface} Surface @typedef {import('../parts.js').Child} Child */

/** The section on paper is drawn so wide, and printed a quarter narrower. */
const CUT_WIDTH = 460;
/** The sizes of type, from the largest down: a sheet takes the first at which it stands on one page. */
const SIZES = ['fit-0', 'fit-1', 'fit-2', 'fit-3', 'fit-4', 'fit-5', 'fit-6'];
/** Letter less its margins, a little spared: what A4 is higher, it is narrower by less. In CSS pixels. */
const PAGE_HEIGHT = 922;

/** A leaf for each surface that has a depth. @param {Store} store @param {HTMLElement} root */
export function inspector(store, root) {
  const { job, estimate } = store;
  return job.surfaces.flatMap((surface, at) => {
    const one = estimate && byId(estimate.surfaces, surface.id);
    const depth = one?.depth;
    return depth ? [fitted(root, sheet(store, root, surface, at, one, depth))] : [];
  });
}

/** The largest type at which a leaf stands on one page, tried on a page of paper that nobody sees. @param {HTMLElement} root @param {HTMLElement} node */
function fitted(root, node) {
  const probe = el('div', { class: 'probe', 'aria-hidden': 'true' }, node);
  root.append(probe);
  for (const size of SIZES) {
    node.classList.remove(...SIZES);
    node.classList.add('fit', size);
    if (node.scrollHeight <= PAGE_HEIGHT) break;
  }
  probe.remove();
  return node;
}

/** @param {Store} store @param {HTMLElement} root @param {Surface} surface @param {number} at @param {import('../core.js').SurfaceEstimate} one @param {Depth} depth */
function sheet(store, root, surface, at, one, depth) {
  const w = figures(store.job.units);
  const { gap_in: gap, least_in: least, most_in: most } = depth.window;
  const cut = (/** @type {number} */ width, /** @type {string} */ where) => el('div', where, framed(cutaway(store, surface, depth, one.lifts?.count, width), t('depth.seen'), t('sheet.square_in')));
  const node = leaf(store, 'inspector',
    el('div', 'halves',
      el('div', 'drawn', cut(CUT_WIDTH, 'on-paper'), cut(Math.min(CUT_WIDTH, Math.max(300, breadth(root) - 24)), 'on-screen')),
      el('div', '', three(store, one, depth), chosen(store, surface))),
    gap === undefined ? undefined : note('watch', t('inspector.cross', { gap: w.depth(gap) }), t('inspector.cross_why', { least: w.depth(least), most: w.depth(most) })),
    foamSheet(store, one),
    builtOf(store, surface, depth),
    rules(store, depth),
    el('div', 'remarks', el('span', '', t('inspector.remarks')), el('div'), el('div')),
    el('div', 'signed', el('div', '', t('inspector.by_contractor')), el('div', '', t('inspector.by_inspector'))));
  node.setAttribute('aria-label', `${node.getAttribute('aria-label')}: ${nameOf(surface)}`);
  node.querySelector('.tb')?.after(place(store, surface, at, one));
  return node;
}

/** The second row of the title block: which surface, where, by which book. @param {Store} store @param {Surface} surface @param {number} at @param {import('../core.js').SurfaceEstimate} one */
function place(store, surface, at, one) {
  const { job } = store;
  const w = figures(job.units);
  const said = (/** @type {string} */ field) => entryText(store, 'job', job.entries, field) || t('inspector.not_said');
  const area = one.area ? t('inspector.net', { area: ranged(one.area.net_ft2, w.area) }) : '';
  const named = one.depth?.component ? t(`fields.choice.component.${one.depth.component}`) : '';
  const zip = entryText(store, 'job', job.entries, 'zip');
  const county = entryText(store, 'job', job.entries, 'county');
  const where = [zip && t('inspector.zip', { zip }), county && t('inspector.county', { county })].filter(Boolean).join(', ');
  const cell = (/** @type {string} */ name, /** @type {string} */ text, /** @type {string} */ below) => el('div', '', el('span', '', name), el('b', '', text), below ? el('small', '', below) : undefined);
  return el('div', 'tb more-tb',
    cell(t('inspector.surface', { n: at + 1, of: job.surfaces.length }), nameOf(surface), [named, area].filter(Boolean).join(', ')),
    cell(t('inspector.zone'), said('zone'), where),
    cell(t('inspector.edition'), said('edition'), ''),
    cell(t('inspector.work'), said('work'), ''));
}

/** Aim, least promised, most allowed. @param {Store} store @param {import('../core.js').SurfaceEstimate} one @param {Depth} depth */
function three(store, one, depth) {
  const w = figures(store.job.units);
  return section(t('inspector.depths'), lines(t('inspector.depths'), [[t('paper.what')], ['', 'r']], [
    fact(t('depth.aim'), el('b', '', ranged(depth.aim_in, w.depth)), [one.lifts ? t('spraying.passes', { n: one.lifts.count }) : '', depth.planning_r === undefined ? '' : t('inspector.planning', { r: w.r(depth.planning_r) })].filter(Boolean).join('; ')),
    fact(t('depth.promised'), el('b', '', w.depth(depth.promised_in)), one.area?.claims_r === false ? t('depth.strip_why') : depth.promised_r === undefined ? t('depth.no_r') : t('depth.r_at', { r: w.r(depth.promised_r), depth: w.depth(depth.promised_r_at_in) })),
    fact(t('depth.most'), el('b', '', w.depth(depth.most_in)), t('depth.most_why')),
    ...(depth.cavity_in === undefined ? [] : [fact(t('depth.cavity'), w.depth(depth.cavity_in))]),
  ], 'facts'));
}

/** The way by which the code is to be satisfied, and the cover. @param {Store} store @param {Surface} surface */
function chosen(store, surface) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const cover = estimate && byId(estimate.surfaces, surface.id)?.depth?.cover;
  const way = surface.entries.find((one) => one.field === 'code_path')?.text || fieldRow('surface', 'code_path')?.default || 'r_value';
  const target = entryText(store, 'surface', surface.entries, 'target_r');
  const put = cover?.chosen ? t(`fields.choice.cover.${cover.chosen}`) : '';
  const enough = cover?.enough === undefined || cover.enough === null ? '' : t(cover.enough ? 'inspector.cover_enough' : 'inspector.cover_short');
  const cost = cover?.cost === undefined || cover.cost === null ? '' : t('inspector.cover_cost', { area: w.area(cover.area_ft2), price: w.money(cover.price_ft2), cost: w.money(cover.cost) });
  return section(t('inspector.chosen'), lines(t('inspector.chosen'), [[t('paper.what')], ['', 'r']], [
    fact(t('inspector.way'), el('b', '', t(`fields.choice.code_path.${way}`)), t(`inspector.way.${way}`)),
    ...(target ? [fact(t('inspector.target'), target)] : []),
    fact(t('inspector.cover_asked'), el('b', '', t(`inspector.asked.${cover?.asked ?? 'not_said'}`)), entryText(store, 'surface', surface.entries, 'room')),
    ...(put ? [fact(t('inspector.cover_put'), put, [enough, cost].filter(Boolean).join('; '))] : []),
  ], 'facts'));
}

/** What the foam sheet shows of fire and vapor. @param {Store} store @param {import('../core.js').SurfaceEstimate} one */
function foamSheet(store, one) {
  const foam = byId(store.job.foams, one.foam);
  const shows = (/** @type {string} */ field) => (foam && entryText(store, 'foam', foam.entries, field)) || el('i', '', t('inspector.not_on_sheet'));
  const fields = ['density', 'flame', 'smoke', 'tested_thickness', 'permeance'];
  return section(t('inspector.foam', { name: foam?.name.trim() || t('depth.foam_unnamed') }), lines(t('inspector.foam_sheet'), fields.map((field) => [t(`inspector.sheet.${field}`)]), [{ cells: fields.map(shows) }], 'shown'));
}

/** The layers from the outside in, R along both paths, U of the whole; that it is not known, where that is so. @param {Store} store @param {Surface} surface @param {Depth} depth */
function builtOf(store, surface, depth) {
  const w = figures(store.job.units);
  const whole = depth.assembly;
  if (!whole) return section(t('inspector.built'), el('p', 'note', t('inspector.not_built')));
  const layer = (/** @type {import('../core.js').LayerR} */ one) => ({ cells: [t(`fields.choice.made_of.${one.material}`), one.thickness_in === undefined || one.thickness_in === null ? '' : w.depth(one.thickness_in), w.r(one.r)] });
  const at = (/** @type {string} */ where) => whole.layers.filter((one) => one.position === where).map(layer);
  const film = (/** @type {string} */ side, /** @type {number} */ r) => ({ cells: [t(`inspector.film_${side}`), '', w.r(r)] });
  const across = surface.entries.some((one) => one.field === 'runs' && one.text === 'across');
  return section(t('inspector.built'), el('div', 'halves',
    lines(t('inspector.built'), [[t('inspector.layer')], [t('inspector.thick'), 'r'], [w.metric ? 'RSI' : 'R', 'r']], [
      film('outside', whole.outside_film_r), ...at('outside'),
      { cells: [t(across ? 'inspector.foam_across' : 'inspector.foam_between'), w.depth(whole.foam_in), w.r(whole.foam_r)] },
      ...at('cavity'), ...at('inside'), film('inside', whole.inside_film_r),
    ]),
    lines(t('inspector.whole'), [[t('inspector.whole')], ['', 'r']], [
      fact(t('inspector.foam_path'), w.r(whole.foam_path_r)),
      ...(whole.member_path_r === undefined || whole.member_path_r === null ? [] : [fact(t('inspector.member_path', { share: w.pct(whole.framing_pct) }), w.r(whole.member_path_r))]),
      fact(t('inspector.u'), el('b', '', w.u(whole.u)), t('inspector.u_why')),
      fact(t('inspector.u_upper'), w.u(whole.u_isothermal), t('inspector.u_upper_why')),
      fact(t('inspector.effective'), el('b', '', w.r(whole.effective_r))),
    ])));
}

/** What a rule asks, where it is not a depth. @param {Store} store @param {Mark} mark */
function asks(store, mark) {
  const w = figures(store.job.units);
  if (mark.printed) return `R-${mark.printed}`;
  if (mark.asks === undefined || mark.asks === null) return '';
  return mark.rule === 'code_u' ? w.u(mark.asks) : mark.rule === 'unvented_share' ? w.pct(mark.asks) : w.r(mark.asks);
}

/** How a rule bears on the surface, in a word. @type {Partial<Record<import('../core.js').Stands, string>>} */
const HERE = { applies: 'applies', not_said: 'open', blank: 'open', outside: 'not_met', beyond_sheet: 'not_met' };

/** Every rule: what it asks, at which depth, where it stands, how sure that is, whether it applies. @param {Store} store @param {Depth} depth */
function rules(store, depth) {
  const w = figures(store.job.units);
  const zone = zoneName(store);
  const asked = depth.marks.some((mark) => asks(store, mark));
  const rows = depth.marks.map((mark) => {
    const at = mark.at_in === undefined || mark.at_in === null ? '' : w.depth(mark.at_in);
    const here = HERE[mark.stands] ?? 'no';
    const own = `inspector.stands.${mark.stands}`;
    const why = here === 'applies' ? '' : [has(own) ? t(own) : t(`depth.stands.${mark.stands}`), mark.lacks.map((one) => t(`fields.${one}`)).join(', ')].filter(Boolean).join(' ');
    return { kind: here === 'no' ? 'off' : '', cells: [
      told(t(`depth.rule.${mark.rule}`, facts(mark, w, depth.target_r, zone)), why ? [why] : []), ...(asked ? [asks(store, mark)] : []),
      at ? t(`inspector.bound.${mark.bound}`, { depth: at }) : '–',
      [mark.section, mark.edition].filter(Boolean).join(', ') || '–',
      t(`inspector.trust.${mark.trust}`), el(here === 'applies' ? 'b' : 'span', '', t(`inspector.here.${here}`)),
    ] };
  });
  const unsure = depth.marks.some((one) => one.trust === 'memory' || one.trust === 'derived');
  return section(t('inspector.rules'),
    lines(t('inspector.rules'), [[t('inspector.rule')], ...(asked ? [/** @type {[string]} */ ([t('inspector.asks')])] : []), [t('inspector.depth')], [t('inspector.stands')], [t('inspector.sure')], [t('inspector.here')]], rows, 'rules'),
    unsure ? el('p', 'note', t('inspector.unsure')) : undefined);
}
