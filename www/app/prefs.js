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
 * @property {'on' | 'off'} [pad]  the tape pad; without a choice it comes where a finger does the pressing
 * @property {'left'} [hand]  the thumb that presses the tape pad, if not the right one
 */

const KEY = 'foamwright.prefs';

/** @type {Prefs | undefined} */
let prefs;

/** Set where nothing of the device is read or written: in a frame on somebody else's page. */
let held = false;

/** From here on choices are held in this page alone; what the device keeps is neither read nor written, and the pad stays away. */
export function holdOnly() {
  held = true;
}

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

/** Set once the pad could not be fetched: the keyboard does its work then. */
let lost = false;

/** Whether the tape pad is wanted in place of the device's own keyboard. */
export function padWanted() {
  return !lost && !held && (getPrefs().pad ?? (matchMedia('(pointer: coarse)').matches ? 'on' : 'off')) === 'on';
}

/** Fields that the pad serves keep the device's keyboard away while it is wanted. */
export function showPad(missing = lost) {
  lost = missing;
  for (const input of document.querySelectorAll('[data-mode]')) input.setAttribute('inputmode', padWanted() ? 'none' : input.getAttribute('data-mode') ?? '');
}

/** A value kept as JSON under a key; `blank` where there is none, or none that can be read. @template T @param {string} key @param {T} blank @returns {T} */
export function readKey(key, blank) {
  try {
    const value = JSON.parse(readText(key) ?? 'null');
    return value && typeof value === 'object' ? value : blank;
  } catch {
    return blank;
  }
}

/** @param {string} key @param {unknown} value @returns {boolean} whether it is kept */
export function writeKey(key, value) {
  return writeText(key, JSON.stringify(value));
}

/** The text under a key as it lies there; none where there is none or none can be had. @param {string} key @returns {string | null} */
export function readText(key) {
  if (held) return null;
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

/** @param {string} key @param {string} text @returns {boolean} whether it is kept */
export function writeText(key, text) {
  if (held) return false;
  try {
    localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}
