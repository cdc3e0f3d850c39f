// @ts-check
/** Moist air: where the water comes from, what air changes make of it, and rounds of readings one after the other. */
import { answerBar } from './answer.js';
import { entryOf } from './changes.js';
import { dewBars } from './drawing/dewbars.js';
import { field } from './field.js';
import { bare, figures } from './figures.js';
import { el } from './list.js';
import { breadth, caution, findingNote, framed, head, note, redraw, row, src, to, worked } from './parts.js';
import { roundsPart } from './roundspart.js';
import { label, t } from './words.js';

/** @typedef {import('./core.js').Moisture} Moisture */
/** @typedef {import('./core.js').AtChanges} AtChanges */
/** @typedef {ReturnType<typeof figures>} Figures */

export const words = ['sheet', 'ready', 'moist'];

const ROOM = ['room_length', 'room_width', 'room_height', 'air_changes', 'coldest_surface'];
const OUTDOORS = ['outdoor_air', 'outdoor_humidity'];
const SOURCES = ['heater_fuel', 'heater_power', 'mud_weight', 'concrete_area', 'concrete_age', 'people_inside'];
/** What an answer needs before all else. */
const NEEDED = ['room_length', 'room_width', 'room_height', 'outdoor_air', 'outdoor_humidity'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const ask = (/** @type {string[]} */ names) => names.map((one) => field({ store, part: 'job', id: 0, field: one, quiet: true }));
  const top = el('div');
  const drawing = el('div');
  const facts = el('div', 'pad');
  const [room, outdoors, sources] = [ask(ROOM), ask(OUTDOORS), ask(SOURCES)];
  const rounds = roundsPart(store, root);
  const bar = answerBar();
  const nodes = (/** @type {ReturnType<typeof ask>} */ fields) => el('div', 'fields', ...fields.map((one) => one.node));
  root.append(el('main', 'sky', top, drawing, facts, el('div', 'pad',
    el('h2', 'bar', t('moist.room')), el('p', 'note', t('moist.room_how')), nodes(room),
    el('h2', 'bar', t('moist.outdoors')), nodes(outdoors),
    el('h2', 'bar', t('moist.sources')), note('watch', t('moist.heater'), t('moist.heater_do')), nodes(sources),
    el('div', 'says', caution('ready.flames')), src(t('moist.practice'))),
  rounds.node), bar.node);

  function update() {
    bar.update(store);
    const { job, estimate } = store;
    const w = figures(job.units);
    const found = estimate?.moisture;
    const one = found && chosen(found, entryOf(job, 'job', 0, 'air_changes')?.text ?? '');
    const lacks = NEEDED.filter((name) => !entryOf(job, 'job', 0, name));
    const read = estimate?.readiness.checks.find((check) => check.of === 'air')?.value_f;
    redraw(top, [head({ back: [to('ready'), t('ready.title')], title: t('moist.title'), sub: t('moist.lead') }),
      el('section', { class: 'blame', role: 'status' },
        el('p', 'lead', found && one ? says(w, found, one, read) : lacks.length ? t('moist.need', { what: lacks.map((name) => label('job', name).toLocaleLowerCase()).join(', ') }) : t('moist.open')),
        el('p', '', t('moist.reading_wins')))]);
    redraw(drawing, [found?.at.length ? drawn(w, found, one, breadth(root)) : undefined]);
    redraw(facts, found ? factsOf(w, found) : []);
    for (const one of [...room, ...outdoors, ...sources]) one.update();
    rounds.update();
  }

  return { title: t('moist.title'), update };
}

/** What a closed room has where nobody said, as the caution at the heater takes it. */
const CLOSED_ROOM = 0.5;

/** The air changes that were typed, or those of a closed room. @param {Moisture} found @param {string} typed */
export function chosen({ at }, typed) {
  const wanted = Number.parseFloat(typed.replace(',', '.')) || CLOSED_ROOM;
  return at.reduce((/** @type {AtChanges | undefined} */ best, one) => (best && Math.abs(best.changes - wanted) <= Math.abs(one.changes - wanted) ? best : one), undefined);
}

