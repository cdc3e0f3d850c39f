// @ts-check
/** Ready to spray: the verdict, the one reading to blame, every reading against its window, and where they are entered. */
import { besideAxis, readAgain, turns, whenAgain } from './again.js';
import { answerBar, VERDICT } from './answer.js';
import { now } from './calls.js';
import { checkName, readings } from './drawn.js';
import { entryOf } from './changes.js';
import { field, fieldId, line } from './field.js';
import { bare, figures } from './figures.js';
import { el, list } from './list.js';
import { mark } from './marks.js';
import { breadth, byId, caution, findingNote, framed, head, more, press, redraw, row, src, to, way, worked } from './parts.js';
import { jobName } from './sheet.js';
import { clock, finding, span, t } from './words.js';

/** @typedef {import('./core.js').ReadingOf} ReadingOf */
/** @typedef {import('./job.js').SiteReading} SiteReading */

export const words = ['sheet', 'ready'];

const LONE = /** @type {const} */ (['cylinder_a', 'cylinder_b', 'air']);
const MOIST = /** @type {const} */ (['humidity', 'dew_point']);
const WEATHER = /** @type {const} */ (['wind', 'night_low', 'storage']);
/** What is asked about a surface. */
const ABOUT = ['material', 'how', 'masonry_dry'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const drawing = el('div');
  const notes = el('div', 'says');
  const lone = el('div');
  const moist = el('div');
  const moistPress = el('div');
  const beside = el('div', 'pad');
  const again = el('div', 'pad');
  const surfaces = el('div');
  const wood = el('div');
  const woodPart = el('div', '', el('h2', 'bar', t('ready.wood')), el('p', 'note', t('ready.wood_how')), wood, el('div', 'dos', press(t('ready.enter.wood_moisture'), 'add-wood', () => add('wood_moisture'))));
  const weather = el('div');
  const weatherPress = el('div', 'dos two');
  const nextRows = el('div');
  const nextPart = more(t('ready.next'), nextRows);
  const margins = el('div');
  const marginsPart = more(t('ready.margins'), margins);
  const cautions = el('div', 'pad');
  const limits = ['dew_spread', 'cylinders_apart', 'wood_most', 'site_age', 'cylinder_age', 'wood_age', 'forecast_age', 'meter_rh_error', 'meter_temp_error'].map((one) => field({ store, part: 'job', id: 0, field: one, source: true }));
  /** @param {string} one */
  const question = (one) => field({ store, part: 'job', id: 0, field: one });
  const around = ['outdoors', 'heat_kept'].map(question);
  const flames = ['flames_out', 'heater_lit'].map(question);
  const bar = answerBar();

  root.append(el('main', '', top, drawing, beside, el('div', 'pad top', notes,
    el('h2', 'bar', t('ready.take')), el('p', 'note', t('ready.how')), lone, moist, moistPress, el('div', 'dos two', way(t('ready.to_moist'), to('moist')), way(t('ready.to_hours'), to('hours'))),
    el('h2', 'bar', t('ready.surfaces')), el('p', 'note', t('ready.surfaces_how')), surfaces,
    el('div', 'dos', press(t('ready.add_surface'), 'add', () => add('surface'))),
    woodPart,
    el('h2', 'bar', t('ready.weather')), around[0]?.node, weather, weatherPress, around[1]?.node,
    el('h2', 'bar', t('ready.questions')), ...flames.map((one) => one.node)), again, cautions,
  el('div', 'pad folds', nextPart, marginsPart, more(t('ready.limits'), ...limits.map((one) => one.node))), el('div', 'pad dos no-print', way(t('sheet.ahead'), to('ahead')))), bar.node);

  /** @param {ReadingOf} of @param {string} [called] */
  function add(of, called) {
    const id = store.job.next_id;
    const named = store.job.readings.filter((one) => one.of === 'surface').length;
    const surface = of === 'surface' ? store.job.surfaces[named]?.name : undefined;
    store.dispatch({ do: 'add_reading', of, name: called ?? surface });
    void store.settled().then(() => document.getElementById(fieldId('reading', id, fieldOf(of)))?.focus());
  }

  /** The entry of one reading. @param {SiteReading} reading */
  function entry(reading) {
    const { id, of } = reading;
    const spot = of === 'surface' || of === 'wood_moisture';
    const shown = field({ store, part: 'reading', id, field: fieldOf(of), label: spot ? t(of === 'surface' ? 'ready.temperature' : 'fields.moisture') : t(`ready.name.${of}`), hint: spot ? '' : t(`ready.where.${of}`), quiet: true });
    const called = spot ? line({ store, part: 'reading', id, field: 'name', label: t('ready.spot') }) : undefined;
    const age = el('span', 'age');
    const again = el('button', { type: 'button', class: 'link', click: () => store.dispatch({ do: 'take', id, now: now() }) }, t('ready.again'));
    const gone = el('button', { type: 'button', class: 'link', click: () => store.dispatch({ do: 'remove', part: 'reading', id }) }, t('ready.remove'));
    const about = of === 'surface' ? ABOUT.map((one) => field({ store, part: 'reading', id, field: one })) : [];
    const wet = el('button', { type: 'button', class: 'do line wide', 'data-key': `wood-${id}`, hidden: true, click: () => add('wood_moisture', byId(store.job.readings, id)?.name ?? '') });
    called?.node.classList.remove('wide');
    const node = el('div', { class: `group reading-entry${spot ? ' spot' : ''}`, role: 'group' }, el('div', 'fields', called?.node, shown.node, el('div', 'aside', age, el('span', 'moves', again, LONE.some((one) => one === of) && id === byFirst(of) ? undefined : gone)), ...about.map((one) => one.node), of === 'surface' ? wet : undefined));
    return {
      node,
      update() {
        const current = byId(store.job.readings, id);
        const check = store.estimate?.readiness.checks.find((one) => one.id === id);
        const named = spot ? current?.name || t(`ready.${of}`) : t(`ready.name.${of}`);
        node.setAttribute('aria-label', named);
        again.setAttribute('aria-label', `${t('ready.again')}: ${named}`);
        gone.setAttribute('aria-label', `${t('ready.remove')}: ${named}`);
        const material = entryOf(store.job, 'reading', id, 'material')?.text ?? '';
        for (const one of about) one.update();
        // How it was read matters once it is known what it is; dry masonry only of masonry.
        if (about[1]) about[1].node.hidden = !material;
        if (about[2]) about[2].node.hidden = material !== 'masonry';
        const called_so = (current?.name ?? '').trim().toLowerCase();
        wet.hidden = material !== 'wood' || store.job.readings.some((one) => one.of === 'wood_moisture' && one.name.trim().toLowerCase() === called_so);
        if (!wet.hidden) wet.textContent = t('ready.wood_for', { name: named });
        shown.update();
        called?.update();
        const taken = current?.taken;
        const typed = Boolean(current?.entries.some((one) => one.text.trim()));
        const minutes = check?.age_min ?? (taken ? Math.max(0, (now().ms - taken.ms) / 60000) : undefined);
        redraw(age, typed && minutes !== undefined
          ? [check ? mark(check.state === 'outside' ? 'hold' : check.state === 'inside' || check.state === 'close' ? 'go' : 'none') : undefined,
            t('ready.taken', { age: span(minutes) }) + (check?.state === 'old' ? `, ${t('ready.old_short')}` : check?.state === 'close' ? `, ${t('ready.close')}` : '')]
          : [mark('none'), t('ready.not_read')]);
        again.hidden = !typed;
      },
    };
  }

  /** The first reading of a kind: it stays listed. @param {ReadingOf} of */
  const byFirst = (of) => store.job.readings.find((one) => one.of === of)?.id;

  function update() {
    bar.update(store);
    const { job, estimate } = store;
    const w = figures(job.units);
    const found = estimate?.readiness;
    const at = now();
    const verdict = found?.verdict ?? 'not_read';
    const kind = VERDICT[verdict];
    const blamed = found?.blame === undefined ? undefined : estimate?.findings[found.blame];
    const said = blamed && finding(blamed);
    redraw(top, [
      head({ back: [to('sheet', 'ready'), jobName(store)], side: t('ready.n', { n: job.readings.filter((one) => one.entries.length).length }), title: t('ready.title'), sub: clock(at.ms) }),
      el('section', { class: 'stamp ' + kind, role: 'status' }, mark(kind), el('div', '', el('p', 'word', t(`ready.verdict_${verdict}`)),
        verdict === 'go' ? el('p', 'until', found?.until_ms === undefined ? '' : t('ready.until', { time: clock(found.until_ms) })) : el('p', 'until', t(`ready.until_${verdict}`)))),
      el('section', 'blame', ...(said ? [el('p', 'lead', said.what), el('p', '', [said.do, whenAgain(store)].filter(Boolean).join(' ')), said.source ? src(said.source) : undefined]
        : [el('p', 'lead', t(`ready.why_${verdict}`)), verdict === 'go' ? el('p', '', [closeBy(), t('ready.go_do')].filter(Boolean).join(' ')) : undefined])),
    ]);
    const svg = readings(store, breadth(root));
    const damp = found?.dew;
    redraw(drawing, [svg && framed(svg, t('ready.boxes'), damp?.humidity_pct === undefined ? t('ready.no_humidity') : t('ready.humidity_is', { pct: w.pct(damp.humidity_pct) }))]);
    redraw(beside, [besideAxis(store)]);
    redraw(again, turns(store));
    const next = readAgain(store);
    nextPart.hidden = !next;
    redraw(nextRows, [next, el('p', 'note', t('ready.ages'))]);
    const others = (estimate?.findings ?? []).filter((one, position) => position !== found?.blame && READY.has(one.code) && !(one.at.part === 'reading' && one.at.id > 0 && BESIDE_FIELD.has(one.code)) && (one.severity === 'stop' || one.at.part !== 'job' && !(one.at.part === 'reading' && one.at.id > 0)));
    redraw(notes, others.map(findingNote));
    redraw(cautions, [el('h2', 'bar', t('ready.before')), el('div', 'says', caution('ready.flames'), caution('ready.hot_kits'), caution('ready.cure')), el('div', 'dos no-print', way(t('ready.to_warm'), to('warm')))]);
    list(lone, LONE.flatMap(lonely), (one) => `${one.of}-${one.id}`, (one) => ('entries' in one ? entry(one) : empty(one.of)));
    const humid = job.readings.filter((one) => one.of === 'humidity' || one.of === 'dew_point');
    list(moist, humid, (one) => one.id, entry);
    redraw(moistPress, humid.length ? [] : [el('div', 'group', el('h3', '', t('ready.moisture')), el('p', 'note', t('ready.moisture_how')), el('div', 'dos two', ...MOIST.map((of) => press(t(`ready.enter.${of}`), 'enter-' + of, () => add(of)))))]);
    list(surfaces, job.readings.filter((one) => one.of === 'surface'), (one) => one.id, entry);
    // Moisture is asked where something is wood, or where it was read all the same.
    woodPart.hidden = !job.readings.some((one) => one.of === 'wood_moisture' || one.of === 'surface' && entryOf(job, 'reading', one.id, 'material')?.text === 'wood');
    list(wood, job.readings.filter((one) => one.of === 'wood_moisture'), (one) => one.id, entry);
    list(weather, job.readings.filter((one) => WEATHER.some((of) => of === one.of)), (one) => one.id, entry);
    redraw(weatherPress, WEATHER.filter((of) => !job.readings.some((one) => one.of === of)).map((of) => press(t(`ready.enter.${of}`), 'enter-' + of, () => add(of))));
    const inside = found && (found.dew || found.checks.some((one) => one.inside_by_f !== undefined)) ? [el('ul', 'rows',
      ...(damp ? [row(t('ready.name.dew_point'), damp.point_f.low === damp.point_f.high ? '' : t('ready.meter', { low: bare(w.temp(damp.point_f.low)), high: w.temp(damp.point_f.high) }), worked(w.temp(damp.point_f.likely), 'job', 0, 'readiness.dew.point_f')),
        row(t('ready.least_surface', { spread: w.step(damp.spread_f) }), '', worked(w.temp(damp.least_surface_f), 'job', 0, 'readiness.dew.least_surface_f')),
        damp.frost_f === undefined ? undefined : row(t('ready.frost_point'), '', worked(w.temp(damp.frost_f), 'job', 0, 'readiness.dew.frost_f'))] : []),
      ...found.checks.flatMap((one) => one.inside_by_f === undefined || one.least_f === undefined || one.most_f === undefined ? [] : [row(checkName(one), t(one.least_is_dew ? 'ready.window_dew' : 'ready.window', { least: bare(w.temp(one.least_f)), most: w.temp(one.most_f) }),
        worked(t(one.inside_by_f < 0 ? 'ready.outside_by' : 'ready.inside_by', { by: w.step(Math.abs(one.inside_by_f)) }), 'check', one.id, 'inside_by_f'))])),
    ] : undefined;
    marginsPart.hidden = !inside;
    redraw(margins, inside ?? []);
    for (const one of [...limits, ...around, ...flames]) one.update();
  }

  /** What is inside by the least, where that is little. */
  function closeBy() {
    const found = store.estimate?.readiness;
    const one = found?.closest === undefined ? undefined : found.checks[found.closest];
    return one?.state === 'close' && one.inside_by_f !== undefined ? t('ready.closest', { name: checkName(one), by: figures(store.job.units).step(one.inside_by_f) }) : '';
  }

  /** The readings of a kind, or the lack of one. @param {typeof LONE[number]} of @returns {(SiteReading | {of: typeof LONE[number], id: number})[]} */
  function lonely(of) {
    const all = store.job.readings.filter((one) => one.of === of);
    return all.length ? all : [{ of, id: 0 }];
  }

  /** A reading that is not in the job yet. @param {ReadingOf} of */
  const empty = (of) => ({ node: el('div', 'group', el('div', 'group-head', el('h3', '', t(`ready.name.${of}`)), el('button', { type: 'button', class: 'do line small', 'aria-label': `${t('ready.enter_it')}: ${t(`ready.name.${of}`)}`, click: () => add(of) }, t('ready.enter_it'))), el('p', 'note', t(`ready.where.${of}`))) });

  return { title: t('ready.title'), update };
}

/** The field that holds a reading. @param {ReadingOf} of */
const fieldOf = (of) => (of === 'humidity' ? 'humidity' : of === 'wood_moisture' ? 'moisture' : of === 'wind' ? 'wind' : 'temperature');

/** What is only too old or not timed stands beside its field and on the axis, not once more on top. */
const BESIDE_FIELD = new Set(['reading_old', 'reading_untimed']);

/** Findings that belong here and are shown besides the one to blame. */
const READY = new Set(['spot_not_read', 'reading_old', 'reading_untimed', 'cylinder_cold', 'cylinder_hot', 'air_cold', 'air_hot', 'surface_cold', 'surface_hot', 'dew_too_close', 'below_dew_point', 'dew_within_meter_error', 'close', 'cylinders_apart', 'frost', 'dew_above_air', 'window_crossed',
  'cylinder_danger', 'unanswered', 'not_yet', 'infrared_on_metal', 'masonry_damp', 'moisture_not_read', 'wood_wet', 'wind_not_read', 'wind_over', 'night_cold', 'flames_lit', 'heater_lit',
  'kit_not_known', 'kit_date_not_read', 'kit_past_day', 'storage_too_hot']);
