// @ts-check
/** How deep one surface is foamed, and why: the section, the three figures, the way they were chosen. */
import { aimGrip, aimStepper } from './aim.js';
import { answerBar } from './answer.js';
import { ruled } from './cutaway.js';
import { depthFolds } from './depth_folds.js';
import { oldFoam, patches } from './depth_parts.js';
import { describe, nameOf } from './drawn.js';
import { field, fieldId } from './field.js';
import { figures, isRange, ranged } from './figures.js';
import { el } from './list.js';
import { rules } from './marklist.js';
import { breadth, byId, caution, findingNote, head, more, press, redraw, row, src, to, way, worked } from './parts.js';
import { jobName } from './sheet.js';
import { wayTaken, waysOut } from './waysout.js';
import { t } from './words.js';
import { workLine } from './workline.js';

export const words = ['takeoff', 'sheet', 'surface', 'depth', 'spraying', 'ready', 'kits', 'work'];

const WAYS = /** @type {const} */ (['typed', 'rules', 'target_r', 'one_kit', 'left_over']);

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store, route) {
  const id = route.id;
  const get = () => byId(store.job.surfaces, id);
  const top = el('div');
  const caption = el('figcaption');
  const grip = aimGrip(store, id, update);
  const figure = el('figure', 'draw', grip.node, caption);
  const notYet = el('p', 'note pad', t('depth.not_yet'));
  const stepper = aimStepper(store, id);
  const three = el('div');
  const notes = el('div', 'says');
  const sources = el('div');
  const origins = more(t('depth.where_from'), el('ul', 'rows',
    origin(t('depth.promised'), t('depth.from_promise'), t('sources.depth_tolerance')),
    origin(t('depth.r'), t('depth.from_r'), t('sources.ftc_460_17')),
    origin(t('depth.most'), t('depth.from_most'), t('sources.depth_tolerance'))));
  const bar = answerBar();
  const make = (/** @type {string} */ name, /** @type {string} */ hint = '') => field({ store, part: 'surface', id, field: name, source: true, hint });
  const typed = make('depth');
  const target = make('target_r');
  const kit = el('select', { id: fieldId('surface', id, 'depth_kit'), change: () => store.dispatch({ do: 'depth_way', id, way: 'one_kit', kit: Number(kit.value) }) });
  const kitPart = el('div', 'field', el('label', { for: kit.id }, t('depth.which_kit')), el('span', 'box pull', kit));
  const foam = el('select', { id: fieldId('surface', id, 'foam'), change: () => store.dispatch({ do: 'foam', id, foam: Number(foam.value) }) });
  const foamPart = el('div', 'field full', el('label', { for: foam.id }, t('depth.foam')), el('span', 'box pull', foam));
  const exposure = make('exposure', t('depth.exposure_hint'));
  const spot = make('spot', t('depth.spot_hint'));
  const there = make('existing', t('depth.existing_hint'));
  const same = make('existing_same', t('depth.existing_same_hint'));
  const uneven = make('uneven', t('depth.uneven_hint'));
  const toPlace = way(t('depth.say_where'), to('place'));
  const found = el('div');
  const out = el('div');
  const around = depthFolds(store, id);
  const patched = patches(store, id);
  const others = [make('cavity', t('depth.cavity_hint')), make('promise', t('depth.promise_hint')), make('most', t('depth.most_hint'))];
  const radios = WAYS.map((one) => {
    const input = el('input', { type: 'radio', name: `way-${id}`, value: one, change: () => store.dispatch({ do: 'depth_way', id, way: one }) });
    const chosen = el('span', 'v');
    return { one, input, chosen, node: el('label', 'opt', el('span', '', input, t(`depth.way.${one}`), el('small', '', t(`depth.way_why.${one}`))), chosen) };
  });
  const ways = el('fieldset', 'pick', el('legend', 'vh', t('depth.ways')), el('div', 'opts', ...radios.map((one) => one.node)));

  root.append(el('main', '', top, el('div', 'pad', el('div', 'fields one', exposure.node, spot.node)), figure, notYet, el('div', 'pad top', stepper.node, three, notes, out, el('div', 'folds', ...around.nodes),
    el('h2', 'bar', t('depth.ways')), ways, toPlace, el('div', 'fields one', typed.node, target.node, kitPart),
    el('h2', 'bar', t('depth.around')), el('div', 'fields', ...others.map((one) => one.node), uneven.node, foamPart),
    el('h2', 'bar', t('depth.there')), el('div', 'fields one', there.node, same.node), found, patched.node, el('div', 'folds', origins), sources)), bar.node);

  function update() {
    bar.update(store);
    const surface = get();
    if (!surface) return redraw(root, [el('main', '', head({ back: [to('sheet'), jobName(store)], title: t('surface.gone') })), bar.node]);
    around.update();
    const { job, estimate } = store;
    const w = figures(job.units);
    const one = estimate && byId(estimate.surfaces, id);
    const depth = one?.depth;
    const at = job.surfaces.indexOf(surface);
    redraw(top, [head({ back: [to('sheet', 'depth'), t('sheet.sheet')], side: t('sheet.of', { n: at + 1, of: job.surfaces.length }), title: t('depth.title', { name: nameOf(surface) }), sub: describe(store, one, surface) }), el('div', 'pad', workLine(store, id, w.r))]);
    figure.hidden = !depth;
    notYet.hidden = !!depth;
    if (depth) {
      const drawn = ruled(store, surface, depth, one?.lifts?.count, breadth(root), grip.held());
      grip.update(drawn);
      redraw(caption, [el('span', '', t('depth.seen')), el('span', '', t(w.metric ? 'sheet.square_cm' : 'sheet.square_in')), el('span', '', t('depth.dashed')), drawn.left ? el('span', '', t('depth.marks_left', { n: drawn.left })) : undefined]);
    }
    stepper.update();
    redraw(three, [depth ? el('ul', 'rows plain',
      isRange(depth.aim_in) ? row(t('depth.aim'), t('depth.aim_range'), ranged(depth.aim_in, w.depth)) : undefined,
      depth.needed_in === undefined ? undefined : row(t('depth.needed', { r: w.r(depth.target_r) }), t('depth.needed_why'), worked(w.depth(depth.needed_in), 'surface', id, 'depth.needed_in')),
      row(t('depth.promised'), depth.promised_r === undefined ? t('takeoff.no_r') : t('depth.r_at', { r: w.r(depth.promised_r), depth: w.depth(depth.promised_r_at_in) }), worked(w.depth(depth.promised_in), 'surface', id, 'depth.promised_in')),
      row(t('depth.most'), t('depth.most_why'), worked(w.depth(depth.most_in), 'surface', id, 'depth.most_in')),
      one?.area?.claims_r === false ? row(t('depth.strip'), t('depth.strip_why'), '') : undefined,
      depth.planning_r === undefined ? undefined : row(t('depth.planning'), t('depth.planning_why'), worked(w.r(depth.planning_r), 'surface', id, 'depth.planning_r')),
      depth.cavity_in === undefined ? undefined : row(t('depth.cavity'), '', w.depth(depth.cavity_in))) : undefined]);
    const own = (estimate?.findings ?? []).filter((found) => found.at.part === 'surface' && found.at.id === id && (DEPTH.has(found.code)));
    redraw(notes, [...own.map(findingNote), (one?.lifts?.each_in ?? 0) > 2 ? undefined : caution('depth.exposed')]);
    for (const radio of radios) {
      radio.input.checked = surface.depth_way === radio.one;
      radio.chosen.textContent = t(surface.depth_way === radio.one ? 'depth.chosen' : 'depth.choose_way');
    }
    typed.node.hidden = surface.depth_way !== 'typed';
    // A target holds as a least whichever depth is typed.
    toPlace.hidden = surface.depth_way !== 'rules' || !!estimate?.place.zone;
    target.node.hidden = !['target_r', 'typed', 'rules'].includes(surface.depth_way);
    kitPart.hidden = surface.depth_way !== 'one_kit';
    spot.node.hidden = surface.shape === 'rim_run';
    same.node.hidden = !depth?.existing;
    for (const shown of [typed, target, exposure, spot, there, same, uneven, patched, ...others]) shown.update();
    redraw(found, [oldFoam(store, id, depth)]);
    redraw(out, [depth ? waysOut(store, id, depth, one?.foam || job.foam, !!grip.held()) : wayTaken(store, id)]);
    options(kit, job.kits.map((it) => [it.id, it.name || t('kits.unnamed')]), surface.depth_kit);
    const foams = job.foams.map((it) => /** @type {[number, string]} */ ([it.id, it.name || t('depth.foam_unnamed')]));
    options(foam, [[0, t('depth.foam_of_job', { name: byId(job.foams, job.foam)?.name ?? '–' })], ...foams], surface.foam);
    const sheet = byId(job.foams, one?.foam ?? job.foam);
    redraw(sources, [depth ? el('h2', 'bar', t('depth.mark_origins')) : undefined, depth ? rules(store, depth, one?.foam || job.foam) : undefined,
    el('div', 'dos', sheet ? way(t('depth.open_sheet', { name: sheet.name }), to('foam', sheet.id)) : undefined, way(t('depth.to_surface'), to('surface', id)), way(t('depth.print'), to('paper', 'inspector')))]);
  }

  return { title: () => { const surface = get(); return surface ? t('depth.title', { name: nameOf(surface) }) : t('surface.gone'); }, update };
}

