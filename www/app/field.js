// @ts-check
/**
 * The one field. It shows what was typed, how it was read, and what there is to say about it; it never
 * rewrites a text while it is being typed, and never changes one silently.
 *
 * Its DOM id is `part-id-field`, the same string that a finding carries in `at`.
 *
 * @typedef {import('./core.js').Part} Part
 * @typedef {import('./core.js').Finding} Finding
 * @typedef {import('./core.js').Field} FieldRow
 * @typedef {import('./store.js').Store} Store
 *
 * @typedef {object} About
 * @property {Store} store
 * @property {Part} part
 * @property {number} id
 * @property {string} field
 * @property {string} [label]  otherwise the field's own name
 * @property {string} [hint]
 * @property {boolean} [source]  show where the default comes from
 * @property {(lists: import('./core.js').EchoPart[][]) => HTMLElement[]} [fills]  presses for a text that holds several measures
 * @property {readonly string[]} [told]  findings that are explained beside it already
 * @property {boolean} [quiet]  a blank needed field is not marked until it was visited
 *
 * @typedef {object} Shown
 * @property {HTMLElement} node
 * @property {HTMLInputElement} input
 * @property {() => void} update
 */

import { entryOf, find } from './changes.js';
import { fieldRow, now, reading } from './calls.js';
import { el, say } from './list.js';
import { mark, markOf } from './marks.js';
import { padWanted } from './prefs.js';
import { finding, has, label as nameOf, said, t } from './words.js';

/** The DOM id of a field. @param {Part} part @param {number} id @param {string} field */
export function fieldId(part, id, field) {
  return `${part}-${id}-${field}`;
}

/** Lengths and members are written with marks, fractions and letters, so they need the whole keyboard. */
const KEYBOARD = { probes: 'text', length: 'text', member: 'text', pitch: 'text', area: 'text', date: 'text', clock: 'text', coordinate: 'text', count: 'numeric', zip: 'numeric' };

/** Which keyboard a field asks the device for; none where the tape pad stands. @param {import('./core.js').Kind | undefined} kind @returns {Record<string, string>} */
export function keyboard(kind) {
  const mode = KEYBOARD[/** @type {keyof typeof KEYBOARD} */ (kind)] ?? 'decimal';
  return ['date', 'probes', 'clock', 'coordinate'].includes(kind ?? '') ? { inputmode: mode } : { inputmode: padWanted() ? 'none' : mode, 'data-mode': mode };
}

/** The unit that a bare number may have meant instead. @type {Partial<Record<import('./core.js').Unit, import('./core.js').Unit>>} */
const OTHER = { ft: 'in', in: 'ft', m: 'mm', mm: 'm', f: 'c', c: 'f', lb: 'kg', kg: 'lb', ft2: 'm2', m2: 'ft2', min: 'hr', hr: 'min', mph: 'kmh', kmh: 'mph', cfm: 'lps', lps: 'cfm', btuh: 'kw', kw: 'btuh' };

/**
 * A measured field.
 * @param {About} about
 * @returns {Shown}
 */
