// @ts-check
/**
 * "Send to …": the totals of the estimate, handed to the page around the frame when the visitor presses, and never
 * before. The figures are those that stand on the sheet. Nothing that was typed goes along: no name and no measure.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 *
 * @typedef {object} Totals
 * @property {1} version
 * @property {boolean} complete  every surface is worked out, and there are kits that are enough
 * @property {number} surfaces  so many are worked out
 * @property {number} of  so many there are
 * @property {number} area_ft2
 * @property {number} board_feet  to spray, rounded up
 * @property {{name: string, count: number}[]} kits
 * @property {{kits: number, tax: number, delivery: number, total: number} | null} price  US cents; null where a kit has no price
 * @property {'USD'} currency
 * @property {string} language
 */
import { call } from '../calls.js';
import { el, say } from '../list.js';
import { byId, press } from '../parts.js';
import { currentLanguage, t } from '../words.js';
import { settled, worked } from './settled.js';

/** An area as it is written on the sheet: rounded once, by what writes it. @param {number} ft2 */
const written = (ft2) => Number((call('write', 'area', ft2, 'us') ?? '').replace(/,/g, '').match(/^[\d.]+/)?.[0] ?? 0);

/**
 * The totals of an estimate. What the sheet does not show is left out.
 * @param {Pick<Store, 'job' | 'estimate'>} store @param {string} language @param {ReadonlySet<string>} [sections]  those that stand on the sheet
 * @returns {Totals}
 */
export function totals({ job, estimate }, language, sections = new Set(['kits', 'price'])) {
  const { n, of } = worked({ job, estimate });
  const purchase = estimate?.purchase;
  const enough = n > 0 && purchase?.buy?.enough === true && !purchase.too_big;
  const mix = enough ? purchase.buy?.buy ?? [] : [];
  const price = enough && sections.has('price') ? purchase.price : undefined;
  return {
    version: 1,
    complete: n === of && enough,
    surfaces: n,
    of,
    area_ft2: written(job.surfaces.reduce((sum, one) => sum + (settled({ estimate }, one) ? byId(estimate?.surfaces ?? [], one.id)?.area?.net_ft2.likely ?? 0 : 0), 0)),
    board_feet: n > 0 ? estimate?.quantity.to_spray_up.likely ?? 0 : 0,
    kits: sections.has('kits') ? mix.map(({ kit, count }) => ({ name: byId(job.kits, kit)?.name ?? '', count })) : [],
    price: price ? { kits: price.kits, tax: price.tax, delivery: price.delivery, total: price.total } : null,
    currency: 'USD',
    language,
  };
}

/**
 * The press and its lines.
 * @param {Store} store @param {Settings} settings @param {(totals: Totals) => void} send  hands them to the page around
 */
export function sendPart(store, settings, send) {
  const { company } = settings;
  const button = press(company ? t('embed_ways.send_to', { company }) : t('embed_ways.send'), 'send', act, 'wide');
  button.setAttribute('aria-describedby', 'send-about');
  const about = el('p', { class: 'note', id: 'send-about' });
  const status = el('p', { class: 'note', role: 'status' });
  const node = el('div', 'no-print send', el('div', 'dos', button), about, status);
  /** The job whose totals were handed over last. @type {import('../job.js').Job | undefined} */
  let sent;

  function act() {
    if (!worked(store).n) return;
    const all = totals(store, currentLanguage(), settings.sections);
    send(all);
    sent = store.job;
    say(status, '');
    say(status, t('embed_ways.sent', { n: all.board_feet }));
  }

  function update() {
    const ready = worked(store).n > 0;
    button.classList.toggle('yet', !ready);
    button.setAttribute('aria-disabled', String(!ready));
    say(about, t(ready ? 'embed_ways.send_note' : 'embed_ways.send_yet'));
    if (sent && sent !== store.job) say(status, t('embed_ways.sent_before'));
  }

  update();
  return { node, update };
}
