// @ts-check
/** The menu in the header: where to go, and how the page looks and speaks. */
import { el } from './list.js';
import { getPrefs, setPrefs, showTheme } from './prefs.js';
import { unitOf } from './calls.js';
import { to } from './view.js';
import { currentLanguage, LANGUAGES, t } from './words.js';

/**
 * @param {import('./store.js').Store} store
 * @param {{press: HTMLElement, panel: HTMLElement, onLanguage: (to: import('./words.js').Language) => void}} about
 * @returns {{update: () => void}}
 */
export function startMenu(store, { press, panel, onLanguage }) {
  const show = (/** @type {boolean} */ on) => {
    panel.hidden = !on;
    press.setAttribute('aria-expanded', String(on));
    if (on) draw();
  };
  press.addEventListener('click', () => {
    show(Boolean(panel.hidden));
    if (!panel.hidden) panel.querySelector('a')?.focus();
  });
  panel.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape') return;
    show(false);
    press.focus();
  });
  document.addEventListener('click', (event) => {
    const at = /** @type {Node} */ (event.target);
    if (!panel.hidden && !panel.contains(at) && !press.contains(at)) show(false);
  });
  window.addEventListener('hashchange', () => show(false));

  function draw() {
    panel.replaceChildren(
      el('ul', 'menu-ways',
        way(t('page.to_sheet'), to('sheet')), way(t('page.to_drawings'), to('drawings')), way(t('page.to_jobs'), to('jobs')), way(t('page.to_stock'), to('stock')), way(t('page.to_practice'), to('practice')), way(t('page.to_settings'), to('settings')),
        el('li', '', el('button', { type: 'button', class: 'press', disabled: !store.canRedo, click: () => store.redo() }, t('page.redo'))),
        way(t('page.print'), to('paper', 'sheet'))),
      themePick(), languagePick(onLanguage), unitsPick(store));
  }
  return { update: () => { if (!panel.hidden) draw(); } };
}

/** @param {string} text @param {string} href */
const way = (text, href) => el('li', '', el('a', { class: 'press', href }, text));

let made = 0;

/**
 * One of a few: radio buttons that look like a row of keys.
 * @template {string} T
 * @param {string} legend
 * @param {readonly (readonly [T, string])[]} choices
 * @param {T} chosen
 * @param {(value: T) => void} choose
 */
export function pick(legend, choices, chosen, choose) {
  const name = `pick-${++made}`;
  return el('fieldset', 'choices', el('legend', '', legend), el('div', 'keys-row', ...choices.map(([value, text]) => {
    const input = el('input', { type: 'radio', name, value, change: () => choose(value) });
    input.checked = value === chosen;
    return el('label', 'key-choice', input, el('span', '', text));
  })));
}

export function themePick() {
  return pick(t('page.theme'), [['auto', t('page.theme_auto')], ['paper', t('page.theme_paper')], ['crawl', t('page.theme_crawl')]], getPrefs().theme ?? 'auto', (theme) => {
    setPrefs({ theme });
    showTheme();
  });
}

/** @param {(to: import('./words.js').Language) => void} onLanguage */
export function languagePick(onLanguage) {
  const all = /** @type {[import('./words.js').Language, string][]} */ (Object.entries(LANGUAGES));
  return pick(t('page.language'), all, currentLanguage(), onLanguage);
}

/** @param {import('./store.js').Store} store */
export function unitsPick(store) {
  return pick(t('page.units'), [['us', t('page.units_us')], ['metric', t('page.units_metric')]], store.job.units, (units) => {
    setPrefs({ units });
    store.dispatch({ do: 'units', units, unitOf });
  });
}
