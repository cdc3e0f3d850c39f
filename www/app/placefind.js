// @ts-check
/** ZIP code or county to climate zone: what was found is offered, never set. */
import { el } from './list.js';
import { more, note, press, redraw } from './parts.js';
import { answerTo } from './workline.js';
import { offers, zoneOffer } from './zoneoffer.js';
import { findCounty, findPlace } from './zones.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').Found} Found */

/** So many counties are shown at once. */
const MOST = 12;
/** So many letters of a name are looked for. */
const LETTERS = 3;

/**
 * Looks a text up whenever it changes; what comes late for a text that stands no more is dropped.
 * @param {(text: string) => Promise<Found>} find @param {() => void} show
 */
export function lookOut(find, show) {
  let text = '';
  /** @type {{state: 'none' | 'busy' | 'failed'} | {state: 'found', found: Found}} */
  let now = { state: 'none' };
  /** @param {string} wanted */
  async function begin(wanted) {
    now = { state: 'busy' };
    try {
      const found = await find(wanted);
      if (text === wanted) now = { state: 'found', found };
    } catch {
      if (text === wanted) now = { state: 'failed' };
    }
    if (text === wanted) show();
  }
  return {
    get now() { return now; },
    /** @param {string} wanted empty: nothing is looked for */
    want(wanted) {
      if (wanted === text) return;
      text = wanted;
      now = { state: 'none' };
      if (wanted) void begin(wanted);
    },
    again() {
      if (text) void begin(text).then(show);
      show();
    },
  };
}

/** The five digits of a ZIP code, with or without the four of its street; empty while it is none. @param {string} text */
export const zipOf = (text) => text.trim().match(/^(\d{5})(\s*[-–]\s*\d{4})?$/)?.[1] ?? '';

/** One zone needs no county; several ask for it by name. @param {string} zip @returns {Promise<Found>} */
export async function findZip(zip, find = findPlace) {
  const first = await find(zip, false);
  return first.zones.length > 1 ? find(zip, true) : first;
}

/** @param {Store} store @param {() => void} show  the name of the chosen county is there */
export function lookUp(store, show) {
  const found = el('div', { class: 'says', role: 'status' });
  const counties = el('div', { role: 'status' });
  const search = el('input', { id: 'place-county', type: 'search', autocomplete: 'off', spellcheck: 'false', 'aria-describedby': 'place-county-read', input: () => {
    const text = search.value.trim();
    byName.want(text.length >= LETTERS ? text : '');
    showCounties();
  } });
  const byName = lookOut((text) => findPlace(text, true), () => showCounties());
  const byZip = lookOut(findZip, () => {
    showZip();
    show();
  });
  const byCode = lookOut(findCounty, show);
  const node = more(t('place.by_county'), el('div', 'field full', el('label', { for: search.id }, t('place.county')), el('span', 'box', search), el('p', { class: 'read', id: 'place-county-read' }, t('place.county_hint'))), el('div', 'field full', counties));

  const failed = (/** @type {() => void} */ again) => [note('watch', t('place.failed'), t('place.failed_do')), press(t('place.again'), 'again', again)];

  /** @param {import('./core.js').FoundCounty} one */
  const county = (one) => {
    const name = one.name || t('place.county_code', { code: one.county });
    return one.zone === undefined ? el('p', 'note', t('place.county_no_zone', { name })) : zoneOffer(store, one.zone, { county: one.county, name });
  };

  function showZip() {
    const { now } = byZip;
    if (now.state === 'failed') return redraw(found, failed(byZip.again));
    if (now.state !== 'found') return redraw(found, [now.state === 'busy' ? el('p', 'note', t('place.looking')) : undefined]);
    const { zones, counties: all } = now.found;
    const zip = answerTo(store.job, 'job', 0, 'zip').trim();
    const [only] = zones;
    if (!only) return redraw(found, [note('none', t('place.unknown', { zip }), t('place.unknown_do'))]);
    if (zones.length === 1) {
      const lone = all.length === 1 ? all[0]?.county : undefined;
      return redraw(found, [offers(t('place.found', { zip }), [zoneOffer(store, only, { county: lone })])]);
    }
    redraw(found, [note('none', t('place.several', { zip, n: zones.length }), t('place.which_county')),
      offers(t('place.which_county'), all.length ? all.map(county) : zones.map((one) => zoneOffer(store, one)))]);
  }

  function showCounties() {
    const { now } = byName;
    if (now.state === 'failed') return redraw(counties, failed(byName.again));
    if (now.state !== 'found') return redraw(counties, [now.state === 'busy' ? el('p', 'note', t('place.looking')) : undefined]);
    const all = now.found.counties;
    redraw(counties, [all.length ? offers(t('place.which_county'), all.slice(0, MOST).map(county)) : el('p', 'note', t('place.no_county')),
      all.length > MOST ? el('p', 'note', t('place.more_counties', { n: all.length - MOST })) : undefined]);
  }

  return {
    found,
    byName: node,
    /** The zone that the older map gives this ZIP code or its chosen county; none while that is open. */
    zone() {
      const { now } = byZip;
      if (now.state !== 'found') return undefined;
      const { zones, counties: all } = now.found;
      const chosen = answerTo(store.job, 'job', 0, 'county');
      return zones.length === 1 ? zones[0] : all.find((one) => one.county === Number(chosen))?.zone;
    },
    /** The chosen county's name; empty while none is chosen, or its name has not come. */
    county() {
      const { now } = byCode;
      return now.state === 'found' ? now.found.counties[0]?.name ?? '' : '';
    },
    update() {
      byCode.want(answerTo(store.job, 'job', 0, 'county'));
      byZip.want(zipOf(answerTo(store.job, 'job', 0, 'zip')));
      showZip();
      showCounties();
    },
  };
}
