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
import { mark } from '../marks.js';
import { breadth, byId, framed } from '../parts.js';
import { has, t } from '../words.js';
import { findCounty } from '../zones.js';
import { entryText, fact, leaf, lines, section, told } from './leaf.js';

/** @typedef {import('../store.js').Store} Store @typedef {import('../core.js').Depth} Depth */
/** @typedef {import('../job.js').Surface} Surface @typedef {Node | string} Inside */

/** The section on paper is drawn so wide, and printed a quarter narrower. */
const CUT_WIDTH = 460;
/** The sizes of type, from the largest down: a sheet takes the first at which it stands on one page. */
const SIZES = ['fit-0', 'fit-1', 'fit-2', 'fit-3', 'fit-4', 'fit-5', 'fit-6', 'fit-7'];
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
export function fitted(root, node) {
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
  const cut = (/** @type {number} */ width, /** @type {string} */ where) => el('div', where, framed(cutaway(store, surface, depth, one.lifts?.count, width), t('depth.seen'), t(w.metric ? 'sheet.square_cm' : 'sheet.square_in')));
  const node = leaf(store, 'inspector',
    el('div', 'halves',
      el('div', '', el('div', 'drawn', cut(CUT_WIDTH, 'on-paper'), cut(Math.min(CUT_WIDTH, Math.max(300, breadth(root) - 24)), 'on-screen')), foamSheet(store, one)),
      el('div', '', three(store, one, depth), chosen(store, surface), builtOf(store, surface, depth))),
    gap === undefined ? undefined : el('p', 'lead', mark('watch'), ' ', el('b', '', t('inspector.cross', { gap: w.depth(gap) })), ' ', t('inspector.cross_why', { least: w.depth(least), most: w.depth(most) })),
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
  const where = [zip && t('inspector.zip', { zip }), county(job.entries.find((one) => one.field === 'county')?.text ?? '')].filter(Boolean);
  const cell = (/** @type {string} */ name, /** @type {string} */ text, /** @type {Inside} */ below) => el('div', '', el('span', '', name), el('b', '', text), below ? el('small', '', below) : undefined);
  return el('div', 'tb more-tb',
    cell(t('inspector.surface', { n: at + 1, of: job.surfaces.length }), nameOf(surface), [named, area].filter(Boolean).join(', ')),
    cell(t('inspector.zone'), said('zone'), where.length ? el('span', 'plain', ...where.flatMap((one, at) => (at ? [', ', one] : [one]))) : ''),
    cell(t('inspector.edition'), said('edition'), ''),
    cell(t('inspector.work'), said('work'), ''));
}

/** Counties by their code, as looked up. @type {Map<string, string>} */
const counties = new Map();

/** A county by its name, once the table of names is here; by its code until then. @param {string} code */
function county(code) {
  if (!code) return '';
  const known = counties.get(code);
  const node = el('span', 'plain', known ?? t('inspector.county', { county: code }));
  if (known === undefined) {
    void findCounty(code).then((found) => {
      const name = found.counties.find((one) => one.county === Number(code))?.name;
      if (name) counties.set(code, node.textContent = name);
    }, () => undefined);
  }
  return node;
}

/** Aim, least promised, most allowed, each with the R that goes with it. @param {Store} store @param {import('../core.js').SurfaceEstimate} one @param {Depth} depth */
function three(store, one, depth) {
  const w = figures(store.job.units);
  const promise = one.area?.claims_r === false ? t('depth.strip_why') : depth.promised_r === undefined ? t('takeoff.no_r') : t('inspector.listed', { r: w.r(depth.promised_r), depth: w.depth(depth.promised_r_at_in) });
  const passes = one.lifts ? t('spraying.passes', { n: one.lifts.count }) : '';
  return section(t('inspector.depths'), lines(t('inspector.depths'), [[t('paper.what')], ['', 'r'], ['', 'r']], [
    { cells: [t('depth.aim'), [depth.planning_r === undefined ? '' : t('inspector.planning', { r: w.r(depth.planning_r) }), passes].filter(Boolean).join('; '), el('b', '', ranged(depth.aim_in, w.depth))] },
    { cells: [t('depth.promised'), promise, el('b', '', w.depth(depth.promised_in))] },
    { cells: [t('depth.most'), t('inspector.trim'), el('b', '', w.depth(depth.most_in))] },
    ...(depth.cavity_in === undefined ? [] : [{ cells: [t('depth.cavity'), '', w.depth(depth.cavity_in)] }]),
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
  const held = cover?.enough === undefined || cover.enough === null ? (cover?.chosen === 'tested_coating' ? 'report' : '') : !cover.enough ? 'short' : 'enough';
  const enough = held && t(`inspector.cover_${held}`);
  const cost = cover?.cost === undefined || cover.cost === null ? '' : t('inspector.cover_cost', { area: w.area(cover.area_ft2), price: w.money(cover.price_ft2), cost: w.money(cover.cost) });
  return section(t('inspector.chosen'), lines(t('inspector.chosen'), [[t('paper.what')], ['', 'r']], [
    fact(t('inspector.way'), el('b', '', t(`fields.choice.code_path.${way}`)), t(`inspector.way.${way}`)),
    ...(target ? [fact(t('inspector.target'), target)] : []),
    fact(t('inspector.cover_asked'), el('b', '', t(`inspector.asked.${cover?.asked ?? 'not_said'}`)), entryText(store, 'surface', surface.entries, 'room') || entryText(store, 'job', job.entries, 'room_use')),
    ...(put ? [fact(t('inspector.cover_put'), put, [enough, cost].filter(Boolean).join('; '))] : []),
  ], 'facts'));
}

/** What the foam sheet shows of fire and vapor. @param {Store} store @param {import('../core.js').SurfaceEstimate} one */
function foamSheet(store, one) {
  const foam = byId(store.job.foams, one.foam);
  const shows = (/** @type {string} */ field) => (foam && entryText(store, 'foam', foam.entries, field)) || el('i', '', t('inspector.not_on_sheet'));
  return section(t('inspector.foam', { name: foam?.name.trim() || t('depth.foam_unnamed') }), lines(t('inspector.foam_sheet'), [[t('paper.what')], ['', 'r']],
    ['density', 'flame', 'smoke', 'tested_thickness', 'permeance'].map((field) => ({ cells: [t(`inspector.sheet.${field}`), shows(field)] })), 'facts'));
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
  return section(t('inspector.built'), lines(t('inspector.built'), [[t('inspector.layer')], [t('inspector.thick'), 'r'], [w.metric ? 'RSI' : 'R', 'r']], [
    film('outside', whole.outside_film_r), ...at('outside'),
    { cells: [t(across ? 'inspector.foam_across' : 'inspector.foam_between'), w.depth(whole.foam_in), w.r(whole.foam_r)] },
    ...at('cavity'), ...at('inside'), film('inside', whole.inside_film_r),
    { kind: 'whole', cells: [t('inspector.foam_path'), '', w.r(whole.foam_path_r)] },
    ...(whole.member_path_r === undefined || whole.member_path_r === null ? [] : [{ cells: [t('inspector.member_path', { share: w.pct(whole.framing_pct) }), '', w.r(whole.member_path_r)] }]),
    { cells: [t('inspector.u'), '', el('b', '', w.u(whole.u))] },
    { cells: [t('inspector.u_upper'), '', w.u(whole.u_isothermal)] },
    { cells: [t('inspector.effective'), '', el('b', '', w.r(whole.effective_r))] },
  ]));
}

/** How a rule bears on the surface, in a word. @type {Partial<Record<import('../core.js').Stands, string>>} */
const HERE = { applies: 'applies', not_said: 'open', blank: 'open', outside: 'not_met', beyond_sheet: 'not_met', not_met: 'not_met' };

/** Every rule: what it asks, at which depth, where it stands, how sure that is, whether it applies. @param {Store} store @param {Depth} depth */
function rules(store, depth) {
  const w = figures(store.job.units);
  const zone = zoneName(store);
  const rows = depth.marks.map((rule) => {
    const at = rule.at_in === undefined || rule.at_in === null ? '' : w.depth(rule.at_in);
    const here = HERE[rule.stands] ?? 'no';
    const own = `inspector.stands.${rule.stands}`;
    const said = t(`depth.rule.${rule.rule}`, facts(rule, w, depth.target_r, zone));
    // Its words name no R, and the table holds one.
    const name = rule.rule === 'class_three' && rule.asks !== undefined && rule.asks !== null ? `${said} (${w.r(rule.asks)})` : said;
    const why = here === 'applies' ? '' : [has(own) ? t(own) : t(`depth.stands.${rule.stands}`), rule.lacks.map((one) => t(`fields.${one}`)).join(', ')].filter(Boolean).join(' ');
    return { kind: here === 'no' ? 'off' : '', cells: [
      told(name, why ? [why] : []),
      at ? t(`inspector.bound.${rule.bound}`, { depth: at }) : '–',
      [rule.section, rule.edition].filter(Boolean).join(', ') || '–',
      t(`inspector.trust.${rule.trust}`), el(here === 'applies' ? 'b' : 'span', '', t(`inspector.here.${here}`)),
    ] };
  });
  const unsure = depth.marks.some((one) => one.trust === 'memory' || one.trust === 'derived');
  return section(t('inspector.rules'),
    lines(t('inspector.rules'), [[t('inspector.rule')], [t('inspector.depth')], [t('inspector.stands')], [t('inspector.sure')], [t('inspector.here')]], rows, 'rules'),
    unsure ? el('p', 'note', t('inspector.unsure')) : undefined);
}
