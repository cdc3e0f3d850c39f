// @ts-check
/** What to buy: the purchase that counts, from label to usable, the other ways and where it stops being enough. */
import { answerBar } from './answer.js';
import { kits as kitsDrawing, mixWords } from './drawn.js';
import { field } from './field.js';
import { bare, figures, isRange, ranged } from './figures.js';
import { el } from './list.js';
import { paid } from './price.js';
import { breadth, byId, findingNote, framed, head, more, note, press, pressRow, redraw, row, src, table, to, way, worked } from './parts.js';
import { jobName, ranges } from './sheet.js';
import { countsWords } from './stock.js';
import { t } from './words.js';

/** @typedef {import('./core.js').Mix} Mix */

export const words = ['sheet', 'kits', 'ready', 'stock'];

const CODES = new Set(['kit_unusable', 'not_enough_kits', 'chosen_too_little', 'too_big', 'mass_short']);

/** @param {Mix} mix */
const keyOf = (mix) => [...mix.buy].sort((a, b) => a.kit - b.kit).map((one) => `${one.kit}x${one.count}`).join('-');

/** Tax, delivery or the sum, below the cost. @param {import('./price.js').Paid} one */
const payRow = ({ of, what, below, value }) => row(of === 'total' ? el('b', '', what) : what, below,
  of === 'delivery' || value === '–' ? value : worked(value, 'job', 0, `purchase.price.${of}`));

