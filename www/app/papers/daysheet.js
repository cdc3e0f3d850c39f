// @ts-check
/** The day sheet on paper: the checklist in the order of work, readings, passes with room for their times, kits and probes. */
import { nameOf } from '../drawn.js';
import { bare, figures, unitOf } from '../figures.js';
import { el } from '../list.js';
import { byId, caution } from '../parts.js';
import { has, span, t } from '../words.js';
import { entered, leaf, lines, section, tick, when } from './leaf.js';
import { questions, readings } from './readings.js';

/** @typedef {import('../store.js').Store} Store */

const BEFORE = ['warm', 'upright', 'bare', 'edges', 'idle', 'off_ratio'];

/** @param {Store} store */
export function daySheet(store) {
  const { estimate } = store;
  if (!estimate) return undefined;
  return leaf(store, 'day',
    el('p', 'lead', t('paper.day_how')),
    section(t('paper.checklist'), ...checklist(store)),
    section(t('paper.readings'), readings(store, true), el('p', 'note', t('paper.readings_note')), questions(store, true)),
    section(t('paper.pass_log'), passes(store), el('p', 'note', t('spraying.waits_note'))),
    section(t('paper.kit_log'), kits(store)),
    section(t('paper.probes'), probes(store), el('p', 'note', t('paper.probes_note'))),
    section(t('paper.back'), lines(t('paper.back'), [[t('paper.what')], ['', 'w']], ['last_pass', 'exhaust_off', 'label_hours', 'workers_hours', 'not_before'].map((one) => ({ cells: [t(`paper.${one}`), undefined] })), 'write'), el('p', 'note', t('spraying.out_do'))),
    el('div', 'signed', el('div', '', t('paper.sprayed_by')), el('div', '', t('paper.checked_by'))),
    section(t('spraying.safe'), el('div', 'says cautions', ...['spraying.protect', 'spraying.air', 'spraying.out', 'spraying.burn', 'spraying.cylinder', 'ready.flames', 'ready.cure'].map(caution))));
}

/** The lines of the day, and those of the spray screen where the day is not worked out. @param {Store} store */
function checklist(store) {
  /** @type {{key: string, state: string, surface: number, done_ms?: number}[]} */
  const steps = (/** @type {any} */ (store.estimate).day?.steps ?? []).filter((/** @type {any} */ one) => has(`day.step.${one.key}`) && one.key !== 'lift' && one.key !== 'edges');
  /** @param {string} what @param {string} why @param {number | undefined} [done] @param {boolean} [skipped] */
  const row = (what, why, done, skipped) => ({ cells: [el('span', 'todo', tick(done !== undefined && !skipped), el('span', '', el('b', '', what), why ? el('small', '', why) : undefined)), done === undefined ? undefined : skipped ? t('paper.not_needed') : when(done)] });
  const rows = steps.length
    ? steps.map((one) => row(t(`day.step.${one.key}`), has(`day.step.${one.key}_first`) ? t(`day.step.${one.key}_first`) : '', one.done_ms ?? undefined, one.state === 'skipped'))
    : [...['protect', 'air', 'out'].map((one) => row(t(`spraying.${one}`), t(`spraying.${one}_do`))), row(t('ready.flames'), t('ready.flames_do')), ...BEFORE.map((one) => row(t(`spraying.do.${one}`), t(`spraying.why.${one}`)))];
  return [lines(t('paper.checklist'), [[t('paper.what')], [t('paper.time'), 'w']], rows, 'write checks'), el('p', 'note', t('spraying.practice'))];
}

/** A row a pass; what was marked on the day stands in it, the rest is left to the pen. @param {Store} store */
function passes(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const rows = (estimate?.surfaces ?? []).flatMap((one) => {
    const surface = byId(job.surfaces, one.id);
    const it = one.lifts;
    if (!surface || !it) return [];
    return Array.from({ length: Math.min(it.count, MOST_PASSES) }, (_, at) => {
      const event = (job.events ?? []).find((event) => event.what === 'lift' && event.surface === one.id && event.lift === at + 1);
      const wait = it.count === 1 || at + 1 === it.count ? '–' : it.wait_min === undefined ? t('paper.label') : span(it.wait_min);
      return { cells: [t('paper.pass_of', { name: nameOf(surface), n: at + 1, of: it.count }), w.depth(it.each_in), wait, undefined, undefined, event ? when(event.at.ms) : undefined, event ? entered(store, 'event', event.entries).join('; ') || undefined : undefined] };
    });
  });
  return lines(t('paper.pass_log'), [[t('paper.pass')], [t('paper.thick'), 'r'], [t('paper.then_wait'), 'r'], [t('kits.kit'), 'w'], [t('paper.start'), 'w'], [t('paper.end'), 'w'], [t('paper.depth_read'), 'w']], rows, 'write');
}

/** Far more than a label's largest pass ever asks for: beyond it the sheet is not filled in by hand. */
const MOST_PASSES = 60;
const MOST_KITS = 40;

/** @param {Store} store */
function kits(store) {
  const { job, estimate } = store;
  const p = estimate?.purchase;
  const size = (/** @type {number} */ kit) => p?.sizes.find((one) => one.kit === kit)?.label ?? 0;
  const names = [...(p?.buy?.buy ?? [])].sort((a, b) => size(b.kit) - size(a.kit)).flatMap(({ kit, count }) => Array.from({ length: Math.min(count, MOST_KITS) }, () => byId(job.kits, kit)?.name || t('kits.unnamed'))).slice(0, MOST_KITS);
  return lines(t('paper.kit_log'), [[t('kits.kit')], [t('paper.batch_a'), 'w'], [t('paper.batch_b'), 'w'], [t('paper.label_date'), 'w'], [t('paper.opened'), 'w'], [t('paper.shut'), 'w'], [t('paper.used'), 'w']],
    [...names, ''].map((name, at) => ({ cells: [name ? t('kits.numbered', { n: at + 1, name }) : t('paper.other_kit'), ...Array(6).fill(undefined)] })), 'write');
}

/** @param {Store} store */
function probes(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const unit = unitOf(w.depth(1));
  return lines(t('paper.probes'), [[t('sheet.col_surface')], [t('paper.spec', { unit }), 'r'], [t('paper.thinnest', { unit }), 'w'], [t('paper.probe_count'), 'w'], [t('paper.r_listed'), 'w']], job.surfaces.map((surface) => {
    const depth = estimate ? byId(estimate.surfaces, surface.id)?.depth : undefined;
    return { cells: [nameOf(surface), depth ? t('sheet.span', { low: bare(w.depth(depth.promised_in)), high: bare(w.depth(depth.most_in)) }) : t('paper.no_depth'), undefined, undefined, undefined] };
  }), 'write');
}
