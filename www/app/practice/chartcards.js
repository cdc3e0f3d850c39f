// @ts-check
/** Curves to be read off, each with itself as a table: kits that warm up, the air of a day. */
import { call } from '../calls.js';
import { figures } from '../figures.js';
import { el } from '../list.js';
import { byId, framed, more, table } from '../parts.js';
import { dayOf, timeOf } from '../wallclock.js';
import { number, t } from '../words.js';
import { card, facts } from './cardparts.js';
import { entriesOf } from './plain.js';
import { readChart } from './readchart.js';

/** @typedef {import('./cards.js').About} About */

/** @param {[number, number][]} points @param {number} min */
function along(points, min) {
  const after = points.findIndex(([at]) => at >= min);
  const [b, a] = [points[after], points[Math.max(0, after - 1)]];
  if (!a || !b) return undefined;
  return b[0] === a[0] ? b[1] : a[1] + ((b[1] - a[1]) * (min - a[0])) / (b[0] - a[0]);
}

/** The curves of a chart as a table, for whoever does not see them. @param {string} name @param {{name: string, points: [number, number][]}[]} courses @param {number} end @param {number} each @param {(min: number) => string} when @param {(f: number) => string} write */
const asTable = (name, courses, end, each, when, write) => el('div', 'pad', more(t('practice.ex_as_table'),
  el('div', 'wide', table(name, [t('practice.ex_time'), ...courses.map((one) => one.name)], Array.from({ length: Math.floor(end / each) + 1 }, (_, at) => ({ cells: [when(at * each), ...courses.map((one) => {
    const f = along(one.points, at * each);
    return f === undefined ? '' : write(f);
  })] }))))));

/** Kits that warm up. @param {About} about */
export function warmingCard({ store, exercise, shown, width }) {
  const { job, estimate } = store;
  const curves = call('warm_curves', job, exercise.now, shown.id);
  const up = byId(estimate?.conditioning ?? [], shown.id)?.warm_up;
  const group = byId(job.warming ?? [], shown.id);
  if (!curves || !up || !group) return undefined;
  const w = figures(job.units);
  const course = (/** @type {string} */ kind, /** @type {string} */ key, /** @type {number[]} */ f) => ({ kind, name: t(`practice.ex_curve_${key}`), points: curves.warm_min.map((min, at) => /** @type {[number, number]} */ ([min, f[at] ?? 0])) });
  const courses = [course('on bold', 'slow', curves.warm_slow_f), course('on dash', 'likely', curves.warm_likely_f), course('hair', 'steel', curves.warm_skin_f), course('ln dash', 'room', curves.warm_air_f)];
  // To a full half day after the last curve is there, so that the drawing's end says nothing.
  const there = curves.warm_min.find((_, at) => (curves.warm_slow_f[at] ?? 0) >= up.target_f) ?? 1440;
  const last = curves.warm_min[curves.warm_min.length - 1] ?? 1440;
  const end = Math.min(last, Math.max(1440, Math.ceil((there + 180) / 720) * 720));
  const hours = (/** @type {number} */ min) => `${number(min / 60, 1)}\u00a0h`;
  const name = t('practice.ex_warming');
  const every = end / 60 * (width < 600 ? 1 : 0.5) > 24 ? 360 : end <= 1440 && width >= 600 ? 120 : 240;
  const svg = readChart(courses, [{ f: up.target_f, name: t('practice.ex_least', { temp: w.temp(up.target_f) }) }], { width, metric: w.metric, end, every, fine: 60, tall: 320, when: hours, label: t('practice.ex_warming_label', { temp: w.temp(up.target_f) }) });
  const entries = entriesOf('warming', group.entries, job.units);
  return card(name, framed(svg, t('practice.ex_from_in'), t('practice.ex_line_hour')), el('div', 'pad', facts(entries.map((one) => [one.name, one.text]))), asTable(name, courses, end, 60, hours, w.temp));
}

/** The air of a day. @param {About} about */
export function dayCard({ store, exercise, shown, width }) {
  const curve = call('day_curve', store.job, exercise.now, shown.id);
  const ahead = byId(store.estimate?.weather.days ?? [], shown.id);
  const entered = byId(store.job.forecast, shown.id);
  if (!curve || !ahead) return undefined;
  const w = figures(store.job.units);
  const courses = [{ kind: 'cut', name: t('hours.curve.air'), points: curve.air_f.map((f, at) => /** @type {[number, number]} */ ([at * 15, f])) }];
  const limits = /** @type {const} */ ([['ex_least', ahead.air_least_f], ['ex_most', ahead.air_most_f]]).flatMap(([key, f]) => (f === undefined ? [] : [{ f, name: t(`practice.${key}`, { temp: w.temp(f) }) }]));
  const high = Math.max(...curve.air_f);
  // A most that the day never comes near would only press the curve flat.
  const levels = limits.filter(({ f }, at) => at === 0 || f < high + 6);
  const when = (/** @type {number} */ min) => (min % 1440 === 0 ? t('hours.midnight') : min === 720 ? t('hours.noon') : timeOf(min).replace(/:00(?=\D)/, ''));
  const name = t('practice.ex_day', { day: dayOf(ahead.day * 1440) });
  const svg = readChart(courses, levels, { width, metric: w.metric, end: 1440, every: width < 600 ? 240 : 120, fine: 60, tall: 300, when, label: t('practice.ex_day_label', { low: w.temp(ahead.low_f), high: w.temp(ahead.high_f) }) });
  // What was forecast stands on its own card, where there is one.
  const rows = exercise.shown.some((one) => one.what === 'forecast') ? [] : entriesOf('forecast', entered?.entries, store.job.units, ['date']).map((one) => /** @type {[string, string]} */ ([one.name, one.text]));
  return card(name, framed(svg, t('practice.ex_line_hour')), rows.length ? el('div', 'pad', facts(rows)) : undefined, asTable(name, courses, 1440, 60, when, w.temp));
}
