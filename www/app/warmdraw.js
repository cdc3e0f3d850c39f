// @ts-check
/** What the two drawings of a group hold: warming up and cooling down. */
import { timeChart } from './drawing/warmcurve.js';
import { bare, figures } from './figures.js';
import { breadth, byId, framed } from './parts.js';
import { wallOf } from './wallclock.js';
import { readings } from './warmread.js';
import { about, after, before, dayTime, hours, labelHours, under, won } from './warmwords.js';
import { now } from './calls.js';
import { span, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').WarmCurves} WarmCurves */

/** The narrowest window of the job's foams. @param {Store} store */
function mostOf(store) {
  return Math.min(...(store.estimate?.foams ?? []).map((one) => one.cylinder.most_f));
}

/** Warming up. @param {HTMLElement} root @param {Store} store @param {number} id @param {WarmCurves} curves */
export function warmDrawing(root, store, id, curves) {
  const up = byId(store.estimate?.conditioning ?? [], id)?.warm_up;
  const group = byId(store.job.warming ?? [], id);
  const last = curves.warm_min[curves.warm_min.length - 1];
  if (!up || !group || !last) return undefined;
  const w = figures(store.job.units);
  const ends = [up.likely_min, up.slow_min, up.label_min, up.plan_min].flatMap((one) => (one === undefined ? [] : [one]));
  const end = Math.min(last, up.plan_min === undefined ? Math.max(4320, up.label_min) : Math.max(...ends) * 1.08);
  // What has to be in by a time that is over is drawn in hours from coming in: no clock shows a time that cannot be kept.
  const from = group.moved_in ? wallOf(group.moved_in) : up.late ? undefined : up.in_by;
  const reaches = [
    { min: up.likely_min, name: t('warm.likely_n', { hours: up.likely_min === undefined ? '' : hours(up.likely_min) }), main: false },
    { min: up.slow_min, name: t('warm.slow_n', { hours: up.slow_min === undefined ? '' : hours(up.slow_min, true) }), main: up.decides === 'curve' },
    { min: up.label_min, name: t('warm.label_n', { hours: labelHours(up.label_min) }), main: up.decides === 'label' },
  ].flatMap(({ min, name, main }) => (min === undefined ? [] : [{ min, name, main }]));
  const most = mostOf(store);
  const here = group.moved_in && up.core_now_f && !group.moved_out ? { ...up.core_now_f, min: (now().ms - group.moved_in.ms) / 60_000, name: t('warm.now', { temp: bare(under(w, up.core_now_f.likely, up.target_f)) + '°' }) } : undefined;
  const came = group.moved_in;
  const read = came ? readings(store, group).map(({ of, f, ms }) => ({ of, f, min: (ms - came.ms) / 60_000 })) : [];
  const svg = timeChart({
    min: curves.warm_min, end, from, reaches, now: here, read,
    curves: [
      { kind: 'hair', f: curves.warm_air_f, name: t('warm.air') },
      { kind: 'ln', f: curves.warm_skin_f, dots: '2 3', name: undefined },
      { kind: 'on dash', f: curves.warm_likely_f },
      { kind: 'on bold', f: curves.warm_slow_f },
    ],
    band: [curves.warm_likely_f, curves.warm_slow_f],
    box: { least: up.target_f, most: Number.isFinite(most) && most > up.target_f ? most : up.target_f + 20, name: t('warm.box', { least: bare(w.temp(up.target_f)), most: w.temp(most) }) },
    by: up.plan_min === undefined || group.moved_out ? undefined : { min: up.plan_min, name: from === undefined ? t('warm.ans.hours', { hours: hours(up.plan_min, true) }) : t('warm.by', { time: dayTime(after(from + up.plan_min)) }) },
  }, { width: breadth(root), metric: w.metric, label: t('warm.drawing_warm', { target: w.temp(up.target_f), list: reaches.map((one) => one.name).join(', '), won: won(up) }) });
  return framed(svg, t('warm.caption_warm'), ...read.length ? [t('warm.caption_read')] : [], t('warm.caption_plan'));
}

/** Cooling down. @param {HTMLElement} root @param {Store} store @param {number} id @param {WarmCurves} curves */
export function coolDrawing(root, store, id, curves) {
  const cool = byId(store.estimate?.conditioning ?? [], id)?.cool_down;
  const group = byId(store.job.warming ?? [], id);
  const last = curves.cool_min[curves.cool_min.length - 1];
  if (!cool || !group || !last || cool.use_by_min !== undefined && cool.use_by_min <= 0) return undefined;
  const w = figures(store.job.units);
  const reaches = [
    { min: cool.starts_min, name: `${t(cool.hot ? 'warm.out_heats' : 'warm.out_cools')}: ${span(Math.floor(cool.starts_min ?? 0))}`, main: false },
    { min: cool.use_by_min, name: t('warm.out_use_n', { span: span(Math.floor(cool.use_by_min ?? 0)) }), main: true },
  ].flatMap(({ min, name, main }) => (min === undefined ? [] : [{ min, name, main }]));
  const most = mostOf(store);
  const least = Math.max(...(store.estimate?.foams ?? []).map((one) => one.cylinder.least_f));
  if (!Number.isFinite(most) || !(most > least)) return undefined;
  const svg = timeChart({
    min: curves.cool_min, reaches, limit: cool.limit_f,
    end: Math.min(last, cool.use_by_min === undefined ? last : cool.use_by_min * 1.35),
    from: group.moved_out && wallOf(group.moved_out),
    curves: [{ kind: 'ln', f: curves.cool_skin_f, dots: '2 3' }, { kind: 'on bold', f: curves.cool_mean_f }],
    box: { least, most, name: t('warm.box', { least: bare(w.temp(least)), most: w.temp(most) }) },
    by: cool.use_by_min === undefined ? undefined : { min: cool.use_by_min, name: cool.use_by === undefined ? '' : t('warm.ans.use_by', { time: dayTime(before(cool.use_by)) }) },
  }, { width: breadth(root), metric: w.metric, label: t('warm.drawing_cool', { from: about(w, cool.from_f), limit: w.temp(cool.limit_f), list: reaches.map((one) => one.name).join(', ') || t('warm.out_never') }) });
  return framed(svg, t('warm.caption_cool'), t('warm.caption_plan'));
}