const DEPTH = new Set(['target_beyond_sheet', 'no_listed_r', 'below_listed', 'deeper_than_cavity', 'fill_squeezed', 'whole_short', 'whole_out_of_reach', 'depths_cross', 'thinner_than_lift', 'no_least_here', 'code_out_of_reach', 'code_short', 'code_u_short', 'code_short_memory', 'way_from_memory', 'target_not_promised', 'small_ceiling_too_large', 'unvented_short', 'share_short', 'foam_too_open', 'class_three_short', 'retarder_not_allowed', 'lifts_cross', 'thick_lift', 'no_sheet', 'no_depth', 'rules_cross', 'exposed_too_thick', 'exposed_over_tested', 'exposed_not_available', 'no_tolerance_left', 'cover_asked', 'ignition_asked', 'bare_in_weather', 'cover_not_enough', 'cover_by_report', 'cover_since_newer', 'cover_unclear', 'old_foam', 'nothing_to_add', 'patches_exceed', 'nothing_left']);

/** @param {string} what @param {string} why @param {string} from */
const origin = (what, why, from) => el('li', 'tall', el('b', '', what), el('p', 'note', why), src(from));

/** Options of a choice, written only where they differ. @param {HTMLSelectElement} select @param {[number, string][]} list @param {number} chosen */
export function options(select, list, chosen) {
  redraw(select, list.map(([value, name]) => el('option', { value }, name)));
  if (document.activeElement !== select) select.value = String(chosen);
}

export { press };
