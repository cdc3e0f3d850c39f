// @ts-check
/** The job's own particulars, its sheets and allowances; and what this device does. */
import { loadCatalogue, newer, own, dropSheet, sheets } from './catalogue.js';
import { fieldsOf } from './calls.js';
import { field, line } from './field.js';
import { el, list, say } from './list.js';
import { languagePick, pick, themePick, unitsPick } from './menu.js';
import { notify } from './notices.js';
import { check, offline, removeCopy } from './offline.js';
import { head, way } from './parts.js';
import { getPrefs, setPrefs, showPad } from './prefs.js';
import { fieldGroup, grouped } from './sheets.js';
import { go, to } from './view.js';
import { has, t } from './words.js';

export const words = ['settings'];

/** The folder that this file lies in is named by the content of the version. */
const version = new URL('.', import.meta.url).pathname.split('/').at(-2) ?? '';

const GROUPS = /** @type {const} */ ([
  ['job', ['spray_date']],
  ['allowances', ['over_depth', 'other_waste', 'yield_factor', 'fixed_loss']],
  ['too_big', ['too_big', 'too_big_kits']],
  ['price', ['sales_tax', 'delivery']],
  ['tolerances', ['under_aim', 'over_aim']],
  ['checks', ['dew_spread', 'cylinders_apart', 'site_age', 'cylinder_age', 'meter_rh_error', 'meter_temp_error']],
]);

/** @param {HTMLElement} root @param {import('./store.js').Store} store @returns {import('./view.js').View} */
export function mount(root, store) {
  const [, ...rest] = grouped(GROUPS, fieldsOf('job'));
  const lines = [
    line({ store, part: 'job', id: 0, field: 'name', label: t('settings.job_name') }),
    line({ store, part: 'job', id: 0, field: 'place', label: t('settings.place') }),
    line({ store, part: 'job', id: 0, field: 'note', label: t('settings.note'), long: true }),
  ];
  const date = field({ store, part: 'job', id: 0, field: 'spray_date', hint: t('settings.date_hint') });
  const groups = rest.map(([key, names]) => fieldGroup(store, 'job', 0, key, names));
  const parts = [sheetList(store, 'foam'), sheetList(store, 'kit')];
  const units = el('div');
  const copy = el('p', 'note');
  let drawnUnits = '';

  root.append(el('main', '',
    head({ back: [to('sheet'), t('page.to_sheet')], title: t('settings.title') }),
    el('div', 'pad tail',
      section('job', el('div', 'fields one', lines[0].node, lines[1].node, date.node, lines[2].node), units, el('div', 'dos', way(t('settings.to_place'), to('place')))),
      ...parts.map((one) => one.node),
      el('div', 'dos', way(t('settings.to_catalogue'), to('catalogue')), way(t('settings.to_stock'), to('stock'))),
      el('p', 'note top', t('settings.governs')),
      ...groups.map((one) => one.node),
      section('device', themePick(), languagePick((language) => document.dispatchEvent(new CustomEvent('foamwright-language', { detail: language }))), ...padPicks(), copy,
        el('div', 'dos',
          el('button', { type: 'button', class: 'do line wide', click: () => void askNewer() }, t('settings.check')),
          el('button', { type: 'button', class: 'do line wide', click: () => void removeCopy().then(() => notify('copy_gone', 'watch', t('settings.copy_removed'), t('settings.copy_removed_do'))) }, t('settings.remove_copy')))))));
  void loadCatalogue().then(() => update());

  function update() {
    for (const one of [...lines, date, ...groups, ...parts]) one.update();
    if (drawnUnits !== store.job.units) {
      drawnUnits = store.job.units;
      units.replaceChildren(unitsPick(store));
    }
    say(copy, `${t('settings.version', { version })} ${t(`page.offline.${offline()}`)}`);
  }

  return { title: t('settings.title'), update };
}

/** @param {string} key @param {...Node} inside */
function section(key, ...inside) {
  const notes = `settings.${key}_note`;
  return el('section', { id: `settings-${key}` }, el('h2', 'bar', t(`settings.${key}`)), has(notes) && el('p', 'note', t(notes)), ...inside);
}

