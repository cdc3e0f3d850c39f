// @ts-check
/**
 * What stands beside the question of an exercise, each kind by its word. A kind that is not known here shows nothing.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./core.js').Exercise} Exercise
 * @typedef {Exercise['shown'][number]} Shown
 * @typedef {object} About
 * @property {Store} store  with the exercise's job
 * @property {Exercise} exercise
 * @property {Shown} shown
 * @property {number} nth  the how-manieth of its kind, from 1
 * @property {number} count  how many of its kind there are
 * @property {number} width  of a drawing from edge to edge
 */
import { call } from '../calls.js';
import { bare, figures } from '../figures.js';
import { el } from '../list.js';
import { byId, framed, more, table } from '../parts.js';
import { dayOf, timeOf } from '../wallclock.js';
import { label, number, span, t } from '../words.js';
import { layersCard, placeCard } from './builtcards.js';
import { card, facts } from './cardparts.js';
import { entriesOf, entryText } from './plain.js';
import { probeStrip } from './probestrip.js';
import { readChart } from './readchart.js';
import { standsAt, tapePiece } from './tapedraw.js';

/** Which of several. @param {string} key @param {About} about */
const nth = (key, { nth: n, count }) => (count > 1 ? t(`practice.${key}_n`, { n }) : t(`practice.${key}`));

/** @type {Record<string, (about: About) => HTMLElement | undefined>} */
const CARDS = { tape, foam, kits, readings, probes, warming, day, forecast, dew_table: dewTable, code_table: codeTable, layers: layersCard, place: placeCard, foam_units: foamUnits };

/** The card of what is shown; a drawing of a surface is none, it stands under the question. @param {About} about @returns {HTMLElement | undefined} */
export const cardOf = (about) => (Object.hasOwn(CARDS, about.shown.what) ? CARDS[about.shown.what]?.(about) : undefined);

/** @param {About} about */
function tape(about) {
  const { store, shown, width } = about;
  const metric = store.job.units === 'metric';
  const name = nth('ex_tape', about);
  return card(name, ...shown.at.map((inches) => {
    const { whole, past, ticks, flags, after } = standsAt(inches, metric);
    const unit = metric ? 'm' : 'ft';
    const where = t(`practice.ex_tape_at_${unit}`, { whole, past, ticks });
    const said = flags > 0 ? t(`practice.ex_tape_flag_${unit}`, { flags, after }) : '';
    return framed(tapePiece(inches, { metric, width, label: [name, where, said].filter(Boolean).join('. '), flag: (n) => (metric ? `${n} m` : `${n} ft`) }), t(metric ? 'practice.ex_tape_m' : 'practice.ex_tape_ft'));
  }));
}

/** How square meters and millimeters become board feet. */
function foamUnits() {
  return card(t('practice.ex_foam_units'), el('div', 'pad', el('p', '', t('practice.ex_foam_units_line'))));
}

/** A foam's data sheet. @param {About} about */
function foam({ store, shown }) {
  const sheet = byId(store.job.foams, shown.id) ?? (shown.id ? undefined : store.job.foams[0]);
  if (!sheet) return undefined;
  const { units } = store.job;
  const rows = sheet.r_at.map((one) => entriesOf('r_row', one.entries, units)).filter((one) => one.length);
  const cell = (/** @type {ReturnType<typeof entriesOf>} */ of, /** @type {string} */ field) => of.find((one) => one.field === field)?.text ?? '–';
  const name = t('practice.ex_foam', { name: sheet.name || t('settings.foam_unnamed') });
  const listed = entriesOf('foam', sheet.entries, units);
  return card(name, el('div', 'pad',
    rows.length ? table(name, [label('r_row', 'thickness'), label('r_row', 'r')], rows.map((one) => ({ cells: [cell(one, 'thickness'), cell(one, 'r')] }))) : undefined,
    listed.length ? facts(listed.map((one) => [one.name, one.text])) : undefined));
}

/** What counts for every kit, and what else the job was told. */
const OF_JOB = ['yield_factor', 'fixed_loss', 'over_depth', 'other_waste', 'sales_tax', 'delivery'];
/** Said also where it was left at what the tool takes. */
const USUAL = ['yield_factor', 'fixed_loss'];

/** The shelf: each kit's label and price, the factor, what every kit loses. @param {About} about */
function kits({ store }) {
  const { job } = store;
  if (!job.kits.length) return undefined;
  const given = OF_JOB.flatMap((field) => {
    const entry = job.entries.find((one) => one.field === field && one.text.trim());
    const text = entry ? entryText('job', entry, job.units) : USUAL.includes(field) ? usual(field, job.units) : '';
    return text ? [/** @type {[string, string]} */ ([label('job', field), text])] : [];
  });
  const columns = [...new Set(job.kits.flatMap((one) => one.entries.filter((entry) => entry.text.trim()).map((entry) => entry.field)))];
  const rows = job.kits.map((one) => ({ cells: columns.map((field) => {
    const entry = one.entries.find((it) => it.field === field && it.text.trim());
    return entry ? entryText('kit', entry, job.units) : '–';
  }) }));
  return card(t('practice.ex_kits'), el('div', 'pad', table(t('practice.ex_kits'), columns.map((field) => label('kit', field)), rows), facts(given)));
}

