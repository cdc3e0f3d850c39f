// @ts-check
/**
 * How a figure was reached: a computation sheet. The steps are the core's constant table; the figures in them are
 * those of the estimate, looked up by the paths that the table names.
 */
import { answerBar } from './answer.js';
import { checkName, describe, nameOf } from './drawn.js';
import { bare, figures, isRange, unitOf } from './figures.js';
import { el } from './list.js';
import { byId, head, redraw, src, to, way } from './parts.js';
import { jobName } from './sheet.js';
import { writer } from './stepunits.js';
import { dayOf } from './wallclock.js';
import { part, t } from './words.js';

/** @typedef {import('./core.js').Step} Step */
/** @typedef {import('./core.js').Scope} Scope */
/** @typedef {(step: Step) => boolean} Leave */
/** @typedef {import('./store.js').Store} Store */

export const words = ['takeoff', 'sheet', 'working', 'ready', 'kits'];

/** @type {Step[]} */
let table = [];

/** Resolves when the table of steps is there: the core's own, printed when the site was built, since only this sheet and its paper ask for it. */
export async function ready() {
  if (table.length) return;
  const answer = await fetch(new URL('./steps.json', import.meta.url));
  if (!answer.ok) throw new Error(`steps.json: ${answer.status}`);
  table = await answer.json();
}

/** The value at a path; `measures.length` is the measure of that field. @param {any} from @param {string} path @returns {any} */
export function at(from, path) {
  let here = from;
  const names = path.split('.');
  for (let i = 0; i < names.length && here !== undefined && here !== null; i += 1) {
    if (Array.isArray(here)) {
      const named = here.find((one) => one?.field === names[i]);
      if (!named) return here.map((one) => at(one, names.slice(i).join('.'))).filter((one) => one !== undefined);
      here = named.value;
    } else here = here[names[i]];
  }
  return here === null ? undefined : here;
}

/** A value of the estimate in words: a figure, a range, or several joined. @param {any} value @param {(value: number) => string} write @param {string} [join] @returns {string} */
function shown(value, write, join = ' + ') {
  if (Array.isArray(value)) return value.length ? value.map((one) => shown(one, write)).join(join) : '0';
  if (typeof value === 'number') return write(value);
  // The range stands beside the result; in the formula the likely value is enough.
  if (value && typeof value === 'object' && 'likely' in value) return write(value.likely);
  return value === undefined ? '–' : String(value);
}

/** The steps of one scope, numbered on. @param {Store} store @param {Scope} of @param {any} from @param {{n: number}} count @param {string} name @param {{only?: string[], lit?: string, scope?: string, leave?: Leave, bare?: Leave}} [about] `only` the results that begin so; `lit` the one pressed; `leave` the steps that are not shown; `bare` those without their source */
function steps(store, of, from, count, name, { only, lit = '', scope = '', leave, bare: unsourced } = {}) {
  const w = figures(store.job.units);
  const rows = table.filter((step) => step.scope === of && !leave?.(step) && (!only || only.some((one) => step.result.startsWith(one)))).flatMap((step) => {
    const result = at(from, step.result);
    if (result === undefined || Array.isArray(result) && !result.length) return [];
    // Nothing added up is no figure.
    if (result === 0 && step.inputs.length === 1 && at(from, step.inputs[0])?.length === 0) return [];
    if (step.when && !step.when.is.includes(String(at(from, step.when.at)))) return [];
    count.n += 1;
    /** @type {Record<string, string>} */
    const given = {};
    for (const path of step.inputs) given[path.slice(path.lastIndexOf('.') + 1)] = shown(at(from, path), writer(w, path, /^(value|most)$/.test(path) ? step.unit : undefined));
    const write = writer(w, step.result, step.unit);
    const band = typeof result === 'object' && 'likely' in result ? result : { low: result, likely: result, high: result };
    const written = write(band.likely);
    const total = step.result === 'quantity.to_spray_up';
    const kind = [total ? 'total' : PARTS.has(step.result) ? 'part' : '', step.result === lit && of === scope ? 'lit' : ''].filter(Boolean).join(' ');
    return [el('li', { class: kind, 'aria-current': step.result === lit && of === scope && 'true' }, el('span', 'n', String(count.n)), el('div', 'body',
      el('p', 'w', part(`working.${step.code}`, 'what', given)), el('p', 'f', part(`working.${step.code}`, 'formula', given)),
      el('p', 'note', part(`working.${step.code}`, 'why', given)), step.source && !unsourced?.(step) ? src(t(`sources.${step.source}`)) : undefined),
    el('p', 'res', bare(written), el('small', '', unitOf(written)), isRange(band) ? el('small', '', t('sheet.working_range', { low: bare(write(band.low)), high: bare(write(band.high)) })) : undefined))];
  });
  return rows.length ? [el('li', 'grp', el('span', 'n'), el('h2', 'body', name)), ...rows] : [];
}

