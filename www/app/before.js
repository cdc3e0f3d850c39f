// @ts-check
/** Before foam: one short question after the other, and under each what its answer leads to. */
import { answerBar } from './answer.js';
import { field } from './field.js';
import { el, list } from './list.js';
import { head, note, redraw, to, way } from './parts.js';
import { jobName, stopped } from './sheet.js';
import { has, label, part, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').Follows} Follows */

export const words = ['sheet', 'before'];

/** The mark of each kind of thing that follows. */
const MARK = /** @type {const} */ ({ not_this_kit: 'hold', not_yet: 'hold', preparation: 'watch', sentence: 'none' });
/** Said beside the explanation that stands under the question itself. */
const TOLD = ['not_this_kit', 'not_yet'];

/** One thing that follows, with its source. @param {Follows} one @param {Store} store */
function follow({ consequence, key, assumed, question }, store) {
  const words = `before.${consequence}.${key}`;
  const unseen = assumed && store.estimate?.before.follows.find((other) => other.question === question)?.key === key;
  return note(MARK[consequence], `${t(`before.kind.${consequence}`)}: ${part(words, 'what')}`, part(words, 'do'),
    unseen ? ` ${t(question === 'retarder' ? 'before.assumed_sides' : 'before.assumed')}` : undefined,
    el('span', 'src', part(words, 'src')));
}

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const state = el('div', { class: 'says', role: 'status' });
  const questions = el('ol', 'walk');
  const open = el('div', 'says');
  const bar = answerBar();
  root.append(el('main', '', top, el('div', 'pad top', state, questions, open,
    el('div', 'dos', way(t('before.to_measure'), to('sheet', 'measure'), 'wide'), way(t('before.to_seal'), to('seal')))), el('p', 'note pad', t('before.governs'))), bar.node);

  /** @param {string} name */
  function question(name) {
    const hint = `before.hint.${name}`;
    const asked = field({ store, part: 'job', id: 0, field: name, label: t(`before.ask.${name}`), hint: has(hint) ? t(hint) : undefined, told: TOLD });
    const after = el('div', { class: 'says', 'aria-live': 'polite' });
    return {
      node: el('li', '', asked.node, after),
      update() {
        asked.update();
        redraw(after, (store.estimate?.before.follows ?? []).filter((one) => one.question === name).map((one) => follow(one, store)));
      },
    };
  }

  return {
    title: t('before.title'),
    update() {
      bar.update(store);
      const found = store.estimate?.before;
      const of = found?.questions.length ?? 0;
      const n = of - (found?.unanswered.length ?? 0);
      redraw(top, [head({ back: [to('sheet'), jobName(store)], side: t('before.looked', { n, of }), title: t('before.title'), sub: t('before.lead') })]);
      const all = stopped(store);
      redraw(state, [all ? note('hold', t('before.stops'), all) : n ? el('p', 'note', t('before.no_stop')) : undefined]);
      list(questions, found?.questions ?? [], (one) => one, question);
      redraw(open, found?.unanswered.length ? [note('none', t('before.open'), `${found.unanswered.map((one) => label('job', one)).join(' · ')}. `, t('before.open_note'))] : []);
    },
  };
}
