// @ts-check
/** People and air: who stays out until when, the zone sealed off, exhaust, what is worn, and what goes into the van. */
import { answerBar } from './answer.js';
import { call } from './calls.js';
import { entryOf } from './changes.js';
import { field } from './field.js';
import { figures } from './figures.js';
import { el } from './list.js';
import { REST, vanCounts, vanKits } from './loadout.js';
import { head, note, redraw, row, src, to, way, worked } from './parts.js';
import { protection } from './protection.js';
import { drawAnswer, exhaustLog, exhaustPress, inHours, instant, waits } from './reentry.js';
import { jobName } from './sheet.js';
import { once } from './timers.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').Exhaust} Exhaust */

export const words = ['sheet', 'ready', 'spraying', 'day', 'kits', 'people'];

/** Cubic meters in a cubic foot: 0.3048³. */
const M3 = 0.3048 ** 3;

const WHO = ['occupants', 'children', 'asthma', 'sensitized'];
const ZONE = ['isolated', 'air_handler_off'];
const ROOM = ['room_length', 'room_width', 'room_height', 'exhaust_flow', 'exhaust_changes', 'mixing', 'purge_left', 'leak_area'];
const HEAT = ['flames_out', 'heater_lit', 'heat_kept'];
const VAN = ['crew', 'zone_entries', 'mask_run', 'vehicle_most'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const ask = (/** @type {string} */ name) => field({ store, part: 'job', id: 0, field: name, source: true, quiet: true });
  const answer = (/** @type {string} */ name) => entryOf(store.job, 'job', 0, name)?.text ?? '';
  const says = () => el('div', { class: 'says', role: 'status' });
  const top = el('div');
  const result = el('section', { class: 'next-step', 'aria-labelledby': 'answer-title' });
  const parts = { who: WHO.map(ask), zone: ZONE.map(ask), room: ROOM.map(ask), flue: ask('flue_near'), smell: ask('smell'), heat: HEAT.map(ask), van: VAN.map(ask) };
  const [who, zone, flue, smell, heat, van] = [says(), says(), says(), says(), says(), says()];
  const air = el('div');
  const presses = el('div');
  const log = exhaustLog(store);
  const fresh = once(Date.now);
  const load = el('div');
  const bar = answerBar();
  const nodes = (/** @type {{node: HTMLElement}[]} */ all) => all.map((one) => one.node);

  root.append(el('main', 'people', top, el('div', 'pad top', result,
    el('h2', 'bar', t('people.day')), presses, parts.smell.node, smell, log.node,
    el('h2', 'bar', t('people.who')), ...nodes(parts.who), who, src(t('people.from.epa')),
    el('h2', 'bar', t('people.zone')), ...nodes(parts.zone), zone, src(t('people.from.epa')),
    el('h2', 'bar', t('people.air')), el('p', 'note', t('people.air_lead')), el('div', 'fields', ...nodes(parts.room)), air, parts.flue.node, flue,
    el('h2', 'bar', t('people.heat')), ...nodes(parts.heat), heat,
    el('h2', 'bar', t('people.worn')), el('p', 'note', t('people.worn_lead')), protection(),
    el('details', 'more van', el('summary', '', t('people.van')), el('div', 'inside', el('p', 'note', t('people.van_lead')), el('div', 'fields', ...nodes(parts.van)), van, load)),
    el('p', 'note governs', t('sheet.governs')),
    el('div', 'dos no-print', way(t('people.print_emergency'), to('paper', 'emergency')), way(t('people.print_loadout'), to('paper', 'loadout')), way(t('spraying.day'), to('day'))))), bar.node);

  /** What holds for everybody; what an answer asks for stands beside it. */
  function aboutWho() {
    const unknown = ['children', 'asthma', 'sensitized'].some((one) => answer(one) === 'not_known');
    return [unknown ? note('none', t('people.care_unknown'), t('people.care_unknown_do')) : undefined, note('watch', t('people.only'), t('people.only_do'))];
  }

  /** What the fan does. @param {Exhaust | undefined | null} exhaust */
  function figuresOf(exhaust) {
    const w = figures(store.job.units);
    const flow = (/** @type {number} */ value) => call('write', 'airflow', value, w.metric ? 'metric_usual' : 'us') ?? '';
    const fig = (/** @type {string} */ text, /** @type {string} */ path) => worked(text, 'job', 0, `people.exhaust.${path}`);
    if (!exhaust) return [note('none', t('people.no_room'), t('people.no_room_do'))];
    const { zone_ft3: zone, changes, wanted, flow: fan, flow_changes: given, mixing, left_pct: left, purge_min: purge, holds_5_pa: holds } = exhaust;
    const volume = w.metric ? `${w.number(zone * M3)}\u00a0m³` : `${w.number(zone)}\u00a0ft³`;
    return [el('ul', 'rows',
      row(t('people.volume'), t('people.volume_why'), volume),
      row(t('people.wanted'), t('people.wanted_why', { changes: w.number(changes) }), fig(flow(wanted), 'wanted')),
      given === undefined || given === null || fan === undefined || fan === null ? row(t('people.given'), t('people.no_fan'), '–') : row(t('people.given'), t(given < changes ? 'people.given_less' : 'people.given_enough', { flow: flow(fan) }), fig(t('people.an_hour', { n: w.number(given) }), 'flow_changes')),
      purge === undefined || purge === null ? row(t('people.purge'), t('people.no_fan'), '–') : row(el('b', '', t('people.purge')), t('people.purge_why', { left: w.pct(left), k: w.number(mixing) }), fig(waits(purge), 'purge_min')),
      holds === undefined || holds === null ? row(t('people.holds'), t('people.no_leaks'), '–') : row(t('people.holds'), fan === undefined || fan === null ? t('people.holds_why') : t(fan < holds ? 'people.holds_less' : 'people.holds_enough', { flow: flow(fan) }), flow(holds))),
    note('watch', t('people.estimate'), t('people.estimate_do')),
    ];
  }

  /** The van: weights and counts. */
  function drawLoad() {
    const { job, estimate } = store;
    const w = figures(job.units);
    const found = estimate?.people.load;
    if (!found) return redraw(load, []);
    const kits = vanKits(store);
    const open = kits.find((one) => one.kit !== undefined);
    const gross = found.gross_lb ?? undefined;
    redraw(van, [
      open ? note('none', t('people.load.open', { name: open.what }), t('people.load.open_do')) : undefined,
      open ? el('div', 'dos no-print', way(t('people.load.open_sheet'), to('kit', open.kit ?? 0))) : undefined,
    ]);
    return redraw(load, [
      kits.length ? el('ul', 'rows', ...kits.map((one) => row(el('b', '', one.what), one.why, one.count)),
        row(t('people.load.all'), t('people.load.most', { weight: w.weight(found.most_lb) }), gross === undefined ? '–' : worked(w.weight(gross), 'job', 0, 'people.load.gross_lb'), 'sum')) : el('p', 'note', t('people.load.no_kits')),
      el('ul', 'rows', ...vanCounts(store).map((one) => row(one.what, one.why, one.count === undefined ? '–' : one.path ? worked(one.count, 'job', 0, one.path) : one.count)),
        row(t('people.load.rest'), REST.map((one) => t(`people.load.${one}`)).join('; '), undefined)),
      src(t('people.load.note')),
    ]);
  }

  function update() {
    bar.update(store);
    const { estimate } = store;
    redraw(top, [head({ back: [to('sheet', 'spray'), jobName(store)], title: t('people.title'), sub: t('people.sub') })]);
    for (const one of Object.values(parts).flat()) one.update();
    if (!estimate) return;
    drawAnswer(result, store);
    redraw(who, aboutWho());
    redraw(zone, [note('watch', t('people.sealed'), t('people.sealed_do'))]);
    redraw(air, figuresOf(estimate.people.exhaust));
    redraw(flue, [note('watch', t('people.flue'), t('people.flue_do'))]);
    redraw(presses, exhaustPress(store, fresh));
    redraw(smell, [answer('smell') === 'yes' ? note('hold', t('people.smells'), t('people.smells_do')) : undefined]);
    log.update();
    const { cure_ms: cured, cure_min: cure } = estimate.day;
    redraw(heat, [
      answer('heater_lit') === 'yes' || answer('flames_out') === 'no' ? note('hold', t('people.burns'), t('people.burns_do')) : note('watch', t('people.flames'), t('people.flames_do')),
      note('watch', cured !== undefined && cured !== null ? t('people.cure_until', { time: instant(cured) }) : cure !== undefined && cure !== null ? t('people.cure_after', { span: inHours(cure) }) : t('people.cure_none'), t('people.cure_do')),
    ]);
    drawLoad();
  }

  return { title: t('people.title'), update };
}