/** Every step of the job, in the order of the work, as a list numbered from first to last. @param {Store} store @param {Leave} [leave]  steps that are not shown @param {Leave} [unsourced]  steps whose source is not said */
export function everyStep(store, leave, unsourced) {
  const { estimate, job } = store;
  if (!estimate) return [];
  const count = { n: 0 };
  return [
    ...estimate.surfaces.flatMap((one) => {
      const surface = byId(job.surfaces, one.id);
      return surface ? steps(store, 'surface', one, count, nameOf(surface), { leave, bare: unsourced }) : [];
    }),
    ...steps(store, 'job', estimate, count, t('sheet.working_all', { n: estimate.quantity.surfaces }), { only: ['quantity.'], leave, bare: unsourced }),
    ...estimate.purchase.sizes.flatMap((size) => steps(store, 'kit', size, count, byId(job.kits, size.kit)?.name || t('kits.unnamed'), { leave, bare: unsourced })),
    ...estimate.purchase.stock.flatMap((one) => steps(store, 'stock', one, count, byId(job.stock, one.kit)?.name || t('kits.unnamed'), { leave, bare: unsourced })),
    ...steps(store, 'job', estimate, count, t('kits.title'), { only: ['purchase.'], leave, bare: unsourced }),
    ...steps(store, 'job', estimate, count, t('sheet.working_passes'), { only: ['spraying.'], leave, bare: unsourced }),
    ...steps(store, 'job', estimate, count, t('ready.moisture'), { only: ['readiness.', 'moisture.'], leave, bare: unsourced }),
    ...steps(store, 'job', estimate, count, part('working.purge_time', 'what', {}), { only: ['people.'], leave, bare: unsourced }),
    ...estimate.conditioning.flatMap((one) => steps(store, 'warming', one, count, byId(job.warming ?? [], one.id)?.name || t('ready.kit'), { leave, bare: unsourced })),
    ...estimate.readiness.checks.flatMap((check) => steps(store, 'check', check, count, checkName(check), { leave, bare: unsourced })),
    ...estimate.weather.days.flatMap((day) => steps(store, 'forecast', day, count, dayOf(day.day * 1440), { leave, bare: unsourced })),
    ...steps(store, 'job', estimate, count, t('fields.heat_what'), { only: ['weather.'], leave, bare: unsourced }),
    ...estimate.day.runs.flatMap((run) => steps(store, 'run', run, count, byId(job.events, run.id)?.name.trim() || t('sheet.kits'), { leave, bare: unsourced })),
  ];
}

/**
 * A computation sheet by itself: its head, its steps and the note below them.
 * @param {Store} store @param {import('./view.js').Route} route @param {() => [string, string]} back  the way back and what it is called
 * @param {Leave} [leave]  steps that are not shown
 */
