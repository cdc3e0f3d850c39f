// @ts-check
/** One group of kits: when it has to be indoors or is ready, its curves, what stands where, and what happened when. */
import { now } from './calls.js';
import { field, fieldId, line } from './field.js';
import { bare, figures } from './figures.js';
import { el, say } from './list.js';
import { byId, findingNote, more, note, press, redraw, row, worked } from './parts.js';
import { wall, wallOf } from './wallclock.js';
import { warmCurves } from './warmcurves.js';
import { coolDrawing, warmDrawing } from './warmdraw.js';
import { warmLog } from './warmlog.js';
import { clockOf, warmOut } from './warmout.js';
import { freshOf, readings } from './warmread.js';
import { about, after, answerOf, before, dayTime, hours, labelHours, leftEarly, sprayAt, standOf, under, wasDue, won } from './warmwords.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./job.js').Warming} Warming */
/** @typedef {import('./core.js').WarmUp} WarmUp */

/** What a group is called. @param {Store} store @param {number} id */
export function groupName(store, id) {
  const all = store.job.warming ?? [];
  const at = all.findIndex((one) => one.id === id);
  return all[at]?.name.trim() || (all.length > 1 ? t('warm.group_n', { n: at + 1 }) : t('warm.group'));
}

/** @param {Store} store @param {number} id @param {HTMLElement} root for the width of its drawings */
export function warmGroup(store, id, root) {
  const ask = (/** @type {string} */ name) => field({ store, part: 'warming', id, field: name, quiet: true });
  const title = el('h2', { class: 'bar', id: `warm-${id}` });
  const big = el('p', { class: 'warm-big', role: 'status' });
  const below = el('p', 'note');
  const clock = el('div', 'warm-clocks');
  const says = el('div', 'says');
  const rows = el('ul', 'rows');
  const slot = el('div', 'warm-slot');
  const drawing = el('div');
  const coolBox = el('div', 'bleed');
  const moves = el('div', 'no-print');
  const kit = ['cylinder', 'start', 'room', 'pack', 'crowded'].map(ask);
  const own = ['diameter', 'height', 'liquid'].map(ask);
  const night = ['night', 'night_from', 'night_to'].map(ask);
  const called = line({ store, part: 'warming', id, field: 'name', label: t('warm.name') });
  const [cylinder, start, warm, pack, crowded] = kit;
  const ownFold = more(t('warm.cylinder_own'), ...own.map((one) => one.node));
  const nightFold = more(t('warm.night'), ...night.map((one) => one.node));
  const entries = /** @type {HTMLDetailsElement} */ (el('details', 'more', el('summary', '', t('warm.entries')),
    cylinder?.node, ownFold, el('div', 'fields', start?.node, warm?.node), nightFold, pack?.node, crowded?.node));
  entries.open = !byId(store.job.warming ?? [], id)?.moved_in;
  const log = warmLog(store, id);
  const out = warmOut(store, id, coolBox);
  const times = timesFold(store, id);
  const gone = press(t('warm.remove'), `remove-${id}`, () => store.dispatch({ do: 'remove', part: 'warming', id }), 'line wide');
  const node = el('section', { class: 'warm-group', 'aria-labelledby': `warm-${id}` },
    el('div', 'pad', title, big, below, clock, says), drawing,
    el('div', 'pad', rows, slot, entries, moves, times.node, log.node, out.node, el('div', 'fields one no-print', called.node), el('div', 'dos no-print', gone)));
  const curves = warmCurves(store, id, draw);

  /** The drawings, where their curves stand; until then the old ones go only if they would be wrong. */
  function draw() {
    const found = byId(store.estimate?.conditioning ?? [], id);
    const made = curves.latest();
    if (made !== undefined || !found?.warm_up) redraw(drawing, [made && warmDrawing(root, store, id, made)]);
    if (made !== undefined || !found?.cool_down) redraw(coolBox, [made && coolDrawing(root, store, id, made)]);
    for (const one of [drawing, coolBox]) one.setAttribute('aria-busy', String(made === undefined && Boolean(one.firstChild)));
  }

  /** @param {'in' | 'out'} way */
  function moved(way) {
    store.dispatch({ do: 'moved', id, way, now: now() });
  }

  /** Back in: hours count anew, and how warm they were the first time says nothing of how cold they are now. */
  function backIn() {
    store.dispatch({ do: 'moved_back', id, now: now() });
    entries.open = true;
    void store.settled().then(() => document.getElementById(fieldId('warming', id, 'start'))?.focus());
  }

  /** @param {Warming} group */
  function drawMoves(group) {
    const back = (/** @type {'in' | 'out'} */ way) => el('button', { type: 'button', class: 'link', 'data-key': `back-${way}-${id}`, 'aria-label': t(`warm.back_${way}`), click: () => store.dispatch({ do: 'moved', id, way }) }, t('warm.back'));
    redraw(moves, [
      group.moved_in || group.moved_out ? el('ul', 'rows', ...[
        group.moved_in && row(t('warm.in_since', { time: wall(wallOf(group.moved_in)) }), '', group.moved_out ? undefined : back('in')),
        group.moved_out && row(t('warm.left_at', { time: wall(wallOf(group.moved_out)) }), '', back('out')),
      ].filter((one) => one !== undefined)) : undefined,
      el('div', 'dos', group.moved_out ? press(t('warm.moved_back'), `move-${id}`, backIn, 'wide big') : group.moved_in ? press(t('warm.moved_out'), `move-${id}`, () => moved('out'), 'wide big') : press(t('warm.moved_in'), `move-${id}`, () => moved('in'), 'wide big')),
    ]);
  }

  /** What stands below the answer. @param {WarmUp} up @param {Warming} group */
  function drawRows(up, group) {
    const w = figures(store.job.units);
    const target = w.temp(up.target_f);
    const open = (/** @type {string} */ text, /** @type {string} */ path) => worked(text, 'warming', id, `warm_up.${path}`);
    const cylinder = byId(store.estimate?.conditioning ?? [], id)?.cylinder;
    const waits = group.moved_in && !group.moved_out;
    const short = (/** @type {number} */ f) => under(w, f, up.target_f);
    const read = readings(store, group);
    const steel = freshOf(read, 'skin', now().ms);
    redraw(rows, [
      up.in_by === undefined || group.moved_in ? undefined : row(t('warm.in_by'), t('warm.in_by_sub'), open(dayTime(before(up.in_by)), 'in_by')),
      up.plan_min === undefined ? undefined : row(t('warm.plan'), won(up), open(hours(up.plan_min, true), 'plan_min')),
      up.likely_min === undefined ? undefined : row(t('warm.likely'), t('warm.likely_sub', { target }), open(hours(up.likely_min), 'likely_min')),
      row(t('warm.label'), t('warm.label_sub'), open(labelHours(up.label_min), 'label_min')),
      waits && up.core_now_f ? row(t('warm.now_core'), freshOf(read, 'liquid', now().ms) ? t('warm.now_core_read') : short(up.core_now_f.low) === short(up.core_now_f.high) ? t('warm.now_skin_sub') : t('warm.now_core_sub', { low: short(up.core_now_f.low), high: short(up.core_now_f.high) }), open(short(up.core_now_f.likely), 'core_now_f')) : undefined,
      waits && up.skin_now_f !== undefined ? row(t('warm.now_skin'), steel ? t('warm.now_skin_read', { skin: about(w, steel.f), time: dayTime(wallOf(steel)) }) : t('warm.now_skin_sub'), open(about(w, up.skin_now_f), 'skin_now_f'))
        : up.skin_min === undefined || up.core_then_f === undefined ? undefined : row(t('warm.skin', { target }), t('warm.skin_sub', { core: short(up.core_then_f) }), open(t('warm.out_after', { span: hours(up.skin_min) }), 'skin_min')),
      cylinder && row(t('warm.counted'), [t('warm.counted_size', { diameter: w.depth(cylinder.diameter_in), height: w.depth(cylinder.height_in), liquid: w.weight(cylinder.liquid_lb) }), cylinder.assumed ? t('warm.counted_assumed') : ''].filter(Boolean).join('. '), undefined),
    ]);
  }

  /** @param {WarmUp | undefined} up @param {Warming} group */
  function notes(up, group) {
    const w = figures(store.job.units);
    const spray = sprayAt(store);
    const late = up?.late && spray !== undefined && up.plan_min !== undefined && !group.moved_out;
    const steel = freshOf(readings(store, group), 'skin', now().ms);
    const skin = steel?.f ?? up?.skin_now_f;
    const core = up?.core_now_f?.likely;
    const due = wasDue(up, group);
    const stand = standOf(byId(store.estimate?.conditioning ?? [], id), group, wallOf(now()), spray);
    const target = up ? w.temp(up.target_f) : '';
    const mine = new Set([...kit, ...own, ...night].map((one) => one.node.getAttribute('data-field')));
    // While they stand there the answer itself says that the hours run.
    const found = (store.estimate?.findings ?? []).filter((one) => one.at.part === 'warming' && one.at.id === id && !mine.has(fieldId('warming', id, one.at.field)) && !one.at.field.startsWith('out_') && (String(one.code) !== 'warm_too_short' || group.moved_out));
    const codes = new Set(/** @type {string[]} */ (found.map((one) => one.code)));
    return [
      late && up.ready_at !== undefined ? note('hold', t('warm.late_in', { spray: wall(spray) }), t('warm.late_in_do', { ready: wall(after(up.ready_at)) })) : undefined,
      late && up.ready_at === undefined && up.in_by !== undefined ? note('hold', t('warm.late_out', { in_by: wall(before(up.in_by)) }), t('warm.late_out_do', { hours: hours(up.plan_min ?? 0, true) })) : undefined,
      group.moved_out ? undefined : stand.is === 'never' ? note('hold', t('warm.never'), t('warm.never_do', { target })) : stand.is === 'hour' ? note('hold', stand.time === undefined ? t('warm.hour_none') : t('warm.hour', { spray: wall(stand.time) }), t('warm.hour_do', { target })) : undefined,
      leftEarly(up, group) && !codes.has('warm_too_short') ? note('hold', t('warm.left_early'), due === undefined ? t('warm.left_early_none') : t('warm.left_early_do', { ready: wall(after(due)) })) : undefined,
      group.moved_in && !group.moved_out && !codes.has('core_cold') ? (up && skin !== undefined && core !== undefined && skin - core >= 1 ? note('watch', t(steel ? 'warm.skin_note_read' : 'warm.skin_note', { skin: about(w, skin), core: under(w, core, up.target_f) }), t('warm.skin_note_do')) : note('watch', t('warm.measure'), t('warm.measure_do'))) : undefined,
      ...found.map((one) => findingNote({ ...one, figures: one.figures.map((each) => (each.text === '@kit' ? { ...each, text: groupName(store, id) } : each)) })),
    ];
  }

  return {
    node,
    update() {
      const group = byId(store.job.warming ?? [], id);
      if (!group) return;
      const found = byId(store.estimate?.conditioning ?? [], id);
      say(title, groupName(store, id));
      const said = answerOf(found, group, wallOf(now()), sprayAt(store));
      say(big, said.text);
      say(below, said.below);
      below.hidden = !said.below;
      redraw(clock, group.moved_out ? clockOf(store, id) : []);
      redraw(says, notes(found?.warm_up, group));
      rows.hidden = !found?.warm_up || Boolean(group.moved_out);
      if (found?.warm_up) drawRows(found.warm_up, group);
      for (const one of [...kit, ...own, ...night, called]) one.update();
      drawMoves(group);
      times.update();
      log.update();
      out.update();
      draw();
    },
    unmount: curves.stop,
  };
}

