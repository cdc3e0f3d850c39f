// @ts-check
/**
 * The tape pad: large keys for one thumb in place of the device's keyboard. Fetched when a field that it
 * serves first takes the focus. It writes into the field what a keyboard would, at the caret; whatever else
 * types there (a keyboard, a paste, dictation) is shown by the blade just the same.
 */
import { call, fieldRow } from './calls.js';
import { entryOf } from './changes.js';
import { blade } from './drawing/blade.js';
import { fieldId } from './field.js';
import { el, say } from './list.js';
import { getPrefs, padWanted, setPrefs, showPad } from './prefs.js';
import { redraw } from './parts.js';
import { addSurface } from './sheet.js';
import { s } from './svg.js';
import { back, FRACTIONS, keysOf, press } from './tapekeys.js';
import { label as nameOf, need, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {{dom: string, part: import('./core.js').Part, id: number, field: string}} At */

/** @type {Store} */
let store;
/** The field that is being entered; a question that is answered with a press has its first or chosen button here. @type {HTMLInputElement | undefined} */
let input;
/** The presses since the field took the focus: what stood before the caret, and what then did. @type {[string, string][]} */
let pressed = [];
/** The fraction that was pressed last. */
let lit = '';

const output = el('output');
const about = el('p');
const tools = el('div', 'tools');
const drawn = el('div', 'blade');
const keys = el('div', 'keys');
const pad = el('section', { class: 'tape', hidden: true, mousedown: (/** @type {Event} */ event) => event.preventDefault() },
  el('div', 'reading', output, tools, about), drawn, keys);
const recall = el('button', { type: 'button', class: 'recall', mousedown: (/** @type {Event} */ event) => event.preventDefault(), click: () => turn('on') }, face('pad'));

let begun = false;

/** What stands behind the focus on a field. @param {Store} from @param {HTMLInputElement} target */
export async function focused(from, target) {
  store = from;
  await begin();
  if (document.activeElement !== target) return;
  recall.remove();
  if (padWanted()) return open(target);
  if (getPrefs().pad !== 'off' || !matchMedia('(pointer: coarse)').matches && !turned) return;
  input = target;
  recall.setAttribute('aria-label', t('tape.bring'));
  target.closest('.box')?.append(recall);
}

/** Whether the pad was put away on this page: its key to bring it back then stands at the field. */
let turned = false;

/** @type {Promise<unknown> | undefined} */
let ready;

function begin() {
  ready ??= new Promise((done) => {
    const sheet = el('link', { rel: 'stylesheet', href: new URL('./tape.css', import.meta.url).href, load: done, error: done });
    document.head.append(sheet);
  });
  if (!begun) {
    begun = true;
    store.subscribe(() => update());
    document.body.append(pad);
    document.addEventListener('focusin', ({ target }) => {
      const node = /** @type {HTMLElement} */ (target);
      if (pad.hidden || pad.contains(node) || node === input) return;
      // A question of the same screen is answered with a press; the pad goes on from there.
      if (node instanceof HTMLInputElement && pressedOn(node) && node.closest('#view')) return open(node);
      if (!(node instanceof HTMLInputElement && node.dataset.mode) && !node.closest('.field')?.contains(input ?? null)) close();
    });
    // The focus is nowhere for a moment between two screens, and while a list is made anew.
    document.addEventListener('focusout', () => setTimeout(() => {
      recall.parentElement?.contains(document.activeElement) || recall.remove();
      if (document.activeElement === document.body || !input?.isConnected) close();
    }, 80));
    document.addEventListener('input', ({ target }) => { if (target === input) update(); });
    document.addEventListener('keydown', (event) => {
      if (pad.hidden || event.target !== input || event.isComposing || event.key !== 'Enter' && event.key !== 'Escape') return;
      event.preventDefault();
      if (event.key === 'Escape') close();
      else void next();
    });
  }
  return Promise.all([ready, need('tape', 'surface')]);
}

/** @param {HTMLInputElement} target */
function open(target) {
  if (target !== input) [pressed, lit] = [[], ''];
  input = target;
  if (pad.hidden) drawnKeys = '';
  pad.hidden = false;
  document.documentElement.classList.add('has-pad');
  update();
  inSight();
}

/** @param {HTMLInputElement} node */
const pressedOn = (node) => node.type === 'radio' || node.type === 'checkbox';

function close() {
  pad.hidden = true;
  input = undefined;
  document.documentElement.classList.remove('has-pad');
}

/** Turns to the pad or to the device's keyboard, and keeps that choice. @param {'on' | 'off'} to */
function turn(to) {
  const field = input;
  turned = true;
  setPrefs({ pad: to });
  showPad();
  recall.remove();
  close();
  // A device looks at a field's kind of keyboard only when it takes the focus.
  field?.blur();
  field?.focus();
}

/** The row being entered is the last one above the pad. */
function inSight() {
  const box = input?.closest('.field')?.getBoundingClientRect();
  if (!box) return;
  const room = innerHeight - pad.offsetHeight;
  if (box.bottom > room - 8) scrollBy(0, Math.min(box.bottom - room + 8, box.top - 8));
  else if (box.top < 0) scrollBy(0, box.top - 8);
}

/**
 * What a box measures. One that belongs to no field of the open job says so itself, with its unit and its meaning.
 * @param {HTMLInputElement} box @param {At} here
 * @returns {{kind: import('./core.js').Kind, unit: import('./core.js').Unit, sense: import('./core.js').Sense | undefined, units: import('./core.js').Units} | undefined}
 */
function measure(box, here) {
  const { kind, unit, units, sense } = /** @type {any} */ (box.dataset);
  if (kind) return { kind, unit, units, sense: sense || undefined };
  const row = fieldRow(here.part, here.field);
  if (!row) return undefined;
  const entered = entryOf(store.job, here.part, here.id, here.field);
  return {
    kind: row.kind, unit: (box.value.trim() && entered?.unit) || (store.job.units === 'metric' ? row.metric : row.us),
    sense: entered?.text === box.value ? entered.sense : undefined, units: store.job.units,
  };
}

/** @param {Element} node @returns {At} */
function at(node) {
  const dom = node.closest('.field')?.getAttribute('data-field') ?? node.id;
  const [part = '', id = '', field = ''] = dom.split('-');
  return { dom, part: /** @type {import('./core.js').Part} */ (part), id: Number(id), field };
}

let drawnKeys = '';

function update() {
  if (pad.hidden || !input) return;
  if (!input.isConnected) return close();
  const here = at(input);
  const row = measure(input, here);
  const asks = pressedOn(input);
  pad.setAttribute('aria-label', t('tape.pad'));
  pad.classList.toggle('asks', asks);
  if (asks || !row) {
    say(about, calledBy(input));
    showKeys('choice', 'one', '');
    showNext();
    return;
  }
  const text = input.value;
  const { unit } = row;
  const read = call('read', text, row.kind, unit, row.sense, row.units);
  say(output, read?.state === 'read' ? read.text : read?.state === 'ask' ? read.meanings.map((one) => one.text).join(' / ') : read?.state === 'refused' ? '?' : '–');
  output.classList.toggle('long', (output.textContent ?? '').length > 11);
  const also = read?.other ?? [];
  say(about, [calledBy(input), also[1] ? t('tape.also', { one: also[0] ?? '', two: also[1] }) : also[0]].filter(Boolean).join(' · '));
  showBlade(row.kind, unit, read);
  showKeys(row.kind, unit, text);
  showNext();
}

/** @param {import('./core.js').Kind} kind @param {import('./core.js').Unit} unit @param {ReturnType<typeof import('./core.js').read> | undefined} read */
function showBlade(kind, unit, read) {
  drawn.hidden = kind !== 'length';
  if (drawn.hidden) return;
  const stands = read?.state === 'read' && read.likely !== undefined ? { at: read.likely, low: read.low ?? undefined, high: read.high ?? undefined } : read?.state === 'blank' ? { at: 0 } : undefined;
  const said = read?.state === 'read' ? t('tape.blade_at', { reading: read.other[0] ?? read.text }) : t('tape.blade');
  redraw(drawn, [blade(stands, unit !== 'ft' && unit !== 'in', said)]);
}

/** @param {import('./core.js').Kind} kind @param {import('./core.js').Unit} unit @param {string} text */
function showKeys(kind, unit, text) {
  const left = getPrefs().hand === 'left';
  const { pad: of, rows } = keysOf(kind, unit, input?.dataset.kind ? [] : recent(text), left);
  const asked = kind === 'choice' ? [['next']] : rows;
  const signature = JSON.stringify([asked, t('tape.back')]);
  if (signature !== drawnKeys) {
    drawnKeys = signature;
    keys.className = `keys ${kind === 'choice' ? 'one' : of === 'few' ? 'few' : ''} ${left ? 'left' : ''}`.trim();
    keys.replaceChildren(...asked.flat().map((key) => keyOf(key, kind)));
    tools.replaceChildren(
      el('button', { type: 'button', class: 'tool more', click: () => { const to = following(); if (to) goTo(to); } }, face('more')),
      el('button', { type: 'button', class: 'tool', 'aria-label': t('tape.keyboard'), click: () => turn('off') }, face('board')));
  }
  for (const one of keys.querySelectorAll('.frac')) one.classList.toggle('lit', one.getAttribute('data-press') === lit);
}

/** What stands on a unit's key. @param {string} key */
const named = (key) => (key === 'ft' || key === 'in' ? t(`fields.unit.${key}`) : key);

/** @param {string} key @param {import('./core.js').Kind} kind */
function keyOf(key, kind) {
  if (!key) return el('span');
  const fraction = FRACTIONS.indexOf(key);
  const [over = '', under = ''] = key.split('/');
  const spoken = { ft: 'feet', in: 'inches', m: 'meters', mm: 'millimeters', '+': 'plus', '×': 'by', '.': 'point', '-': 'minus', '/': 'in_run', back: 'back' }[key];
  const kindOf = fraction >= 0 ? `frac tick-${fraction}` : key === 'next' ? 'next' : /^[\d]$/.test(key) || ['.', '-', 'back'].includes(key) ? '' : 'unit';
  return el('button', {
    type: 'button', class: `${kindOf}${key.length > 3 && !kindOf.startsWith('frac') ? ' long' : ''}`, 'data-press': key,
    'aria-label': fraction >= 0 ? t(`tape.add_${under}`) : spoken ? (['ft', 'in', 'm', 'mm'].includes(key) ? `${named(key)}, ` : '') + t(`tape.${spoken}`) : '',
    click: () => (key === 'next' ? void next() : type(key)),
  }, key === 'back' ? face('back') : fraction >= 0 ? el('span', { class: 'fr', 'aria-hidden': 'true' }, el('b', { 'data-shown': over }), el('i', { 'data-shown': under })) : key === 'next' ? el('span') : key === 'ft' || key === 'in' ? named(key) : key === '-' ? '−' : key);
}

/** The last three lengths of this job, to be pressed again. @param {string} but */
function recent(but) {
  const surfaces = store.job.surfaces;
  const all = [...surfaces, ...surfaces.flatMap((one) => one.openings)].sort((a, b) => b.id - a.id).flatMap((one) => [...one.entries].reverse()
    .filter((entry) => ['m', 'mm'].includes(entry.unit ?? '') && fieldRow('openings' in one ? 'surface' : 'opening', entry.field)?.kind === 'length')
    .map((entry) => (/[a-z]/.test(entry.text) ? entry.text : `${entry.text} ${entry.unit}`)));
  return [...new Set(all)].filter((one) => one !== but && !one.startsWith(`${but} `) && one.length < 9).slice(0, 3);
}

/** Writes what a key says at the caret. @param {string} key */
function type(key) {
  if (!input) return;
  const from = input.selectionStart ?? input.value.length;
  const before = input.value.slice(0, from);
  const after = input.value.slice(input.selectionEnd ?? from);
  const last = pressed.at(-1);
  const marked = input.selectionEnd !== from;
  const written = key === 'back' ? (marked ? before : last && last[1] === before ? last[0] : back(before)) : press(before, key);
  if (key === 'back') pressed.pop();
  else pressed.push([before, written]);
  lit = FRACTIONS.includes(key) ? key : '';
  input.value = written + after;
  input.setSelectionRange(written.length, written.length);
  input.dispatchEvent(new Event('input', { bubbles: true }));
  update();
}

/** What a field is called, with the opening or sheet it belongs to. @param {HTMLInputElement} field */
function calledBy(field) {
  const called = field.type === 'radio' ? field.closest('fieldset')?.querySelector('legend') : field.labels?.[0]?.querySelector('span')?.firstChild ?? field.labels?.[0];
  return [field.closest('.group')?.querySelector('h3 > span:last-child')?.textContent, called?.textContent].filter(Boolean).join(', ');
}

/** Every field on the screen that can be seen, in its order. @returns {HTMLElement[]} */
const fields = () => /** @type {HTMLElement[]} */ ([...document.querySelectorAll('#view .field[data-field]')]).filter((one) => one.checkVisibility());

/** @param {HTMLElement} field @returns {HTMLInputElement | null} */
const control = (field) => field.querySelector('[type=radio]:checked, [type=radio]') ?? field.querySelector('input[data-mode]');

/** The fields after the present one, and those before it. @returns {[HTMLElement[], HTMLElement[]]} */
function around() {
  const all = fields().filter(control);
  const here = all.findIndex((one) => one.contains(input ?? null));
  return [all.slice(here + 1), all.slice(0, Math.max(0, here))];
}

/** The fields that have to be entered and are not. @param {HTMLElement[]} among */
function lacking(among) {
  const lacks = new Set((store.estimate?.findings ?? []).filter((one) => one.code === 'needed' || one.code === 'joists_not_said').map((one) => fieldId(one.at.part, one.at.id, one.at.field)));
  const blank = (/** @type {HTMLElement} */ one) => (one.matches('fieldset') ? !one.querySelector(':checked') : !control(one)?.value.trim());
  return among.filter((one) => lacks.has(one.dataset.field ?? '') && blank(one));
}

const following = () => around()[0][0];
/** Whether a surface is entered, and nothing of it is lacking. */
const surfaceDone = () => location.hash.startsWith('#/surface/') && !lacking(fields()).length;
/** Where the wide key goes: what is still needed first; then on to the next surface, or field by field. */
const goal = () => lacking(around().flat())[0] ?? (surfaceDone() ? undefined : following());

function showNext() {
  const to = goal();
  const more = to ? undefined : following();
  const words = to ? t('tape.next', { field: small(to) }) : t(surfaceDone() ? 'tape.next_surface' : 'tape.done');
  const span = keys.querySelector('.next > span');
  if (span) say(span, words);
  keys.querySelector('.next')?.classList.toggle('long', words.length > 14);
  const extra = tools.querySelector('.more');
  if (!(extra instanceof HTMLElement)) return;
  extra.hidden = !more;
  if (more) extra.setAttribute('aria-label', t('tape.next', { field: small(more) }));
}

/** A field's short name as it stands within a line. @param {HTMLElement} of */
function small(of) {
  const { part, field } = at(of);
  const name = of.dataset.called ?? nameOf(part, field);
  return /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLocaleLowerCase() + name.slice(1) : name;
}

/** @param {HTMLElement} field */
function goTo(field) {
  const to = control(field);
  to?.focus({ preventScroll: true });
  if (to) open(to);
}

async function next() {
  // The last press may have filled what is needed, or may ask for more.
  await store.settled();
  const to = goal();
  if (to) goTo(to);
  else if (surfaceDone()) addSurface(store);
  else {
    input?.blur();
    close();
  }
}

/** The faces of the keys without letters. @param {'back' | 'board' | 'pad' | 'more'} of */
function face(of) {
  const paths = {
    back: ['M11 2H32V22H11L2 12Z', 'M17 8l8 8M25 8l-8 8'],
    board: ['M2 3H32V21H2Z', 'M7 8h2M12.5 8h2M18 8h2M23.5 8h3M7 12.5h2M12.5 12.5h2M18 12.5h2M23.5 12.5h3M10 17.5h14'],
    pad: ['M2 3H32V21H2Z', 'M8 3V14M14.5 3V9M21 3V14M27 3V9'],
    more: ['M12 4l9 8-9 8'],
  }[of];
  return s('svg', { viewBox: '0 0 34 24', width: 34, height: 24, 'aria-hidden': 'true', class: 'face' }, ...paths.map((d) => s('path', { d })));
}
