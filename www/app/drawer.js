// @ts-check
/**
 * Where the shelf's texts lie: local storage, through the core while one stands ready and straight to it
 * otherwise, so that a draft is kept even between a trap and the next instance.
 */
import { call, ready } from './calls.js';

/** The same as in the core and in `rescue.js`. */
export const PREFIX = 'foamwright.job.';

/** @template T @param {() => T} act @param {T} otherwise @returns {T} */
function attempt(act, otherwise) {
  try {
    return act();
  } catch {
    return otherwise;
  }
}

/** @type {import('./shelf.js').Drawer} */
export const drawer = {
  available: () => (ready() ? call('shelf_available') ?? false : attempt(() => Boolean(localStorage), false)),
  keys: () => (ready() ? call('shelf_keys') ?? [] : attempt(() => Object.keys(localStorage).filter((key) => key.startsWith(PREFIX)).map((key) => key.slice(PREFIX.length)), [])),
  get: (key) => (ready() ? call('shelf_get', key) : attempt(() => localStorage.getItem(PREFIX + key) ?? undefined, undefined)),
  put(key, text) {
    if (ready()) return call('shelf_put', key, text);
    return attempt(() => {
      localStorage.setItem(PREFIX + key, text);
      return undefined;
    }, /** @type {'blocked' | undefined} */ ('blocked'));
  },
  remove: (key) => (ready() ? call('shelf_remove', key) ?? false : attempt(() => {
    localStorage.removeItem(PREFIX + key);
    return true;
  }, false)),
};
