// @ts-check
/** Pieces that several screens share. */
import { el } from './list.js';
import { chevron, mark, markOf } from './marks.js';
import { finding, t } from './words.js';
import { to } from './view.js';

export { to };

/** @typedef {Node | string | undefined | false | null} Child */


/** A figure that opens its working. @param {string} text @param {...(string | number)} path scope, id, result */
export const worked = (text, ...path) => el('a', { class: 'fig', href: to('working', ...path) }, text);

/**
 * Puts new children in place of the old, keeps those that are the same, and gives the focus back to the child
 * that had it (by `data-key` or id). Listeners must look things up when they fire.
 * @param {Element} root @param {Child[]} children
 */
export function redraw(root, children) {
  const held = document.activeElement;
  const key = held && root !== held && root.contains(held) ? held.getAttribute('data-key') || held.getAttribute('href') || held.id : '';
  const old = [...root.childNodes];
  const fresh = /** @type {(Node | string)[]} */ (children.filter(Boolean));
  fresh.forEach((one, at) => {
    const node = typeof one === 'string' ? document.createTextNode(one) : one;
    const before = old[at];
    if (!before) root.append(node);
    else if (before !== node && !before.isEqualNode(node)) root.replaceChild(node, before);
  });
  for (const gone of old.slice(fresh.length)) if (gone.parentNode === root) gone.remove();
  if (key && !root.contains(document.activeElement)) {
    const again = [...root.querySelectorAll('[data-key], a, [id]')].find((one) => one.getAttribute('data-key') === key || one.getAttribute('href') === key || one.id === key);
    if (again instanceof HTMLElement || again instanceof SVGElement) again.focus({ preventScroll: true });
  }
}

/**
 * The head of a screen.
 * @param {{back?: [string, string], side?: Child, title: string, sub?: string}} about
 */
export function head({ back, side, title, sub }) {
  return el('header', 'head',
    back && el('a', { class: 'back', href: back[0] }, chevron(), el('span', '', back[1])),
    side ? el('span', 'side', side) : undefined,
    el('h1', { tabindex: -1 }, title), sub ? el('p', 'sub', sub) : undefined);
}

/** A note: bold first, then what follows. @param {'go' | 'hold' | 'watch' | 'none'} kind @param {string} bold @param {...Child} rest */
export const note = (kind, bold, ...rest) =>
  el('div', 'say ' + kind, mark(kind), el('span', '', el('b', '', bold), ' ', ...rest.map((one) => one || undefined)));

/** A caution: the label, local code and licensed practice govern. @param {string} key */
export const caution = (key) => note('watch', t(key), t(key + '_do'));

/** A finding as a note, with its source. @param {import('./core.js').Finding} found */
export function findingNote(found) {
  const words = finding(found);
  return el('div', 'say ' + (found.severity === 'stop' ? markOf(found) : 'watch'), mark(markOf(found)),
    el('span', '', el('b', '', words.what), ' ', words.do, words.source ? el('span', 'src', words.source) : undefined));
}

/** A row of a list: what it is, a line below, the figure at the right. @param {Child} what @param {Child} below @param {Child} value @param {string} [kind] */
export const row = (what, below, value, kind = '') =>
  el('li', kind, el('span', 'k', what || undefined, below ? el('small', '', below) : undefined), value ? el('span', 'v', value) : undefined);

/** A row that leads somewhere. @param {string} href @param {Child} what @param {Child} below @param {Child} value */
export const pressRow = (href, what, below, value) =>
  el('li', 'press', el('a', { class: 'press', href }, el('span', 'k', el('b', '', what || undefined), below ? el('small', '', below) : undefined), value ? el('span', 'v', value) : undefined));

/** A press that says what happens. @param {string} text @param {string} key @param {() => void} act @param {string} [kind] */
export const press = (text, key, act, kind = 'line wide') => el('button', { type: 'button', class: 'do ' + kind, 'data-key': key, click: act }, text);

/** A way on to another screen. @param {string} text @param {string} href @param {string} [kind] */
export const way = (text, href, kind = 'line wide') => el('a', { class: 'do ' + kind, href }, text);

/** A drawing with its caption. @param {SVGElement} svg @param {...string} captions */
export const framed = (svg, ...captions) =>
  el('figure', 'draw', svg, captions.length ? el('figcaption', '', ...captions.map((one) => el('span', '', one))) : undefined);

/** Fields that are seldom changed, folded away. @param {string} name @param {...Node} fields */
export const more = (name, ...fields) => el('details', 'more no-print', el('summary', '', name), el('div', 'fields', ...fields));

/** How wide a drawing may be here, edge to edge: text in drawings is never scaled. @param {HTMLElement} root */
export const breadth = (root) => Math.max(300, root.clientWidth || 390);

/** The same between the margins. @param {HTMLElement} root */
export const between = (root) => breadth(root) - 2 * (parseFloat(getComputedStyle(root).getPropertyValue('--gap')) || 16);

/** @param {string} text */
export const src = (text) => el('p', 'src', text);

/**
 * A table. Cells of the first column are heads of their rows.
 * @param {string} name @param {Child[]} heads @param {{cells: Child[], kind?: string}[]} rows @param {number} [left] columns that are not figures
 */
export function table(name, heads, rows, left = 1) {
  const side = (/** @type {number} */ at) => (at >= left ? 'r' : '');
  return el('div', { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': name }, el('table', 't',
    el('thead', '', el('tr', '', ...heads.map((one, at) => el('th', { class: side(at), scope: 'col' }, one || el('span', 'vh', name))))),
    el('tbody', '', ...rows.map(({ cells, kind }) => el('tr', kind ?? '', ...cells.map((one, at) =>
      at === 0 ? el('th', { scope: 'row' }, one || undefined) : el('td', side(at), one || undefined)))))));
}

/** Foam or kit or surface by id. @template {{id: number}} T @param {T[]} list @param {number} id */
export const byId = (list, id) => list.find((one) => one.id === id);