export function field(about) {
  const { store, part, id, field: name } = about;
  const dom = fieldId(part, id, name);
  const row = fieldRow(part, name);
  if (row?.kind === 'choice') return choice(about);
  const unitText = el('small', { 'aria-hidden': 'true' });
  // A list that is pasted may hold line breaks, which a box of one line would drop.
  const many = row?.kind === 'probes';
  const input = /** @type {HTMLInputElement} */ (el(/** @type {'input'} */ (many ? 'textarea' : 'input'), {
    id: dom, ...(many ? { rows: 2 } : { type: 'text' }), autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false',
    ...keyboard(row?.kind),
    'aria-describedby': `${dom}-read ${dom}-from ${dom}-error`,
  }));
  const box = el('span', 'box', input, unitText);
  const readAs = el('p', { id: `${dom}-read`, class: 'read' });
  const from = el('p', { id: `${dom}-from`, class: 'src', hidden: true });
  const meanings = el('div', { class: 'meanings', role: 'group', hidden: true });
  const tells = el('div', { id: `${dom}-error`, class: 'tells' });
  const labelText = el('label', { for: dom });
  const node = el('div', { class: 'field', 'data-field': dom }, labelText, box, readAs, from, meanings, tells);
  let visited = !about.quiet;
  let before = '';

  input.addEventListener('input', () => {
    const entered = entryOf(store.job, part, id, name);
    store.dispatch({
      do: 'entry', part, id, field: name, text: input.value,
      unit: (entered?.text.trim() && entered.unit) || boxUnit(),
      ...(part === 'reading' ? { now: now() } : {}),
    });
    show();
  });
  input.addEventListener('blur', () => {
    visited = true;
    shown.update();
  });

  function boxUnit() {
    return row && (store.job.units === 'metric' ? row.metric : row.us);
  }

  function show() {
    const entered = entryOf(store.job, part, id, name);
    const text = entered?.text ?? '';
    const unit = (text.trim() && entered?.unit) || boxUnit();
    say(labelText, about.label ?? nameOf(part, name));
    say(unitText, unit ? t(`fields.unit.${unit}`) : '');
    if (document.activeElement !== input && input.value !== text) input.value = text;
    const found = (store.estimate?.findings ?? []).filter((one) => one.at.part === part && one.at.id === id && one.at.field === name);
    const lack = found.some((one) => one.code === 'needed');
    const stop = found.some((one) => one.severity === 'stop' && !['needed', 'two_meanings'].includes(one.code));
    const odd = found.some((one) => one.severity === 'warn' || one.code === 'two_meanings');
    box.className = `box${many ? ' long' : ''}${lack && visited ? ' lack' : stop ? ' no' : odd ? ' odd' : ''}`;
    if (stop) input.setAttribute('aria-invalid', 'true');
    else input.removeAttribute('aria-invalid');
    const read = row && text.trim() ? reading(row, text, unit, entered?.sense, store.job.units) : undefined;
    showReading(read, row, text);
    // What hangs on a press is drawn anew only when it differs, so that a focused button stays.
    // Leaving the field for one of its own presses must not draw that press anew: it would lose the click.
    const told = found.filter((one) => (one.code !== 'needed' || visited) && said(one));
    const signature = JSON.stringify([told, read?.meanings, read?.several, unit, text]);
    if (signature === before) return;
    before = signature;
    showMeanings(read?.meanings, text, unit);
    const fills = about.fills?.(read?.several ?? []) ?? [];
    meanings.append(...fills);
    if (fills.length) meanings.hidden = false;
    tells.replaceChildren(...told.map(tell));
    offerOther(found, text, unit);
  }

  /** @param {ReturnType<typeof reading>} read @param {FieldRow | undefined} row @param {string} text */
  function showReading(read, row, text) {
    if (read?.as && read.as === text.trim() && !read.also.length) {
      say(readAs, about.hint ?? '');
    } else if (read?.as) {
      say(readAs, t(read.also.length > 1 ? 'fields.read_as_3' : read.also.length ? 'fields.read_as_2' : 'fields.read_as', {
        as: read.as, also: read.also[0] ?? '', too: read.also[1] ?? '',
      }) + (read.courses ? `. ${t('fields.courses')}` : ''));
    } else if (!text.trim() && row?.default) {
      const held = reading(row, row.default, row.us, undefined, store.job.units)?.as ?? row.default;
      input.placeholder = held;
      say(readAs, t('fields.blank_counts', { value: held }));
    } else {
      say(readAs, about.hint ?? '');
    }
    readAs.hidden = !readAs.textContent;
    say(from, about.source && row?.default && row.source ? t(`sources.${row.source}`) : '');
    from.hidden = !from.textContent;
  }

  /** @param {{sense: import('./core.js').Sense, as: string}[] | undefined} list @param {string} text @param {import('./core.js').Unit | undefined} unit */
  function showMeanings(list, text, unit) {
    const chosen = entryOf(store.job, part, id, name)?.sense;
    meanings.hidden = !list?.length;
    meanings.setAttribute('aria-label', t('fields.which', { text }));
    meanings.replaceChildren(...(list ?? []).map(({ sense, as }) => el('button', {
      type: 'button', class: 'do line', 'aria-pressed': String(chosen === sense),
      click: () => {
        store.dispatch({ do: 'entry', part, id, field: name, text, unit, sense, ...(part === 'reading' ? { now: now() } : {}) });
        input.focus();
      },
    }, has(`fields.sense.${sense}`) ? t(`fields.sense.${sense}`, { as }) : as)));
  }

  /** A bare number outside the usual may have meant the other unit: offered, never taken. @param {Finding[]} found @param {string} text @param {import('./core.js').Unit | undefined} unit */
  function offerOther(found, text, unit) {
    const strange = found.find((one) => ['unlikely', 'above_limit', 'below_limit'].includes(one.code));
    const other = unit && OTHER[unit];
    if (!strange || !row || !other) return;
    const here = reading(row, text, unit, undefined, store.job.units);
    const there = reading(row, text, other, undefined, store.job.units);
    if (!here?.as || !there?.as || here.as === there.as) return;
    tells.append(el('button', {
      type: 'button', class: 'do line',
      click: () => {
        store.dispatch({ do: 'entry', part, id, field: name, text, unit: other, ...(part === 'reading' ? { now: now() } : {}) });
        input.focus();
      },
    }, t('fields.other_unit', { text: text.trim(), unit: t(`fields.unit.${other}`), as: there.as })));
  }

  const shown = { node, input, update: show };
  show();
  return shown;
}

