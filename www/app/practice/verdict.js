// @ts-check
/** What is said of a step after it was marked, in words. */
import { has, t } from '../words.js';
import { readAnswer } from './answers.js';
import { howText, quarters, sameFigure } from './pieces.js';
import { isRight, worth } from './session.js';
import { answerText, choiceName } from './written.js';

/** @typedef {import('./session.js').Session} Session */
/** @typedef {{kind: 'go' | 'hold' | 'none', bold: string, rest: string}} Said */

/** An answer as it was typed, in the form in which it was understood. @param {Session} session @param {number} at */
export function asGiven({ exercise, answers, units }, at) {
  const [step, answer] = [exercise.steps[at], answers[at]];
  const text = answer?.text.trim() ?? '';
  if (!step || !answer || !text) return '';
  if (step.choices.length) return choiceName(text);
  const unit = /** @type {any} */ (answer.unit || step.unit);
  // A bare number keeps all its places, and takes the unit of its box.
  const bare = /^(\d*)(?:\.(\d+))?$/.exec(text);
  if (bare && unit !== 'clock') {
    const figure = setOut(bare[1] ?? '', step.kind === 'money' ? bare[2]?.padEnd(2, '0') : bare[2], units);
    return step.kind === 'resistance' && unit === 'r' ? `R-${figure}` : step.kind === 'money' ? `$${figure}` : [figure, unit === 'each' ? '' : t(`fields.unit.${unit}`)].filter(Boolean).join('\u00a0');
  }
  const read = readAnswer(step, answer, units);
  // That it was rounded to be written is said where it is read.
  return read?.state === 'read' ? read.text.replace(/^≈\s*/, '') : text;
}

/** The digits of a number as figures are written: thousands parted, a zero before the point. @param {string} whole @param {string | undefined} part @param {import('../core.js').Units} units */
const setOut = (whole, part, units) => (whole.replace(/^0+(?=\d)/, '') || '0').replace(/\B(?=(?:\d{3})+$)/g, units === 'metric' ? '\u202f' : ',') + (part ? `.${part}` : '');

/** A line of figures and what it comes to; of a choice its word first, since no arithmetic gives a word. @param {import('./core.js').StepForm} step @param {string} how @param {string} gives */
const worked = (step, how, gives) => (!how ? gives : step.choices.length ? `${gives}: ${how}` : `${how} = ${gives}`);

/** What a text is worth as a figure; nothing where it cannot be read. @param {Session} session @param {number} at */
function valueAt({ exercise, answers, units }, at) {
  const [step, answer] = [exercise.steps[at], answers[at]];
  if (!step || !answer?.text.trim() || step.choices.length) return undefined;
  return readAnswer(step, answer, units)?.likely ?? undefined;
}

/** How the right answer comes about, with what it comes to: 18′-0″ × 4′-6″ ÷ 2 = 40.5 ft². @param {Session} session @param {number} at */
export function solution(session, at) {
  const [step, one] = [session.exercise.steps[at], session.solved[at]];
  if (!step || !one) return '';
  const right = answerText(step, one.value, session.units);
  return worked(step, howText(one.how, session.units, session.open(at), step), right);
}

/** The student's own answers, as they are written in a line that goes on from them. @param {Session} session @param {number} at @returns {import('./pieces.js').Open[]} */
const own = (session, at) => session.exercise.steps.flatMap((step, other) => {
  const value = other === at ? undefined : valueAt(session, other);
  return value === undefined ? [] : [{ n: other + 1, value, kind: step.kind, text: asGiven(session, other) }];
});

/** Earlier answers that were not right and that a line holds: what was carried on. @param {Session} session @param {number} at @param {readonly import('./core.js').Piece[]} how */
function carriedFrom(session, at, how) {
  return session.exercise.steps.slice(0, at).flatMap((step, before) => {
    const value = valueAt(session, before);
    const wrong = ['slip', 'wrong', 'carried'].includes(session.mark(before)?.verdict ?? '');
    return wrong && value !== undefined && how.some((piece) => piece.is === 'figure' && sameFigure(piece, { value, kind: step.kind })) ? [asGiven(session, before)] : [];
  });
}

/** What is said of a step as it stands; nothing where it was not marked since it was changed. @param {Session} session @param {number} at @returns {Said | undefined} */
export function saidOf(session, at) {
  const { units } = session;
  const [step, answer] = [session.exercise.steps[at], session.answers[at]];
  if (answer?.shown) return { kind: 'none', bold: t('practice.ex_shown'), rest: `${solution(session, at)}. ${t('practice.ex_no_point')}` };
  const mark = session.mark(at);
  if (mark?.verdict === 'blank' && step && answer?.text.trim()) return { kind: 'none', bold: t('practice.ex_unmarked'), rest: t(readAnswer(step, answer, units)?.meanings.length ? 'practice.ex_unmarked_do' : 'practice.ex_unmarked_why') };
  if (!step || !mark || mark.verdict === 'blank' || mark.verdict === 'shown' || !answer) return undefined;
  const how = howText(mark.how, units, [...own(session, at), ...session.open(at)], step);
  if (isRight(mark)) {
    const less = worth(answer) < 1 ? t('practice.ex_worth', { points: quarters(mark.points) }) : '';
    // What the line comes to, not the answer, which may be rounded.
    const line = how && `${worked(step, how, mark.gives === undefined || mark.gives === null ? asGiven(session, at) : answerText(step, mark.gives, units))}.`;
    if (mark.verdict === 'right') return { kind: 'go', bold: t('practice.ex_right'), rest: [line, less].filter(Boolean).join(' ') };
    const from = carriedFrom(session, at, mark.how);
    return { kind: 'go', bold: t('practice.ex_carried'), rest: [from.length ? t('practice.ex_carried_from', { list: from.join(', ') }) : t('practice.ex_carried_on'), line, less].filter(Boolean).join(' ') };
  }
  const named = mark.verdict === 'slip' && has(`slips.${mark.slip}`);
  const words = named ? t(`slips.${mark.slip}`, { answer: asGiven(session, at), how }) : t('practice.ex_wrong');
  return { kind: 'hold', bold: t('practice.ex_again'), rest: [words, mark.carried ? t('practice.ex_own_figures') : ''].filter(Boolean).join(' ') };
}
