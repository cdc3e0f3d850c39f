// @ts-check
/** Hours of the day: what each day of the forecast is good for, drawn, with the place, what stands behind, and tent and heat. */
import { answerBar } from './answer.js';
import { call, fieldRow, now, reading } from './calls.js';
import { entryOf } from './changes.js';
import { dayCurve } from './drawing/daycurve.js';
import { field, fieldId } from './field.js';
import { bare, figures } from './figures.js';
import { heatPlan } from './heatplan.js';
import { hourPlace } from './hourplace.js';
import { el, list } from './list.js';
import { breadth, byId, findingNote, framed, head, more, note, press, redraw, row, src, to, way, worked } from './parts.js';
import { dayOf, timeOf } from './wallclock.js';
import { span, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').Ahead} Ahead */
/** @typedef {import('./core.js').ForecastDay} Forecast */

export const words = ['sheet', 'ready', 'hours'];

const FIELDS = ['date', 'low', 'high', 'dew'];
const DAY = 1440;
/** Edges of an estimate are said to the quarter of an hour. */
const QUARTER = 15;

/** A time of day, to the quarter of an hour; full hours without minutes. @param {number} min @param {number} [step] */
function at(min, step = QUARTER) {
  const whole = Math.round(min / step) * step;
  return whole <= 0 || whole >= DAY ? t('hours.midnight') : whole === DAY / 2 ? t('hours.noon') : timeOf(whole).replace(/:00(?=\D)/, '');
}

/** @typedef {{from: number, to: number, says: import('./core.js').Says}} Part */
const RANK = { outside: 0, measure_first: 1, inside: 2 };
const later = (/** @type {number} */ min) => Math.min(DAY, Math.ceil(min / QUARTER) * QUARTER);
const sooner = (/** @type {number} */ min) => Math.max(0, Math.floor(min / QUARTER) * QUARTER);

/** Stretches as they are said: what is better begins later and ends sooner than the estimate by up to a quarter of an hour. @param {Part[]} parts @returns {Part[]} */
function said(parts) {
  const cut = (/** @type {number} */ min, /** @type {Part | undefined} */ before, /** @type {Part | undefined} */ after) => (before && after && RANK[after.says] > RANK[before.says] ? later(min) : sooner(min));
  return parts.map((one, at) => ({ says: one.says, from: at ? cut(one.from, parts[at - 1], one) : 0, to: parts[at + 1] ? cut(one.to, one, parts[at + 1]) : DAY })).filter((one) => one.to > one.from);
}

/** @param {number} from @param {number} to */
const between = (from, to) => (from <= 0 && to >= DAY ? t('hours.all_day') : t('hours.from_to', { from: at(from), to: at(to) }));

/** How far an edge may be off: `45 min`, `1¾ h`. @param {number} min */
function edge(min) {
  const quarters = Math.max(1, Math.round(min / QUARTER));
  return quarters < 4 ? span(quarters * QUARTER) : `${Math.floor(quarters / 4)}${['', '¼', '½', '¾'][quarters % 4]}\u00a0h`;
}

/** When the air is inside, likely; of what is good for something, only the hours that are. @param {Part[]} parts @param {import('./core.js').Says} [only] @returns {[number, number][]} */
function inside(parts, only) {
  /** @type {[number, number][]} */
  const runs = [];
  for (const { from, to, says } of parts) {
    const last = runs[runs.length - 1];
    if (says === 'outside' || (only && says !== only)) continue;
    if (last && last[1] === from) last[1] = to;
    else runs.push([from, to]);
  }
  return runs;
}

/** The answer of a day in one line: what is inside, and what is to be measured first, each by its own name. @param {string} name @param {Ahead | undefined} day */
export function answer(name, day) {
  if (!day) return t('hours.day_wait', { day: name });
  const all = said(parts(day));
  const of = (/** @type {import('./core.js').Says} */ says) => inside(all, says).map(([from, to]) => between(from, to)).join(t('hours.and'));
  const [good, measure] = [of('inside'), of('measure_first')];
  if (!good && !measure) return t('hours.day_never', { day: name });
  return t(good ? measure ? 'hours.day_both' : 'hours.day_inside' : 'hours.day_measure', { day: name, hours: good || measure, measure, edge: edge(day.edge_min) });
}

/** A date as it is entered. @param {number} day since 1970 */
const dated = (day) => new Date(day * 86_400_000).toISOString().slice(0, 10);

/** The clock of this device on a day, at noon. @param {number} day since 1970 */
function offsetOn(day) {
  const [year = 0, month = 1, date = 1] = dated(day).split('-').map(Number);
  return -new Date(year, month - 1, date, 12).getTimezoneOffset();
}

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const days = el('div');
  const adds = el('div', 'dos');
  const place = hourPlace(store);
  const behind = ['heated_air', 'outer_wall', 'masonry_kind'].map((one) => field({ store, part: 'job', id: 0, field: one, quiet: true }));
  const spray = ['spray_date', 'spray_time'].map((one) => field({ store, part: 'job', id: 0, field: one, quiet: true }));
  const heat = heatPlan(store);
  const bar = answerBar();
  /** What is drawn a moment later, so that no keystroke waits for it. @type {Map<number, () => void>} */
  const drawings = new Map();
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let due;

  root.append(el('main', 'sky', top, days, el('div', 'pad top', note('watch', t('hours.estimate'), t('hours.estimate_do')), adds,
    el('h2', 'bar', t('hours.start')), el('div', 'fields first', ...spray.map((one) => one.node)),
    el('h2', 'bar', t('hours.behind')), el('p', 'note', t('hours.behind_how')), el('div', 'fields', ...behind.map((one) => one.node)),
    el('h2', 'bar', t('hours.place')), place.node,
    heat.node, el('div', 'dos', way(t('ready.to_moist'), to('moist'))),
    el('h2', 'bar', t('hours.limits')), el('ul', 'rows', ...['front', 'fog', 'valley', 'roof', 'sun'].map((one) => row(t(`hours.limit.${one}`), t(`hours.limit_why.${one}`), undefined))),
    src(t('hours.practice')))), bar.node);

  /** The day after the last one; the day of spraying for the first. */
  function add() {
    const last = store.estimate?.weather.days.at(-1);
    const sprays = entryOf(store.job, 'job', 0, 'spray_date');
    const first = !(store.job.forecast ?? []).length;
    const today = now();
    const day = last && !first ? last.day + 1 : Math.floor((today.ms / 60_000 + today.offset_min) / DAY);
    const { next_id: id } = store.job;
    store.dispatch({ do: 'add_forecast', offset_min: offsetOn(day), entries: [first && sprays ? { ...sprays, field: 'date' } : { field: 'date', text: dated(day) }] });
    void store.settled().then(() => document.getElementById(fieldId('forecast', id, 'low'))?.focus());
  }

  /** @param {Forecast} forecast */
  function entry({ id }) {
    const answers = el('div', 'pad');
    const drawn = el('div');
    const facts = el('div', 'wide');
    const fold = more(t('hours.facts'), facts, el('p', 'note', t('hours.surfaces_note')));
    const notes = el('div');
    const fields = FIELDS.map((one) => field({ store, part: 'forecast', id, field: one, quiet: true, hint: one === 'dew' ? t('hours.dew_hint') : '' }));
    const remove = el('button', { type: 'button', class: 'link', click: () => store.dispatch({ do: 'remove', part: 'forecast', id }) }, t('hours.remove'));
    const node = el('section', { class: 'ahead', 'data-day': id }, answers, drawn, el('div', 'pad', el('div', 'fields first', ...fields.map((one) => one.node)), el('div', 'moves', remove), fold, notes));
    // A day of the other half of the year has another clock.
    fields[0]?.input.addEventListener('change', () => {
      const day = store.estimate && byId(store.estimate.weather.days, id)?.day;
      if (day !== undefined && byId(store.job.forecast ?? [], id)?.offset_min !== offsetOn(day)) store.dispatch({ do: 'offset', id, offset_min: offsetOn(day) });
    });
    drawings.set(id, () => redraw(drawn, [drawing(store, id, breadth(root))]));
    return {
      node,
      update() {
        for (const one of fields) one.update();
        const weather = store.estimate?.weather;
        const day = weather && byId(weather.days, id);
        const name = nameOf(store, id, day);
        const sprays = weather?.spray_day !== undefined && weather.days[weather.spray_day]?.id === id;
        remove.setAttribute('aria-label', `${t('hours.remove')}: ${name}`);
        redraw(answers, [el('h2', 'bar answer-line', answer(name, day)),
          sprays && weather.at_start ? el('p', 'lead', t(`hours.at_start.${weather.at_start}`, { time: timeOf(sprayTime(store)) })) : undefined,
          ...(store.estimate?.findings ?? []).filter((one) => one.at.part === 'forecast' && one.at.id === id && !FIELDS.includes(one.at.field)).map(findingNote)]);
        fold.hidden = !day;
        redraw(facts, [day && factsOf(store, day)]);
        redraw(notes, [day?.dew_close ? note('watch', t('hours.dew_close'), t('hours.dew_close_do')) : undefined, day && !day.neighbors ? el('p', 'note', t('hours.neighbors')) : undefined]);
      },
      unmount: () => { drawings.delete(id); },
    };
  }

  function draw() {
    due = undefined;
    if (root.isConnected) for (const one of drawings.values()) one();
  }

  function update() {
    bar.update(store);
    const { job } = store;
    const forecast = inOrder(store);
    redraw(top, [head({ back: [to('ready'), t('ready.title')], title: t('hours.title'), sub: t('hours.lead') }),
      forecast.length ? undefined : el('div', 'pad top', el('p', 'lead', t('hours.none')), el('p', 'note', t('hours.none_do')))]);
    list(days, forecast, (one) => one.id, entry);
    redraw(adds, [press(t(forecast.length ? 'hours.add_next' : 'hours.add'), 'add-day', add, forecast.length ? 'line wide' : 'wide')]);
    for (const one of [...spray, ...behind, place, heat]) one.update();
    const wall = entryOf(job, 'job', 0, 'outer_wall');
    if (behind[1]) behind[1].node.hidden = !entryOf(job, 'job', 0, 'heated_air') && !wall;
    due ??= setTimeout(draw);
  }

  return { title: t('hours.title'), update, unmount: () => clearTimeout(due) };
}

