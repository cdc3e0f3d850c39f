// @ts-check
/** The day sheet: the one thing to do next, the timers, the checklist in the order of work, and what was done and when. */
import { answerBar, VERDICT } from './answer.js';
import { now } from './calls.js';
import { dayKits, kitsAtHand, openKit, sheetName } from './daykits.js';
import { nameOf } from './drawn.js';
import { faultList } from './faults.js';
import { line } from './field.js';
import { figures } from './figures.js';
import { el, list, say } from './list.js';
import { mark } from './marks.js';
import { byId, caution, findingNote, head, note, press, redraw, row, src, to, way } from './parts.js';
import { exhaustOff, exhaustPress, hours as hoursOf, inHours, instant, waits } from './reentry.js';
import { jobName } from './sheet.js';
import { once, passed, secondsLeft, shown, spoken } from './timers.js';
import { clock, finding, has, span, t } from './words.js';

/** @typedef {import('./core.js').DayStep} DayStep */
/** @typedef {import('./core.js').Day} Day */
/** @typedef {import('./job.js').Event} Event */
/** @typedef {import('./store.js').Store} Store */

export const words = ['sheet', 'spraying', 'ready', 'day', 'kits', 'people'];

/** @param {DayStep} step */
const keyOf = (step) => `${step.key}-${step.surface}-${step.lift}`;

/** What a line of the checklist is called. @param {Store} store @param {{key: string, surface: number, lift: number, of?: number}} step */
export function stepName(store, { key, surface, lift, of }) {
  const at = byId(store.job.surfaces, surface);
  const name = at ? nameOf(at) : t('day.gone');
  if (key === 'lift') return of ? t('day.lift', { name, n: lift, of }) : t('day.lift_n', { name, n: lift });
  if (key === 'edges') return t('day.edges', { name });
  return has(`day.step.${key}`) ? t(`day.step.${key}`) : t('day.unknown');
}

/** @param {Store} store @param {Event} event */
export function eventName(store, { what, key, surface, lift, name }) {
  switch (what) {
    case 'step': return stepName(store, { key, surface, lift });
    case 'lift': return stepName(store, { key: 'lift', surface, lift });
    case 'skip': return t('day.skipped_of', { step: stepName(store, { key, surface, lift }) });
    case 'fault': return t('day.fault_of', { fault: has(`day.fault.${key}`) ? t(`day.fault.${key}`) : t('day.unknown') });
    case 'kit_on': return t('day.opened_of', { name: name.trim() || t('day.kit') });
    default: return t(`day.event.${what}`);
  }
}

