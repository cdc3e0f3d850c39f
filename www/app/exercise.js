// @ts-check
/**
 * One exercise: its question with a drawing and what else is needed beside it, its steps, and how they were marked. Its job
 * lies in a store of its own that keeps nothing: the person's open job is never touched.
 */
import { call } from './calls.js';
import { el, say } from './list.js';
import { pick } from './menu.js';
import { newId } from './newid.js';
import { breadth, head, note, press, redraw, to, way } from './parts.js';
import { likeThis, otherTopic } from './practice/another.js';
import { practice } from './practice/core.js';
import { backFrom } from './practice/draft.js';
import { quarters } from './practice/pieces.js';
import * as progress from './practice/progress.js';
import { asked, cards as cardsOf, counts, drawings as drawingsOf, QUESTION_WORDS } from './practice/question.js';
import { createSession, isRight } from './practice/session.js';
import { solutionPage } from './practice/solution.js';
import { stepItem } from './practice/steps.js';
import { hatchOf } from './practice/todraw.js';
import { titleOf, unitsHere } from './practice/written.js';
import { copy } from './share.js';
import { createStore } from './store.js';
import { go } from './view.js';
import { t } from './words.js';
import { ready as steps } from './working.js';

/** @typedef {import('./practice/session.js').Session} Session @typedef {import('./store.js').Store} Store */

export const words = [...QUESTION_WORDS, 'warm', 'working', 'kits', 'slips'];

/** @type {import('./practice/core.js').Practice} */
let core;

export async function ready() {
  [core] = await Promise.all([practice(), steps()]);
}

/** A keeper that keeps nothing. */
const shelf = { keep: async () => /** @type {const} */ ('memory'), keepNow: () => /** @type {const} */ ('memory') };

/** The units that were chosen here; until then those of the settings. @type {import('./core.js').Units | undefined} */
let chosen;

/** The exercise that was worked at last: its marks stay while its worked solution is read, or the language is changed. @type {Session | undefined} */
let last;

/** @param {string} seed @param {import('./core.js').Units} units @returns {Session | string} why there is none */
function sessionOf(seed, units) {
  const drawn = core.exercise(seed, units);
  if (!drawn.exercise) return drawn.refused || 'none';
  if (last?.exercise.seed !== drawn.exercise.seed || last.units !== units) last = createSession(core, progress, drawn.exercise, units);
  return last;
}

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, _, route) {
  const [seed = '', part = ''] = route.rest;
  const units = chosen ?? unitsHere();
  const session = sessionOf(seed, units);
  if (typeof session === 'string') {
    root.append(el('main', 'ex-page', head({ back: [to('practice'), t('practice.title')], title: t('practice.ex_none') }),
      el('div', 'pad tail', note('none', t(`practice.refused.${session}`), t(`practice.refused_do.${session}`)), el('div', 'dos', way(t('practice.ex_to_practice'), to('practice'))))));
    return { title: t('practice.ex_none'), update() {} };
  }
  const { exercise } = session;
  const store = createStore({ estimate: (job) => call('estimate', job, exercise.now), shelf, newId });
  const opened = store.open(/** @type {import('./job.js').Job} */ (/** @type {unknown} */ (exercise.job)), 'memory');
  let over = false;
  if (part === 'working') {
    const gave = session.firstOpen() >= 0;
    if (gave) session.giveUp();
    void opened.then(() => { if (!over) solutionPage(root, session, store, gave); });
    return { title: `${t('practice.ex_solution')} · ${titleOf(exercise)}`, update() {}, unmount() { over = true; } };
  }
  const view = exerciseView(root, session, store, () => {
    // The same exercise in the other units, its answers as they were typed.
    chosen = units === 'us' ? 'metric' : 'us';
    view.unmount();
    root.replaceChildren();
    over = true;
    shown = mount(root, _, route);
    shown.update();
    /** @type {HTMLElement | null} */ (root.querySelector('.ex-units :checked'))?.focus();
  });
  /** @type {import('./view.js').View} */
  let shown = { title: titleOf(exercise), ...view };
  void opened.then(() => { if (!over) view.update(); });
  return { title: titleOf(exercise), update: () => shown.update(), unmount() { over = true; shown.unmount?.(); } };
}

/**
 * @param {HTMLElement} root @param {Session} session @param {Store} store @param {() => void} turn  to the other units
 */
