// @ts-check
/** Place and code: the kind of work, the edition, the climate zone, and what each surface is in the building. */
import { answerBar } from './answer.js';
import { nameOf } from './drawn.js';
import { field } from './field.js';
import { el, list, say } from './list.js';
import { byId, head, more, note, pressRow, redraw, src, to, way } from './parts.js';
import { degreeDays } from './placedays.js';
import { lookUp } from './placefind.js';
import { surfaceRow } from './placerows.js';
import { jobName } from './sheet.js';
import { answerTo, asks, zoneName } from './workline.js';
import { offers, warmer, zoneOffer } from './zoneoffer.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

export const words = ['takeoff', 'sheet', 'work', 'place'];

/** Where the code's warm-humid counties lie. */
const HUMID = ['1a', '2a', '3a'];
/** Editions with the map of 2021. */
const NEWER = ['2021', '2024'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store, route) {
  const ask = (/** @type {string} */ name, /** @type {string} */ hint = '', /** @type {string} */ label = '') => field({ store, part: 'job', id: 0, field: name, hint: hint && t(hint), label: label ? t(label) : undefined, quiet: true });
  const top = el('div');
  const work = ask('work', '', 'place.work_ask');
  const asked = el('p', { class: 'note', role: 'status' });
  const edition = ask('edition', '', 'place.edition_ask');
  const editionSays = el('div', { class: 'says', role: 'status' });
  const zip = ask('zip', 'place.zip_hint');
  const place = lookUp(store, () => update());
  const zone = ask('zone', '', 'place.zone_ask');
  const moved = el('div', { role: 'status' });
  const days = degreeDays(store);
  const humid = ask('warm_humid', 'place.humid_why');
  const surfaces = el('div');
  const none = el('div');
  const bar = answerBar();

  root.append(el('main', 'place', top, el('div', 'pad top',
    el('h2', 'bar', t('place.work')), work.node, asked,
    el('h2', 'bar', t('place.edition')), edition.node, el('p', 'note', t('place.adopted')), editionSays,
    el('h2', 'bar', t('place.zone')), el('div', 'fields one', zip.node), place.found, place.byName,
    el('div', 'fields one', zone.node), src(t('sources.zones')), moved, days.node,
    more(t('place.abroad'), el('div', 'field full', el('p', 'note', t('place.abroad_do')), el('div', 'dos', way(t('place.to_depths'), to('sheet', 'depth'))))),
    el('div', 'fields one', humid.node),
    el('h2', 'bar', t('place.surfaces')), el('p', 'note', t('place.surfaces_why')), surfaces, none,
    el('p', 'note top', t('place.governs')))), bar.node);

  /** The zone before a warmer one was chosen. */
  let before = '';

  /** What the newer map changes: the zone of the older one, or one warmer. */
  function newer() {
    const chosen = answerTo(store.job, 'job', 0, 'edition');
    const now = answerTo(store.job, 'job', 0, 'zone');
    if (!warmer(before).includes(now)) before = now;
    const from = place.zone() ?? before;
    if (!NEWER.includes(chosen) || !from) return [];
    const up = warmer(from);
    return [note('watch', t('place.moved'), t('place.moved_do', { zone: zoneName(from) }), up.length ? undefined : ` ${t('place.no_warmer')}`),
      up.length ? offers(t('place.moved'), [from, ...up].map((one) => zoneOffer(store, one, { keep: true }))) : undefined];
  }

  function update() {
    bar.update(store);
    const { job } = store;
    const back = byId(job.surfaces, route.id);
    const now = answerTo(job, 'job', 0, 'zone');
    const book = answerTo(job, 'job', 0, 'edition');
    redraw(top, [head({ back: back ? [to('depth', back.id), nameOf(back)] : [to('sheet', 'depth'), jobName(store)], title: t('place.title'), sub: t('place.lead') }),
      el('p', 'key', el('b', '', now.toUpperCase() || '–'), el('span', '', t(now ? 'place.key' : 'place.key_none'), place.county() ? `, ${place.county()}` : undefined, el('br'), book ? t('work.edition', { edition: t(`fields.choice.edition.${book}`) }) : t('work.no_edition')))]);
    for (const one of [work, edition, zip, zone, humid, place, days]) one.update();
    say(asked, asks(job));
    redraw(editionSays, [book === '2024' ? note('watch', t('place.partly'), t('place.partly_do')) : undefined]);
    redraw(moved, newer());
    humid.node.hidden = !HUMID.includes(now) && !answerTo(job, 'job', 0, 'warm_humid');
    list(surfaces, job.surfaces, (one) => one.id, (one) => surfaceRow(store, one.id));
    redraw(none, [job.surfaces.length ? undefined : el('ul', 'rows', pressRow(to('sheet', 'measure'), t('place.no_surface'), '', undefined))]);
  }

  return { title: t('place.title'), update };
}
