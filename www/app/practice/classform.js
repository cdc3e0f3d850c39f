// @ts-check
/** Putting a class sheet together: topics, levels, how many; the exercises that dice gave, each of them to be exchanged. */
import { el } from '../list.js';
import { mark } from '../marks.js';
import { hush, notify } from '../notices.js';
import { head, press, redraw, to, way } from '../parts.js';
import { t } from '../words.js';
import { draft } from './draft.js';
import { levelsOf, levelsPick, topicPick } from './pickers.js';
import { bits, draw, MOST_EXERCISES } from './seeds.js';
import { levelName, titleOf, topicName, unitsHere } from './written.js';

/** @typedef {import('./core.js').Practice} Practice */

/** @param {HTMLElement} root @param {Practice} core @returns {import('../view.js').View} */
export function mountForm(root, core) {
  const topics = topicPick(core, draft.topics, () => update());
  const levels = levelsPick(draft.levels, () => {
    markLevels(false);
    lacks.replaceChildren();
    update();
  });
  const count = el('input', { type: 'text', id: 'count', inputmode: 'numeric', autocomplete: 'off', value: draft.count, 'aria-describedby': 'count-tell', input: () => {
    draft.count = count.value;
    boxed.classList.remove('no');
    count.removeAttribute('aria-invalid');
    lacks.replaceChildren();
  } });
  const boxed = el('span', 'box', count);
  const lacks = el('div', { id: 'count-tell', class: 'tells', role: 'status' });
  const list = el('ol', 'rows drawn');
  const title = el('h2', { class: 'bar', tabindex: -1 }, t('practice.drawn'));
  const after = el('div', 'dos');
  root.append(el('main', 'practice',
    head({ back: [to('practice'), t('practice.title')], title: t('practice.class'), sub: t('practice.class_lead') }),
    el('div', 'pad tail', levels, topics.node, el('div', 'field count', el('label', { for: 'count' }, t('practice.count', { most: MOST_EXERCISES })), boxed), lacks,
      el('div', 'dos', press(t('practice.draw'), 'draw', drawAll, 'wide')), title, list, after)));

  const wanted = () => bits(core.topics(), draft.topics);
  /** The levels that have something of what was chosen. */
  const fitting = () => [...draft.levels].sort().filter((level) => core.find(level, wanted(), 0));

  /** @param {string} what @param {string} [then] */
  function lack(what, then = '') {
    lacks.replaceChildren(el('p', 'tell', mark('watch'), el('span', '', el('b', '', what), then ? ` ${then}` : '')));
  }

  /** Where what is lacking is a level. @param {boolean} lacking */
  function markLevels(lacking) {
    levels.classList.toggle('no', lacking);
    for (const box of levels.querySelectorAll('input')) {
      if (lacking) {
        box.setAttribute('aria-invalid', 'true');
        box.setAttribute('aria-describedby', 'count-tell');
      } else for (const name of ['aria-invalid', 'aria-describedby']) box.removeAttribute(name);
    }
  }

  function drawAll() {
    const n = Number(draft.count.trim());
    const sound = Number.isInteger(n) && n >= 1 && n <= MOST_EXERCISES;
    boxed.classList.toggle('no', !sound);
    if (sound) count.removeAttribute('aria-invalid');
    else count.setAttribute('aria-invalid', 'true');
    if (!sound) {
      lack(t('practice.count_wrong', { most: MOST_EXERCISES }));
      count.focus();
      return;
    }
    markLevels(!draft.levels.size);
    if (!draft.levels.size) {
      lack(t('practice.no_levels'));
      levels.querySelector('input')?.focus();
      return;
    }
    const from = fitting();
    if (!from.length) return lack(t('practice.none_on_levels'), t('practice.none_on_levels_do'));
    /** @type {string[]} */
    const seeds = [];
    for (let at = 0; at < n; at += 1) {
      // The levels in their order, each as often as the others.
      const seed = draw(core, from[Math.floor(at * from.length / n)], wanted(), new Set(seeds));
      if (seed) seeds.push(seed);
    }
    const left = [...draft.levels].sort().filter((level) => !from.includes(level));
    lacks.replaceChildren();
    if (left.length) lack(t('practice.levels_left_out', { levels: left.join(', ') }));
    else if (seeds.length < n) lack(t('practice.fewer', { n: seeds.length }));
    const before = draft.seeds;
    draft.seeds = seeds;
    if (before.length) {
      notify('class', 'watch', t('practice.drawn_anew'), '', { presses: [[t('page.undo'), () => {
        draft.seeds = before;
        update();
      }]] });
    }
    update();
    title.focus();
  }

  /** @param {number} at */
  function another(at) {
    const { level } = core.exercise(draft.seeds[at], unitsHere()).exercise ?? { level: 1 };
    const seed = draw(core, level, wanted(), new Set(draft.seeds)) || draw(core, level, 0, new Set(draft.seeds));
    hush('class_other');
    if (!seed) return notify('class_other', 'watch', t('practice.no_other'), '');
    draft.seeds = draft.seeds.map((one, here) => (here === at ? seed : one));
    update();
  }

  /** @param {number} at @param {number} by */
  function move(at, by) {
    const seeds = [...draft.seeds];
    const [seed] = seeds.splice(at, 1);
    seeds.splice(at + by, 0, seed);
    draft.seeds = seeds;
    update();
    // The press goes along with its row.
    const press = list.children[at + by]?.querySelector(by < 0 ? '[data-move=up]' : '[data-move=down]');
    const other = list.children[at + by]?.querySelector('[data-move]:not([disabled])');
    /** @type {HTMLElement | null | undefined} */ (press instanceof HTMLButtonElement && !press.disabled ? press : other)?.focus();
  }

  /** @param {number} at */
  function drop(at) {
    const before = draft.seeds;
    draft.seeds = before.filter((_, here) => here !== at);
    notify('class', 'watch', t('practice.dropped'), '', { focus: true, presses: [[t('page.undo'), () => {
      draft.seeds = before;
      update();
    }]] });
    update();
  }

  /** @param {string} seed @param {number} at */
  function row(seed, at) {
    const { exercise } = core.exercise(seed, unitsHere());
    const name = t('practice.numbered', { n: at + 1, title: exercise ? titleOf(exercise) : seed });
    const act = (/** @type {string} */ key, /** @type {() => void} */ run, off = false) => el('button', {
      type: 'button', class: 'link', 'data-move': key, 'data-key': `${key}-${at}`, disabled: off, 'aria-label': t('practice.press_of', { press: t(`practice.${key}`), name }), click: run,
    }, t(`practice.${key}`));
    return el('li', 'pair', el('span', 'k', el('b', '', name), el('small', '', exercise ? t('practice.drawn_line', { level: levelName(exercise.level), seed, topics: exercise.topics.map(topicName).join(', ') }) : seed)),
      el('div', 'moves', act('another', () => another(at)), act('up', () => move(at, -1), at === 0), act('down', () => move(at, 1), at === draft.seeds.length - 1), act('drop', () => drop(at))));
  }

  function update() {
    topics.update((topic) => {
      const levels = levelsOf(core, topic);
      return [...draft.levels].some((level) => levels.some((one) => one === level)) ? '' : levels.length ? t('practice.on_levels', { levels: levels.join(', ') }) : t('practice.no_level');
    });
    const { seeds } = draft;
    title.hidden = !seeds.length;
    redraw(list, seeds.map(row));
    const sheet = seeds.join(',');
    redraw(after, seeds.length ? [way(t('practice.open_class'), to('class', sheet), 'wide'), way(t('practice.print_sheet'), to('class', sheet, 'print')), way(t('practice.print_key'), to('class', sheet, 'key'))] : []);
  }

  return { title: t('practice.class'), update, unmount: () => hush('class_other') };
}
