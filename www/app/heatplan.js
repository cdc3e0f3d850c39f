// @ts-check
/** Tent and heat: how long and how much to bring a slab, a wall or sheathing to temperature. An order of magnitude, said so. */
import { call, fieldRow, reading, unitOf } from './calls.js';
import { entryOf } from './changes.js';
import { field } from './field.js';
import { figures } from './figures.js';
import { el } from './list.js';
import { caution, more, note, redraw, row, worked } from './parts.js';
import { number, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

const FIELDS = ['heat_what', 'heat_area', 'heat_thickness', 'heat_from', 'heat_air', 'heat_outside', 'tent_area'];
/** Btu per hour in a kilowatt: NIST SP 811. */
const KW = 3412.14;

/** Whole hours are enough for an order of magnitude, two figures of many; short times to the half hour. Never less than the estimate. @param {number} value */
export function about(value) {
  const step = value < 3 ? 0.5 : value < 100 ? 1 : 10 ** (Math.floor(Math.log10(value)) - 1);
  return Math.ceil(value / step - 1e-9) * step;
}

/** A power is said in steps as heaters are sold. @param {number} value */
function step(value) {
  const ten = 10 ** Math.floor(Math.log10(value));
  return [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10].reduce((best, one) => (Math.abs(one * ten - value) < Math.abs(best * ten - value) ? one : best)) * ten;
}

/** The air under the tent, as it was typed. @param {Store} store */
function air({ job }) {
  const row = fieldRow('job', 'heat_air');
  const typed = entryOf(job, 'job', 0, 'heat_air');
  return row && typed ? reading(row, typed.text, typed.unit ?? unitOf('job', 'heat_air', job.units), typed.sense, job.units)?.as ?? typed.text : '';
}

/** @param {Store} store */
export function heatPlan(store) {
  const fields = FIELDS.map((one) => field({ store, part: 'job', id: 0, field: one, quiet: true }));
  const answer = el('div', { class: 'wide', role: 'status' });
  const node = more(t('hours.heat'), el('p', 'note wide', t('hours.heat_how')), ...fields.map((one) => one.node), answer, el('div', 'says wide', caution('hours.heater'), caution('hours.tent')));

  function update() {
    for (const one of fields) one.update();
    const w = figures(store.job.units);
    const plan = store.estimate?.weather.heat;
    const power = (/** @type {number} */ value) => call('write', 'power', value > 0 ? w.metric ? step(value / KW) * KW : step(value) : 0, w.metric ? 'metric_usual' : 'us') ?? '';
    if (!plan) return redraw(answer, [el('p', 'note', t('hours.heat_open'))]);
    const reaches = plan.hours !== undefined && plan.power_btu_hr !== undefined;
    redraw(answer, [
      el('p', 'lead', plan.hours === 0 ? t('hours.heat_warm', { to: w.temp(plan.to_f) }) : reaches ? t('hours.heat_takes', { hours: number(about(plan.hours ?? 0), 1), power: power(plan.power_btu_hr ?? 0), air: air(store) }) : t('hours.heat_never', { air: air(store), to: w.temp(plan.to_f) })),
      note('watch', t('hours.heat_rough'), t('hours.heat_rough_do', { to: w.temp(plan.to_f) })),
      el('ul', 'rows',
        reaches && plan.hours ? row(t('hours.heat_time'), t('hours.heat_time_why'), worked(t('hours.about_h', { n: number(about(plan.hours ?? 0), 1) }), 'job', 0, 'weather.heat.hours')) : undefined,
        reaches ? row(t('hours.heat_power'), '', worked(power(plan.power_btu_hr ?? 0), 'job', 0, 'weather.heat.power_btu_hr')) : undefined,
        row(t('hours.heat_lost'), '', worked(power(plan.lost_btu_hr), 'job', 0, 'weather.heat.lost_btu_hr')))]);
  }
  return { node, update };
}
