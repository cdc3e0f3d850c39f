// @ts-check
/** The catalogue's screen: every sheet that is kept on this device, and the ways in and out of it. */
import { dropSheet, duplicateSheet, isKept, keepAll, loadCatalogue, allOwn, PARTS, putSheet } from './catalogue.js';
import { asJob, catalogueText, compare, readCatalogue, taken } from './cataloguefile.js';
import { download, MOST_BYTES, openValue } from './files.js';
import { el } from './list.js';
import { notify } from './notices.js';
import { head, note, press, redraw, to, way } from './parts.js';
import { go } from './view.js';
import { t } from './words.js';

/** @typedef {import('./catalogue.js').SheetPart} SheetPart */
/** @typedef {import('./catalogue.js').Sheet} Sheet */
/** @typedef {import('./cataloguefile.js').Offer} Offer */

export const words = ['stock', 'settings'];

const ADD = /** @type {const} */ ({ foam: 'add_foam', kit: 'add_kit', owned: 'add_owned' });
const HELD = /** @type {const} */ ({ foam: 'foams', kit: 'kits', owned: 'stock' });

/** @param {HTMLElement} root @param {import('./store.js').Store} store @returns {import('./view.js').View} */
export function mount(root, store) {
  const top = el('div');
  const lists = el('div', 'pad');
  const offers = el('div', { class: 'pad', id: 'catalogue-offers' });
  const input = el('input', {
    type: 'file', id: 'catalogue-file', accept: '.json,application/json', class: 'vh', 'aria-label': t('stock.take_in'),
    change: () => {
      const file = input.files?.[0];
      input.value = '';
      if (file) void open(file);
    },
  });
  root.append(el('main', '', top,
    el('div', 'pad', el('div', 'dos two', press(t('stock.export'), 'export', () => download('catalogue.foamwright.json', catalogueText(allOwn())), ''),
      el('span', 'file-press', input, el('label', { class: 'do line', for: 'catalogue-file' }, t('stock.take_in')))), el('p', 'note', t('stock.file_note'))),
    offers, lists, el('div', 'tail')));

  /** What a file would bring, until it is taken or put away. @type {{name: string, offers: Offer[], chosen: Set<Offer>} | undefined} */
  let inHand;
  void loadCatalogue().then(() => update());

  /** @param {string} why @param {Record<string, string | number>} [figures] */
  const refuse = (why, figures = {}) => notify('catalogue', 'watch', t('stock.refused'), t(`stock.refused_${why}`, figures));

  /** @param {File} file */
  async function open(file) {
    if (file.size > MOST_BYTES) return refuse('too_long');
    let text;
    try {
      text = await file.text();
    } catch {
      return refuse('damaged');
    }
    const read = readCatalogue(text);
    if (!('sheets' in read)) return refuse(read.refused, { at: read.at ?? '', version: read.version ?? 0 });
    if ('refused' in openValue(asJob(read.sheets))) return refuse('wrong', { at: 'unit, sense' });
    const all = compare(allOwn(), read.sheets);
    inHand = { name: file.name, offers: all, chosen: new Set(all.filter((one) => one.standing === 'new' || one.standing === 'newer')) };
    update();
    offers.querySelector('h2')?.focus();
  }

  function take() {
    if (!inHand) return;
    const before = allOwn();
    const chosen = inHand.offers.filter((one) => inHand?.chosen.has(one));
    keepAll(taken(before, chosen));
    inHand = undefined;
    notify('catalogue', 'go', t('stock.taken', { n: chosen.length }), '', { focus: true, presses: [[t('page.undo'), () => {
      keepAll(before);
      update();
    }]] });
    update();
  }

  /** @param {Sheet} sheet @param {SheetPart} part */
  const nameOf = (sheet, part) => sheet.name.trim() || t(`settings.${part}_unnamed`);

  /** Opens a sheet in the job, which takes a copy of it where it has none. @param {SheetPart} part @param {string} id */
  function openSheet(part, id) {
    const sheet = allOwn()[part].find((one) => one.sheet === id);
    if (!sheet) return;
    const held = store.job[HELD[part]].find((one) => one.sheet === id);
    const next = held?.id ?? store.job.next_id;
    // A kit that is only looked at is not used.
    const copy = part === 'owned' ? { ...sheet, entries: [...sheet.entries, { field: 'use', text: 'no' }] } : sheet;
    if (!held) store.dispatch({ do: ADD[part], sheet: copy });
    go(to(part, next));
  }

  /** @param {SheetPart} part @param {Sheet} sheet */
  function sheetRow(part, sheet) {
    const name = nameOf(sheet, part);
    const act = (/** @type {string} */ key, /** @type {() => void} */ run) => el('button', {
      type: 'button', class: 'link', 'data-key': `${key}-${sheet.sheet}`, 'aria-label': t('stock.press_of', { press: t(`stock.${key}`), name }), click: run,
    }, t(`stock.${key}`));
    const again = () => allOwn()[part].find((one) => one.sheet === sheet.sheet);
    return el('li', 'pair', el('span', 'k', el('b', '', name), el('small', '', t('stock.version', { version: sheet.version }))),
      el('div', 'moves', act('open_sheet', () => openSheet(part, sheet.sheet)),
        act('duplicate', () => {
          const here = again();
          if (here) duplicateSheet(part, here, t('stock.copy_of', { name }));
          update();
        }),
        act('remove', () => {
          const here = again();
          dropSheet(part, sheet.sheet);
          notify('removed', 'watch', t('stock.dropped', { name }), t('stock.dropped_do'), { focus: true, presses: [[t('stock.put_back'), () => {
            if (here) putSheet(part, here);
            update();
          }]] });
          update();
        })));
  }

  /** @param {Offer} offer @param {number} index */
  function offerRow(offer, index) {
    const { part, sheet, standing, mine } = offer;
    const name = nameOf(sheet, part);
    const about = t(`stock.standing.${standing}`, { theirs: sheet.version, mine: mine?.version ?? 0 });
    if (standing === 'same') return el('li', 'pair', el('span', 'k', el('b', '', name), el('small', '', about)));
    const box = el('input', { type: 'checkbox', checked: inHand?.chosen.has(offer) ?? false, 'data-key': `offer-${index}`, change: (event) => {
      const here = inHand?.offers[index];
      if (here && event.target.checked) inHand?.chosen.add(here);
      else if (here) inHand?.chosen.delete(here);
      update();
    } });
    return el('li', 'pair', el('label', 'switch', box, el('span', '', `${t(`stock.part.${part}`)}: ${name}`, el('small', '', about))));
  }

  function update() {
    const all = allOwn();
    const count = PARTS.reduce((sum, part) => sum + all[part].length, 0);
    redraw(top, [head({ back: [to('settings'), t('page.to_settings')], title: t('stock.catalogue'), sub: t('stock.catalogue_sub', { n: count }) }),
      el('div', 'pad says', isKept() ? undefined : note('watch', t('stock.memory'), t('stock.memory_do')))]);
    redraw(offers, inHand ? [
      el('h2', { class: 'bar', tabindex: -1 }, t('stock.would_change', { name: inHand.name })),
      inHand.offers.length ? el('ul', 'rows', ...inHand.offers.map(offerRow)) : el('p', 'note', t('stock.nothing_in_file')),
      el('div', 'dos two', press(t('stock.take', { n: inHand.chosen.size }), 'take', take, ''), press(t('stock.leave'), 'leave', () => {
        inHand = undefined;
        update();
      }, 'line')),
    ] : []);
    redraw(lists, PARTS.flatMap((part) => [el('h2', 'bar', t(`stock.list.${part}`)),
      all[part].length ? el('ul', 'rows', ...all[part].map((sheet) => sheetRow(part, sheet))) : el('p', 'note', t(`stock.list_none.${part}`))]).concat(el('div', 'dos', way(t('page.to_stock'), to('stock')))));
  }

  return { title: t('stock.catalogue'), update };
}
