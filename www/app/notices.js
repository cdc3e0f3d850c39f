// @ts-check
/** What the page itself has to say, above the screen: each once, until it is put away or no longer so. */
import { el } from './list.js';
import { mark } from './marks.js';
import { t } from './words.js';

/** @type {HTMLElement | null} */
let place = null;
/** @type {Map<string, HTMLElement>} */
const shown = new Map();
/** Said once a visit; putting it away is an answer. @type {Set<string>} */
const said = new Set();

/** @param {HTMLElement} root */
export function placeNotices(root) {
  place = root;
}

/**
 * Shows a notice.
 * @param {string} id  one notice at a time by this name
 * @param {'watch' | 'hold' | 'go'} kind
 * @param {string} bold
 * @param {string} [rest]
 * @param {{presses?: [string, () => void][], once?: boolean, focus?: boolean}} [how]
 *   `once`: a visit; `focus`: what was pressed to get here is gone, so the first press takes the focus
 */
export function notify(id, kind, bold, rest = '', { presses = [], once = false, focus = false } = {}) {
  if (once && said.has(id)) return;
  said.add(id);
  hush(id);
  const away = el('button', { type: 'button', class: 'link', click: () => hush(id) }, t('page.put_away'));
  const node = el('div', { class: `say ${kind}`, 'data-notice': id, role: kind === 'hold' ? 'alert' : 'status' }, mark(kind),
    el('div', 'said', el('p', '', el('b', '', bold), rest ? ` ${rest}` : ''),
      el('div', 'moves', ...presses.map(([words, act]) => el('button', {
        type: 'button', class: 'do small',
        click: () => {
          hush(id);
          act();
        },
      }, words)), away)));
  shown.set(id, node);
  place?.append(node);
  if (focus) node.querySelector('button')?.focus();
}

/** Takes a notice away. @param {string} id */
export function hush(id) {
  shown.get(id)?.remove();
  shown.delete(id);
}
