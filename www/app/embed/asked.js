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
const follows = () => location.hash === FOLLOW && window.parent !== window;

/**
 * What is asked for, whatever comes first. A message with settings takes the place of all that came before, and of a
 * file that is still on its way; one without them only says the language.
 * @param {(asked: Asked) => void} act  called with what is asked for, where that is something new
 * @param {boolean} follow  whether the first message is waited for, and not a file
 */
export function wishes(act, follow) {
  /** @type {Asked} */
  let now = {};
  let waits = true;
  let last = '';

  /** @param {Asked} next */
  function put(next) {
    waits = false;
    now = next;
    const text = written(next);
    if (text && text === last) return;
    last = text;
    act(next);
  }

  return {
    /** Whether nothing has come yet. */
    waits: () => waits,
    /** A message of the page around came. @param {Asked} told */
    heard({ settings, language }) {
      if (settings !== undefined) put({ settings, language });
      else {
        const next = { ...now, language: language ?? now.language };
        if (waits && !follow) now = next;
        else put(next);
      }
    },
    /** The file came, or the wait is over. @param {Asked} found */
    found(found) {
      if (waits) put({ ...found, language: now.language });
    },
  };
}

/** What is asked for as a text, to know it again; empty where it has none. @param {Asked} asked */
function written(asked) {
  try {
    return JSON.stringify(asked);
  } catch {
    return '';
  }
}

/** Begins to wait for the settings, and gives what takes the messages of the page around. @param {(asked: Asked) => void} act */
export function startAsked(act) {
  const follow = follows();
  const { waits, heard, found } = wishes(act, follow);
  if (!follow) void named().then(found);
  else {
    setTimeout(() => {
      if (waits()) console.warn(`Foamwright: the page around sent no settings within ${PATIENCE / 1000} s; the usual ones are used until it does.`);
      found({});
    }, PATIENCE);
  }
  return heard;
}

/** The settings of the file that the frame's address names; nothing where it names none or where it cannot be taken. @returns {Promise<Asked>} */
async function named() {
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
