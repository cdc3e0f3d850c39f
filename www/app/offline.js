// @ts-check
/**
 * Works without a network, and gets new versions only by consent. The page is never reloaded on a first visit
 * and never by a timer; a worker that already waits is noticed at the start.
 *
 * @typedef {'none' | 'getting' | 'ready' | 'failed'} Offline
 */

/** @type {Offline} */
let state = 'none';
/** @type {ServiceWorkerRegistration | undefined} */
let registration;
/** @type {() => void} */
let changed = () => {};
let asked = 0;

/** How far the offline copy is. */
export function offline() {
  return state;
}

/** @param {Offline} next */
function become(next) {
  state = next;
  changed();
}

/**
 * Registers the worker.
 * @param {{onState: () => void, onUpdate: (use: () => void) => void, beforeReload: () => void}} about
 */
export async function startOffline({ onState, onUpdate, beforeReload }) {
  changed = onState;
  if (!('serviceWorker' in navigator)) return;
  const workers = navigator.serviceWorker;
  // Without a controller this is a first visit (or a reload past the worker): no reload then.
  const had = Boolean(workers.controller);
  let reloading = false;
  workers.addEventListener('controllerchange', () => {
    if (!had || reloading) return;
    reloading = true;
    beforeReload();
    location.reload();
  });
  try {
    become(had ? 'ready' : 'getting');
    registration = await workers.register(new URL('../sw.js', import.meta.url), { updateViaCache: 'none' });
  } catch {
    become('failed');
    return;
  }
  const offer = (/** @type {ServiceWorker} */ worker) => onUpdate(() => worker.postMessage('activate'));
  const follow = (/** @type {ServiceWorker} */ worker) => worker.addEventListener('statechange', () => {
    if (worker.state === 'installed' && workers.controller) offer(worker);
    if (worker.state === 'activated') become('ready');
    if (worker.state === 'redundant' && !registration?.active) become('failed');
  });
  if (registration.waiting && workers.controller) offer(registration.waiting);
  if (registration.active) become('ready');
  if (registration.installing) follow(registration.installing);
  registration.addEventListener('updatefound', () => {
    if (registration?.installing) follow(registration.installing);
  });
  for (const [target, event] of /** @type {const} */ ([[document, 'visibilitychange'], [window, 'focus'], [window, 'pageshow']])) {
    target.addEventListener(event, () => void check(false));
  }
}

/**
 * Asks the host whether there is a newer version; at most twice a minute unless a person asks.
 * @param {boolean} byHand
 * @returns {Promise<'newest' | 'newer' | 'unreachable'>}
 */
export async function check(byHand) {
  const now = Date.now();
  if (!registration || (!byHand && (document.hidden || now - asked < 30_000))) return 'newest';
  asked = now;
  try {
    await registration.update();
  } catch {
    return 'unreachable';
  }
  return registration.installing || registration.waiting ? 'newer' : 'newest';
}

/** Takes the offline copy off the device: the worker and our own caches, nothing of the jobs. */
export async function removeCopy() {
  const scope = registration?.scope ?? new URL('../', import.meta.url).href;
  await registration?.unregister();
  registration = undefined;
  const prefix = `foamwright ${new URL(scope).pathname} `;
  for (const name of await caches.keys()) {
    if (name.startsWith(prefix)) await caches.delete(name);
  }
  become('none');
}
