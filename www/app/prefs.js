// @ts-check
/**
 * What a person chose for this device: theme, language, units of a new job, the last job. And the catalogue
 * of their own sheets. Blocked storage is no matter: the choice then holds until the page is closed.
 *
 * @typedef {'auto' | 'paper' | 'crawl'} Theme
 * @typedef {object} Prefs
 * @property {Theme} [theme]
 * @property {import('./words.js').Language} [language]
 * @property {import('./core.js').Units} [units]
 * @property {string} [job]  the job that was open last
 */

const KEY = 'foamwright.prefs';

/** @type {Prefs | undefined} */
let prefs;

/** @returns {Prefs} */
export function getPrefs() {
  prefs ??= readKey(KEY, {});
  return /** @type {Prefs} */ (prefs);
}

/** @param {Prefs} change */
export function setPrefs(change) {
  prefs = { ...getPrefs(), ...change };
  writeKey(KEY, prefs);
}

/** Shows the theme that was chosen; `auto` leaves it to the device. */
export function showTheme() {
  const { theme } = getPrefs();
  if (theme === 'paper' || theme === 'crawl') document.documentElement.dataset.theme = theme;
  else delete document.documentElement.dataset.theme;
}

/** A value kept as JSON under a key; `blank` where there is none, or none that can be read. @template T @param {string} key @param {T} blank @returns {T} */
export function readKey(key, blank) {
  try {
    const value = JSON.parse(localStorage.getItem(key) ?? 'null');
    return value && typeof value === 'object' ? value : blank;
  } catch {
    return blank;
  }
}

/** @param {string} key @param {unknown} value @returns {boolean} whether it is kept */
export function writeKey(key, value) {
  try {
    localStorage.setItem(key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}
