// @ts-check
/** A class sheet on paper: the worksheet with lines to write on, and its key. */
import { call } from '../calls.js';
import { el } from '../list.js';
import { pick } from '../menu.js';
import { footLine } from '../papers/footline.js';
import { LEAF_WIDTH, lines } from '../papers/leaf.js';
import { breadth, head, note, press, redraw, to } from '../parts.js';
import { setPrefs } from '../prefs.js';
import { locale, t } from '../words.js';
import { howText } from './pieces.js';
import { question } from './question.js';
import { sorted } from './seeds.js';
import { answerText, choiceName, levelName, slipName, slipText, stepName, titleOf, tolerance, unitName, unitsHere } from './written.js';

/** @typedef {import('./core.js').Practice} Practice */
/** @typedef {import('./core.js').Exercise} Exercise */
/** @typedef {import('../core.js').Units} Units */

/** Slips that a teacher sees without being told: they would fill the key. */
const PLAIN = new Set(['decimal_moved']);

/** So many steps at most stay together with their question. */
const SHORT = 8;

/** @param {HTMLElement} root @param {Practice} core @param {string[]} asked @param {'print' | 'key'} what @returns {import('../view.js').View} */
export function mountPaper(root, core, asked, what) {
  const title = t(what === 'key' ? 'practice.key' : 'practice.worksheet');
  const top = el('div', 'no-print');
  const print = press(t('paper.print'), 'print', () => window.print(), 'wide');
  const units = el('div');
  const working = el('div');
  const leaves = el('div', 'leaves');
  const foot = footLine();
  root.append(el('main', 'papers practice', top, el('div', 'pad no-print', units, working, el('div', 'dos', print), el('p', 'note', t(what === 'key' ? 'practice.key_how' : 'practice.worksheet_how'))), leaves));
  let drawn = '';
  let half = false;

  function update() {
    const state = `${unitsHere()} ${breadth(root)} ${half}`;
    if (state === drawn) return;
    drawn = state;
    const { exercises, refused } = sorted(core, asked, unitsHere());
    const seeds = exercises.map((one) => one.seed);
    redraw(top, [
      head({ back: [to('class', seeds.join(',')), t('practice.class')], title, sub: t('practice.class_count', { n: exercises.length }) }),
      refused.length ? el('div', 'pad says', ...refused.map(({ seed, why }) => note('watch', t('practice.left_out', { seed }), t(`practice.refused.${why}`)))) : undefined,
    ]);
    units.replaceChildren(pick(t('page.units'), [['us', t('page.units_us')], ['metric', t('page.units_metric')]], unitsHere(), (to) => {
      setPrefs({ units: to });
      update();
    }));
    if (what === 'print') {
      working.replaceChildren(pick(t('practice.room'), [['none', t('practice.room_none')], ['half', t('practice.room_half')]], half ? 'half' : 'none', (to) => {
        half = to === 'half';
        update();
      }));
    }
    print.disabled = !exercises.length;
    foot.say([title, ...seeds.slice(0, 4), ...(seeds.length > 4 ? ['…'] : [])].join(' · '));
    const room = Math.min(LEAF_WIDTH, Math.max(300, breadth(root) - 24));
    redraw(leaves, exercises.length ? [leaf(title, what, exercises, exercises.flatMap((exercise, at) => (what === 'key' ? keyOf(core, exercise, at) : workOf(exercise, at, room, half))))] : []);
  }

  return { title, update, unmount: foot.gone };
}

/** @param {string} title @param {'print' | 'key'} what @param {Exercise[]} exercises @param {HTMLElement[]} inside */
function leaf(title, what, exercises, inside) {
  const cell = (/** @type {string} */ name, /** @type {string} */ text, /** @type {string} */ below = '') => el('div', '', el('span', '', name), el('b', '', text), below ? el('small', '', below) : undefined);
  const levels = [...new Set(exercises.map((one) => one.level))].sort().map(levelName).join(', ');
  const steps = exercises.reduce((sum, one) => sum + one.steps.length, 0);
  const day = new Date().toLocaleDateString(locale(), { year: 'numeric', month: 'short', day: 'numeric' });
  return el('section', { class: 'leaf', 'data-paper': what, 'aria-label': t('paper.on_paper', { name: title }) },
    el('div', 'tb', cell(t('practice.class'), title, levels),
      what === 'key' ? cell(t('practice.steps_all'), String(steps)) : el('div', 'by-hand', el('span', '', t('practice.name')), el('b', '', '\u00a0')),
      cell(t('practice.seeds'), String(exercises.length), exercises.map((one) => one.seed).join(', ')), cell(t('paper.printed'), day, t(unitsHere() === 'metric' ? 'page.units_metric' : 'page.units_us'))),
    ...(what === 'key' ? [el('p', 'lead', t('practice.key_lead'))] : []),
    ...inside, el('p', 'note governs', t('practice.governs')));
}

