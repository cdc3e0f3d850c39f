// @ts-check
/** Ready in time: what has to be right before and after the trigger is pulled, a line each, and where it is entered. */
import { call, now } from './calls.js';
import { overdue, said, split, when } from './dates.js';
import { figures } from './figures.js';
import { el } from './list.js';
import { mark } from './marks.js';
import { byId, head, note, pressRow, redraw, to } from './parts.js';
import { hours as reentry, inHours, waits } from './reentry.js';
import { jobName } from './sheet.js';
import { dayOf, timeOf, wall, wallOf } from './wallclock.js';
import { standOf } from './warmwords.js';
import { t } from './words.js';

export const words = ['sheet', 'calendar', 'ahead'];

/** @typedef {import('./store.js').Store} Store */
/** @typedef {{kind?: 'go' | 'hold' | 'watch' | 'none', text: string}} Line */

/** What each way of standing is, and how much it presses: of several groups the first of these is said. @type {[import('./warmwords.js').Stand, Line['kind']][]} */
const STANDS = [['spent', 'hold'], ['use_by', undefined], ['late', 'hold'], ['never', 'hold'], ['hour', 'hold'], ['over', 'watch'], ['ready', undefined], ['in_by', undefined], ['hours', undefined], ['lacks', 'none']];

/** Kits that warm: of several groups the one that presses most. @param {Store} store @returns {Line} */
function warm({ job, estimate }) {
  const at = wallOf(now());
  const groups = job.warming.map((group) => {
    const found = byId(estimate?.conditioning ?? [], group.id);
    const stand = standOf(found, group, at);
    return { ...stand, name: group.name.trim(), up: found?.warm_up, place: STANDS.findIndex(([is]) => is === stand.is) };
  });
  if (!groups.length) return { kind: 'none', text: t('ahead.warm_none') };
  const one = groups.reduce((first, other) => (other.place < first.place || other.place === first.place && (other.time ?? Infinity) < (first.time ?? Infinity) ? other : first));
  const decides = one.up ? t(`ahead.by_${one.up.decides}`, { hours: inHours(one.up.label_min) }) : '';
  const late = one.up?.late && (one.is === 'late' || one.is === 'ready');
  const text = t(`ahead.warm_${one.is}`, { time: one.time === undefined ? '' : wall(one.time), hours: one.up?.plan_min === undefined ? '' : waits(one.up.plan_min), decides });
  return { kind: late ? 'hold' : STANDS[one.place]?.[1], text: [one.name && groups.length > 1 ? t('calendar.of', { what: text, name: one.name }) : text, one.is === 'ready' && late ? t('ahead.late') : ''].filter(Boolean).join('. ') };
}

/** To the quarter hour, inward: an estimate is no matter of minutes. */
const QUARTER = 15;

/** The hours inside the window on the day of spraying, or on the first day ahead. @param {Store} store @returns {Line} */
function hours({ estimate }) {
  const weather = estimate?.weather;
  const today = Math.floor(wallOf(now()) / 1440);
  const day = weather?.spray_day !== undefined ? weather.days[weather.spray_day] : weather?.days.find((one) => one.day >= today);
  if (!day) return { kind: 'none', text: t('ahead.hours_none') };
  const date = dayOf(day.day * 1440);
  for (const says of /** @type {const} */ (['inside', 'measure_first'])) {
    const parts = day.stretches.filter((one) => one.says === says)
      .map((one) => ({ from: Math.ceil(one.from_min / QUARTER) * QUARTER, to: Math.floor(one.to_min / QUARTER) * QUARTER })).filter((one) => one.to > one.from);
    if (parts.length) {
      return { kind: says === 'inside' ? undefined : 'watch', text: t(`ahead.hours_${says}`, { hours: parts.map((one) => t('ahead.from_to', { from: timeOf(one.from), to: timeOf(one.to) })).join(', '), date }) };
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
    : { text: t('ahead.moist_from', { n: w.number(Math.ceil(found.least_changes * 10 - 1e-6) / 10), spread: w.step(found.spread_f) }) };
}

/** What stands below where the hours of the label cannot run. @type {Partial<Record<import('./reentry.js').State, string>>} */
const HELD = { off: 'people_off', smell: 'people_smell', spraying: 'people_spraying' };

/** Who is out for how long, and the fan. @param {Store} store @returns {Line} */
function people(store) {
  const { job, estimate } = store;
  const { state, min } = reentry(store, 'all');
  const held = HELD[state];
  const fan = estimate?.people.exhaust;
  const flow = fan && call('write', 'airflow', fan.wanted, job.units === 'metric' ? 'metric_usual' : 'us');
  return {
    kind: held ? 'hold' : min === undefined ? 'none' : undefined,
    text: [min === undefined ? t('ahead.people_unknown') : held ? t(`ahead.${held}`) : t('ahead.people_hours', { hours: inHours(min) }),
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
