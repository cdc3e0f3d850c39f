// @ts-check
/** One step of an exercise: what is asked, the box, how it was read, the mark, and the help that can be had. */
import { keyboard } from '../field.js';
import { el, say } from '../list.js';
import { mark as markSign } from '../marks.js';
import { redraw } from '../parts.js';
import { has, t } from '../words.js';
import { readAnswer } from './answers.js';
import { howText } from './pieces.js';
import { given, isRight, nextHelp } from './session.js';
import { saidOf } from './verdict.js';
import { answerText, choiceName, stepName, tolerance, unitName } from './written.js';

/** @typedef {import('./session.js').Session} Session */

/**
 * @param {Session} session @param {number} at @param {() => void} changed  something was typed, pressed or shown
 * @returns {{node: HTMLElement, update: (anew?: boolean) => void, focus: () => void}}
 */
export function stepItem(session, at, changed) {
  const step = session.exercise.steps[at];
  if (!step) throw new RangeError('no such step');
  const id = `ex-${at + 1}`;
  const name = t('practice.ex_step', { n: at + 1, step: stepName(step) });
  const limits = el('small', { id: `${id}-within` }, step.choices.length ? t('practice.ex_choose') : tolerance(step, session.units));
  const read = el('p', { id: `${id}-read`, class: 'read', hidden: true });
  const meanings = el('div', { class: 'meanings', role: 'group', hidden: true });
  const told = el('div', { id: `${id}-told` });
  const helps = el('div', { id: `${id}-helps`, class: 'ex-helps' });
  const ask = el('div', 'ex-ask no-print');
  const described = `${id}-within ${id}-read ${id}-told ${id}-helps`;
  const has_ = { words: has(`exercises.hint.${step.key}`), how: Boolean(session.solved[at]?.how.length) };
  const answer = () => session.answers[at] ?? { text: '', unit: step.unit, hints: 0, shown: false };
  const change = (/** @type {Partial<import('./progressdoc.js').Answer>} */ to) => {
    session.answer(at, to);
    changed();
  };
  const field = step.choices.length ? pressed() : typed();
  const node = el('li', { class: 'ex-step field', 'data-field': `step-${at + 1}-answer`, 'data-called': t('practice.ex_step_n', { n: at + 1 }) }, field.node, read, meanings, told, helps, ask);

  /** A box for a figure. */
  function typed() {
    const unit = el('small', { 'aria-hidden': 'true' });
    const input = el('input', {
      id, type: 'text', autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false', ...keyboard(step?.kind), 'aria-describedby': described,
      input: () => {
        const before = answer();
        change({ text: input.value, unit: before.text.trim() && input.value.trim() ? before.unit : step?.unit, sense: undefined });
      },
    });
    const box = el('span', 'box', input, unit);
    const label = el('label', { for: id }, name);
    return {
      node: el('div', 'q1', el('div', '', label, limits), box),
      focus: () => input.focus(),
      update(anew = false) {
        const { text, unit: own, sense, shown } = answer();
        const stands = shown ? answerText(step ?? session.exercise.steps[0], session.solved[at]?.value ?? NaN, session.units) : text;
        if (input.value !== stands && (anew || shown || document.activeElement !== input)) input.value = stands;
        input.readOnly = shown;
        // The tape pad asks the box itself, since it is no field of the open job.
        Object.assign(input.dataset, { kind: step?.kind, unit: own, units: session.units, sense: sense ?? '' });
        say(unit, shown || !step ? '' : own === step.unit ? unitName(step) : t(`fields.unit.${own}`));
        box.className = `box${boxClass()}`;
        if (boxClass() === ' no') input.setAttribute('aria-invalid', 'true');
        else input.removeAttribute('aria-invalid');
        readAs();
      },
    };
  }

  /** One of a few words. */
  function pressed() {
    const inputs = (step?.choices ?? []).map((word) => el('input', { type: 'radio', name: id, value: word, click: () => change({ text: answer().text === word ? '' : word, unit: step?.unit }) }));
    const keys = el('div', inputs.length > 3 ? 'keys-row many' : 'keys-row', ...inputs.map((input) => el('label', 'key-choice', input, el('span', '', choiceName(input.value)))));
    return {
      node: el('fieldset', { id, class: 'ex-choices', 'aria-describedby': described }, el('legend', '', name), limits, keys),
      focus: () => inputs[0]?.focus(),
      update() {
        const { text, shown } = answer();
        const stands = shown ? step?.choices[session.solved[at]?.value ?? -1] : text;
        for (const input of inputs) {
          input.checked = input.value === stands;
          input.disabled = shown;
        }
        keys.classList.toggle('ok', boxClass() === ' ok');
        keys.classList.toggle('no', boxClass() === ' no');
      },
    };
  }

  function boxClass() {
    if (answer().shown) return ' shown';
    const one = session.mark(at);
    return !one || one.verdict === 'blank' ? '' : isRight(one) ? ' ok' : ' no';
  }

  /** How a figure was read, with its meanings where it has several. */
  function readAs() {
    const { text, unit, sense, shown } = answer();
    const typed_ = !shown && text.trim() && step ? text : '';
    const echo = typed_ && step ? readAnswer(step, { text: typed_, unit, sense }, session.units) : undefined;
    const asked = sense && step ? readAnswer(step, { text: typed_, unit }, session.units) : echo;
    const same = echo?.state === 'read' && echo.text === typed_.trim();
    say(read, !echo || same ? '' : echo.state === 'read' ? t(echo.other[0] ? 'fields.read_as_2' : 'fields.read_as', { as: echo.text, also: echo.other[0] ?? '' }) : echo.state === 'ask' ? t('fields.which', { text: typed_.trim() }) : t('practice.ex_unread'));
    read.hidden = !read.textContent;
    const list = asked?.meanings ?? [];
    meanings.hidden = !list.length;
    meanings.setAttribute('aria-label', t('fields.which', { text: typed_.trim() }));
    redraw(meanings, list.map((one) => el('button', {
      type: 'button', class: 'do line', 'aria-pressed': String(sense === one.sense), 'data-key': `${id}-${one.sense}`,
      click: () => {
        change({ sense: one.sense });
        field.focus();
      },
    }, has(`fields.sense.${one.sense}`) ? t(`fields.sense.${one.sense}`, { as: one.text }) : one.text)));
  }

  /** The help that comes next, with what it costs said before it is pressed. */
  function help() {
    const next = isRight(session.mark(at)) ? undefined : nextHelp(answer(), has_);
    if (!next) return [];
    return [el('button', {
      type: 'button', class: 'link', 'data-key': `${id}-help`, 'aria-label': t('practice.ex_help_of', { help: t(`practice.ex_help_${next}`), n: at + 1 }),
      click: () => {
        session.help(at, next);
        changed();
        if (next === 'show') field.focus();
      },
    }, t(`practice.ex_help_${next}`))];
  }

  /** @param {boolean} [anew] what was typed elsewhere replaces what stands in the box that is typed in */
  function update(anew) {
    field.update(anew);
    const said = saidOf(session, at);
    redraw(told, said ? [el('p', `tell${said.kind === 'go' ? ' w-go' : ''}`, markSign(said.kind), el('span', '', el('b', said.kind === 'hold' ? 'w-hold' : '', said.bold), ' ', said.rest))] : []);
    redraw(helps, given(answer(), has_).flatMap((one) => (one === 'show' ? [] : [el('p', 'note', el('b', '', t(`practice.ex_given_${one}`)), ' ', one === 'hint' ? t(`exercises.hint.${step?.key}`) : howText(session.solved[at]?.how ?? [], session.units, session.open(at), step))])));
    redraw(ask, help());
  }

  return { node, update, focus: () => field.focus() };
}
