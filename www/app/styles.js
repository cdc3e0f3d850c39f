// @ts-check
/** Style sheets that only some screens need: fetched when one of these is opened. */

/** @type {Map<string, Promise<void>>} */
const asked = new Map();

/** Resolves when the style sheet stands, or when it cannot be had: a screen is not kept waiting for its looks. @param {string} name @returns {Promise<void>} */
export function style(name) {
  let there = asked.get(name);
  if (!there) {
    const link = document.createElement('link');
    link.rel = 'stylesheet';
    link.href = new URL(`./${name}.css`, import.meta.url).href;
    there = new Promise((resolve) => {
      link.onload = () => resolve();
      link.onerror = () => {
        asked.delete(name);
        link.remove();
        resolve();
      };
    });
    asked.set(name, there);
    document.head.append(link);
  }
  return there;
}