export function workingSheet(store, route, back, leave) {
  const [scope = 'job', idText = '0', lit = ''] = route.rest;
  const id = Number(idText);
  const top = el('div');
  const sheet = el('ol', 'calc');
  /** @param {Scope} of @param {any} from @param {{n: number}} count @param {string} name @param {string[]} [only] */
  const group = (of, from, count, name, only) => steps(store, of, from, count, name, { only, lit, scope, leave });
  const foot = el('div', 'pad top tail', el('p', 'note', t('sheet.working_note')));

  function update() {
    const { estimate, job } = store;
    if (!estimate) return;
    const w = figures(job.units);
    const count = { n: 0 };
    /** @type {(Node | undefined)[]} */
    const rows = [];
    let title = t('sheet.working_title');
    let sub = t('sheet.working_sub');
    const surfaceGroup = (/** @type {import('./core.js').SurfaceEstimate} */ one) => {
      const surface = byId(job.surfaces, one.id);
      return surface ? group('surface', one, count, nameOf(surface)) : [];
    };
    if (scope === 'surface') {
      const one = byId(estimate.surfaces, id);
      const surface = byId(job.surfaces, id);
      if (one && surface) {
        rows.push(...surfaceGroup(one));
        title = nameOf(surface);
        sub = describe(store, one, surface);
      }
    } else if (scope === 'kit') {
      const size = estimate.purchase.sizes.find((one) => one.kit === id);
      title = byId(job.kits, id)?.name || t('kits.unnamed');
      sub = t('kits.from_label');
      rows.push(...group('kit', size, count, title));
    } else if (scope === 'stock') {
      title = byId(job.stock, id)?.name || t('kits.unnamed');
      sub = t('kits.from_shelf');
      rows.push(...group('stock', estimate.purchase.stock.find((one) => one.kit === id), count, title));
    } else if (scope === 'check') {
      const check = estimate.readiness.checks.find((one) => one.id === id);
      if (check) {
        title = checkName(check);
        sub = t('ready.title');
        rows.push(...group('job', estimate, count, t('ready.moisture'), ['readiness.']), ...group('check', check, count, title));
      }
    } else if (scope === 'warming') {
      title = byId(job.warming ?? [], id)?.name || t('ready.kit');
      sub = t('ready.title');
      rows.push(...group('warming', byId(estimate.conditioning, id), count, title));
    } else if (scope === 'run') {
      const run = estimate.day.runs.find((one) => one.id === id);
      title = byId(job.events, id)?.name.trim() || t('sheet.kits');
      sub = t('kits.from_label');
      if (run) rows.push(...group('run', run, count, title));
    } else if (scope === 'forecast') {
      const day = byId(estimate.weather.days, id);
      if (day) {
        title = dayOf(day.day * 1440);
        sub = t('sources.day_curve');
        rows.push(...group('forecast', day, count, title));
      }
    } else if (lit.startsWith('weather')) {
      title = t('fields.heat_what');
      sub = t('sources.heat_plan');
      rows.push(...group('job', estimate, count, title, ['weather.']));
    } else if (lit.startsWith('purchase')) {
      title = t('kits.title');
      for (const size of estimate.purchase.sizes) rows.push(...group('kit', size, count, byId(job.kits, size.kit)?.name || t('kits.unnamed')));
      for (const one of estimate.purchase.stock) rows.push(...group('stock', one, count, byId(job.stock, one.kit)?.name || t('kits.unnamed')));
      rows.push(...group('job', estimate, count, t('kits.title'), ['quantity.to_spray', 'purchase.']));
    } else if (lit.startsWith('readiness')) {
      title = t('ready.title');
      rows.push(...group('job', estimate, count, t('ready.moisture'), ['readiness.']));
      for (const check of estimate.readiness.checks) rows.push(...group('check', check, count, checkName(check)));
    } else if (lit.startsWith('moisture')) {
      title = t('ready.moisture');
      rows.push(...group('job', estimate, count, title, ['moisture.']));
    } else if (lit.startsWith('people')) {
      title = part('working.purge_time', 'what', {});
      rows.push(...group('job', estimate, count, title, ['people.']));
    } else if (lit.startsWith('spraying')) {
      title = t('sheet.working_passes');
      rows.push(...group('job', estimate, count, t('sheet.working_passes'), ['spraying.']));
    } else {
      title = t('sheet.working_reached', { figure: bare(w.foam(estimate.quantity.to_spray_up.likely)) });
      for (const one of estimate.surfaces) rows.push(...surfaceGroup(one));
      rows.push(...group('job', estimate, count, t('sheet.working_all', { n: estimate.quantity.surfaces }), ['quantity.']));
    }
    redraw(top, [head({ back: back(), title, sub })]);
    redraw(sheet, rows.length ? rows : [el('li', 'grp', el('span', 'n'), el('p', 'body', t('sheet.working_none')))]);
  }

  return { top, sheet, foot, update };
}

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store, route) {
  const { top, sheet, foot, update } = workingSheet(store, route, () => [to('sheet'), jobName(store)]);
  const bar = answerBar();
  let moved = false;
  foot.append(el('div', 'dos no-print', way(t('sheet.working_print'), to('paper', 'working'))));
  root.append(el('main', '', top, sheet, foot), bar.node);
  return {
    title: t('sheet.working_title'),
    update() {
      bar.update(store);
      update();
      if (!moved && store.estimate) sheet.querySelector('.lit')?.scrollIntoView({ block: 'center' });
      moved ||= store.estimate !== undefined;
    },
  };
}

/** Results that close a part of the sheet. */
const PARTS = new Set(['in_place', 'quantity.in_place', 'area.net_ft2', 'usable', 'purchase.buy.left', 'inside_by_f']);