/** The days as they are listed: by date, and those without one in the order in which they were added. @param {Store} store */
function inOrder({ job, estimate }) {
  const place = (/** @type {Forecast} */ one) => (estimate && byId(estimate.weather.days, one.id)?.day) ?? Infinity;
  return [...(job.forecast ?? [])].sort((a, b) => { const [x, y] = [place(a), place(b)]; return x === y ? a.id - b.id : x - y; });
}

/** @param {Store} store @param {number} id @param {Ahead} [day] */
function nameOf(store, id, day) {
  if (day) return dayOf(day.day * DAY);
  return entryOf(store.job, 'forecast', id, 'date')?.text.trim() || t('hours.undated');
}

/** When spraying begins, in minutes after midnight. @param {Store} store */
function sprayTime({ job, estimate }) {
  const known = estimate?.calendar.find((one) => one.of === 'spray' && !one.all_day);
  if (known) return ((known.at % DAY) + DAY) % DAY;
  const typed = entryOf(job, 'job', 0, 'spray_time');
  const row = fieldRow('job', 'spray_time');
  const read = row && reading(row, typed?.text || row.default, row.us, typed?.sense, job.units)?.as;
  const found = /^\D*(\d{1,2})(?::(\d\d))?\s*([ap]?)/i.exec(read || row?.default || '');
  const hour = Number(found?.[1] ?? 8);
  const half = found?.[3]?.toLowerCase();
  return (half === 'p' && hour < 12 ? hour + 12 : half === 'a' && hour === 12 ? 0 : hour) * 60 + Number(found?.[2] ?? 0);
}

