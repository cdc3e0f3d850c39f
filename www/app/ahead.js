// @ts-check
/** Ready in time: what has to be right before and after the trigger is pulled, a line each, and where it is entered. */
import { call, now } from './calls.js';
import { overdue, said, split, when } from './dates.js';
import { figures } from './figures.js';
import { el } from './list.js';
import { mark } from './marks.js';
import { byId, head, note, pressRow, redraw, to } from './parts.js';
import { jobName } from './sheet.js';
import { dayOf, timeOf, wall, wallOf } from './wallclock.js';
import { span, t } from './words.js';

export const words = ['sheet', 'calendar', 'ahead'];

/** @typedef {import('./store.js').Store} Store */
/** @typedef {{kind?: 'go' | 'hold' | 'watch' | 'none', text: string}} Line */

/** Kits that warm: of several groups the one that presses most. @param {Store} store @returns {Line} */
function warm({ job, estimate }) {
  const groups = (estimate?.conditioning ?? []).flatMap((one) => (one.warm_up ? [{ ...one.warm_up, id: one.id, cool: one.cool_down }] : []));
  if (!job.warming.length) return { kind: 'none', text: t('ahead.warm_none') };
  if (!groups.length) return { kind: 'none', text: t('ahead.warm_blank') };
  const at = (/** @type {typeof groups[number]} */ one) => one.cool?.use_by ?? one.ready_at ?? one.in_by ?? Infinity;
  const one = groups.reduce((first, other) => (at(other) < at(first) ? other : first));
  const name = byId(job.warming, one.id)?.name.trim();
  const decides = t(`ahead.by_${one.decides}`, { hours: span(one.label_min) });
  const text = one.plan_min === undefined ? t('ahead.warm_never')
    : one.cool?.use_by !== undefined ? t('ahead.warm_use_by', { time: wall(one.cool.use_by) })
      : one.ready_at !== undefined ? t('ahead.warm_ready', { time: wall(Math.ceil(one.ready_at)), decides })
        : one.in_by !== undefined ? t('ahead.warm_in_by', { time: wall(Math.floor(one.in_by)), decides })
          : t('ahead.warm_takes', { hours: span(one.plan_min), decides });
  return { kind: one.plan_min === undefined || one.late ? 'hold' : undefined, text: [name && groups.length > 1 ? t('calendar.of', { what: text, name }) : text, one.late ? t('ahead.late') : ''].filter(Boolean).join('. ') };
}

/** The hours inside the window on the day of spraying, or on the first day ahead. @param {Store} store @returns {Line} */
function hours({ estimate }) {
  const weather = estimate?.weather;
  const today = Math.floor(wallOf(now()) / 1440);
  const day = weather?.spray_day !== undefined ? weather.days[weather.spray_day] : weather?.days.find((one) => one.day >= today);
  if (!day) return { kind: 'none', text: t('ahead.hours_none') };
  const date = dayOf(day.day * 1440);
  for (const says of /** @type {const} */ (['inside', 'measure_first'])) {
    const parts = day.stretches.filter((one) => one.says === says);
    if (parts.length) {
      return { kind: says === 'inside' ? undefined : 'watch', text: t(`ahead.hours_${says}`, { hours: parts.map((one) => t('ahead.from_to', { from: timeOf(one.from_min), to: timeOf(one.to_min) })).join(', '), date }) };
    }
  }
  return { kind: 'hold', text: t('ahead.hours_outside', { date }) };
}

/** What moisture does to the coldest surface. @param {Store} store @returns {Line} */
function moist({ job, estimate }) {
  const found = estimate?.moisture;
  if (!found?.at.length) return { kind: 'none', text: t('ahead.moist_none') };
  const w = figures(job.units);
  const one = found.at.find((at) => at.changes >= 1) ?? found.at[0];
  if (found.coldest_f === undefined) return { text: t('ahead.moist_dew', { dew: w.temp(one?.dew_f), n: w.number(one?.changes) }) };
  return found.least_changes === undefined ? { kind: 'hold', text: t('ahead.moist_never', { spread: w.step(found.spread_f) }) }
    : { text: t('ahead.moist_from', { n: w.number(found.least_changes), spread: w.step(found.spread_f) }) };
}

/** Who is out for how long, and the fan. @param {Store} store @returns {Line} */
function people({ job, estimate }) {
  const out = estimate?.day.reentry_min;
  const fan = estimate?.people.exhaust;
  const flow = fan && call('write', 'airflow', fan.wanted, job.units === 'metric' ? 'metric_usual' : 'us');
  return {
    kind: out === undefined ? 'none' : undefined,
    text: [out === undefined ? t('ahead.people_unknown') : t('ahead.people_hours', { hours: span(out) }),
      flow ? t('ahead.people_fan', { flow, n: figures(job.units).number(fan.changes) }) : t('ahead.people_no_fan')].join('. '),
  };
}

/** The next date. @param {Store} store @returns {Line} */
function dates({ estimate }) {
  const all = estimate?.calendar ?? [];
  const [coming] = split(all);
  const at = wallOf(now());
  const late = coming.find((one) => overdue(one, all, at));
  const one = late ?? coming[0];
  return one ? { kind: late ? 'hold' : undefined, text: t(late ? 'ahead.date_late' : 'ahead.date', { what: said(one).what, when: when(one) }) } : { kind: 'none', text: t('ahead.date_none') };
}

/** Each line: the screen that it leads to, and what it says now. @type {[string, (store: Store) => Line][]} */
export const LINES = [['warm', warm], ['hours', hours], ['moist', moist], ['people', people], ['calendar', dates]];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const rows = el('ul', 'rows');
  root.append(el('main', '', top, el('div', 'pad tail', el('p', 'note top', t('ahead.how')), rows, note('watch', t('ahead.estimates'), t('ahead.estimates_do')))));
  return {
    title: t('ahead.title'),
    update() {
      redraw(top, [head({ back: [to('sheet', 'ready'), jobName(store)], title: t('ahead.title') })]);
      redraw(rows, LINES.map(([name, of]) => {
        const { kind, text } = of(store);
        return pressRow(to(name), t(`ahead.${name}`), el('span', '', kind && mark(kind), text), undefined);
      }));
    },
  };
}