/** A countdown: written by the tick, silent for those who listen. @param {number} until @param {string} [kind] */
const countdown = (until, kind = '') => el('span', { class: `timer ${kind}`, role: 'timer', 'aria-live': 'off', 'data-until': until }, shown(secondsLeft(until, Date.now())));

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const urgent = el('section', { class: 'nozzle pad top no-print' });
  const next = el('section', { class: 'next-step', 'aria-labelledby': 'next-title' });
  const nozzle = el('section', { class: 'nozzle pad' });
  const exhaust = el('section', 'pad');
  const waiting = el('section', 'pad');
  const lists = el('div', 'pad');
  const fresh = once(Date.now);
  const kits = dayKits(store, fresh);
  const logList = el('ul', 'rows log');
  const logNote = el('p', 'note', t('day.log_none'));
  const live = el('p', { class: 'vh', role: 'status' });
  const bar = answerBar();
  root.append(el('main', '', top, urgent, el('div', 'pad top', next), nozzle, exhaust, waiting, lists, kits.node, faultList(store, fresh),
    el('section', 'pad', el('h2', 'bar', t('day.log')), logNote, logList),
    el('div', 'pad tail', el('h2', 'bar', t('day.safe')), el('div', 'says', caution('day.breath'), caution('day.vessel')), src(t('spraying.practice')), el('p', 'note', t('sheet.governs')),
      el('div', 'dos no-print', way(t('people.title'), to('people')), way(t('people.print_emergency'), to('paper', 'emergency')), way(t('spraying.print'), to('paper', 'day')))), live), bar.node);

  /** Marks a line. @param {Pick<DayStep, 'key' | 'surface' | 'lift'>} step @param {boolean} [skip] */
  function done({ key, surface, lift }, skip = false) {
    if (!fresh()) return;
    if (key === 'lift') store.dispatch({ do: 'add_event', what: 'lift', surface, lift, now: now() });
    else store.dispatch({ do: 'add_event', what: skip ? 'skip' : 'step', key, surface, now: now() });
  }

  /** @param {import('./core.js').EventOf} what */
  function happened(what) {
    if (fresh()) store.dispatch({ do: 'add_event', what, now: now() });
  }

  const ready = () => store.estimate?.readiness.verdict === 'go';

  /** The press of the next line: the focus goes from one to the following. @param {string} text @param {DayStep} step @param {() => void} act @param {string} kind */
  function main(text, step, act, kind) {
    const node = press(text, 'next-main', act, kind);
    node.setAttribute('data-step', keyOf(step));
    return node;
  }

  /** What may be pressed for a line that is next. @param {DayStep} step @param {boolean} waits */
  function presses(step, waits) {
    const name = stepName(store, step);
    if (step.key === 'readings' && !ready()) return [way(t('ready.take'), to('ready'), 'wide big')];
    if (step.key === 'valves') {
      const all = kitsAtHand(store);
      return (all.length ? all : [0]).map((kit, at) => press(t(kit ? 'day.kit_on_of' : 'day.kit_on', { name: sheetName(store, kit) || t('day.kit') }), at ? `kit-${kit}` : 'next-main', () => { if (fresh()) openKit(store, kit); }, at ? 'line wide big' : 'wide big'));
    }
    return [main(waits ? t('day.done_early', { step: name }) : t('day.done', { step: name }), step, () => done(step), waits ? 'yet wide big' : 'wide big'),
      step.optional ? press(t('day.skip'), `skip-${keyOf(step)}`, () => done(step, true), 'line wide') : undefined];
  }

  /** What to know while doing it. @param {DayStep} step @param {Day} day */
  function about(step, day) {
    const plan = store.estimate?.spraying;
    switch (step.key) {
      case 'readings': {
        const found = store.estimate?.readiness;
        const verdict = found?.verdict ?? 'not_read';
        const blamed = found?.blame === undefined ? undefined : store.estimate?.findings[found.blame];
        return note(VERDICT[verdict], `${t(`ready.verdict_${verdict}`)}${verdict === 'go' && found?.until_ms !== undefined ? ', ' + t('ready.until', { time: clock(found.until_ms) }) : ''}.`, blamed && finding(blamed).what + ' ', t('day.step.readings_do'));
      }
      case 'carton': return note('watch', t('day.count', { n: plan?.nozzles ?? 0 }), t('day.step.carton_do'));
      case 'lift': return note('watch', t('day.lift_first'), t('day.lift_do'));
      case 'edges': return note('watch', t('day.edges_first'), t('day.edges_do'));
      case 'posted': return hours(day);
      case 'heat': return note('watch', day.cure_ms === undefined ? t('day.cure_none') : t('day.cure_until', { time: clock(day.cure_ms) }), t('day.step.heat_do'));
      default: return note('watch', t(`day.step.${step.key}_first`), t(`day.step.${step.key}_do`));
    }
  }

  /** The label's hours, if it gives any: never a clearance. @param {Day} day */
  function hours(day) {
    const silent = store.estimate?.foams.find((one) => one.reentry_min === undefined);
    if (day.reentry_min === undefined) return note('watch', t('day.reentry_none'), t('day.reentry_none_do'), ' ', silent && el('a', { href: to('foam', silent.id) }, t('day.foam_sheet')));
    const length = t('day.label_hours', { span: inHours(day.reentry_min) });
    const all = hoursOf(store, 'all');
    const workers = hoursOf(store, 'workers');
    const held = all.state === 'off' || all.state === 'smell';
    return note(held ? 'hold' : 'watch', all.ms === undefined ? length : t('day.reentry_until', { time: instant(all.ms) }),
      [held ? t(`people.${all.state}_do`) : '', all.ms === undefined ? '' : length, all.more ? t('day.reentry_more', { span: waits(all.more) }) : '', workers.ms === undefined ? '' : t('day.reentry_workers', { time: instant(workers.ms) }), t('day.reentry_do')].filter(Boolean).join(' '),
      ' ', el('a', { href: to('people') }, t('people.title')));
  }

  /** What follows a line. @param {DayStep} step @param {Day} day */
  function then(step, day) {
    if (step.key === 'lift') {
      if (step.lift >= step.of) return undefined;
      const wait = byId(store.estimate?.surfaces ?? [], step.surface)?.lifts?.wait_min;
      return wait === undefined ? t('day.then_label') : t('day.then_wait', { span: span(wait) });
    }
    const at = day.steps.indexOf(step);
    const after = day.steps.find((one, place) => place > at && one.state !== 'done' && one.state !== 'skipped');
    return after && t('day.then', { step: stepName(store, after) });
  }

  /** @param {Day} day */
  function drawNext(day) {
    const step = day.next === undefined ? undefined : day.steps[day.next];
    const again = day.done && (!step || day.stopped || day.stale) ? press(t('day.again'), 'again', () => done({ key: 'again', surface: 0, lift: 0 }), step ? 'line wide' : 'wide big') : undefined;
    if (!step) {
      redraw(next, [el('h2', { class: 'what', id: 'next-title' }, day.steps.length ? t('day.all_done') : t('day.nothing')),
        el('p', 'note', day.steps.length ? t('day.all_done_do') : t('day.nothing_do')), el('div', 'dos no-print', again)]);
      return;
    }
    const waits = step.ready_ms !== undefined && step.ready_ms > Date.now();
    const one = byId(store.estimate?.surfaces ?? [], step.surface);
    redraw(next, [
      el('p', 'when', t(waits || step.label_wait ? 'day.wait' : `day.phase.${step.phase}`)),
      el('h2', { class: 'what', id: 'next-title' }, stepName(store, step)),
      step.key === 'lift' && one?.lifts ? el('p', 'each', t('day.each', { depth: figures(store.job.units).depth(one.lifts.each_in) })) : undefined,
      waits && step.ready_ms !== undefined ? el('p', 'until', countdown(step.ready_ms, 'large'), el('span', '', t('day.from', { time: clock(step.ready_ms) }))) : undefined,
      step.label_wait ? note('hold', t('day.by_label'), t('day.by_label_do')) : undefined,
      step.phase === 'spraying' && !ready() ? note(VERDICT[store.estimate?.readiness.verdict ?? 'not_read'], t('day.not_go'), el('a', { href: to('ready') }, t('ready.open'))) : undefined,
      about(step, day),
      el('div', 'dos no-print', ...presses(step, waits || step.label_wait)),
      el('p', 'note then', then(step, day)),
      again ? el('div', 'dos no-print', again) : undefined,
      day.stale ? note('watch', t('day.stale'), t('day.stale_do')) : undefined,
    ]);
  }

  /** The foam in a nozzle that stands idle. @param {Day} day */
  function drawNozzle(day) {
    const opened = day.runs.some((run) => run.off === 0) || day.last_spray_ms !== undefined;
    const until = day.nozzle_until_ms;
    const held = [nozzle, urgent].some((one) => one.contains(document.activeElement));
    redraw(nozzle, until === undefined && opened ? [el('h2', 'bar', t('day.nozzle')), el('p', 'note', t('day.nozzle_note')), el('div', 'dos no-print', press(t('day.let_go'), 'idle', () => happened('idle'), 'line wide big'))] : []);
    if (until === undefined) redraw(urgent, []);
    else {
      const over = until <= Date.now();
      redraw(urgent, [el('h2', 'vh', t('day.nozzle')),
        el('div', `stamp ${over ? 'hold' : 'none'}`, over ? el('p', 'word', t('day.new_nozzle')) : countdown(until, 'large'), el('p', 'until', over ? t('day.new_nozzle_do') : t('day.sets_in'))),
        el('div', 'dos no-print', press(t(over ? 'day.nozzle_on' : 'day.spraying_again'), 'trigger', () => happened('trigger'), 'line wide big'))]);
    }
    // The press moves up to the countdown and back; the focus and the view go with it.
    const shownIn = [urgent, nozzle].find((one) => one.firstChild);
    if (held && !shownIn?.contains(document.activeElement)) shownIn?.querySelector('button')?.focus();
  }

  /** The exhaust, from the day's first mark on: while it is off, the label's hours stand still. @param {Day} day */
  function drawExhaust(day) {
    const begun = day.last_spray_ms !== undefined || day.steps.some((step) => step.key === 'air' && step.state === 'done') || exhaustOff(store);
    redraw(exhaust, begun ? [el('h2', 'bar', t('day.exhaust')), el('p', 'note', t('day.exhaust_note')), ...exhaustPress(store, fresh)] : []);
  }

  /** What cools while something else is sprayed, and a cylinder that gives off its gas. @param {Day} day */
  function drawWaiting(day) {
    const waits = day.steps.filter((step, at) => at !== day.next && step.state === 'waiting');
    const all = waits.filter((step) => step.phase === 'spraying');
    const bleeds = waits.filter((step) => step.phase !== 'spraying');
    const spraying = day.steps.some((step) => step.phase === 'spraying' && step.state !== 'done' && step.state !== 'skipped');
    const started = day.last_spray_ms !== undefined && spraying && !day.stopped;
    redraw(waiting, [
      ...(all.length ? [el('h2', 'bar', t('day.cooling')), el('ul', 'rows', ...all.map((step) => row(stepName(store, step),
        step.ready_ms === undefined ? t('day.by_label') : t('day.from', { time: clock(step.ready_ms) }),
        step.ready_ms === undefined ? '–' : countdown(step.ready_ms))))] : []),
      ...(bleeds.length ? [el('h2', 'bar', t('day.bleeding')), el('ul', 'rows', ...bleeds.map((step) => row(stepName(store, step), t('day.bleeding_do'), step.ready_ms === undefined ? '–' : countdown(step.ready_ms))))] : []),
      started ? el('div', 'dos no-print', press(t('day.stop'), 'stop', () => done({ key: 'stop', surface: 0, lift: 0 }))) : undefined,
    ]);
  }

  /** The checklist. @param {Day} day */
  function drawLists(day) {
    redraw(lists, /** @type {const} */ (['before', 'spraying', 'after']).flatMap((phase) => {
      const steps = day.steps.filter((step) => step.phase === phase);
      if (!steps.length) return [];
      return [el('h2', 'bar', t(`day.phase.${phase}`)), el('ol', 'rows checklist', ...steps.map((step) => {
        const name = stepName(store, step);
        const settled = step.state === 'done' || step.state === 'skipped';
        const held = step.key === 'readings' && !ready();
        const state = step.state === 'done' ? t('day.done_at', { time: clock(step.done_ms ?? 0) }) : step.state === 'waiting' && step.ready_ms !== undefined ? t('day.from', { time: clock(step.ready_ms) }) : t(`day.state.${step.state}`);
        return el('li', { class: step.state === 'next' ? 'here' : step.state, 'aria-current': step.state === 'next' && 'step' },
          el('span', 'k', mark(settled ? 'go' : 'none'), name, el('small', '', state)),
          settled || step.key === 'valves' ? undefined : held ? el('a', { class: 'link no-print', href: to('ready') }, t('day.read_it'))
            : el('button', { type: 'button', class: 'link no-print', 'data-key': `tick-${keyOf(step)}`, 'aria-label': t('day.done', { step: name }), click: () => done(step) }, t('day.tick')));
      })), phase === 'spraying' && day.unlisted ? el('p', 'note', t('day.unlisted', { n: day.unlisted })) : undefined];
    }));
  }

  /** @param {Event} event */
  function logEntry({ id }) {
    const what = el('b');
    const when = el('small');
    const remark = line({ store, part: 'event', id, field: 'name', label: t('day.remark') });
    const fold = el('details', 'remark no-print', el('summary', '', t('day.remark')), remark.node);
    const gone = el('button', { type: 'button', class: 'link no-print', click: () => take() }, t('day.remove'));
    const node = el('li', '', el('span', 'k', what, when), gone, ['fault', 'lift', 'kit_on', 'kit_off'].includes(byId(store.job.events, id)?.what ?? '') && fold);
    /** Takes the mark away; the focus goes to the one beside it. */
    function take() {
      const beside = node.nextElementSibling ?? node.previousElementSibling;
      store.dispatch({ do: 'remove', part: 'event', id });
      void store.settled().then(() => /** @type {HTMLElement | null} */ (beside?.querySelector('button') ?? root.querySelector('h1'))?.focus({ preventScroll: true }));
    }
    return {
      node,
      /** @param {Event} event */
      update(event) {
        const said = eventName(store, event);
        say(what, said);
        say(when, [clock(event.at.ms), event.what === 'kit_on' ? '' : event.name.trim()].filter(Boolean).join(' · '));
        gone.setAttribute('aria-label', t('day.remove_of', { what: said }));
        remark.update();
      },
    };
  }

  function update() {
    bar.update(store);
    const { estimate, job } = store;
    if (!estimate) return;
    const { day } = estimate;
    const found = estimate.findings.filter((one) => one.code === 'event_ahead' || one.code === 'lift_early' || one.code.startsWith('kit_') && day.runs.some((run) => run.off === 0 && run.id === one.at.id));
    redraw(top, [head({ back: [to('sheet', 'spray'), jobName(store)], side: day.steps.length ? t('day.n_of', { n: day.done + day.skipped, of: day.steps.length }) : undefined, title: t('day.title'), sub: clock(Date.now()) }),
      found.length ? el('div', 'pad', el('div', 'says', ...found.map(findingNote))) : undefined]);
    drawNext(day);
    drawNozzle(day);
    drawExhaust(day);
    drawWaiting(day);
    drawLists(day);
    kits.update();
    logNote.hidden = job.events.length > 0;
    list(logList, [...job.events].reverse(), (event) => event.id, logEntry);
  }

  /** When the page last ticked, and what the nozzle's countdown stood at. */
  let ticked = Date.now();
  /** @type {number | undefined} */
  let left;
  function tick() {
    const day = store.estimate?.day;
    if (document.hidden || !day) return;
    const at = Date.now();
    for (const node of root.querySelectorAll('[data-until]')) say(node, shown(secondsLeft(Number(node.getAttribute('data-until')), at)));
    if (day.nozzle_until_ms === undefined) left = undefined;
    else {
      const seconds = secondsLeft(day.nozzle_until_ms, at);
      const word = spoken(left, seconds);
      if (word) say(live, t(`day.say.${word}`, { n: seconds }));
      left = seconds;
    }
    const instants = day.steps.flatMap((step) => (step.ready_ms === undefined ? [] : [step.ready_ms]));
    if (passed(instants, ticked, at)) {
      const before = day.next;
      store.refresh();
      const later = store.estimate?.day;
      const step = later?.next === undefined ? undefined : later.steps[later.next];
      if (step?.ready_ms !== undefined || later?.next !== before) say(live, step ? t('day.say.ready', { step: stepName(store, step) }) : '');
    } else if (day.nozzle_until_ms !== undefined && passed([day.nozzle_until_ms], ticked, at)) drawNozzle(day);
    ticked = at;
  }
  const clockwork = setInterval(tick, 1000);

  return { title: t('day.title'), update, unmount: () => clearInterval(clockwork) };
}