/** @param {Exercise} exercise @param {number} at */
const heading = (exercise, at) => el('h2', '', t('practice.numbered', { n: at + 1, title: titleOf(exercise) }), ' ', el('small', '', t('practice.paper_line', { level: levelName(exercise.level), seed: exercise.seed })));

/** The exercise's job as drawings take one; nobody changes it. @param {Exercise} exercise */
const standing = (exercise) => /** @type {import('../store.js').Store} */ (/** @type {unknown} */ ({ job: exercise.job, estimate: call('estimate', exercise.job, exercise.now), keeping: 'memory' }));

/** A table within an exercise is called by it: two exercises may show the same data sheet. @param {HTMLElement} node @param {number} at */
function named(node, at) {
  for (const one of node.querySelectorAll('[role=region], [role=group]')) one.setAttribute('aria-label', t('practice.region_of', { what: one.getAttribute('aria-label') ?? '', of: t('practice.paper_exercise', { n: at + 1 }) }));
  return node;
}

/** The question with its drawing and cards, a line for each step, and room to work it out where that is wanted. @param {Exercise} exercise @param {number} at @param {number} room @param {boolean} half */
function workOf(exercise, at, room, half) {
  const units = unitsHere();
  const [wide, narrow] = [LEAF_WIDTH, room].map((width) => laid(exercise, width));
  // A short one stands whole on a page.
  const whole = !wide.rest.length && exercise.steps.length <= SHORT;
  return [named(el('section', `paper-part exercise${whole ? ' whole' : ''}`,
    el('div', 'keep', heading(exercise, at), el('div', 'drawn', el('div', 'on-paper', ...wide.lead), el('div', 'on-screen', ...narrow.lead))),
    el('div', 'drawn', el('div', 'on-paper', ...wide.rest), el('div', 'on-screen', ...narrow.rest)),
    lines(titleOf(exercise), [[t('practice.col_step')], [t('practice.col_answer'), 'w'], [t('practice.col_within')]], exercise.steps.map((step, place) => ({ cells: [
      t('practice.numbered', { n: place + 1, title: stepName(step) }),
      step.choices.length ? el('span', 'circle', step.choices.map(choiceName).join('   ·   ')) : el('span', 'unit', unitName(step)),
      step.choices.length ? t('practice.circle') : tolerance(step, units),
    ] })), 'write work')), at), ...(half ? [el('div', 'work-room', t('practice.working_room'))] : [])];
}

/** What stands beside the heading, and what may go on to the next page: the cards, those without a drawing two in a row. @param {Exercise} exercise @param {number} width */
function laid(exercise, width) {
  const all = question(standing(exercise), exercise, width);
  const first = all.findIndex((one) => one.matches('.ex-card'));
  const cards = first < 0 ? [] : all.slice(first);
  const drawn = cards.filter((one) => one.querySelector('svg'));
  const plain = cards.filter((one) => !drawn.includes(one));
  return { lead: first < 0 ? all : all.slice(0, first), rest: [...drawn, ...inPairs(plain)] };
}

/** Two cards side by side, a wide one by itself: a row is never parted by the end of a page. @param {HTMLElement[]} cards */
function inPairs(cards) {
  const rows = cards.reduce((/** @type {HTMLElement[][]} */ all, one) => {
    const last = all.at(-1);
    if (last?.length === 1 && ![last[0], one].some((it) => it.querySelector('.ex-grid'))) last.push(one);
    else all.push([one]);
    return all;
  }, []);
  return rows.map((row) => el('div', 'paper-cards', ...row));
}

/** Each step's answer, how it comes about, and what the known mistakes give. @param {Practice} core @param {Exercise} exercise @param {number} at */
function keyOf(core, exercise, at) {
  const units = unitsHere();
  const solved = core.solve(exercise.seed, units);
  const slips = core.slips(exercise.seed, units);
  return [named(el('section', `paper-part exercise${exercise.steps.length <= SHORT ? ' whole' : ''}`, el('div', 'keep', heading(exercise, at)),
    lines(titleOf(exercise), [[t('practice.col_step')], [t('practice.col_answer'), 'r'], [t('practice.col_look')]], exercise.steps.map((step, place) => {
      const one = solved[place];
      const how = one ? howText(one.how, units, [], step) : '';
      const wrong = slips.filter((told) => told.step === place && !PLAIN.has(told.slip))
        .flatMap(({ slip, value }) => { const text = slipText(step, value, one?.value ?? NaN, units); return text ? [{ slip, text }] : []; });
      return { cells: [
        el('span', '', t('practice.numbered', { n: place + 1, title: stepName(step) }), how ? el('small', '', how) : undefined),
        el('span', '', el('b', '', one ? answerText(step, one.value, units) : '–'), el('small', '', tolerance(step, units))),
        el('span', '', ...wrong.map(({ slip, text }) => el('small', 'wrong', el('b', '', text), ` ${slipName(slip)}`))),
      ] };
    }), 'solved')), at)];
}