function exerciseView(root, session, store, turn) {
  const { exercise, units } = session;
  const drawings = el('div', 'ex-drawings');
  const cards = el('div', 'ex-cards');
  const given = el('div', 'ex-given', ...asked(exercise, units), drawings, cards);
  const items = exercise.steps.map((_, at) => stepItem(session, at, changed));
  const points = el('b');
  const result = el('span');
  const score = el('p', { class: 'ex-score', role: 'status' }, points, ' ', result);
  const actions = el('div');
  const link = el('p', { class: 'note', role: 'status' });
  const after = el('div', 'pad tail', score, actions, link);
  const unitsPart = el('div', 'pad ex-units no-print', pick(t('page.units'), [['us', t('page.units_us')], ['metric', t('page.units_metric')]], units, turn), el('p', 'note', t('practice.ex_units_note')));
  root.append(el('main', 'ex-page', head({ back: backFrom(exercise.seed), side: t('practice.ex_name', { seed: exercise.seed }), title: titleOf(exercise) }),
    el('div', 'ex-two', given,
      el('div', 'ex-work', el('h2', 'vh', t('practice.ex_steps')), el('ol', { class: 'try', keydown: onward }, ...items.map((one) => one.node)), after, unitsPart))));

  let drawnFor = '';

  /** Drawings and cards; anew only where there is something else to draw or another room. */
  function draw() {
    if (!store.estimate) return;
    const width = Math.max(280, given.clientWidth || breadth(root));
    const hatch = hatchOf(exercise.steps.map((_, at) => { const one = session.mark(at); return one?.verdict === 'slip' ? one : undefined; }));
    // Members that a step asks to be counted are not drawn before it is answered.
    const framing = exercise.steps.every((step, at) => !counts(step) || session.closed(at)) || hatch?.extra === 'framing';
    const signature = JSON.stringify([width, hatch, framing]);
    if (signature === drawnFor) return;
    const first = drawnFor === '' || !drawnFor.startsWith(`[${width},`);
    drawnFor = signature;
    redraw(drawings, drawingsOf(store, exercise, width, { framing, hatch }));
    if (first) redraw(cards, cardsOf(store, exercise, width));
  }

  /** Enter goes to the next step, where the tape pad does not. @param {KeyboardEvent} event */
  function onward(event) {
    if (event.key !== 'Enter' || event.isComposing || event.defaultPrevented || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const at = items.findIndex((one) => one.node.contains(/** @type {Node} */ (event.target)));
    if (items[at + 1]) items[at + 1]?.focus();
    else /** @type {HTMLElement | null} */ (actions.querySelector('[data-key=ex-mark]'))?.focus();
  }

  function changed() {
    for (const one of items) one.update();
    draw();
    drawAfter();
  }

  function markAll() {
    session.judge();
    changed();
    const { marked } = session;
    const wrong = marked?.steps.filter((one) => one.verdict === 'slip' || one.verdict === 'wrong').length ?? 0;
    const right = marked?.steps.filter(isRight).length ?? 0;
    told(t('practice.ex_marked', { right, wrong }));
  }

  /** The points, and what came of a press. @param {string} what */
  function told(what) {
    say(points, session.marked ? t('practice.ex_score', { points: quarters(session.marked.points), of: session.marked.of }) : '');
    say(result, what);
  }

  function showOne() {
    const at = session.firstOpen();
    if (at < 0) return;
    session.help(at, 'show');
    session.judge();
    changed();
    told(t('practice.ex_shown_n', { n: at + 1 }));
    items[at]?.focus();
  }

  function drawAfter() {
    const done = session.firstOpen() < 0;
    const like = () => likeThis(core, exercise);
    const goTo = (/** @type {string} */ next) => { if (next) go(to('exercise', next)); };
    redraw(actions, [
      el('div', 'dos no-print', press(t('practice.ex_mark'), 'ex-mark', markAll, 'wide'),
        done ? undefined : press(t('practice.ex_show_one'), 'ex-show', showOne, 'line wide')),
      done ? undefined : el('p', 'note no-print ex-cost', t('practice.ex_show_one_note')),
      el('div', 'dos no-print', way(t(done ? 'practice.ex_solution' : 'practice.ex_give_up'), to('exercise', exercise.seed, 'working'))),
      done ? undefined : el('p', 'note no-print ex-cost', t('practice.ex_give_up_note')),
      el('div', `dos${exercise.level ? ' two' : ''} no-print ex-on`, press(t(exercise.level ? 'practice.ex_like' : 'practice.ex_next'), 'ex-like', () => goTo(like()), 'line wide'),
        exercise.level ? press(t('practice.ex_other'), 'ex-other', () => goTo(otherTopic(core, exercise) || like()), 'line wide') : undefined),
      el('div', 'dos two no-print', press(t('practice.ex_copy'), 'ex-copy', () => void copyLink(), 'line wide'),
        press(t('practice.ex_afresh'), 'ex-afresh', () => { session.again(); told(''); changed(); items[0]?.focus(); }, 'line wide')),
    ]);
  }

  async function copyLink() {
    const address = location.href.replace(/[?#].*$/s, '') + to('exercise', exercise.seed);
    say(link, await copy(address) ? t('practice.ex_copied') : address);
  }

  if (session.marked) told('');
  changed();
  // Drawings are laid out to the room that their column has, whenever that changes.
  const room = new ResizeObserver(draw);
  room.observe(given);
  return { update: draw, unmount: () => room.disconnect() };
}
