// @ts-check
/** Practice: exercises by level and topic, by their number, out of the book; what was done so far; and the ways of a teacher. */
import { el, say } from './list.js';
import { mark } from './marks.js';
import { pick } from './menu.js';
import { notify } from './notices.js';
import { head, press, pressRow, redraw, table, to, way } from './parts.js';
import { practice } from './practice/core.js';
import { byTopic, isKept, onProgress, recent, reset, sheet } from './practice/kept.js';
import { levelPick, levelsOf, topicPick } from './practice/pickers.js';
import { bits, draw, seedsOf, sorted } from './practice/seeds.js';
import { levelName, score, titleOf, topicName, unitsHere } from './practice/written.js';
import { setPrefs } from './prefs.js';
import { go } from './view.js';
import { has, locale, t } from './words.js';

export const words = ['practice', 'exercises'];

/** @type {import('./practice/core.js').Practice} */
let core;

export async function ready() {
  core = await practice();
}

/** So many of the exercises done last are on the list at first. */
const FEW = 6;

/** What was chosen, while the page is open. */
const chosen = { level: 1, topics: /** @type {Set<string>} */ (new Set()) };

/** @type {import('./view.js').Screen['mount']} */
export function mount(root) {
  const topics = topicPick(core, chosen.topics, () => changed());
  const none = el('div', { class: 'tells', role: 'status' });
  const box = el('input', { type: 'text', id: 'seed', autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false', 'aria-describedby': 'seed-hint seed-tell', input: () => refuse(''), keydown: (event) => {
    if (event.key === 'Enter') open();
  } });
  const boxed = el('span', 'box', box);
  const told = el('div', { id: 'seed-tell', class: 'tells', role: 'status' });
  const book = el('div');
  const done = el('div');
  const sums = el('div');
  const units = el('div');
  const back = el('div');
  let all = false;

  root.append(el('main', 'practice',
    head({ back: [to('sheet'), t('page.to_sheet')], title: t('practice.title'), sub: t('practice.lead') }),
    el('div', 'pad tail',
      back,
      levelPick(chosen.level, (level) => {
        chosen.level = level;
        changed();
      }),
      topics.node,
      el('div', 'dos', press(t('practice.give'), 'give', give, 'wide')), none,
      el('h2', 'bar', t('practice.by_seed')),
      el('div', 'field wide', el('label', { for: 'seed' }, t('practice.seed')), boxed, el('p', { id: 'seed-hint', class: 'read' }, t('practice.seed_hint')), told),
      el('div', 'dos', press(t('practice.open'), 'open', open)),
      book, done, sums,
      el('h2', 'bar', t('practice.teachers')), el('p', 'note', t('practice.teachers_note')),
      el('div', 'dos', way(t('practice.make_class'), to('class')), way(t('practice.mark_files'), to('marks'))),
      units)));

  function give() {
    const wanted = bits(core.topics(), chosen.topics);
    // Another one than those that were done already, as long as there is one.
    const seed = draw(core, chosen.level, wanted, new Set(recent().map((one) => one.seed))) || draw(core, chosen.level, wanted);
    if (seed) go(to('exercise', seed));
    else none.replaceChildren(tell(t('practice.none_on_level'), noneDo()));
  }

  /** Where the chosen topics are to be had instead. */
  function noneDo() {
    const levels = [...new Set([...chosen.topics].flatMap((topic) => levelsOf(core, topic)))].sort();
    return levels.length ? t('practice.other_levels', { levels: levels.join(', ') }) : t('practice.no_level');
  }

  function open() {
    const seeds = seedsOf(box.value);
    if (!seeds.length) return refuse('form');
    const { exercises, refused } = sorted(core, seeds, unitsHere());
    if (refused.length) refuse(refused[0].why);
    else if (exercises.length > 1) go(to('class', exercises.map((one) => one.seed).join(',')));
    else go(to('exercise', exercises[0].seed));
  }

  /** @param {string} why */
  function refuse(why) {
    boxed.classList.toggle('no', why !== '');
    if (why) box.setAttribute('aria-invalid', 'true');
    else box.removeAttribute('aria-invalid');
    told.replaceChildren(...(why ? [tell(t(`practice.refused.${why}`), t(`practice.refused_do.${why}`))] : []));
    if (why) box.focus();
  }

  function changed() {
    none.replaceChildren();
    update();
  }

  function startOver() {
    const undo = reset();
    notify('practice_reset', 'watch', t('practice.was_reset'), '', { focus: true, presses: [[t('page.undo'), () => {
      undo();
      update();
    }]] });
    update();
  }

  function drawBook() {
    const seeds = core.book();
    redraw(book, seeds.length ? [el('h2', 'bar', t('practice.book')), el('p', 'note', t('practice.book_note')), el('ul', 'rows', ...seeds.flatMap((seed) => {
      const { exercise } = core.exercise(seed, unitsHere());
      return exercise ? [pressRow(to('exercise', seed), titleOf(exercise), has(`sources.${exercise.source}`) ? t(`sources.${exercise.source}`) : exercise.source, '')] : [];
    }))] : []);
  }

  function drawBack() {
    const seeds = sheet();
    redraw(back, [seeds.length > 0 && el('ul', 'rows', pressRow(to('class', seeds.join(',')), t('practice.back_to_class'), t('practice.class_count', { n: seeds.length }), ''))]);
  }

  /** @param {readonly import('./practice/progress.js').Kept[]} list */
  function drawDone(list) {
    // Only what is shown is drawn: two hundred may be kept.
    const shown = (all ? list : list.slice(0, FEW)).flatMap((one) => {
      const exercise = drawnAs(one.seed);
      return exercise ? [{ ...one, exercise }] : [];
    });
    redraw(done, list.length ? [el('h2', 'bar', t('practice.recent')), el('ul', 'rows', ...shown.map(({ seed, at, score: marks, exercise }) => pressRow(to('exercise', seed), titleOf(exercise),
      t('practice.recent_line', { level: levelName(exercise.level), seed, day: new Date(at).toLocaleDateString(locale(), { month: 'short', day: 'numeric' }) }),
      marks ? score(marks.points, marks.of) : el('small', '', t('practice.begun'))))),
    !all && FEW < list.length && el('div', 'dos', press(t('practice.all_recent', { n: list.length }), 'all', () => {
      all = true;
      drawDone(list);
    }))] : []);
  }

  /** @param {import('./practice/progress.js').Sums} all @param {boolean} any  whether anything is kept */
  function drawSums(all, any) {
    const rows = core.topics().flatMap((topic) => (all[topic] ? [{ topic, ...all[topic] }] : []));
    const add = (/** @type {'done' | 'points' | 'of'} */ name) => rows.reduce((sum, one) => sum + one[name], 0);
    const cells = (/** @type {string} */ name, /** @type {import('./practice/progress.js').Sum} */ { done: n, points, of }) => [name, score(n), score(points, of), `${Math.round(100 * points / of)}\u00a0%`];
    redraw(sums, [
      el('h2', 'bar', t('practice.progress')),
      rows.length ? table(t('practice.progress'), [t('practice.col_topic'), t('practice.col_exercises'), t('practice.col_points'), t('practice.col_share')], [
        ...rows.map((one) => ({ cells: cells(topicName(one.topic), one) })),
        { kind: 'sum', cells: [t('practice.all_topics'), '', score(add('points'), add('of')), `${Math.round(100 * add('points') / add('of'))}\u00a0%`] },
      ]) : undefined,
      el('p', 'note', rows.length ? t(isKept() ? 'practice.kept_here' : 'practice.kept_not') : t('practice.nothing_yet')),
      any || rows.length ? el('div', 'dos', press(t('practice.reset'), 'reset', startOver)) : undefined,
    ]);
  }

  let drawn = '';

  function update() {
    const all = byTopic();
    topics.update((topic) => {
      const sum = all[topic];
      const levels = levelsOf(core, topic);
      const here = levels.some((level) => level === chosen.level);
      return [here ? '' : levels.length ? t('practice.not_on_level', { level: chosen.level, levels: levels.join(', ') }) : t('practice.no_level'),
        sum ? t('practice.done_in', { n: sum.done, score: score(sum.points, sum.of) }) : ''].filter(Boolean).join(' · ');
    });
    const list = recent();
    drawBack();
    drawDone(list);
    drawSums(all, list.length > 0);
    if (drawn === unitsHere()) return;
    drawn = unitsHere();
    drawBook();
    units.replaceChildren(pick(t('page.units'), [['us', t('page.units_us')], ['metric', t('page.units_metric')]], unitsHere(), (to) => {
      setPrefs({ units: to });
      drawn = to;
      drawBook();
    }), el('p', 'note', t('practice.units_note')));
  }

  return { title: t('practice.title'), update, unmount: onProgress(() => update()) };
}

/** What each exercise is, drawn once: in either units it is the same. @type {Map<string, {scene: string, level: number} | undefined>} */
const kinds = new Map();

/** @param {string} seed */
function drawnAs(seed) {
  if (!kinds.has(seed)) kinds.set(seed, core.exercise(seed, unitsHere()).exercise);
  return kinds.get(seed);
}

/** What is wrong, beside what it is about. @param {string} what @param {string} then */
const tell = (what, then) => el('p', 'tell', mark('watch'), el('span', '', el('b', '', what), ' ', then));