/** Whether the tape pad comes, and for which thumb. */
function padPicks() {
  return [
    pick(t('settings.pad'), [['auto', t('settings.pad_auto')], ['on', t('settings.pad_on')], ['off', t('settings.pad_off')]], getPrefs().pad ?? 'auto', (pad) => {
      setPrefs({ pad: pad === 'auto' ? undefined : pad });
      showPad();
    }),
    el('p', 'note', t('settings.pad_note')),
    pick(t('settings.hand'), [['right', t('settings.hand_right')], ['left', t('settings.hand_left')]], getPrefs().hand ?? 'right', (hand) => setPrefs({ hand: hand === 'left' ? hand : undefined })),
  ];
}

async function askNewer() {
  const answer = await check(true);
  notify('check', answer === 'unreachable' ? 'watch' : 'go', t(`settings.check_${answer}`));
}

/**
 * The job's sheets of a kind: open one, choose the foam, add from the catalogue or a blank one.
 * @param {import('./store.js').Store} store
 * @param {'foam' | 'kit'} part
 */
function sheetList(store, part) {
  const rows = el('ul', 'rows');
  const adds = el('div', 'dos');
  const node = section(`${part}s`, rows, adds);
  let before = '';

  /** @param {import('./changes.js').Sheet} [sheet] */
  const add = (sheet) => {
    const id = store.job.next_id;
    store.dispatch(part === 'foam' ? { do: 'add_foam', sheet } : { do: 'add_kit', sheet });
    go(to(part, id));
  };

  function update() {
    const all = part === 'foam' ? store.job.foams : store.job.kits;
    list(rows, all, (one) => one.id, (one) => sheetRow(store, part, one.id));
    const offers = sheets(part).filter((one) => !all.some((other) => other.sheet === one.sheet));
    const mine = own(part);
    const signature = JSON.stringify([offers.map((one) => [one.sheet, one.name]), mine.map((one) => one.sheet)]);
    if (signature === before) return;
    before = signature;
    adds.replaceChildren(
      ...offers.map((sheet) => el('div', 'offer',
        el('button', { type: 'button', class: 'do line', click: () => add(sheet) }, t('settings.add_sheet', { name: sheet.name || t(`settings.${part}_unnamed`) })),
        mine.includes(sheet) || mine.some((one) => one.sheet === sheet.sheet) ? el('button', {
          type: 'button', class: 'link', 'aria-label': t('settings.drop_sheet_of', { name: sheet.name }),
          click: () => {
            dropSheet(part, sheet.sheet);
            update();
          },
        }, t('settings.drop_sheet')) : '')),
      el('button', { type: 'button', class: 'do line wide', click: () => add() }, t(`settings.add_blank_${part}`)));
  }
  return { node, update };
}

/** @param {import('./store.js').Store} store @param {'foam' | 'kit'} part @param {number} id @returns {import('./list.js').Row<import('./job.js').FoamSheet | import('./job.js').KitSheet>} */
function sheetRow(store, part, id) {
  const name = el('b');
  const about = el('small');
  const chosen = el('input', { type: 'radio', name: 'job-foam', value: id, 'aria-label': '', change: () => store.dispatch({ do: 'foam', id: 0, foam: id }) });
  const node = el('li', part === 'foam' ? 'sheet-row' : 'press',
    el('a', { class: 'press', href: to(part, id) }, el('span', 'k', name, about), el('span', 'v act', t('settings.open_sheet'))),
    part === 'foam' ? el('label', 'switch', chosen, el('span', '', t('settings.job_foam'))) : '');
  return {
    node,
    update(sheet) {
      say(name, sheet.name.trim() || t(`settings.${part}_unnamed`));
      const moved = newer(part, sheet);
      say(about, moved ? t('settings.moved_on', { version: moved.version, mine: sheet.version }) : sheet.sheet.startsWith('sample-') ? t('settings.sample_short') : '');
      chosen.checked = store.job.foam === id;
      chosen.setAttribute('aria-label', t('settings.job_foam_of', { name: name.textContent ?? '' }));
    },
  };
}
