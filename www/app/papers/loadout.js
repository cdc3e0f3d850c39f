// @ts-check
/** The load-out list: what goes into the van, with a box to tick for out and one for back. */
import { figures } from '../figures.js';
import { el } from '../list.js';
import { REST, vanCounts, vanKits } from '../loadout.js';
import { mark } from '../marks.js';
import { t } from '../words.js';
import { leaf, lines, section, tick } from './leaf.js';

/** @typedef {import('../store.js').Store} Store */

/** @param {Store} store */
export function loadOut(store) {
  const { job, estimate } = store;
  if (!estimate) return undefined;
  const w = figures(job.units);
  const { gross_lb: gross, most_lb: most, over } = estimate.people.load;
  const kits = vanKits(store);
  /** @type {[string, ('' | 'r' | 'w')?][]} */
  const columns = [[t('paper.what')], [t('paper.count'), 'r'], [t('people.load.in')], [t('people.load.back')]];
  const item = (/** @type {string} */ what, /** @type {string} */ why, /** @type {Node | string} */ count) => ({ cells: [el('span', '', what, why ? el('small', '', why) : undefined), count, tick(), tick()] });
  return leaf(store, 'loadout',
    el('p', 'lead', t('people.load.paper_how')),
    section(t('sheet.kits'), kits.length ? lines(t('sheet.kits'), columns, [
      ...kits.map((one) => item(one.what, one.why, el('b', '', one.count ?? ''))),
      { kind: 'sum', cells: [el('span', '', t('people.load.all'), el('small', '', t('people.load.most', { weight: w.weight(most) }))), gross === undefined || gross === null ? el('i', '', t('people.load.not_known')) : el('b', '', w.weight(gross)), undefined, undefined] },
    ], 'write van') : el('p', 'note', t('people.load.no_kits')),
    over ? el('p', 'lead', mark('watch'), ' ', el('b', '', t('people.load.over', { most: w.weight(most) })), ' ', t('people.load.over_do')) : undefined,
    el('p', 'note', t('sources.vehicle_most'))),
    section(t('people.load.worn'), lines(t('people.load.worn'), columns, vanCounts(store).map((one) => item(one.what, one.why, one.count === undefined ? '' : el('b', '', one.count))), 'write van'), el('p', 'note', t('people.load.note'))),
    section(t('people.load.rest'), lines(t('people.load.rest'), columns, REST.map((one) => item(t(`people.load.${one}`), t(`people.load.${one}_why`), '')), 'write van')));
}
