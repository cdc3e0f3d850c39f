// @ts-check
/**
 * Keeps the children of a parent in step with a list, by key: a child whose key stays is patched where it
 * stands, so that focus, the caret and an open section survive.
 *
 * @template T
 * @typedef {object} Row
 * @property {Element} node
 * @property {(item: T, index: number) => void} [update]
 * @property {() => void} [unmount]
 */

/** @type {WeakMap<Element, Map<string | number, Row<any>>>} */
const known = new WeakMap();

/**
 * @template T
 * @param {Element} parent  holds nothing but this list
 * @param {readonly T[]} items
 * @param {(item: T) => string | number} key
 * @param {(item: T, index: number) => Row<T>} make
 */
export function list(parent, items, key, make) {
  const before = known.get(parent) ?? new Map();
  /** @type {Map<string | number, Row<T>>} */
  const after = new Map();
  const wanted = items.map((item, index) => {
    const id = key(item);
    const row = before.get(id) ?? make(item, index);
    before.delete(id);
    after.set(id, row);
    row.update?.(item, index);
    return row.node;
  });
  for (const row of before.values()) {
    row.unmount?.();
    row.node.remove();
  }
  let here = parent.firstElementChild;
  for (const node of wanted) {
    if (here && node === here) here = here.nextElementSibling;
    else parent.insertBefore(node, here);
  }
  known.set(parent, after);
}

/**
 * An element with its class, words and attributes. Words go in as text, never as HTML.
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} tag
 * @param {string | Record<string, string | number | boolean | ((event: any) => void)>} [about]
 *   a class, or attributes; a function listens to the event of its name
 * @param {...(Node | string | undefined | false)} inside
 * @returns {HTMLElementTagNameMap[K]}
 */
export function el(tag, about = {}, ...inside) {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(typeof about === 'string' ? { class: about } : about)) {
    if (typeof value === 'function') node.addEventListener(name, value);
    else if (value === true) node.setAttribute(name, '');
    else if (value !== false && value !== '') node.setAttribute(name, String(value));
  }
  for (const one of inside) if (one) node.append(one);
  return node;
}

/** Sets an element's words only where they differ: a live region stays quiet otherwise. @param {Element} node @param {string} text */
export function say(node, text) {
  if (node.textContent !== text) node.textContent = text;
}
