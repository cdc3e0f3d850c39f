// @ts-check
/** The worked solution: each step with its line, and under it the estimator's own computation sheet of the same job. */
import { el } from '../list.js';
import { head, note, to } from '../parts.js';
import { t } from '../words.js';
import { at as atPath, everyStep } from '../working.js';
import { howText } from './pieces.js';
import { asked } from './question.js';
import { answerText, stepName, titleOf } from './written.js';

/** @typedef {import('./session.js').Session} Session */

/** Sources that stand for what a job takes where nothing is typed, and the field that is typed. @type {Record<string, string>} */
const GIVEN = { yield_factor: 'yield_factor', fixed_loss: 'fixed_loss', over_depth: 'over_depth', waste_off: 'other_waste', sales_tax: 'sales_tax' };

/** Steps of allowances and of the price; with nothing to add they say nothing. @type {Record<string, string[]>} */
const ADDS = { over_depth: ['quantity.over_depth'], other_waste: ['quantity.other_waste'], price_tax: ['purchase.price.tax'], price_total: ['purchase.price.tax', 'purchase.price.delivery'] };

/** Whether a step of the sheet has nothing to say in an exercise: nothing is added, or nobody asks when the kits run out. @param {import('../working.js').Step} step @param {unknown} estimate */
function addsNothing({ code }, estimate) {
  if (code.startsWith('break_factor')) return true;
  const parts = ADDS[code];
  return parts !== undefined && parts.every((path) => {
    const value = atPath(estimate, path);
    return !(typeof value === 'object' && value !== null && 'likely' in value ? value.likely : value);
  });
}

/** @param {HTMLElement} root @param {Session} session @param {import('../store.js').Store} store with the exercise's job @param {boolean} gave whether opening it gave steps up */
export function solutionPage(root, session, store, gave) {
  const { exercise, units, solved } = session;
  const { quantity, spraying } = store.estimate ?? {};
  // Where no foam is asked for, nothing is added up and no nozzle is counted.
  const none = [...(quantity?.surfaces ? [] : ['quantity.']), ...(spraying?.lifts ? [] : ['spraying.'])];
  const typed = new Set(store.job.entries.filter((one) => one.text.trim()).map((one) => one.field));
  const sheet = everyStep(store,
    (step) => step.scope === 'job' && (none.some((one) => step.result.startsWith(one)) || addsNothing(step, store.estimate)),
    // A figure that the exercise gives comes from the exercise, whatever a job takes without one.
    (step) => typed.has(GIVEN[step.source] ?? ''));
  root.append(el('main', 'ex-page ex-solution',
    head({ back: [to('exercise', exercise.seed), t('practice.ex_back')], side: t('practice.ex_name', { seed: exercise.seed }), title: t('practice.ex_solution'), sub: titleOf(exercise) }),
    ...asked(exercise, units),
    gave && el('div', 'pad', note('watch', t('practice.ex_gave_up'), t('practice.ex_gave_up_do'))),
    el('ol', 'calc', ...exercise.steps.map((step, at) => {
      const one = solved[at];
      return el('li', '', el('span', 'n', String(at + 1)), el('div', 'body', el('p', 'w', stepName(step)), one?.how.length ? el('p', 'f', howText(one.how, units, [], step)) : undefined), el('p', 'res ex-res', one ? answerText(step, one.value, units) : '–'));
    })),
    sheet.length ? el('section', '', el('h2', 'bar', t('practice.ex_sheet')), el('p', 'note pad ex-lead', t('practice.ex_sheet_note')), el('ol', 'calc', ...sheet)) : undefined,
    el('div', 'pad top tail', el('p', 'note', t('sheet.working_note')))));
}
