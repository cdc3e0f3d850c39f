// @ts-check
/** Air and surfaces: readings with their ages, the days of a forecast, dew points as a table. */
import { bare, figures } from '../figures.js';
import { el } from '../list.js';
import { table } from '../parts.js';
import { label, span, t } from '../words.js';
import { card, facts } from './cardparts.js';
import { entriesOf, entryText } from './plain.js';

/** @typedef {import('./cards.js').About} About */

/** Readings with their ages. @param {About} about */
export function readingsCard({ store, exercise }) {
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

/** The days of the forecast as it was taken down. @param {About} about */
export function forecastCard({ store }) {
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
export function dewTableCard({ store, shown }) {
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
