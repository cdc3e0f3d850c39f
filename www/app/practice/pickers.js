// @ts-check
/** What exercises are picked by: topics, one or several levels. */
import { el, say } from '../list.js';
import { t } from '../words.js';
import { levelName, topicName } from './written.js';

/** @typedef {import('./core.js').Practice} Practice */

export const LEVELS = /** @type {const} */ ([1, 2, 3, 4]);

/** The levels on which a topic comes. @param {Practice} core @param {string} topic */
export const levelsOf = (core, topic) => LEVELS.filter((level) => core.scenes().some((scene) => [...scene.levels].includes(level) && [...scene.topics].some((one) => one === topic)));

/**
 * Topics to tick; none ticked is any. They are folded away: what is chosen stands on the fold.
 * @param {Practice} core @param {Set<string>} chosen @param {() => void} changed
 */
export function topicPick(core, chosen, changed) {
  const summary = el('span', 'k');
  const rows = core.topics().map((topic) => {
    const about = el('small');
    const box = el('input', { type: 'checkbox', id: `topic-${topic}`, change: () => {
      if (box.checked) chosen.add(topic);
      else chosen.delete(topic);
      changed();
    } });
    return { topic, box, about, node: el('label', 'switch', box, el('span', '', topicName(topic), about)) };
  });
  const any = el('button', { type: 'button', class: 'link', click: () => {
    chosen.clear();
    changed();
    rows[0]?.box.focus();
  } }, t('practice.topics_any_press'));
  const node = el('details', 'more', el('summary', '', summary),
    el('fieldset', 'inside topics', el('legend', 'note', t('practice.topics_how')), ...rows.map((one) => one.node), any));
  return {
    node,
    /** @param {(topic: string) => string} tell  the line below a topic's name */
    update(tell) {
      const names = rows.filter(({ topic }) => chosen.has(topic)).map(({ topic }) => topicName(topic));
      summary.replaceChildren(t('practice.topics'), el('small', '', names.length ? names.join(', ') : t('practice.topics_any')));
      for (const { topic, box, about } of rows) {
        box.checked = chosen.has(topic);
        say(about, tell(topic));
      }
      any.hidden = !names.length;
    },
  };
}

/** One level, each with a line on what it is. @param {number} chosen @param {(level: number) => void} choose */
export function levelPick(chosen, choose) {
  return el('fieldset', 'pick', el('legend', '', t('practice.levels')), el('div', 'opts', ...LEVELS.map((level) => {
    const input = el('input', { type: 'radio', name: 'level', id: `level-${level}`, value: level, change: () => choose(level) });
    input.checked = level === chosen;
    return el('label', 'opt', el('span', '', input, levelName(level), el('small', '', t(`practice.level_why.${level}`))));
  })));
}

/** Several levels. @param {Set<number>} chosen @param {() => void} changed */
export function levelsPick(chosen, changed) {
  return el('fieldset', 'levels', el('legend', 'label', t('practice.levels')), ...LEVELS.map((level) => {
    const box = el('input', { type: 'checkbox', id: `level-${level}`, change: () => {
      if (box.checked) chosen.add(level);
      else chosen.delete(level);
      changed();
    } });
    box.checked = chosen.has(level);
    return el('label', 'switch', box, el('span', '', levelName(level), el('small', '', t(`practice.level_why.${level}`))));
  }));
}
