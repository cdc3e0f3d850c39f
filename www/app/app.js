// @ts-check
/** The page: starts everything, shows the screen that the fragment names, and keeps it up to date. */
import { call, load, now, watch } from './calls.js';
import { drawer, PREFIX } from './drawer.js';
import { keepBook, nameOf, openFirst, openJob, shelfChanged } from './jobbook.js';
import { el, say } from './list.js';
import { startMenu } from './menu.js';
import { hush, notify, placeNotices } from './notices.js';
import { offline, startOffline } from './offline.js';
import { getPrefs, padWanted, setPrefs, showPad, showTheme } from './prefs.js';
import { createShelf, newId } from './shelf.js';
import { createStore } from './store.js';
import { go, LINK, parse, SCREENS, to } from './view.js';
import { choose, dress, lacking, need, said, speak, t } from './words.js';

/** The words of the sheet and of the page itself. */
const WORDS = ['page', 'fields', 'findings', 'sources', 'jobs', 'takeoff', 'sheet', 'kits', 'ready', 'spraying'];
const tab = newId();
const by = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));
const wide = matchMedia('(min-width: 1000px)');

const shelf = createShelf(drawer, { tab, clock: Date.now, locks: navigator.locks });
const store = createStore({
  estimate,
  shelf,
  newId,
  copyName: (job) => t('jobs.other_tab', { name: nameOf(job) }),
});
keepBook(store, shelf);

/** How often each job trapped the core: a second time, it is not asked again. @type {WeakMap<object, number>} */
const traps = new WeakMap();

/** @param {import('./job.js').Job} job */
function estimate(job) {
  try {
    return call('estimate', job, now());
  } catch (error) {
    console.error(error);
    notify('fault', 'hold', t('page.fault'), t('page.fault_do'));
    return undefined;
  }
}

/** What is done with whole jobs is fetched when it is. */
const jobways = () => import('./jobways.js');

/** @type {import('./view.js').View | undefined} */
let view;
/** @type {import('./view.js').View | undefined} */
let live;
/** @type {import('./view.js').Route} */
let route = parse('');
/** Each move outruns the ones before it. */
let move = 0;
let moved = false;
let sheetTop = 0;

/** Shows the screen of the present fragment. */
async function show() {
  const mine = ++move;
  const next = parse(location.hash);
  const screen = await SCREENS[next.name]();
  await Promise.all([need(...(screen.words ? [...WORDS, ...screen.words] : unsaid())), screen.ready?.()]);
  if (mine !== move) return;
  if (route.name === 'sheet') sheetTop = window.scrollY;
  const held = view !== undefined && moved;
  view?.unmount?.();
  route = next;
  const root = by('view');
  root.replaceChildren();
  view = screen.mount(root, store, next);
  // Which fragment the screen belongs to that stands here: its module may have been on the way for a while.
  root.dataset.shows = location.hash;
  window.scrollTo(0, 0);
  view.update();
  drawLive();
  title();
  if (!held) return;
  // A press led here: the heading, or the section that was asked for, takes the focus.
  const target = next.name === 'sheet' && next.rest[0] ? root.querySelector(`#section-${CSS.escape(next.rest[0])} button`) : root.querySelector('h1');
  /** @type {HTMLElement | null} */ (target)?.focus({ preventScroll: true });
  if (next.name === 'sheet' && !next.rest.length) window.scrollTo(0, sheetTop);
}

/** The pages of words that the job asks for. The sample, as it is read first, is said with those of a first visit. */
function unsaid() {
  const first = store.keeping === 'sample' && (store.estimate?.findings ?? []).every(said);
  return first ? [] : lacking(WORDS);
}

function title() {
  const words = typeof view?.title === 'function' ? view.title() : view?.title;
  document.title = words ? `${words} · Foamwright` : 'Foamwright';
}

/** The job that a link carries. It leaves the address bar at once: nobody copies it from there by mistake, and a reload does not take it in again. */
function carried() {
  if (!location.hash.startsWith(LINK)) return undefined;
  const link = location.hash.slice(LINK.length);
  history.replaceState(null, '', to('sheet'));
  return link;
}

/** @param {string | undefined} link */
async function takeLink(link) {
  if (link !== undefined) await (await jobways()).takeLink(link);
}