/** Sales tax and delivery, folded away while nothing was entered. @param {import('./store.js').Store} store */
function costFields(store) {
  const fields = [['sales_tax', t('kits.tax_hint')], ['delivery', t('kits.delivery_hint')]].map(([name, hint]) => field({ store, part: 'job', id: 0, field: name, hint }));
  const node = more(t('kits.cost_more'), ...fields.map((one) => one.node), el('div', 'field full', src(t('sources.sales_tax'))));
  node.open = fields.some((one) => one.input.value.trim() !== '');
  return { node, update: () => fields.forEach((one) => one.update()) };
}

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const main = el('div');
  const ways = el('div');
  const reason = el('textarea', { id: 'purchase-0-reason', rows: 2, input: () => store.dispatch({ do: 'purchase_reason', reason: reason.value }) });
  const reasonPart = el('div', 'pad', el('div', { class: 'field', 'data-field': 'purchase-0-reason' }, el('label', { for: reason.id }, t('kits.reason')), el('span', 'box long', reason), el('p', 'read', t('kits.reason_why'))));
  const own = el('div', 'pad');
  const usable = el('div', 'pad');
  const fields = ['yield_factor', 'fixed_loss'].map((one) => field({ store, part: 'job', id: 0, field: one, source: true }));
  const limits = ['too_big', 'too_big_kits'].map((one) => field({ store, part: 'job', id: 0, field: one, source: true }));
  const costs = costFields(store);
  const sheets = el('div', 'pad');
  const bar = answerBar();
  root.append(el('main', '', top, main, el('div', 'pad', costs.node), ways, reasonPart, own,
    usable, el('div', 'pad', el('div', 'fields', ...fields.map((one) => one.node))), sheets,
    el('div', 'pad tail', more(t('kits.when_big'), ...limits.map((one) => one.node)))), bar.node);

  /** @param {import('./core.js').KitCount[]} buy */
  const choose = (buy) => store.dispatch({ do: 'purchase', buy });
  /** The press that was used is gone once its purchase is chosen: the focus goes on to the reason, or to the choice. */
  const onward = () => void store.settled().then(() => /** @type {HTMLElement | null} */ (reasonPart.hidden ? ways.querySelector('.here') : reason)?.focus());

  function update() {
    bar.update(store);
    const { job, estimate } = store;
    const w = figures(job.units);
    const p = estimate?.purchase;
    const need = estimate?.quantity.to_spray_up;
    redraw(top, [head({ back: [to('sheet', 'kits'), jobName(store)], title: t('kits.title'), sub: need && estimate?.quantity.surfaces ? t('kits.sub', { amount: ranged(need, w.foam) }) : t('sheet.amount_none') })]);
    const buy = p?.buy;
    const big = p?.too_big;
    const notes = (estimate?.findings ?? []).filter((one) => CODES.has(one.code) && one.code !== 'too_big');
    const drawing = kitsDrawing(store, breadth(root));
    redraw(main, [
      big && el('section', 'stamp hold', note('hold', '').firstChild ?? undefined, el('div', '', el('p', 'word big-word', t('sheet.too_big')), el('p', 'until', t('kits.big_until')))),
      big && el('section', 'blame', el('p', 'lead', t('kits.big_lead', { amount: w.foam(big.to_spray), limit: bare(w.foam(big.limit)), n: big.largest_kits, kits: big.kits_limit })), el('p', '', t('kits.big_do')), el('p', 'src', t('sources.too_big'))),
      p && p.stock.length > 0 && el('div', 'pad', el('h2', 'bar', t('kits.from_shelf')), shelf(p, w)),
      buy && el('p', 'key', el('b', '', String(buy.kits)), el('span', '', ...(buy.kits || !p?.stock_kits ? [t('kits.key', { n: buy.kits, mix: mixWords(store, buy.buy) }), el('br'), t('kits.key_2', { label: bare(w.foam(buy.label)), usable: bare(w.foam(buy.usable)) })] : [t('kits.nothing_to_buy')]))),
      drawing && framed(drawing, t('kits.drawn'), t('kits.drawn_dashed')),
      el('div', 'pad top says', ...notes.map(findingNote)),
      buy && el('div', 'pad', el('ul', 'rows plain',
        buy.cost === undefined ? undefined : row(t('kits.cost'), p.chosen ? t('kits.yours') : t('kits.least_cost'), worked(w.money(buy.cost), 'job', 0, 'purchase.buy.cost')),
        ...paid(p, w).map(payRow),
        row(t(buy.left < 0 ? 'kits.short' : 'kits.left'), t('kits.after', { amount: w.foam(need?.likely) }), worked(w.foam(Math.abs(buy.left)), 'job', 0, 'purchase.buy.left')),
        row(t('kits.break'), t(p.stock_kits ? 'kits.break_shelf' : 'kits.break_why', { pct: w.pct(buy.break_factor_pct), now: w.pct(p.yield_factor_pct) }), worked(w.pct(buy.break_factor_pct), 'job', 0, 'purchase.buy.break_factor_pct'))),
      ranges(store)),
    ]);
    redraw(ways, [p && el('div', 'pad', el('h2', 'bar', t('kits.ways')), otherWays(p, w))]);
    reasonPart.hidden = !(p?.chosen && (p.dearer_by ?? 0) > 0);
    if (document.activeElement !== reason) reason.value = job.purchase?.reason ?? '';
    redraw(own, [el('h2', 'bar', t('kits.own')), el('ul', 'rows', ...(p?.sizes ?? []).map((size) => {
      const count = (/** @type {number} */ kit) => (store.estimate?.purchase.buy?.buy ?? []).find((one) => one.kit === kit)?.count ?? 0;
      const add = (/** @type {number} */ by) => {
        const all = store.estimate?.purchase.sizes ?? [];
        choose(all.map(({ kit }) => ({ kit, count: Math.max(0, count(kit) + (kit === size.kit ? by : 0)) })));
      };
      const name = byId(job.kits, size.kit)?.name || t('kits.unnamed');
      return el('li', 'count', el('span', 'k', name, el('small', '', [w.foam(size.usable), size.price === undefined ? t('kits.no_price') : w.money(size.price), size.limit === undefined ? '' : t('kits.at_most', { n: size.limit })].filter(Boolean).join(', '))),
        el('span', 'counter',
          el('button', { type: 'button', class: 'link', 'data-key': `less-${size.kit}`, 'aria-label': t('kits.one_less', { name }), click: () => add(-1) }, '−'),
          el('span', { class: 'v', 'aria-label': t('kits.so_many', { n: count(size.kit), name }), role: 'status' }, String(count(size.kit))),
          el('button', { type: 'button', class: 'link', 'data-key': `more-${size.kit}`, 'aria-label': t('kits.one_more', { name }), click: () => add(1) }, '+')));
    })), p?.chosen ? el('div', 'dos', press(t('kits.back_to_least'), 'least', () => {
      store.dispatch({ do: 'purchase_clear' });
      onward();
    })) : undefined]);
    redraw(usable, p?.sizes.length ? [el('h2', 'bar', t('kits.from_label')), table(t('kits.from_label'),
      [t('kits.kit'), t('kits.label'), t('kits.yield', { pct: w.pct(p.yield_factor_pct) }), t('kits.hoses'), t('kits.usable_short')],
      p.sizes.map((size) => ({ cells: [byId(job.kits, size.kit)?.name || t('kits.unnamed'), bare(w.foam(size.label)), worked(bare(w.foam(size.after_factor)), 'kit', size.kit, 'after_factor'), '− ' + bare(w.foam(size.fixed_loss)), el('b', '', worked(bare(w.foam(size.usable)), 'kit', size.kit, 'usable'))] }))),
    el('p', 'note', t('kits.loss_note')),
    ...mass(p.sizes, w)] : []);
    redraw(sheets, [el('div', 'dos no-print', way(t('kits.to_shelf'), to('stock')), way(t('kits.print'), to('paper', 'materials'))), el('h2', 'bar', t('kits.sheets')), el('ul', 'rows', ...job.kits.map((kit) => pressRow(to('kit', kit.id), kit.name || t('kits.unnamed'), t('kits.sheet_why'), el('span', 'act', t('kits.edit')))))]);
    for (const one of [...fields, ...limits, costs]) one.update();
  }

  /** The chosen, the least-cost and each size alone. @param {import('./core.js').Purchase} p @param {import('./figures.js').Figures} w */
  function otherWays(p, w) {
    /** @type {Mix[]} */
    const all = [];
    for (const mix of [p.buy, p.least, ...p.others]) if (mix && mix.buy.length && !all.some((one) => keyOf(one) === keyOf(mix))) all.push(mix);
    all.sort((a, b) => (a.cost ?? Infinity) - (b.cost ?? Infinity));
    if (!all.length) return el('p', 'note', t('kits.none_fit'));
    return el('ul', 'rows', ...all.map((mix) => {
      const here = p.buy && keyOf(p.buy) === keyOf(mix);
      const least = p.least && keyOf(p.least) === keyOf(mix);
      const more = mix.cost !== undefined && p.least?.cost !== undefined ? mix.cost - p.least.cost : 0;
      const about = [mix.enough ? t('kits.leaves', { amount: w.foam(mix.left) }) : t('kits.falls_short', { amount: w.foam(-mix.left) }), least ? t('kits.least_cost') : more > 0 ? t('kits.more', { more: w.money(more) }) : ''].filter(Boolean).join('; ');
      return el('li', here ? { class: 'here', tabindex: -1 } : {}, el('span', 'k', el(here ? 'b' : 'span', '', mixWords(store, mix.buy)), el('small', '', about)),
        el('span', 'v', mix.cost === undefined ? '–' : w.money(mix.cost), el('small', '', here ? t('kits.chosen') : el('button', {
          type: 'button', class: 'link', 'data-key': 'choose-' + keyOf(mix), 'aria-label': t('kits.choose_this', { mix: mixWords(store, mix.buy) }),
          click: () => {
            if (least) store.dispatch({ do: 'purchase_clear' });
            else choose(mix.buy);
            onward();
          },
        }, t('kits.choose')))));
    }));
  }

  /** The kits that are already there, and what is left to be bought. @param {import('./core.js').Purchase} p @param {import('./figures.js').Figures} w */
  function shelf(p, w) {
    return el('ul', 'rows plain', ...p.stock.map((one) => row(byId(store.job.stock, one.kit)?.name || t('kits.unnamed'), countsWords(one, w),
      one.counts === 'yes' ? worked(w.foam(one.counted), 'stock', one.kit, 'usable') : t('stock.nothing'))),
    row(el('b', '', t('kits.shelf_together')), '', el('b', '', worked(w.foam(p.from_stock), 'job', 0, 'purchase.from_stock'))),
    row(t('kits.to_buy'), t('kits.to_buy_why', { amount: w.foam(store.estimate?.quantity.to_spray.likely ?? 0) }), worked(w.foam(p.to_buy.likely), 'job', 0, 'purchase.to_buy')));
  }

  /** The mass check, where weights and density are known. @param {import('./core.js').KitSize[]} sizes @param {import('./figures.js').Figures} w */
  function mass(sizes, w) {
    const known = sizes.filter((one) => one.net_weight_lb !== undefined && one.needs_lb !== undefined);
    if (!known.length) return [];
    return [el('h2', 'bar', t('kits.mass')), table(t('kits.mass'), [t('kits.kit'), t('kits.needs'), t('kits.holds')], known.map((size) => ({
      cells: [byId(store.job.kits, size.kit)?.name || t('kits.unnamed'), worked(w.weight(size.needs_lb), 'kit', size.kit, 'needs_lb'), w.weight(size.net_weight_lb)],
    }))), el('p', 'note', t('kits.mass_note'))];
  }

  return { title: t('kits.title'), update };
}

export { isRange, way };