/** What the tool takes where nothing was said. @param {string} field @param {import('../core.js').Units} units */
function usual(field, units) {
  const row = (call('fields') ?? []).find((one) => one.part === 'job' && one.field === field);
  return row?.default ? entryText('job', { field, text: row.default }, units) : '';
}

/** Readings with their ages. @param {About} about */
function readings({ store, exercise }) {
  const { readings: all, units } = store.job;
  if (!all.length) return undefined;
  const surfaces = all.filter((one) => one.of === 'surface' && !one.name.trim());
  const rows = all.map((one) => {
    const nameless = one.of === 'surface' && surfaces.length > 1 ? t('practice.ex_surface_n', { n: surfaces.indexOf(one) + 1 }) : t(`ready.name.${one.of}`);
    const [first, ...rest] = entriesOf('reading', one.entries, units);
    const age = one.taken ? t('ready.age', { age: span((exercise.now.ms - one.taken.ms) / 60_000) }) : '';
    return /** @type {[string, string, string]} */ ([one.name.trim() || nameless, first?.text ?? '–', [age, ...rest.map((it) => `${it.name}: ${it.text}`)].filter(Boolean).join(' · ')]);
  });
  return card(t('practice.ex_readings'), el('div', 'pad', facts(rows)));
}

/** Depths of equal parts, each where it was probed. @param {About} about */
function probes(about) {
  const { store, shown } = about;
  const w = figures(store.job.units);
  const depths = shown.at.map((inches) => ({ inches, text: w.depth(inches) }));
  const name = nth('ex_probes', about);
  return card(name, framed(probeStrip(depths, { width: about.width, label: t('practice.ex_probes_label', { n: depths.length, list: depths.map((one) => one.text).join(', ') }) }), t('practice.ex_probes_note', { n: depths.length })));
}

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
function warming({ store, exercise, shown, width }) {
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
function day({ store, exercise, shown, width }) {
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

/** The days of the forecast as it was taken down. @param {About} about */
function forecast({ store }) {
  const days = store.job.forecast ?? [];
  if (!days.length) return undefined;
  const columns = [...new Set(days.flatMap((one) => one.entries.filter((entry) => entry.text.trim()).map((entry) => entry.field)))].filter((field) => field !== 'date');
  const name = t('practice.ex_forecast');
  return card(name, el('div', 'pad', table(name, [label('forecast', 'date'), ...columns.map((field) => label('forecast', field))], days.map((one) => {
    const cell = (/** @type {string} */ field) => {
      const entry = one.entries.find((it) => it.field === field && it.text.trim());
      return entry ? entryText('forecast', entry, store.job.units) : '–';
    };
    return { cells: ['date', ...columns].map(cell) };
  }))));
}

/** Dew points by air and humidity. @param {About} about */
function dewTable({ store, shown }) {
  const [n = 0, m = 0, ...rest] = shown.at;
  if (rest.length < n + m + n * m) return undefined;
  const w = figures(store.job.units);
  const [airs, humidities] = [rest.slice(0, n), rest.slice(n, n + m)];
  const name = t('practice.ex_dew_table');
  const one = (/** @type {number} */ f) => (w.metric ? ((f - 32) * 5) / 9 : f).toFixed(1).replace('-', '−');
  return card(name, el('div', 'pad ex-grid', table(name, [t('ready.air'), ...humidities.map((pct) => w.pct(pct))], airs.map((air, at) => ({
    cells: [bare(w.temp(air)) + '°', ...rest.slice(n + m + at * m, n + m + (at + 1) * m).map(one)],
  }))), el('p', 'note', t(w.metric ? 'practice.ex_dew_table_c' : 'practice.ex_dew_table_f'))));
}

/** Columns of the code's table that stand for more than one zone. @type {Record<number, string>} */
const COLUMNS = { 4: 'ex_zone_4', 5: 'ex_zone_5', 7: 'ex_zone_7' };

/** What the code prints by zone. @param {About} about */
function codeTable({ store, shown }) {
  const zones = call('depths_by_zone', store.job, shown.id) ?? [];
  const rows = shown.at.map((zone) => ({ zone, printed: zones.find((one) => one.zone === (zone >= 7 ? String(zone) : `${zone}a`))?.printed ?? '' }));
  if (!rows.some((one) => one.printed)) return undefined;
  const name = t('practice.ex_code_table');
  return card(name, el('div', 'pad ex-wraps', table(name, [label('job', 'zone'), t('practice.ex_printed')], rows.map(({ zone, printed }) => ({ cells: [COLUMNS[zone] ? t(`practice.${COLUMNS[zone]}`) : String(zone), printed || '–'] }))),
    el('p', 'note', store.job.units === 'metric' ? t('practice.ex_rsi') : '', store.job.units === 'metric' ? ' ' : '', t('practice.ex_local_code'))));
}

