// @ts-check
/** The drawings of a job with their words: shared by the sheet, the screens and the desktop frame. */
import { call } from './calls.js';
import { bare, figures } from './figures.js';
import { allSurfaces } from './drawing/strip.js';
import { depthBars, liftBars } from './drawing/depths.js';
import { kitOutlines } from './drawing/kits.js';
import { readingsAxis } from './drawing/readings.js';
import { nameOf, squareWords } from './named.js';
import { byId } from './parts.js';
import { span, t } from './words.js';

export { letters, nameOf, squareWords } from './named.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').Estimate} Estimate */

const MOST_DRAWN = 12;

/** A surface in a few words: its measures, or its shape. @param {Store} store @param {import('./core.js').SurfaceEstimate | undefined} one @param {import('./job.js').Surface} surface */
export function describe(store, one, surface) {
  const w = figures(store.job.units);
  const measured = (one?.area?.measures ?? []).filter(({ field }) => ['length', 'width', 'height', 'perimeter'].includes(field)).map(({ value }) => w.length(value.likely));
  return measured.length ? measured.join(' × ') : t(`takeoff.shape.${surface.shape}`);
}

/** All surfaces at one scale. @param {Store} store @param {number} width */
export function strip(store, width) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const drawn = job.surfaces.slice(0, MOST_DRAWN).flatMap((surface) => {
    const outline = call('outline', job, surface.id);
    if (!outline) return [];
    const one = estimate && byId(estimate.surfaces, surface.id);
    return [{
      name: nameOf(surface), sub: outline.true_shape ? describe(store, one, surface) : w.area(one?.area?.net_ft2.likely),
      w: outline.width_in, h: outline.height_in, voids: outline.openings.map((opening) => opening.rect),
    }];
  });
  if (!drawn.length) return undefined;
  const { svg, square } = allSurfaces(drawn, { width, metric: w.metric, label: t('sheet.strip_label', { n: drawn.length, names: drawn.map((one) => one.name).join(', ') }) });
  return { svg, square: squareWords(w.metric, square), hidden: job.surfaces.length - drawn.length };
}

/** Depths of the surfaces that have one. @param {Store} store */
export function bars(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  return (estimate?.surfaces ?? []).flatMap(({ id, depth, lifts }) => {
    const surface = byId(job.surfaces, id);
    if (!surface || !depth) return [];
    const { aim_in, promised_in, most_in, cavity_in } = depth;
    const aim = aim_in.low === aim_in.high ? bare(w.depth(aim_in.likely)) : t('sheet.span', { low: bare(w.depth(aim_in.low)), high: bare(w.depth(aim_in.high)) });
    return [{
      id, name: nameOf(surface), sub: cavity_in ? t('takeoff.cavity_of', { depth: w.depth(cavity_in) }) : '',
      aim: aim_in.likely, promised: promised_in, most: most_in, cavity: cavity_in, lifts: lifts?.count,
      figures: t('takeoff.bar_aim', { aim }), rest: t('takeoff.bar_rest', { promised: bare(w.depth(promised_in)), most: w.depth(most_in) }),
    }];
  });
}

/** @param {Store} store @param {number} width */
export function depths(store, width) {
  const list = bars(store);
  if (!list.length) return undefined;
  return depthBars(list, { width, label: t('takeoff.bars_label', { list: list.map((one) => `${one.name}: ${one.figures}${one.rest}`).join('; ') }) });
}

/** @param {Store} store @param {number} width */
export function lifts(store, width) {
  const w = figures(store.job.units);
  const list = bars(store).flatMap((bar) => {
    const one = store.estimate && byId(store.estimate.surfaces, bar.id)?.lifts;
    if (!one) return [];
    return [{ ...bar, sub: t('spraying.aim_of', { depth: w.depth(bar.aim) }), lifts: one.count, figures: t('spraying.bar', { n: one.count, each: w.depth(one.each_in) }), rest: one.count > 1 && one.wait_min !== undefined ? t('spraying.bar_wait', { wait: span(one.wait_min) }) : '' }];
  });
  if (!list.length) return undefined;
  return liftBars(list, { width, label: t('spraying.bars_label', { list: list.map((one) => `${one.name}: ${one.figures}${one.rest}`).join('; ') }) });
}

