// @ts-check
/**
 * The shelf: kits that are already there, what each still gives on the day, and which of them this job uses.
 * The shelf is kept on this device; a job holds copies. What is pressed here is written to both.
 */
import { isKept, dropSheet, keepSheet, lasting, loadCatalogue, newer, own, putSheet, sheets } from './catalogue.js';
import { call, now } from './calls.js';
import { kitLeft } from './drawing/kits.js';
import { bare, figures } from './figures.js';
import { el } from './list.js';
import { notify } from './notices.js';
import { caution, findingNote, head, note, press, redraw, to, way, worked } from './parts.js';
import { go } from './view.js';
import { locale, t } from './words.js';

/** @typedef {import('./changes.js').Sheet} Sheet */
/** @typedef {import('./core.js').Stock} Stock */
/**
 * A kit of the shelf: as the device keeps it, as this job holds it, or both.
 * @typedef {{key: string, name: string, entries: Sheet['entries'], copy?: import('./job.js').KitSheet, kept?: Sheet}} Item
 */

export const words = ['stock', 'kits', 'settings'];

/** @param {Item} item @param {string} field */
const entryOf = (item, field) => item.entries.find((one) => one.field === field)?.text ?? '';

/** Every kit of the device and of the job. @param {import('./store.js').Store} store @returns {Item[]} */
function itemsOf(store) {
  const kept = own('owned');
  const inJob = store.job.stock.map((copy) => ({
    key: `job-${copy.id}`, name: copy.name, entries: copy.entries, copy, kept: kept.find((one) => one.sheet === copy.sheet),
  }));
  const rest = kept.filter((one) => !store.job.stock.some((copy) => copy.sheet === one.sheet));
  return [...inJob, ...rest.map((one) => ({ key: one.sheet, name: one.name, entries: one.entries, kept: one }))];
}

/** Each kit as it stands today, whether or not this job uses it. @param {import('./store.js').Store} store @param {Item[]} items */
function standing(store, items) {
  const stock = items.map((item, index) => ({ id: index + 1, sheet: '', version: 0, name: item.name, entries: lasting('owned', item.entries) }));
  const scratch = { ...store.job, surfaces: [], readings: [], events: [], stock };
  delete scratch.purchase;
  const estimate = items.length ? call('estimate', scratch, now()) : undefined;
  return items.map((_, index) => ({
    stock: estimate?.purchase.stock[index],
    findings: (estimate?.findings ?? []).filter((one) => one.at.part === 'owned' && one.at.id === index + 1),
  }));
}

/**
 * Writes a kit of the job to the shelf of this device, where it says something else than what is kept there.
 * @param {import('./store.js').Store} store @param {number} id
 */
export function keepOwned(store, id) {
  const copy = store.job.stock.find((one) => one.id === id);
  if (!copy) return;
  const kept = own('owned').find((one) => one.sheet === copy.sheet);
  // What another job wrote since is not undone from here: the shelf then offers it.
  if (kept && kept.version > copy.version) return;
  if (kept && kept.name === copy.name && JSON.stringify(kept.entries) === JSON.stringify(lasting('owned', copy.entries))) return;
  const sheet = keepSheet('owned', copy);
  store.dispatch({ do: 'sheet_kept', part: 'owned', id, sheet: sheet.sheet, version: sheet.version });
}

/** The local day as it is typed. */
function today() {
  const { ms, offset_min } = now();
  return new Date(ms + offset_min * 60_000).toISOString().slice(0, 10);
}

/** A day of the core in words. @param {number} days since 1970-01-01 */
export const dayWords = (days) => new Date(days * 86_400_000).toLocaleDateString(locale(), { timeZone: 'UTC', month: 'short', day: 'numeric', year: 'numeric' });

/** What a kit gives, or why it gives nothing. @param {Stock | undefined} stock @param {import('./figures.js').Figures} w */
export function countsWords(stock, w) {
  if (!stock) return '';
  return stock.counts === 'yes' ? t('stock.usable', { amount: w.foam(stock.usable) }) : t(`stock.counts.${stock.counts}`);
}