/** The drawing of a day. @param {Store} store @param {number} id @param {number} width */
function drawing(store, id, width) {
  const { job, estimate } = store;
  const weather = estimate?.weather;
  const day = weather && byId(weather.days, id);
  const curve = day && call('day_curve', job, now(), id);
  if (!day || !curve) return undefined;
  const w = figures(job.units);
  const sprays = weather.spray_day !== undefined && weather.days[weather.spray_day]?.id === id;
  const rises = day.sun === 'rises';
  const name = nameOf(store, id, day);
  const time = timeOf(sprayTime(store));
  const says = { inside: t('hours.says.inside'), measure_first: t('hours.says.measure_first'), outside: t('hours.says.outside') };
  const svg = dayCurve({
    air: curve.air_f, heated: curve.heated_f, masonry: curve.masonry_f, least: day.air_least_f, most: day.air_most_f, dew: day.dew_f,
    boxes: inside(parts(day)), edge: day.edge_min, parts: parts(day),
    sunrise: rises ? day.sunrise_min : undefined, sunset: rises ? day.sunset_min : undefined, spray: sprays ? sprayTime(store) : undefined,
  }, {
    label: t('hours.drawing_label', { answer: answer(name, day), low: w.temp(day.low_f), high: w.temp(day.high_f) }),
    air: t('hours.curve.air'), heated: t('hours.curve.heated'), masonry: t('hours.curve.masonry'), window: t('hours.curve.window', { edge: edge(day.edge_min) }),
    dew: t('hours.curve.dew', { point: w.temp(day.dew_f) }), sunrise: [t('hours.sunrise'), timeOf(day.sunrise_min)], sunset: [t('hours.sunset'), timeOf(day.sunset_min)], spray: t('hours.spraying', { time }), says,
    hour: (min) => at(min, 60),
  }, { width, metric: w.metric });
  return framed(svg, t('hours.caption'), rises ? '' : t(`hours.sun.${day.sun}`));
}

