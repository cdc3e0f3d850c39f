/* The worker that keeps a whole version of the site on the device. It stays at this address for ever. */
'use strict';

const VERSION = '@VERSION@';
/** Every file of this version: {url, integrity}. Laid in by the build. */
const FILES = /*@FILES@*/[];
const SCOPE = new URL(self.registration.scope).pathname;
/** Projects of one owner share an origin, so a cache is named by the path that it serves. */
const PREFIX = `foamwright ${SCOPE} `;
const CACHE = PREFIX + VERSION;

self.addEventListener('install', (event) => {
  event.waitUntil(fetchAll());
});

/** All or nothing: a version with a missing or altered file is not installed. */
async function fetchAll() {
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(FILES.map(async ({ url, integrity }) => {
      const address = new URL(url, self.registration.scope).href;
      const answer = await fetch(new Request(address, { cache: 'no-cache', integrity }));
      if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
      // A browser refuses a redirected answer for a page, and some hosts redirect `index.html`.
      await cache.put(address, answer.redirected ? new Response(answer.body, { headers: answer.headers }) : answer);
    }));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

self.addEventListener('activate', (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith(PREFIX) && name !== CACHE) await caches.delete(name);
    }
    await self.clients.claim();
  })());
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== 'GET' || address.origin !== location.origin || !address.pathname.startsWith(SCOPE)) return;
  event.respondWith(answer(request, address));
});

async function answer(request, address) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreSearch: true });
  if (kept) return kept;
  // Only the page itself stands in for other addresses: a file that is opened on its own is itself or nothing.
  const page = address.pathname === SCOPE || !address.pathname.slice(SCOPE.length).includes('.');
  if (request.mode === 'navigate' && page) {
    const index = await cache.match(new URL('index.html', self.registration.scope).href);
    if (index) return index;
  }
  return fetch(request);
}

self.addEventListener('message', (event) => {
  if (event.data === 'activate') self.skipWaiting();
  if (event.data === 'version') event.ports[0]?.postMessage(VERSION);
});
