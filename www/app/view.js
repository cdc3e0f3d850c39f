// @ts-check
/**
 * What a screen is, and the way from one to the next.
 *
 * A screen is a module of its own that exports
 *
 *   words   the pages of words that it needs, beside those of the sheet; left out by the sheet alone, for which
 *           the words of a first visit are enough while the sample stands there
 *   ready() what else has to be there before it is mounted, if anything
 *   mount(root, store, route) → {title, update(), unmount()?}
 *
 * `mount` builds its elements once; `update` patches them from `store.job` and `store.estimate` after every
 * change, and is called once right after `mount`. `title` is the screen's heading as text, for the page title.
 * A screen's first heading is its `h1`, and carries `tabindex="-1"`: it takes the focus after a press that led
 * here.
 *
 * @typedef {import('./store.js').Store} Store
 * @typedef {{name: string, id: number, rest: string[]}} Route
 * @typedef {{title: string | (() => string), update: () => void, unmount?: () => void}} View
 * @typedef {{words?: readonly string[], ready?: () => Promise<void>, mount: (root: HTMLElement, store: Store, route: Route) => View}} Screen
 */

/** Every screen by the first part of its fragment. @type {Record<string, () => Promise<Screen>>} */
export const SCREENS = {
  sheet: () => import('./sheet.js'),
  before: () => import('./before.js'),
  seal: () => import('./seal.js'),
  surface: () => import('./surface.js'),
  drawings: () => import('./drawings.js'),
  place: () => looking('place', import('./place.js')),
  depth: () => import('./depth.js'),
  kits: () => import('./kits.js'),
  ready: () => import('./ready.js'),
  hours: () => looking('sky', import('./hours.js')),
  moist: () => looking('sky', import('./moist.js')),
  ahead: () => import('./ahead.js'),
  calendar: () => import('./calendar.js'),
  warm: () => looking('warm', import('./warm.js')),
  spray: () => import('./spray.js'),
  day: () => import('./day.js'),
  people: () => looking('people', import('./people.js')),
  working: () => import('./working.js'),
  paper: () => looking('papers', import('./paper.js')),
  photos: () => looking('photos', import('./photobook.js')),
  jobs: () => import('./jobs.js'),
  foam: () => import('./foam.js'),
  kit: () => import('./kit.js'),
  owned: () => import('./owned.js'),
  stock: () => import('./stock.js'),
  catalogue: () => import('./sheetbook.js'),
  exercise: () => looking('practice', import('./exercise.js')),
  practice: () => looking('practice', import('./practice.js')),
  class: () => looking('practice', import('./classsheet.js')),
  marks: () => looking('practice', import('./classmarks.js')),
  settings: () => import('./settings.js'),
  move: () => import('./move.js'),
  backup: () => import('./restore.js'),
};

/** A screen with a style sheet of its own: it is laid out when that stands. @param {string} style @param {Promise<Screen>} screen */
async function looking(style, screen) {
  const [made, styles] = await Promise.all([screen, import('./styles.js')]);
  await styles.style(style);
  return made;
}

/** What the fragment of a link begins with that carries a whole job. */
export const LINK = '#/open/';

/**
 * The screen that a fragment names: `#/surface/3`. Anything else is the job sheet.
 * @param {string} fragment
 * @returns {Route}
 */
export function parse(fragment) {
  const [lead, name = '', ...rest] = fragment.replace(/^#/, '').split('/').map(plain);
  if (lead !== '' || !Object.hasOwn(SCREENS, name)) return { name: 'sheet', id: 0, rest: [] };
  const id = Number(rest[0]);
  return { name, id: Number.isSafeInteger(id) && id > 0 ? id : 0, rest };
}

/** @param {string} text */
function plain(text) {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}

/** The fragment of a screen. @param {string} name @param {...(string | number)} rest */
export function to(name, ...rest) {
  return `#/${[name, ...rest].filter((one) => one !== '').join('/')}`;
}

/** Goes to a screen; without a trace in the history where the present one no longer exists. @param {string} fragment @param {boolean} [instead] */
export function go(fragment, instead = false) {
  if (instead) location.replace(fragment);
  else location.hash = fragment;
}
