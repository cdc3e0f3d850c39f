// @ts-check
/**
 * What the frame and the page around it say to each other. Every message carries `foamwright: 1`; the frame says
 * that it listens, how high it is, and, on the visitor's press, what the estimate comes to. It listens to the page
 * that framed it and to nobody else, and all that can be said to it are settings.
 *
 * @typedef {{settings: unknown, language: 'en' | 'es' | undefined}} Told
 *   `settings` unread, `undefined` where the page has none
 */

const VERSION = 1;
/** The most that the page around takes as a height; beyond it the frame keeps its scroll bar. */
const MOST_HEIGHT = 20_000;
/** Frames out of sight are drawn seldom or never: this long is waited for one to be drawn, in ms. */
const UNDRAWN = 250;
/** Two heights by turns, so often and each within so many ms of the one before, are a swing. */
const [SWINGS, SWING] = [4, 1000];

/**
 * What a message says, if it is one of ours.
 * @param {unknown} data
 * @returns {Told & {sized: boolean | undefined} | undefined}
 */
export function told(data) {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return undefined;
  const own = (/** @type {string} */ name) => (Object.hasOwn(data, name) ? /** @type {any} */ (data)[name] : undefined);
  if (own('foamwright') !== VERSION) return undefined;
  const [language, sized] = [own('language'), own('sized')];
  return {
    settings: own('settings'),
    language: language === 'en' || language === 'es' ? language : undefined,
    sized: typeof sized === 'boolean' ? sized : undefined,
  };
}

/**
 * Which heights are worth saying: whole ones, each once. A page whose own scroll bar comes and goes with the frame's
 * height would make the two swing for ever: after a few swings the larger one stays.
 * @returns {(height: number, at: number) => number | undefined} at: in ms
 */
export function heights() {
  let [last, before, since, swings] = [0, 0, 0, 0];
  return (height, at) => {
    // A hundredth is what is left of adding up fractions, and no line of its own.
    const whole = Math.ceil(height - 0.01);
    if (!(whole >= 1) || whole === last) return undefined;
    swings = whole === before && at - since < SWING ? swings + 1 : 0;
    if (swings >= SWINGS && whole < last) return undefined;
    [before, last, since] = [last, whole, at];
    return whole;
  };
}

/**
 * Calls a function when it is time to measure: at most once for each drawing.
 * @param {Element} root @param {() => void} measure
 */
function watch(root, measure) {
  let waiting = false;
  const soon = () => {
    if (waiting) return;
    waiting = true;
    const now = () => {
      if (!waiting) return;
      waiting = false;
      measure();
    };
    requestAnimationFrame(now);
    setTimeout(now, UNDRAWN);
  };
  new ResizeObserver(soon).observe(root);
  // A size is not watched out of sight, a change is.
  new MutationObserver(soon).observe(root, { subtree: true, childList: true, characterData: true, attributes: true });
}

/**
 * Starts to listen, and says so.
 * @param {object} about
 * @param {(told: Told) => void} about.onSettings
 * @param {HTMLElement} [about.root] whose height counts: it must follow from what is in it, never from the frame
 */
export function startPost({ onSettings, root = document.documentElement }) {
  const { parent } = window;
  const framed = parent !== window;
  const worth = heights();
  let sized = false;
  /** Whom an estimate is for: the page that sent the settings, which name it; anybody around where a file has named it. */
  let to = '*';
  /** @param {object} message @param {string} [target] */
  const post = (message, target = '*') => {
    if (framed) parent.postMessage({ foamwright: VERSION, ...message }, target);
  };
  const measure = () => {
    const { height } = root.getBoundingClientRect();
    // Class of the page's outermost element: a frame that is fitted needs no scroll bar of its own.
    document.documentElement.classList.toggle('sized', sized && height <= MOST_HEIGHT);
    const whole = worth(Math.min(height, MOST_HEIGHT), performance.now());
    if (whole) post({ event: 'height', height: whole });
  };
  addEventListener('message', ({ data, origin, source }) => {
    const heard = framed && source === parent ? told(data) : undefined;
    if (!heard) return;
    sized = heard.sized ?? sized;
    measure();
    // A page without an origin of its own cannot be named.
    if (heard.settings !== undefined) to = origin === 'null' ? '*' : origin;
    onSettings({ settings: heard.settings, language: heard.language });
  });
  post({ event: 'ready' });
  if (framed) watch(root, measure);
  return {
    /** Whether the page around fits the frame's height. */
    sized: () => sized,
    /** Says what the estimate comes to. @param {object} totals */
    estimate: (totals) => post({ event: 'estimate', estimate: totals }, to),
  };
}
