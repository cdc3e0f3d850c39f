// @ts-check
/** A zone from typed degree-days, by the thresholds of either map. */
import { field } from './field.js';
import { el } from './list.js';
import { more, redraw, src } from './parts.js';
import { offers, zoneOffer } from './zoneoffer.js';
import { t } from './words.js';

/** @param {import('./store.js').Store} store */
export function degreeDays(store) {
  const asked = ['hdd65', 'cdd50', 'moist_region'].map((name) => field({ store, part: 'job', id: 0, field: name, quiet: true, hint: name === 'moist_region' ? t('place.moist_hint') : '' }));
  const result = el('div', { class: 'field full days', role: 'status' });
  const node = more(t('place.days'), el('p', 'note field full', t('place.days_hint')), ...asked.map((one) => one.node), result);

  /** @param {string} key @param {string | undefined} zone */
  const line = (key, zone) => [el('p', 'note', t(zone ? `place.days_${key}` : `place.days_${key}_none`)), zone ? offers(t(`place.days_${key}`), [zoneOffer(store, zone)]) : undefined];

  return {
    node,
    update() {
      for (const one of asked) one.update();
      const found = store.estimate?.place.by_degree_days;
      redraw(result, found ? [...line('2018', found.up_to_2018), ...line('2021', found.from_2021), el('p', 'note', t('place.days_governs')), src(t('sources.degree_days'))] : []);
    },
  };
}
