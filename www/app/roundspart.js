// @ts-check
/** Rounds of readings over time: drawn, with what is to blame for each spot, and the cold spots from the coldest up. */
import { roundsDrawing } from './drawing/rounds.js';
import { figures } from './figures.js';
import { el, say } from './list.js';
import { breadth, framed, more, press, redraw, row, to, way } from './parts.js';
import { clock, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').Series} Series */

/** What is drawn on the axis of temperature. @type {Partial<Record<import('./core.js').ReadingOf, 'surface' | 'air' | 'dew'>>} */
const DRAWN = { surface: 'surface', air: 'air', dew_point: 'dew' };

/** @param {Store} store @param {HTMLElement} root */
export function roundsPart(store, root) {
  const keep = el('div', 'dos');
  const said = el('p', { class: 'note', role: 'status' });
  const drawing = el('div');
  const facts = el('div');
  const every = el('div', 'wide');
  const fold = more(t('moist.series'), every);
  const node = el('section', '', el('div', 'pad', el('h2', 'bar', t('moist.rounds')), el('p', 'note', t('moist.rounds_how')), keep, said), drawing, el('div', 'pad', facts, fold));

  /** What of it was read, with its time. */
  const read = () => store.job.readings.filter((one) => one.taken && one.entries.length).length;

  function keepRound() {
    const n = read();
    if (!n) return say(said, t('moist.nothing_read'));
    store.dispatch({ do: 'keep_round' });
    say(said, t('moist.kept', { n }));
  }

  return {
    node,
    update() {
      const found = store.estimate?.rounds;
      redraw(keep, [press(t('moist.keep'), 'keep-round', keepRound, read() ? 'line wide' : 'yet wide'), way(t('ready.take'), to('ready'))]);
      redraw(drawing, [found && drawn(store, found.series, breadth(root))]);
      redraw(facts, found ? factsOf(store, found) : []);
      fold.hidden = !found?.series.length;
      redraw(every, [found && readingsOf(store, found.series)]);
    },
  };
}

/** What a series is called. @param {Series} one */
const named = (one) => one.name.trim() || t(one.of === 'surface' ? 'ready.surface' : `ready.name.${one.of}`);

/** @param {Store} store @param {Series[]} series @param {number} width */
function drawn({ job, estimate }, series, width) {
  const courses = series.flatMap((one) => {
    const of = DRAWN[one.of];
    return of && one.points.length ? [{ of, name: named(one), points: one.points }] : [];
  });
  if (!courses.some((one) => one.points.length > 1)) return undefined;
  const w = figures(job.units);
  const spread = estimate?.readiness.dew?.spread_f ?? estimate?.moisture.spread_f;
  const svg = roundsDrawing(courses, { spread, times: times(courses.flatMap((one) => one.points.map((point) => point.ms))) }, {
    label: t('moist.rounds_label', { list: courses.map((one) => `${one.name}: ${one.points.map((point) => w.temp(point.value)).join(', ')}`).join('; ') }),
    surface: t('moist.course.surface'), air: t('ready.air'), dew: t('ready.dew_point'), least: t('moist.course.least', { spread: w.step(spread) }),
  }, { width, metric: w.metric });
  return framed(svg, t('moist.rounds_caption'));
}

/** The times of rounds: readings of one round lie within half an hour. @param {number[]} all */
function times(all) {
  /** @type {{ms: number, name: string}[]} */
  const rounds = [];
  for (const ms of [...all].sort((a, b) => a - b)) if (!rounds.length || ms - (rounds.at(-1)?.ms ?? 0) > 1_800_000) rounds.push({ ms, name: clock(ms) });
  return rounds;
}

/** @param {Store} store @param {import('./core.js').Rounds} found */
function factsOf({ job, estimate }, { blame, coldest }) {
  const w = figures(job.units);
  const went = (/** @type {number} */ by) => t(by > 0 ? 'moist.rose' : by < 0 ? 'moist.fell' : 'moist.stayed', { by: w.step(Math.abs(by)) });
  const now = (/** @type {string} */ name) => estimate?.readiness.checks.find((one) => one.of === 'surface' && one.name.trim() === name.trim())?.value_f;
  return [
    blame.length ? el('h3', 'bar', t('moist.blame')) : undefined,
    blame.length ? el('ul', 'rows', ...blame.map((one) => row(el('b', '', one.name.trim() || t('ready.surface')),
      `${t(`moist.moved.${one.moved}`)} ${t('moist.since', { dew: went(one.dew_rose_f), surface: went(-one.surface_fell_f) })}`,
      el('span', '', w.step(Math.abs(one.above_f)), el('small', '', t(one.above_f < 0 ? 'moist.below' : 'moist.above')))))) : undefined,
    coldest.length ? el('h3', 'bar', t('moist.coldest')) : undefined,
    coldest.length ? el('ol', 'rows', ...coldest.map((name) => row(name.trim() || t('ready.surface'), '', w.temp(now(name))))) : undefined,
  ];
}

/** Every reading of every series, the oldest first. @param {Store} store @param {Series[]} series */
function readingsOf({ job }, series) {
  const w = figures(job.units);
  const writes = (/** @type {Series} */ one) => (one.of === 'humidity' || one.of === 'wood_moisture' ? w.pct : one.of === 'wind' ? w.speed : w.temp);
  return el('ul', 'rows', ...series.map((one) => row(named(one), one.points.map((point) => `${clock(point.ms)} ${writes(one)(point.value)}`).join(' · '), undefined)));
}