/** When they came in and left, where nobody pressed at the time. @param {Store} store @param {number} id */
function timesFold(store, id) {
  const wrong = el('p', { class: 'tell', role: 'status' });
  const boxes = /** @type {const} */ (['in', 'out']).map((way) => {
    const dom = `warming-${id}-moved-${way}`;
    const input = el('input', { id: dom, type: 'datetime-local' });
    input.addEventListener('change', () => {
      const date = new Date(input.value);
      if (!Number.isFinite(date.getTime())) return;
      const at = { ms: date.getTime(), offset_min: -date.getTimezoneOffset() };
      const group = byId(store.job.warming ?? [], id);
      const other = way === 'in' ? group?.moved_out : group?.moved_in;
      const fault = at.ms > Date.now() ? t('warm.time_later') : other && (way === 'in') === (at.ms > other.ms) ? t('warm.time_order') : '';
      say(wrong, fault);
      if (!fault) store.dispatch({ do: 'moved', id, way, now: at });
    });
    return { way, input, node: el('div', 'field full', el('label', { for: dom }, t(way === 'in' ? 'warm.came' : 'warm.left')), el('span', 'box warm-when', input)) };
  });
  const node = more(t('warm.times'), ...boxes.map((one) => one.node), wrong);
  return {
    node,
    update() {
      const group = byId(store.job.warming ?? [], id);
      for (const { way, input, node: box } of boxes) {
        const at = way === 'in' ? group?.moved_in : group?.moved_out;
        box.hidden = way === 'out' && !group?.moved_in;
        const text = at ? new Date(Math.floor(wallOf(at)) * 60_000).toISOString().slice(0, 16) : '';
        if (document.activeElement !== input && input.value !== text) input.value = text;
      }
    },
  };
}
