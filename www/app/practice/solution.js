// @ts-check
/** The worked solution: each step with its line, and under it the estimator's own computation sheet of the same job. */
import { el } from '../list.js';
import { head, note, to } from '../parts.js';
import { t } from '../words.js';
import { everyStep } from '../working.js';
import { howText } from './pieces.js';
import { asked } from './question.js';
import { answerText, stepName, titleOf } from './written.js';

/** @typedef {import('./session.js').Session} Session */

/** @param {HTMLElement} root @param {Session} session @param {import('../store.js').Store} store with the exercise's job @param {boolean} gave whether opening it gave steps up */
export function solutionPage(root, session, store, gave) {
  const { exercise, units, solved } = session;
  const { quantity, spraying } = store.estimate ?? {};
  // Where no foam is asked for, nothing is added up and no nozzle is counted.
  const none = [...(quantity?.surfaces ? [] : ['quantity.']), ...(spraying?.lifts ? [] : ['spraying.'])];
  const sheet = everyStep(store, (step) => step.scope === 'job' && none.some((one) => step.result.startsWith(one)));
  root.append(el('main', 'ex-page ex-solution',
    head({ back: [to('exercise', exercise.seed), t('practice.ex_back')], side: t('practice.ex_name', { seed: exercise.seed }), title: t('practice.ex_solution'), sub: titleOf(exercise) }),
    ...asked(exercise, units),
    gave && el('div', 'pad', note('watch', t('practice.ex_gave_up'), t('practice.ex_gave_up_do'))),
    el('ol', 'calc', ...exercise.steps.map((step, at) => {
      const one = solved[at];
      return el('li', '', el('span', 'n', String(at + 1)), el('div', 'body', el('p', 'w', stepName(step)), one?.how.length ? el('p', 'f', howText(one.how, units)) : undefined), el('p', 'res ex-res', one ? answerText(step, one.value, units) : '–'));
    })),
    sheet.length ? el('section', '', el('h2', 'bar', t('practice.ex_sheet')), el('p', 'note pad ex-lead', t('practice.ex_sheet_note')), el('ol', 'calc', ...sheet)) : undefined,
    el('div', 'pad top tail', el('p', 'note', t('sheet.working_note')))));
}