/** The whole day in stretches, also where the air never is inside. @param {Ahead} day @returns {Part[]} */
function parts({ stretches }) {
  return stretches.length ? stretches.map((one) => ({ from: one.from_min, to: one.to_min, says: one.says })) : [{ from: 0, to: DAY, says: 'outside' }];
}

/** The same in words: stretches, air, surfaces, sun. @param {Store} store @param {Ahead} day */
function factsOf(store, day) {
  const w = figures(store.job.units);
  const stretches = said(parts(day));
  const runs = inside(stretches);
  const range = (/** @type {{low_f: number, high_f: number, low_at_min: number, high_at_min: number}} */ one) => t('hours.low_high', { low: w.temp(one.low_f), low_at: at(one.low_at_min), high: w.temp(one.high_f), high_at: at(one.high_at_min) });
  const hours = (/** @type {import('./core.js').SurfaceDay} */ one) => (one.from_min === undefined || one.to_min === undefined || later(one.from_min) >= sooner(one.to_min) ? t('hours.never') : between(later(one.from_min), sooner(one.to_min)));
  return el('ul', 'rows',
    ...stretches.map((one) => row(between(one.from, one.to), '', t(`hours.says.${one.says}`))),
    row(t('hours.facing.air'), t('hours.low_to_high', { low: bare(w.temp(day.low_f)), high: w.temp(day.high_f) }), runs.length ? worked(runs.map(([from, to]) => between(from, to)).join(t('hours.and')), 'forecast', day.id, 'air_from_min') : t('hours.never'), 'tall'),
    ...day.surfaces.map((one) => row(t(`hours.facing.${one.facing}`), range(one), hours(one), 'tall')),
    day.dew_f === undefined ? undefined : row(t('fields.dew'), '', w.temp(day.dew_f)),
    row(t('hours.sun_row'), day.sun === 'rises' ? t('hours.sun_by') : t(`hours.sun.${day.sun}`), day.sun === 'rises' ? worked(`${timeOf(day.sunrise_min)}, ${timeOf(day.sunset_min)}`, 'forecast', day.id, 'sunrise_min') : undefined, 'tall'));
}