/** @param {HTMLElement} root @param {import('./store.js').Store} store @returns {import('./view.js').View} */
export function mount(root, store) {
  const top = el('div');
  const list = el('ul', 'rows shelf');
  const below = el('div', 'pad tail');
  root.append(el('main', '', top, el('div', 'pad', list), below));
  void loadCatalogue().then(() => update());

  const find = (/** @type {string} */ key) => itemsOf(store).find((one) => one.key === key);

  /** Changes entries of a kit, in the job and on the shelf. @param {string} key @param {Record<string, string>} changes */
  function set(key, changes) {
    const item = find(key);
    if (!item) return;
    if (item.copy) {
      const { id } = item.copy;
      for (const [field, text] of Object.entries(changes)) store.dispatch({ do: 'entry', part: 'owned', id, field, text });
      keepOwned(store, id);
    } else if (item.kept) {
      const entries = [...item.kept.entries.filter((one) => !(one.field in changes)), ...Object.entries(changes).map(([field, text]) => ({ field, text }))];
      keepSheet('owned', { ...item.kept, entries, r_at: [] });
    }
    update();
  }

  /** @param {string} key @param {boolean} on */
  function use(key, on) {
    const item = find(key);
    if (item?.copy) store.dispatch({ do: 'entry', part: 'owned', id: item.copy.id, field: 'use', text: on ? '' : 'no' });
    else if (item?.kept && on) store.dispatch({ do: 'add_owned', sheet: item.kept });
    update();
  }

  /** @param {string} key */
  function edit(key) {
    const item = find(key);
    const id = item?.copy?.id ?? store.job.next_id;
    if (item && !item.copy) {
      // Opened from here it comes into the job, but is used only once that is said.
      if (item.kept) store.dispatch({ do: 'add_owned', sheet: { ...item.kept, entries: [...item.kept.entries, { field: 'use', text: 'no' }] } });
    }
    go(to('owned', id));
  }

  /** @param {string} key */
  function remove(key) {
    const item = find(key);
    if (!item) return;
    const { copy, kept } = item;
    if (kept) dropSheet('owned', kept.sheet);
    if (copy) store.dispatch({ do: 'remove', part: 'owned', id: copy.id });
    notify('removed', 'watch', t('stock.removed', { name: nameOf(item) }), '', {
      focus: true,
      presses: [[t('stock.put_back'), () => {
        if (kept) putSheet('owned', kept);
        if (copy) store.dispatch({ do: 'add_owned', sheet: { sheet: copy.sheet, version: copy.version, name: copy.name, entries: copy.entries } });
        update();
      }]],
    });
    update();
  }

  /** @param {Sheet} size */
  function add(size) {
    const entries = size.entries.filter((one) => ['label_yield', 'nozzles'].includes(one.field));
    const sheet = keepSheet('owned', { sheet: '', name: size.name, entries });
    const id = store.job.next_id;
    store.dispatch({ do: 'add_owned', sheet });
    go(to('owned', id));
  }

  /** @param {Item} item */
  const nameOf = (item) => item.name.trim() || t('settings.owned_unnamed');

  /** @param {Item} item @param {{stock: Stock | undefined, findings: import('./core.js').Finding[]}} stands @param {number} largest */
  function itemRow(item, { stock, findings }, largest) {
    const w = figures(store.job.units);
    const name = nameOf(item);
    const state = entryOf(item, 'state');
    const pct = (/** @type {number | undefined} */ share) => (share === undefined ? t('stock.not_known') : w.pct(share));
    const sealed = state === 'sealed';
    const left = sealed ? t('stock.sealed') : state === 'opened' ? t('stock.opened', { a: pct(stock?.a_share_pct), b: pct(stock?.b_share_pct) }) : t('stock.state_not_known');
    const days = stock?.days_left;
    const due = stock?.purge_in_days;
    const lines = [
      left,
      days === undefined || stock?.last_day === undefined ? t('stock.no_day') : days < 0 ? t('stock.day_past', { day: dayWords(stock.last_day) }) : t('stock.days_left', { n: days, day: dayWords(stock.last_day) }),
      due === undefined || stock?.purge_day === undefined ? '' : due < 0 ? t('stock.purge_over', { n: -due }) : due === 0 ? t('stock.purge_today') : t('stock.purge_due', { day: dayWords(stock.purge_day) }),
    ].filter(Boolean);
    const used = Boolean(item.copy) && entryOf(item, 'use') !== 'no';
    const moved = item.copy && newer('owned', item.copy);
    const drawing = kitLeft({
      label: stock?.label ?? 1, largest, a: sealed ? 1 : (stock?.a_share_pct ?? 0) / 100, b: sealed ? 1 : (stock?.b_share_pct ?? 0) / 100,
      name: t('stock.drawing', { name, left }),
    });
    const box = el('input', { type: 'checkbox', checked: used, 'data-key': `use-${item.key}`, 'aria-label': t('stock.use_of', { name }), change: (event) => use(item.key, event.target.checked) });
    const act = (/** @type {string} */ key, /** @type {() => void} */ run) => el('button', {
      type: 'button', class: 'link', 'data-key': `${key}-${item.key}`, 'aria-label': t('stock.press_of', { press: t(`stock.${key}`), name }), click: run,
    }, t(`stock.${key}`));
    const amount = stock?.counts === 'yes' ? w.foam(stock.usable) : t('stock.nothing');
    return el('li', 'owned',
      el('div', 'owned-what', drawing, el('div', 'k', el('b', '', name), ...lines.map((one) => el('small', '', one))),
        el('p', 'v', item.copy && used && stock?.counts === 'yes' ? worked(bare(amount), 'stock', item.copy.id, 'usable') : bare(amount), el('small', '', t('stock.usable_unit')))),
      el('div', 'says', ...findings.filter((one) => one.code.startsWith('stock_') && one.code !== 'stock_no_date').map(findingNote),
        moved && note('watch', t('stock.moved_on'), press(t('settings.renew'), `renew-${item.key}`, () => {
          const here = find(item.key)?.copy;
          const fresh = here && newer('owned', here);
          if (here && fresh) store.dispatch({ do: 'renew_sheet', part: 'owned', id: here.id, sheet: fresh });
        }, 'small'))),
      el('label', 'switch', box, el('span', '', t('stock.use'))),
      el('div', 'moves', state === 'opened' ? act('purged', () => set(item.key, { last_purge: today() })) : undefined,
        state === 'opened' ? undefined : act('open', () => set(item.key, { state: 'opened', opened: today() })),
        act('edit', () => edit(item.key)), act('remove', () => remove(item.key))));
  }

  function update() {
    const items = itemsOf(store);
    const stands = standing(store, items);
    const w = figures(store.job.units);
    const p = store.estimate?.purchase;
    const largest = Math.max(1, ...stands.map((one) => one.stock?.label ?? 0));
    redraw(top, [
      head({ back: [to('kits'), t('kits.title')], title: t('stock.title'), sub: items.length ? t('stock.sub', { amount: w.foam(p?.from_stock ?? 0) }) : t('stock.none') }),
      el('div', 'pad says', isKept() ? undefined : note('watch', t('stock.memory'), t('stock.memory_do'))),
    ]);
    redraw(list, items.map((item, index) => itemRow(item, stands[index], largest)));
    /** @type {Sheet[]} */
    const sizes = [];
    for (const one of [...store.job.kits, ...sheets('kit')]) if (!sizes.some((known) => known.sheet === one.sheet && one.sheet !== '')) sizes.push(one);
    redraw(below, [
      el('h2', 'bar', t('stock.add')), el('p', 'note', t('stock.add_note')),
      el('div', 'dos', ...sizes.map((size, index) => press(t('stock.add_one', { name: size.name || t('kits.unnamed') }), `add-${size.sheet || index}`, () => add(size)))),
      el('h2', 'bar', t('stock.care')), el('div', 'says', caution('stock.purge_caution'), caution('stock.storage_caution'), caution('stock.date_caution')),
      el('p', 'note top', t('stock.counted_how')),
      el('div', 'dos', way(t('stock.to_catalogue'), to('catalogue'))),
    ]);
  }

  return { title: t('stock.title'), update };
}
