// @ts-check
/**
 * The frame on a company's page: takes the host's settings, makes a job of them and shows the estimate in brief.
 * Nothing is kept on the device, and nothing leaves the frame but what `post.js` says.
 *
 * @typedef {import('./asked.js').Asked} Asked
 */
import { load, watch } from '../calls.js';
import { el } from '../list.js';
import { newId } from '../newid.js';
import { holdOnly } from '../prefs.js';
import { createStore } from '../store.js';
import { beginWith, choose, need, speak, t } from '../words.js';
import { announcer } from './announce.js';
import { followed, follows, named } from './asked.js';
import { paint } from './colors.js';
import { estimated } from './estimated.js';
import { jobFrom, USUAL } from './first.js';
import { startPost } from './post.js';
import { printPart } from './print.js';
import { sendPart } from './send.js';
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
/** Settings that come later take the place of those that came before. @param {Asked} asked */
const later = (asked) => void take(asked).catch(failed);
/** What is done with the next settings. */
let heard = later;
/** Those of the first message, where the page around sends them. @type {Promise<Asked> | undefined} */
const first = follows() ? new Promise((resolve) => {
  heard = (asked) => {
    heard = later;
    resolve(asked);
  };
}) : undefined;
const post = startPost({ onSettings: (asked) => heard(asked) });

/** Takes settings and shows the estimate with them. @param {Asked} asked */
async function take({ settings: value, text, language: theirs }) {
  const mine = ++turn;
  const wish = theirs ?? choose(navigator.languages);
  const { settings, faults } = text === undefined ? read(value, wish) : readText(text, wish);
  const [sheets] = await Promise.all([samples(settings), standing, speak(settings.language ?? wish)]);
  const shapes = [...settings.surfaces, ...settings.start.map((one) => one.shape)];
  if (!shapes.every((shape) => USUAL.some((usual) => usual === shape))) await need(...PAGES);
  if (mine !== turn) return;
  paint(document, settings.colors);
  entered ||= store.canUndo;
  await store.open(jobFrom({ ...settings, ...sheets }, newId, entered ? store.job : undefined), 'memory');
  show(settings);
  /** @type {any} */ (window).foamwrightStands?.();
  if (value === undefined && text === undefined) return;
  // Nobody waits for what only the page's owner reads.
  setTimeout(() => void import('./owner.js').then(({ tellOwner }) => tellOwner(settings, faults)).catch(() => undefined), LATER);
}

/** @param {import('./settings.js').Settings} settings */
function show(settings) {
  const sheet = el('div');
  const root = el('div', '', sheet);
  place.replaceChildren(root);
  // What was laid out for printing with the settings before.
  document.querySelector('.printed')?.remove();
  const ways = {
    send: settings.send && window.parent !== window ? sendPart(store, settings, post.estimate) : undefined,
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

const standing = load();

async function start() {
  recover();
  followWidth();
  store.subscribe(update);
  await take(await (first ? followed(first) : named()));
}

/** @param {unknown} error */
function failed(error) {
  console.error(error);
  /** @type {any} */ (window).foamwrightRescue?.('load');
}

start().catch(failed);
