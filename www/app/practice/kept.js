// @ts-check
/** The progress of this device: the one document that the screens share, and who is told when another tab has changed it. */
import { readText, writeText } from '../prefs.js';
import { createProgress, textBox } from './progress.js';

/** @typedef {import('./progress.js').Units} Units @typedef {import('./progress.js').Answer} Answer */

const KEY = 'foamwright-practice';

const progress = createProgress(textBox(() => readText(KEY), (text) => writeText(KEY, text)), Date.now);

/** Those who show progress. @type {Set<() => void>} */
const told = new Set();

/** Is told when another tab has written. @param {() => void} tell @returns {() => void} ends it */
export function onProgress(tell) {
  told.add(tell);
  return () => told.delete(tell);
}

globalThis.addEventListener?.('storage', (event) => {
  if (event.key !== null && event.key !== KEY) return;
  // What somebody cleared is not put back by itself.
  if (event.newValue !== null) progress.heard();
  for (const tell of told) tell();
});

/** What could not be kept is said, once. @template {any[]} A @param {(...args: A) => void} act @returns {(...args: A) => void} */
const saying = (act) => (...args) => {
  act(...args);
  if (!progress.isKept()) import('./lost.js').then(({ tellLost }) => tellLost(), () => undefined);
};

export const { answers, unitsOf, entry, isOpened, opened, byTopic, recent, sheet, openSheet, reset, isKept } = progress;
export const keep = saying(progress.keep);
export const again = saying(progress.again);
export const marked = saying(progress.marked);
