// @ts-check
/**
 * Where the host's settings come from: a message of the page around the frame, or a file that the frame's own
 * address names. Such a file is fetched from the frame's own origin and from nowhere else.
 *
 * @typedef {{settings?: unknown, text?: string, language?: 'en' | 'es'}} Asked
 *   `settings` as they came in a message, or the `text` of a file; neither is read yet
 */

/** What stands in the frame's address where the page around sends the settings. */
const FOLLOW = '#settings-follow';
/** How long they are waited for, in ms. */
const PATIENCE = 4000;

/** Whether the page around has said that it sends the settings. */
export const follows = () => location.hash === FOLLOW && window.parent !== window;

/** Resolves when the first message came, or when it has been waited for long enough. @param {Promise<Asked>} first @returns {Promise<Asked>} */
export function followed(first) {
  return new Promise((resolve) => {
    const timer = setTimeout(() => {
      console.warn(`Foamwright: the page around sent no settings within ${PATIENCE / 1000} s; the usual ones are used.`);
      resolve({});
    }, PATIENCE);
    void first.then((asked) => {
      clearTimeout(timer);
      resolve(asked);
    });
  });
}

/** The settings of the file that the frame's address names; nothing where it names none or where it cannot be taken. @returns {Promise<Asked>} */
export async function named() {
  const file = new URLSearchParams(location.search).get('settings');
  if (file === null) return {};
  try {
    return { text: await fetched(file) };
  } catch (error) {
    console.warn(`Foamwright: settings “${file}” were not taken: ${error instanceof Error ? error.message : error}. The usual ones are used.`);
    return {};
  }
}

/** @param {string} file */
async function fetched(file) {
  const address = new URL(file, location.href);
  if (address.origin !== location.origin) throw new Error(`only a file of ${location.origin} is read`);
  const answer = await fetch(address, { credentials: 'omit', redirect: 'error' });
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  return answer.text();
}
