// @ts-check
/**
 * The frame on a company's page: takes the host's settings, makes a job of them and shows the estimate in brief.
 * Nothing is kept on the device, and nothing leaves the frame but what `post.js` says.
 *
 * @typedef {import('./asked.js').Asked} Asked
 */
import { call, fieldRow, load, watch } from '../calls.js';
import { el } from '../list.js';
import { newId } from '../newid.js';
import { holdOnly } from '../prefs.js';
import { createStore } from '../store.js';
import { beginWith, choose, need, speak, t } from '../words.js';
import { announcer } from './announce.js';
import { startAsked } from './asked.js';
import { paint } from './colors.js';
import { estimated } from './estimated.js';
import { jobFrom, USUAL } from './first.js';
import { startPost } from './post.js';
import { printPart } from './print.js';
import { readable } from './reads.js';
import { samples } from './samples.js';
import { read, readText } from './settings.js';
import { takePart } from './take.js';
import { mount } from './view.js';
import { startWork } from './work.js';

/** What the screens of the full tool say of a job's surfaces, where the first words do not. */
const PAGES = ['fields', 'surface', 'takeoff'];
/** When the page's owner is told, in ms. */
const LATER = 1500;

holdOnly();
beginWith('embed-first');

const place = /** @type {HTMLElement} */ (document.getElementById('view'));
const announce = announcer(/** @type {HTMLElement} */ (document.getElementById('announce')));
/** A keeper that keeps nothing. */
const shelf = { keep: async () => /** @type {const} */ ('memory'), keepNow: () => /** @type {const} */ ('memory') };
const store = createStore({ estimate: estimated, shelf, newId });

/** @type {(() => void)[]} */
let shown = [];
/** Each change of settings outruns the ones before it. */
let turn = 0;
/** Whether the visitor has entered something, which later settings leave as it is. */
let entered = false;
const standing = load();
/** What was asked for before, done or failed. */
let before = Promise.resolve();
const post = startPost({ onSettings: startAsked((asked) => {
  const mine = ++turn;
  before = before.then(() => take(asked, mine)).catch(failed);
}) });

/** Takes settings and shows the estimate with them, unless others came after them. @param {Asked} asked @param {number} mine */
async function take({ settings: value, text, language: theirs }, mine) {
  const wish = theirs ?? choose(navigator.languages);
  const { settings, faults } = text === undefined ? read(value, wish) : readText(text, wish);
  const [sheets, send] = await Promise.all([samples(settings), settings.send && window.parent !== window ? import('./send.js').catch(() => undefined) : undefined, standing, speak(settings.language ?? wish)]);
  const shapes = [...settings.surfaces, ...settings.start.map((one) => one.shape)];
  if (!shapes.every((shape) => USUAL.some((usual) => usual === shape))) await need(...PAGES);
  if (mine !== turn) return;
  const fit = readable(settings, fieldRow('surface', 'depth'), call);
  paint(document, settings.colors);
  entered ||= store.canUndo;
  const putBack = inHand();
  const anew = (/** @type {import('../job.js').Job | undefined} */ kept) => jobFrom({ ...fit, ...sheets }, newId, kept);
  await store.open(anew(entered ? store.job : undefined), 'memory', anew);
  show(fit, send);
  putBack();
  /** @type {any} */ (window).foamwrightStands?.();
  if (value === undefined && text === undefined) return;
  // Nobody waits for what only the page's owner reads.
  setTimeout(() => void import('./owner.js').then(({ tellOwner }) => tellOwner(settings, faults)).catch(() => undefined), LATER);
}

/** What the visitor has in hand, to be put back where all is laid out anew: the field with its caret, and which folds are open. */
function inHand() {
  const { id, selectionStart = null, selectionEnd = null } = /** @type {HTMLInputElement} */ (document.hasFocus() ? document.activeElement : document.body) ?? {};
  const folds = () => [...place.querySelectorAll('details')];
  const open = folds().map((one) => one.open);
  return () => {
    const now = folds();
    if (now.length === open.length) now.forEach((one, at) => { one.open = open[at]; });
    const field = /** @type {HTMLInputElement | null} */ (id ? document.getElementById(id) : null);
    field?.focus({ preventScroll: true });
    if (selectionStart !== null) field?.setSelectionRange(selectionStart, selectionEnd);
  };
}

/** @param {import('./settings.js').Settings} settings @param {typeof import('./send.js') | undefined} send  where the page around wants the totals */
function show(settings, send) {
  const sheet = el('div');
  const root = el('div', '', sheet);
  place.replaceChildren(root);
  // What was laid out for printing with the settings before.
  document.querySelector('.printed')?.remove();
  const ways = {
    send: send?.sendPart(store, settings, post.estimate),
    take: settings.sections.has('take') ? takePart(store, settings) : undefined,
    print: settings.sections.has('print') ? printPart(store, settings) : undefined,
  };
  const view = mount(sheet, store, settings, ways);
  const work = startWork(root, sheet, store, settings);
  shown = [view.update, work.update, () => announce(store)];
  document.title = settings.title || t('embed.title');
  update();
}

function update() {
  for (const one of shown) one();
}

/** A trap drops the core; a fresh one works the job out again, once. */
function recover() {
  let traps = 0;
  watch((message) => {
    console.error(message);
    traps += 1;
  }, () => {
    if (traps < 2) store.refresh();
    else store.stuck = true;
  });
}

/** Drawings are laid out to the room they have. */
function followWidth() {
  let breadth = innerWidth;
  addEventListener('resize', () => {
    if (breadth === innerWidth) return;
    breadth = innerWidth;
    update();
  });
}

/** What stands already goes on standing: only a frame that has shown nothing yet is given up. @param {unknown} error */
function failed(error) {
  const { foamwrightReady, foamwrightRescue } = /** @type {any} */ (window);
  if (foamwrightReady) {
    console.warn('Foamwright: these settings could not be taken; what stood before stays.', error);
    return;
  }
  console.error(error);
  foamwrightRescue?.('load');
}

recover();
followWidth();
store.subscribe(update);
