// @ts-check
/** Where the sun is reckoned for: the middle of the job's ZIP area, or this device's own place, each only by a press. Nothing is sent. */
import { call } from './calls.js';
import { field } from './field.js';
import { el } from './list.js';
import { press, redraw } from './parts.js';
import { answerTo } from './workline.js';
import { packed } from './zones.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

/** So many degrees: about 7 miles. */
const ROUND = 0.1;

/** @param {number} degrees */
const rounded = (degrees) => (Math.round(degrees / ROUND) * ROUND).toFixed(1);

/** The five digits of a ZIP code. @param {string} text */
const zipOf = (text) => /^\s*(\d{5})(\s*[-–]\s*\d{4})?\s*$/.exec(text)?.[1] ?? '';

/** @param {Store} store */
export function hourPlace(store) {
  const ask = (/** @type {string} */ name) => field({ store, part: 'job', id: 0, field: name, quiet: true });
  const fields = ['zip', 'latitude', 'longitude'].map(ask);
  const presses = el('div', 'dos');
  const said = el('p', { class: 'note', role: 'status' });

  /** @param {number} latitude @param {number} longitude @param {string} key */
  function take(latitude, longitude, key) {
    const [north, east] = [rounded(latitude), rounded(longitude)];
    store.dispatch({ do: 'entries', part: 'job', id: 0, entries: [{ field: 'latitude', text: north }, { field: 'longitude', text: east }] });
    said.textContent = t(key, { north, east });
  }

  async function byZip() {
    const zip = zipOf(answerTo(store.job, 'job', 0, 'zip'));
    said.textContent = t('hours.looking');
    try {
      const [latitude, longitude] = call('find_position', await packed('places'), zip) ?? [];
      if (latitude !== undefined && longitude !== undefined) take(latitude, longitude, 'hours.zip_done');
      else said.textContent = t('hours.zip_unknown', { zip });
    } catch {
      said.textContent = t('hours.zip_failed');
    }
  }

  function byDevice() {
    if (!navigator.geolocation) {
      said.textContent = t('hours.device_none');
      return;
    }
    said.textContent = t('hours.device_asked');
    navigator.geolocation.getCurrentPosition(({ coords }) => take(coords.latitude, coords.longitude, 'hours.device_done'),
      (why) => { said.textContent = t(why.code === 1 ? 'hours.device_denied' : 'hours.device_none'); },
      { enableHighAccuracy: false, timeout: 20_000, maximumAge: 3_600_000 });
  }

  return {
    node: el('div', '', el('p', 'note', t('hours.place_how')), el('div', 'fields first', ...fields.map((one) => one.node)), presses, said),
    update() {
      for (const one of fields) one.update();
      const zip = zipOf(answerTo(store.job, 'job', 0, 'zip'));
      redraw(presses, [zip ? press(t('hours.use_zip', { area: zip.slice(0, 3) }), 'use-zip', () => void byZip()) : undefined,
        press(t('hours.use_device'), 'use-device', byDevice)]);
    },
  };
}
