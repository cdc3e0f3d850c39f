// @ts-check
/** Photos of a surface or of the job: the strip, the picture opened large, and the ways in and out. */
import { el, list, say } from './list.js';
import { notify } from './notices.js';
import { press } from './parts.js';
import { hold, keep, onPhotos, photosOf, picture, remove } from './photobox.js';
import { newId } from './shelf.js';
import { smaller } from './smaller.js';
import { style } from './styles.js';
import { locale, need, t } from './words.js';

/** @typedef {import('./photobox.js').Photo} Photo */
/** @typedef {import('./photobox.js').Kept} Kept */

/** More than any camera's file, told before it is decoded. */
const MOST_BYTES = 100_000_000;

/** Words and looks, before anything is shown. */
export const ready = () => Promise.all([need('photos'), style('photos')]);

/** @param {number} ms */
const when = (ms) => new Date(ms).toLocaleString(locale(), { dateStyle: 'medium', timeStyle: 'short' }).replace(/\s(?=[ap]\.?\s?m)/gi, '\u00a0');

/** Bytes as megabytes with one decimal; what is there is never written as nothing. @param {number} bytes */
export const megabytes = (bytes) => (bytes ? Math.max(0.1, Math.round(bytes / 100_000) / 10) : 0);

/** Said once a visit: storage refuses, and the rest goes on. @param {Kept} kept */
export function tellKept(kept) {
  if (kept !== 'kept') notify('photos', 'watch', t(`photos.${kept}`), t(`photos.${kept}_do`), { once: true });
}

/**
 * The photos of one place.
 * @param {{store: import('./store.js').Store, place: number, name: () => string, closed?: boolean}} about
 *   `closed`: nothing is added here any more
 * @returns {{node: HTMLElement, update: () => void, unmount: () => void}}
 */