/**
 * A question that is answered by pressing one of a few words. Pressing the one that is chosen takes it away.
 * @param {About} about
 * @returns {Shown}
 */
function choice({ store, part, id, field: name, label: called, hint, told }) {
  const dom = fieldId(part, id, name);
  const row = fieldRow(part, name);
  const inputs = (row?.choices ?? []).map((word) => {
    const input = el('input', { type: 'radio', name: dom, value: word });
    input.addEventListener('click', () => {
      const again = entryOf(store.job, part, id, name)?.text === word;
      // An answer is no reading: it never makes an old figure fresh.
      store.dispatch({ do: 'entry', part, id, field: name, text: again ? '' : word });
    });
    return input;
  });
  if (inputs[0]) inputs[0].id = dom;
  const legend = el('legend');
  const tells = el('div', { id: `${dom}-error`, class: 'tells' });
  const node = el('fieldset', { class: 'choices field wide', 'data-field': dom, 'aria-describedby': `${dom}-error` }, legend,
    el('div', inputs.length > 3 ? 'keys-row many' : 'keys-row', ...inputs.map((input) => el('label', 'key-choice', input, el('span', '', t(`fields.choice.${has(`fields.choice.${name}.${input.value}`) ? name + '.' : ''}${input.value}`))))),
    hint ? el('p', 'read', hint) : '', tells);
  let before = '';
  const update = () => {
    say(legend, called ?? nameOf(part, name));
    const chosen = entryOf(store.job, part, id, name)?.text || row?.default;
    for (const input of inputs) input.checked = input.value === chosen;
    const found = (store.estimate?.findings ?? []).filter((one) => one.at.part === part && one.at.id === id && one.at.field === name && !told?.includes(one.code));
    const signature = JSON.stringify(found);
    if (signature === before) return;
    before = signature;
    tells.replaceChildren(...found.map(tell));
  };
  update();
  return { node, input: inputs[0] ?? el('input'), update };
}

/** A finding beside its field: mark, what is so, what to do. @param {Finding} found @returns {HTMLElement} */
export function tell(found) {
  const words = finding(found);
  return el('p', 'tell', mark(markOf(found)), el('span', '', el('b', '', words.what), ' ', words.do));
}

/** A finding as a note of its own, with its source. @param {Finding} found @returns {HTMLElement} */
export function note(found) {
  const words = finding(found);
  const kind = found.severity === 'stop' ? 'hold' : 'watch';
  return el('div', `say ${kind}`, mark(markOf(found)), el('span', '', el('b', '', words.what), ' ', words.do,
    words.source ? el('span', 'src', words.source) : ''));
}

/**
 * A line of plain text: a name, a place, a note. For a listed thing the field is `name`.
 * @param {{store: Store, part: Part, id: number, field: 'name' | 'place' | 'note', label: string, hint?: string, long?: boolean}} about
 * @returns {{node: HTMLElement, input: HTMLInputElement | HTMLTextAreaElement, update: () => void}}
 */
export function line({ store, part, id, field: name, label, hint, long }) {
  const dom = fieldId(part, id, name);
  const input = long ? el('textarea', { id: dom, rows: 4 }) : el('input', { id: dom, type: 'text', autocomplete: 'off' });
  input.addEventListener('input', () => store.dispatch(part === 'job'
    ? { do: 'text', field: name, text: input.value } : { do: 'name', part, id, name: input.value }));
  const node = el('div', { class: 'field wide', 'data-field': dom }, el('label', { for: dom }, label),
    el('span', long ? 'box long' : 'box', input), hint ? el('p', 'read', hint) : '');
  const update = () => {
    const text = find(store.job, part, id)?.[name] ?? '';
    if (document.activeElement !== input && input.value !== text) input.value = text;
  };
  update();
  return { node, input, update };
}