/** A purchase in words: "2 Large, 1 Small". @param {Store} store @param {import('./core.js').KitCount[]} buy */
export const mixWords = (store, buy) => [...buy].sort((a, b) => labelOf(store, b.kit) - labelOf(store, a.kit)).map(({ kit, count }) => t('kits.so_many', { n: count, name: byId(store.job.kits, kit)?.name || t('kits.unnamed') })).join(', ');

/** @param {Store} store @param {number} kit */
const labelOf = (store, kit) => store.estimate?.purchase.sizes.find((one) => one.kit === kit)?.label ?? 0;

/** The kits to buy, as far as each will be used. @param {Store} store @param {number} width */
export function kits(store, width) {
  const { job, estimate } = store;
  const mix = estimate?.purchase.buy;
  if (!estimate || !mix || !mix.kits) return undefined;
  const w = figures(job.units);
  const each = mix.kits <= 8;
  let need = estimate.purchase.to_buy.likely;
  let number = 0;
  const sizes = mix.buy.flatMap(({ kit, count }) => {
    const size = byId(estimate.purchase.sizes.map((one) => ({ ...one, id: one.kit })), kit);
    return size ? [{ ...size, count, name: byId(job.kits, kit)?.name || t('kits.unnamed') }] : [];
  }).sort((a, b) => b.usable - a.usable);
  const list = sizes.flatMap((size) => Array.from({ length: each ? size.count : 1 }, () => {
    const room = each ? size.usable : size.usable * size.count;
    const used = Math.max(0, Math.min(room, need));
    need -= used;
    number += 1;
    const share = room > 0 ? used / room : 0;
    const state = share >= 0.995 ? t('kits.emptied') : share > 0 ? t('kits.used', { pct: Math.round(share * 100) }) : t('kits.sealed');
    /** @type {[string, string, string]} */
    const lines = [w.foam(used > 0 ? used : room), each ? t('kits.numbered', { n: number, name: size.name }) : t('kits.so_many', { n: size.count, name: size.name }), state];
    return { name: size.name, label: size.label, usable: room, used, count: each ? 1 : size.count, lines };
  }));
  const label = t('kits.drawing_label', { list: list.map((one) => `${one.lines[1]}: ${one.lines[0]}, ${one.lines[2]}`).join('; ') });
  return kitOutlines(list, { width, label });
}

/** What a check is called. @param {Pick<import('./core.js').Check, 'of' | 'name'>} check */
export function checkName(check) {
  const name = check.name.trim();
  if (check.of === 'surface') return name || t('ready.surface');
  return name ? `${t(`ready.${check.of}`)}, ${name}` : t(`ready.name.${check.of}`);
}

/** Checks that are drawn on the axis. @type {ReadonlySet<string>} */
const DRAWN = new Set(['cylinder_a', 'cylinder_b', 'air', 'surface']);

/** @type {Record<import('./core.js').ReadState, 'go' | 'hold' | 'none'>} */
const STATE_MARK = { inside: 'go', close: 'go', outside: 'hold', old: 'none', not_read: 'none' };

/** The readings on their axis. @param {Store} store @param {number} width */
export function readings(store, width) {
  const found = store.estimate?.readiness;
  if (!found) return undefined;
  const w = figures(store.job.units);
  const degrees = (/** @type {number} */ f) => bare(w.temp(f));
  const rows = found.checks.filter((one) => DRAWN.has(one.of)).map((one) => ({
    name: checkName(one),
    sub: one.age_min === undefined || one.value_f === undefined ? '' : t('ready.age', { age: span(one.age_min) }),
    value: one.value_f, least: one.least_f, most: one.most_f, mark: STATE_MARK[one.state],
    figure: one.value_f === undefined ? t('ready.not_read') : degrees(one.value_f),
    remark: one.state === 'close' ? t('ready.close') : one.state === 'old' ? t('ready.old_axis') : '',
    surface: one.of === 'surface',
  }));
  if (!rows.length) return undefined;
  const dew = found.dew;
  const written = dew ? { point: degrees(dew.point_f.likely) + '°', spread: w.step(dew.spread_f) } : { point: '', spread: '' };
  const label = t('ready.drawing_label', { list: rows.map((one) => `${one.name} ${one.figure}${one.remark ? ', ' + one.remark : ''}`).join('; ') });
  return readingsAxis(rows, { point: dew?.point_f.likely, least: dew?.least_surface_f, label: t('ready.dew_and_spread', written), plain: t('ready.dew_short', written) }, { width, label, metric: w.metric });
}

