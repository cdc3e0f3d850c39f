// @ts-check
/** All photos of the job, place by place, and what photos take up on this device. */
import { nameOf } from './drawn.js';
import { allJobs } from './jobbook.js';
import { el, list, say } from './list.js';
import { notify } from './notices.js';
import { byId, head, press, to } from './parts.js';
import { allPhotos, onPhotos, remove } from './photobox.js';
import { megabytes, photoPart, tellKept, total } from './photos.js';
import { jobName } from './sheet.js';
import { t } from './words.js';

export const words = ['takeoff', 'sheet', 'photos'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const places = el('div');
  const here = el('p', 'note');
  const orphans = el('div', { hidden: true });
  root.append(el('main', '', top, el('div', 'pad tail',
    el('p', 'note', t('photos.note')), el('p', 'note', t('photos.plain')), places,
    el('h2', 'bar', t('photos.room')), here, orphans)));
  /** Surfaces that are gone but whose photos are not. @type {number[]} */
  let gone = [];
  let over = false;

  /** @param {number} id */
  const nameAt = (id) => {
    const surface = byId(store.job.surfaces, id);
    return id === 0 ? t('photos.job') : surface ? nameOf(surface) : t('photos.gone');
  };

  /** @param {{id: number, closed: boolean}} one @returns {import('./list.js').Row<{id: number, closed: boolean}>} */
  function place({ id, closed }) {
    const title = el('h2', 'bar');
    const part = photoPart({ store, place: id, name: () => nameAt(id), closed });
    return {
      node: el('section', '', title, part.node),
      update() {
        say(title, nameAt(id));
        part.update();
      },
      unmount: part.unmount,
    };
  }

  function drawPlaces() {
    const all = [0, ...store.job.surfaces.map((one) => one.id)].map((id) => ({ id, closed: false }));
    list(places, [...all, ...gone.map((id) => ({ id, closed: true }))], (one) => `${one.id} ${one.closed}`, place);
  }

  async function count() {
    const photos = await allPhotos();
    const room = await navigator.storage?.estimate?.().catch(() => undefined);
    if (over) return;
    const known = new Set([store.job.id, ...allJobs().map((one) => one.id)]);
    const own = photos.filter((one) => one.job === store.job.id);
    gone = [...new Set(own.map((one) => one.place))].filter((id) => id !== 0 && !byId(store.job.surfaces, id));
    const free = room?.quota === undefined || room.usage === undefined ? '' : t('photos.free', { size: Math.floor((room.quota - room.usage) / 1_000_000) });
    say(here, [t('photos.this_job', { n: own.length, size: megabytes(total(own)) }), t('photos.device', { n: photos.length, size: megabytes(total(photos)) }), free].filter(Boolean).join(' '));
    const lost = photos.filter((one) => !known.has(one.job));
    orphans.hidden = !lost.length;
    orphans.replaceChildren(el('p', 'note', t('photos.orphans', { n: lost.length, size: megabytes(total(lost)) })),
      el('div', 'dos', press(t('photos.orphans_remove'), 'orphans', () => void clear(lost.map((one) => one.id)))));
    drawPlaces();
  }

  /** @param {string[]} ids */
  async function clear(ids) {
    const putBack = await remove(ids);
    notify('photo-removed', 'watch', t('photos.orphans_removed', { n: ids.length }), '', { focus: true, presses: [[t('photos.put_back'), () => void putBack().then(tellKept)]] });
  }

  const stop = onPhotos(() => void count());
  let drawn = '';

  return {
    title: t('photos.title'),
    update() {
      top.replaceChildren(head({ back: [to('sheet'), t('sheet.sheet')], title: t('photos.title'), sub: jobName(store) }));
      drawPlaces();
      const now = `${store.job.id} ${store.job.surfaces.map((one) => one.id).join()}`;
      if (now !== drawn) void count();
      drawn = now;
    },
    unmount() {
      over = true;
      stop();
      list(places, [], () => '', place);
    },
  };
}