export function photoPart({ store, place, name, closed = false }) {
  const strip = el('ul', { class: 'photos', 'aria-label': t('photos.of', { name: name() }) });
  const count = el('p', 'note');
  const said = el('p', { class: 'note', role: 'status' });
  const ways = el('div', 'dos');
  if (!closed) {
    const phone = matchMedia('(pointer: coarse)').matches;
    if (phone) ways.append(way('take', { capture: 'environment' }));
    ways.append(way(phone ? 'choose' : 'add', { multiple: true }));
    if (phone) ways.classList.add('two');
  }
  const node = el('div', 'photo-part no-print', strip, count, said, ways);
  /** @type {Photo[]} */
  let photos = [];
  let job = '';
  /** @type {(() => void) | undefined} */
  let close;
  let over = false;

  /** A press that opens the camera or the pictures. @param {'take' | 'choose' | 'add'} key @param {Record<string, string | boolean>} how */
  function way(key, how) {
    const id = `photo-${key}-${place}`;
    const input = el('input', {
      type: 'file', id, accept: 'image/*', class: 'vh', 'aria-label': t('photos.way_of', { way: t(`photos.${key}`), name: name() }), ...how,
      change: () => {
        const files = [...(input.files ?? [])];
        input.value = '';
        void add(files);
      },
    });
    return el('span', 'file-press', input, el('label', { class: 'do line', for: id }, t(`photos.${key}`)));
  }

  /** @param {File[]} files */
  async function add(files) {
    if (!files.length) return;
    // The sample becomes the person's own job, and a job without an entry is kept: a photo hangs on it.
    store.adopt();
    const { id } = store.job;
    await store.settled();
    say(said, t('photos.working'));
    let wrong = '';
    for (const file of files) {
      let made;
      try {
        if (file.size > MOST_BYTES) throw new Error('too large');
        made = await smaller(file);
      } catch {
        wrong = `${t('photos.unreadable', { file: file.name })} ${t('photos.unreadable_do')}`;
        continue;
      }
      const photo = { id: newId(), job: id, place, added: Date.now(), bytes: made.picture.byteLength + made.thumb.byteLength, thumb: made.thumb };
      const whole = { photo, picture: made.picture };
      const kept = store.keeping === 'memory' ? hold(whole) : await keep(whole);
      tellKept(kept);
      if (kept !== 'kept') wrong = t(`photos.${kept}`);
    }
    navigator.storage?.persist?.().catch(() => undefined);
    await refresh();
    say(said, wrong);
  }

  async function refresh() {
    job = store.job.id;
    const found = (await photosOf(job)).filter((one) => one.place === place);
    if (over || job !== store.job.id) return;
    photos = found;
    strip.hidden = !photos.length;
    list(strip, photos, (one) => one.id, thumb);
    say(count, photos.length ? t('photos.here', { n: photos.length, size: megabytes(total(photos)) }) : t('photos.none'));
  }

  /** @param {Photo} photo @returns {import('./list.js').Row<Photo>} */
  function thumb(photo) {
    const url = URL.createObjectURL(new Blob([photo.thumb], { type: 'image/jpeg' }));
    const button = el('button', { type: 'button', click: () => void show(photo.id) }, el('img', { src: url }));
    button.firstElementChild?.setAttribute('alt', '');
    return {
      node: el('li', '', button),
      update: (one, at) => button.setAttribute('aria-label', t('photos.open', { n: at + 1, of: photos.length, name: name(), when: when(one.added) })),
      unmount: () => URL.revokeObjectURL(url),
    };
  }

  /** Opens a picture large. @param {string} id */
  async function show(id) {
    close?.();
    const image = el('img', 'shown');
    const caption = el('p', { class: 'note', role: 'status' });
    const before = press(t('photos.before'), 'before', () => step(-1), 'line');
    const after = press(t('photos.after'), 'after', () => step(1), 'line');
    const dialog = el('dialog', { class: 'large', 'aria-label': t('photos.of', { name: name() }) }, image, el('div', 'pad', caption,
      el('div', 'dos two', before, after, press(t('photos.remove'), 'remove', () => void take(id), 'line'), press(t('photos.close'), 'close', () => dialog.close(), ''))));
    let url = '';
    const step = (/** @type {number} */ by) => {
      const next = photos[photos.findIndex((one) => one.id === id) + by];
      if (next) void fill(next.id);
    };
    async function fill(/** @type {string} */ to) {
      id = to;
      const at = photos.findIndex((one) => one.id === id);
      const bytes = await picture(id);
      if (id !== to) return;
      URL.revokeObjectURL(url);
      url = bytes ? URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' })) : '';
      image.hidden = !bytes;
      image.src = url;
      image.alt = t('photos.one', { n: at + 1, of: photos.length, name: name(), when: when(photos[at]?.added ?? 0) });
      say(caption, bytes ? image.alt : t('photos.missing'));
      before.disabled = at <= 0;
      after.disabled = at >= photos.length - 1;
    }
    dialog.addEventListener('keydown', (event) => {
      if (event.key === 'ArrowLeft') step(-1);
      if (event.key === 'ArrowRight') step(1);
    });
    dialog.addEventListener('close', () => {
      URL.revokeObjectURL(url);
      dialog.remove();
      close = undefined;
    });
    close = () => dialog.close();
    await fill(id);
    if (over) return;
    document.body.append(dialog);
    dialog.showModal();
    /** @type {HTMLElement | null} */ (dialog.querySelector('[data-key=close]'))?.focus();
  }

  /** Removes a photo; it can be put back until the notice is put away. @param {string} id */
  async function take(id) {
    close?.();
    const putBack = await remove([id]);
    notify('photo-removed', 'watch', t('photos.removed', { name: name() }), '', { focus: true, presses: [[t('photos.put_back'), () => void putBack().then(tellKept)]] });
  }

  const stop = onPhotos(() => void refresh());
  const seen = () => { if (!document.hidden) void refresh(); };
  document.addEventListener('visibilitychange', seen);
  void refresh();

  return {
    node,
    update() { if (job !== store.job.id) void refresh(); },
    unmount() {
      over = true;
      close?.();
      stop();
      document.removeEventListener('visibilitychange', seen);
      list(strip, [], () => '', thumb);
    },
  };
}

/** @param {readonly Photo[]} photos */
export const total = (photos) => photos.reduce((sum, one) => sum + one.bytes, 0);