/** At the desk the whole sheet stands at the right, live. */
async function showLive() {
  if (!wide.matches) {
    live?.unmount?.();
    live = undefined;
    by('live').replaceChildren();
    return;
  }
  if (live) return;
  // It stands beside a screen that does without it: where it cannot be had, the next change of width asks again.
  const screen = await import('./frame.js').catch(() => undefined);
  if (!screen || !wide.matches || live) return;
  live = screen.mount(by('live'), store, route);
  drawLive();
}

/** Nothing is measured or drawn where a screen stands without it. */
function drawLive() {
  if (by('live').getClientRects().length) live?.update();
}

/** Brings everything on the page up to date with the store; what stands there stands until there are words for the new. */
function update() {
  const pages = unsaid();
  if (pages.length) void need(...pages).then(() => hush('words'), () => notify('words', 'watch', t('page.unsaid'), t('page.unsaid_do'))).then(draw);
  else draw();
}

function draw() {
  view?.update();
  drawLive();
  bar();
  title();
  announce();
}

const here = matchMedia('(pointer: coarse)').matches ? 'phone' : 'browser';

function bar() {
  say(by('kept'), t(`page.keeping.${store.keeping === 'kept' ? `kept_${here}` : store.keeping}`));
  by('undo').hidden = !store.canUndo;
  if (store.keeping === 'memory') notify('storage', 'watch', t(`page.not_kept_${here}`), t('page.not_kept_do'), { once: true });
  if (store.keeping === 'full') notify('storage', 'watch', t(`page.full_${here}`), t('page.not_kept_do'), { once: true });
  if (store.keeping === 'kept') hush('storage');
  if (store.keeping === 'sample') notify('sample', 'watch', t('page.sample'), t('page.sample_do'), { once: true, presses: [[t('jobs.new'), () => void jobways().then(({ newJob }) => newJob()).then(() => go(to('sheet')))]] });
  else hush('sample');
}

/** @type {ReturnType<typeof setTimeout> | undefined} */
let later;
let lastSaid = '';

/** Says the answer to those who do not see it, once typing has come to rest. */
function announce() {
  clearTimeout(later);
  later = setTimeout(() => {
    const { estimate: all } = store;
    if (!all) return;
    const words = t('page.answer', {
      amount: t('page.amount', { n: all.quantity.to_spray_up.likely }),
      kits: all.purchase.too_big ? t('page.too_big') : t('page.kits', { n: all.purchase.buy?.kits ?? 0 }),
      passes: t('page.passes', { n: all.spraying.lifts }),
      verdict: t(`page.verdict.${all.readiness.verdict}`),
      part: all.quantity.surfaces < all.quantity.of ? t('page.part', { n: all.quantity.surfaces, of: all.quantity.of }) : '',
    });
    if (lastSaid && words !== lastSaid) say(by('announce'), words);
    lastSaid = words;
  }, 1200);
}

function foot() {
  by('foot').replaceChildren(el('p', 'note', t('page.governs')),
    el('p', 'note', `${t(`page.offline.${offline()}`)} ${t('page.private')}`));
}

/** @param {import('./words.js').Language} language */
async function changeLanguage(language) {
  try {
    await speak(language);
  } catch {
    notify('language', 'watch', t('page.language_failed'), t('page.language_failed_do'));
    return;
  }
  setPrefs({ language });
  live?.unmount?.();
  live = undefined;
  by('live').replaceChildren();
  dress(document);
  foot();
  await show();
  await showLive();
  update();
  menu.update();
}

const menu = startMenu(store, { press: by('menu-press'), panel: by('menu'), onLanguage: (language) => void changeLanguage(language) });