/** The answer in one sentence, and a second one where water settles on more than the coldest surface. @param {Figures} w @param {Moisture} found @param {AtChanges} one @param {number} [air] the room's air as it was read */
export function says(w, found, one, air) {
  const about = { n: one.changes, changes: w.number(one.changes), dew: w.temp(one.dew_f), coldest: w.temp(found.coldest_f), above: w.step(Math.abs(one.above_f ?? 0)), spread: w.step(found.spread_f) };
  const first = t('moist.at', about);
  const wets = air === undefined ? (one.above_f ?? 0) < 0 && t('moist.all_wet_if') : one.dew_f > air && t('moist.all_wet', { air: w.temp(air) });
  const last = wets ? ` ${wets}` : '';
  if (one.above_f === undefined) return first + last;
  return `${first} ${t(one.above_f < 0 ? 'moist.wet' : one.above_f < found.spread_f ? 'moist.near' : 'moist.clear', about)}${last}`;
}

/** @param {Figures} w @param {Moisture} found @param {AtChanges | undefined} yours @param {number} width */
function drawn(w, found, yours, width) {
  const degrees = (/** @type {number} */ f) => `${Math.round(Number(bare(w.temp(f)).replace('−', '-')))}°`.replace('-', '−');
  const bars = found.at.map((one) => ({ dew: one.dew_f, name: w.number(one.changes), figure: degrees(one.dew_f), yours: one === yours, dashed: false }));
  if (found.sealed_hour_dew_f !== undefined) bars.unshift({ dew: found.sealed_hour_dew_f, name: '0', figure: degrees(found.sealed_hour_dew_f), yours: false, dashed: true });
  const limit = found.coldest_f === undefined ? undefined : found.coldest_f - found.spread_f;
  const svg = dewBars(bars, { coldest: found.coldest_f, limit, outdoors: found.outdoor_dew_f }, {
    label: t('moist.drawing_label', { list: bars.map((one) => `${one.name}: ${one.figure}`).join('; ') }),
    over: t('moist.bar_over'), fits: t('moist.bar_fits'), axis: t('fields.air_changes'),
    coldest: t('moist.line_coldest', { temp: w.temp(found.coldest_f) }), limit: t('moist.line_limit', { temp: w.temp(limit) }), outdoors: t('moist.line_outdoors', { temp: w.temp(found.outdoor_dew_f) }),
  }, { width, metric: w.metric });
  return framed(svg, t('moist.caption'), found.sealed_hour_dew_f === undefined ? '' : t('moist.caption_sealed'));
}

/** @param {Figures} w @param {Moisture} found */
function factsOf(w, found) {
  const hourly = (/** @type {number} */ lb) => t('moist.hourly', { weight: w.weight(lb) });
  const known = found.at.length > 0 && found.coldest_f !== undefined;
  return [el('ul', 'rows',
    known ? row(t('moist.least'), found.least_changes === undefined ? t('moist.least_none') : t('moist.least_why', { spread: w.step(found.spread_f) }),
      found.least_changes === undefined ? t('moist.none') : worked(w.number(Math.ceil(found.least_changes * 10) / 10), 'job', 0, 'moisture.least_changes')) : undefined,
    found.sealed_hour_dew_f === undefined ? undefined : row(t('moist.sealed'), t('moist.sealed_why'), worked(w.temp(found.sealed_hour_dew_f), 'job', 0, 'moisture.sealed_hour_dew_f')),
    ...found.sources.map((one) => row(t(`moist.gives.${one.gives}`), '', hourly(one.water_lb_hr))),
    found.sources.length ? row(t('moist.all_sources'), '', worked(hourly(found.water_lb_hr), 'job', 0, 'moisture.water_lb_hr'), 'sum') : undefined,
    found.outdoor_dew_f === undefined ? undefined : row(t('moist.outdoor_dew'), '', w.temp(found.outdoor_dew_f)))];
}