function listen() {
  store.subscribe(({ kind, from }) => {
    if (kind === 'copied') {
      setPrefs({ job: store.job.id });
      notify('copied', 'go', t('page.copied'), t('page.copied_do'), { once: true });
      // It is a wish: a page that is left meanwhile gets no answer.
      navigator.storage?.persist?.().catch(() => undefined);
    }
    if (kind === 'split') {
      setPrefs({ job: store.job.id });
      notify('split', 'watch', t('page.split', { name: from ? nameOf(from) : '' }), t('page.split_do', { name: nameOf(store.job) }));
    }
    if (kind === 'opened') {
      hush('split');
      void show();
    }
    update();
    if (kind !== 'estimate') shelfChanged();
  });
  document.addEventListener('focusin', ({ target }) => {
    if (!(target instanceof HTMLInputElement && target.dataset.mode) || !padWanted() && !getPrefs().pad) return;
    // Without the pad the device's own keyboard has to come.
    import('./tape.js').then((tape) => tape.focused(store, target)).catch(() => showPad(true));
  });
  window.addEventListener('hashchange', () => {
    moved = true;
    const link = carried();
    void show().then(() => takeLink(link));
  });
  wide.addEventListener('change', () => void showLive());
  // Drawings are laid out to the room they have. A phone's keyboard changes only the height: nothing is drawn anew.
  let breadth = innerWidth;
  addEventListener('resize', () => {
    if (breadth === innerWidth) return;
    breadth = innerWidth;
    update();
  });
  document.addEventListener('foamwright-language', (event) => void changeLanguage(/** @type {CustomEvent} */ (event).detail));
  by('undo').addEventListener('click', () => {
    const before = store.canUndo && store.undo();
    if (before && !store.canUndo) by('menu-press').focus();
  });
  by('skip').addEventListener('click', (event) => {
    event.preventDefault();
    /** @type {HTMLElement | null} */ (by('view').querySelector('h1'))?.focus();
  });
  document.addEventListener('keydown', (event) => {
    const typing = event.target instanceof HTMLElement && event.target.matches('input[type=text], textarea');
    if (typing || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey ? store.undo() : (key === 'y' || key === 'z') && store.redo()) event.preventDefault();
  });

  // Ages and verdicts go on by themselves: each minute, and when the page comes back to the front.
  setInterval(() => { if (!document.hidden) store.refresh(); }, 60_000);
  document.addEventListener('visibilitychange', () => {
    if (document.hidden) store.keepNow();
    else store.refresh();
  });
  window.addEventListener('pagehide', () => store.keepNow());
  window.addEventListener('storage', (event) => void otherTab(event));

  for (const name of /** @type {const} */ (['dragover', 'drop'])) {
    document.addEventListener(name, (event) => {
      if (!event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      const file = name === 'drop' && event.dataTransfer.files[0];
      if (file) void jobways().then(({ takeIn }) => takeIn(file));
    });
  }
}

/** Another tab wrote to the shelf. @param {StorageEvent} event */
async function otherTab(event) {
  if (event.key !== null && !event.key.startsWith(PREFIX)) return;
  shelfChanged();
  const { id } = store.job;
  if (event.key !== PREFIX + id) return;
  if (event.newValue === null) {
    notify('elsewhere', 'watch', t('page.deleted_elsewhere'), t('page.deleted_elsewhere_do'));
    return;
  }
  await store.settled();
  if (store.job.id === id && store.keeping === 'kept' && shelf.moved(id) && await openJob(id)) {
    notify('elsewhere', 'watch', t('page.changed_elsewhere'), t('page.changed_elsewhere_do'), { once: true });
  }
}

/** What a trap left, and what follows when a fresh core stands. */
function recover() {
  watch((message) => {
    console.error(message);
    traps.set(store.job, (traps.get(store.job) ?? 0) + 1);
    notify('trap', 'watch', t('page.trap'), t('page.trap_do'), { once: true });
  }, () => {
    if ((traps.get(store.job) ?? 0) < 2) store.refresh();
    else {
      store.stuck = true;
      notify('stuck', 'hold', t('page.stuck'), t('page.stuck_do'));
    }
  });
}

async function start() {
  showTheme();
  // Who has a job of their own needs more than the words of the sample.
  const pages = getPrefs().job ? WORDS : [];
  await Promise.all([load(), speak(getPrefs().language ?? choose(navigator.languages), pages)]);
  dress(document);
  placeNotices(by('notices'));
  recover();
  await openFirst();
  listen();
  const link = carried();
  await show();
  foot();
  update();
  void showLive();
  /** @type {any} */ (window).foamwrightStands?.();
  await takeLink(link);
  await startOffline({
    onState: foot,
    onUpdate: (use) => notify('update', 'go', t('page.update'), t('page.update_do'), { presses: [[t('page.update_use'), use]] }),
    beforeReload: () => store.keepNow(),
  });
}

start().catch((error) => {
  console.error(error);
  /** @type {any} */ (window).foamwrightRescue?.('load');
});
