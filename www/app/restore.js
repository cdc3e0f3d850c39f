// @ts-check
/** A backup of everything here, and what an opened backup would change before it does. */
import { backupText, changes, mergeSheets, plan, readBackup, takeJobs } from './backup.js';
import { allOwn, keepAllOwn } from './catalogue.js';
import { download, openText } from './files.js';
import { allJobs, reopen, theShelf } from './jobbook.js';
import { el, list, say } from './list.js';
import { mark } from './marks.js';
import { hush, notify } from './notices.js';
import { head } from './parts.js';
import { getPrefs, setPrefs } from './prefs.js';
import { newId } from './shelf.js';
import { to } from './view.js';
import { has, locale, t } from './words.js';

/** @typedef {import('./backup.js').Item} Item */

export const words = ['move', 'jobs'];

/** Told before a file is read into memory. UTF-8 takes up to 3 bytes a character. */
const MOST_BYTES = 60_000_000;
const tab = newId();
const copyName = (/** @type {string} */ name) => t('move.from_backup', { name: name.trim() || t('page.unnamed') });

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  /** @type {import('./backup.js').Backup | undefined} */
  let backup;
  /** @type {Item[]} */
  let items = [];
  /** What the person left out, by key. @type {Set<string>} */
  const left = new Set();
  const count = el('p', 'note');
  const rows = el('ul', 'rows');
  const sum = el('p', 'note');
  const take = el('button', { type: 'button', class: 'do wide', click: () => void takeIn() });
  const heading = el('h2', { class: 'bar', tabindex: -1 });
  const found = el('section', { id: 'found', hidden: true }, heading, sum, rows, el('div', 'dos', take));
  const input = el('input', {
    type: 'file', id: 'backup-file', accept: '.json,application/json', class: 'vh', 'aria-label': t('move.open_backup'),
    change: () => {
      const file = input.files?.[0];
      input.value = '';
      if (file) void open(file);
    },
  });
  root.append(el('main', '', head({ back: [to('jobs'), t('page.to_jobs')], title: t('move.backup_title') }), el('div', 'pad tail',
    el('p', 'note', t('move.backup_holds')), count,
    el('div', 'dos',
      el('button', { type: 'button', class: 'do wide', click: () => save() }, t('move.save_backup')),
      el('span', 'file-press', input, el('label', { class: 'do line', for: 'backup-file' }, t('move.open_backup')))),
    found)));

  function save() {
    store.keepNow();
    const records = allJobs().flatMap((one) => (one.record ? [one.record] : []));
    const now = new Date();
    const day = [now.getFullYear(), String(now.getMonth() + 1).padStart(2, '0'), String(now.getDate()).padStart(2, '0')].join('-');
    download(`foamwright-${t('move.file_backup')}-${day}.json`, backupText({ records, sheets: allOwn(), prefs: getPrefs(), now: now.getTime() }));
  }

  /** @param {File} file */
  async function open(file) {
    hush('refused');
    const text = file.size > MOST_BYTES ? undefined : await file.text().catch(() => '');
    const read = text === undefined ? { refused: 'too_long_backup', figures: {} } : readBackup(text);
    backup = 'backup' in read ? read.backup : undefined;
    left.clear();
    draw();
    if ('refused' in read) notify('refused', 'hold', t('jobs.not_opened', { name: file.name }), refusal(read.refused, read.figures));
    else heading.focus();
  }

  /** The list as things stand now. */
  function draw() {
    store.keepNow();
    items = backup ? plan(backup, { shelf: theShelf(), sheets: allOwn(), units: getPrefs().units, open: openText, copyName }) : [];
    found.hidden = !backup;
    say(heading, t('move.found', { when: backup?.made ? when(backup.made) : t('move.no_date') }));
    list(rows, items, (item) => item.key, itemRow);
    total();
    update();
  }

  function total() {
    const n = items.filter((item) => changes(item) && !left.has(item.key)).length;
    take.hidden = n === 0;
    say(take, t('move.take', { n }));
    say(sum, items.some(changes) ? t('move.nothing_yet') : t('move.nothing_new'));
  }

  /** @param {Item} first @returns {import('./list.js').Row<Item>} */
  function itemRow(first) {
    const name = el('b');
    const below = el('small');
    const state = el('span', 'v');
    const box = el('input', { type: 'checkbox', id: `take-${first.key}`, change: () => {
      if (box.checked) left.delete(first.key);
      else left.add(first.key);
      total();
    } });
    const label = el('label', 'switch', box, el('span', 'k', name, below));
    const plain = el('span', 'k');
    const node = el('li', 'found', label, plain, state);
    return {
      node,
      update(item) {
        say(name, item.kind === 'prefs' ? t('move.units_are', { units: t(`page.units_${item.name}`) }) : item.name.trim() || t(`move.unnamed_${item.kind}`));
        say(below, describe(item));
        state.replaceChildren(item.state === 'left_out' ? mark('watch') : '', item.state === 'left_out' ? '\u00a0' : '', t(`move.state.${item.state}`));
        const may = changes(item);
        label.hidden = !may;
        plain.hidden = may;
        if (may) label.lastElementChild?.append(name, below);
        else plain.append(name, below);
        box.checked = !left.has(item.key);
      },
    };
  }

  async function takeIn() {
    if (!backup) return;
    await store.settled();
    const seen = signature(items);
    draw();
    if (signature(items) !== seen) {
      notify('restored', 'watch', t('move.moved'), t('move.moved_do'));
      return;
    }
    const chosen = items.filter((item) => changes(item) && !left.has(item.key));
    const done = takeJobs(theShelf(), chosen.filter((item) => item.kind === 'job'), { tab, now: Date.now(), newId, copyName });
    if ('fault' in done) {
      draw();
      notify('restored', 'hold', t(`move.fault_${done.fault}`), t('move.fault_do'));
      return;
    }
    const before = allOwn();
    /** @type {import('./backup.js').Sheets} */
    const after = { ...before };
    for (const part of Object.keys(before)) after[part] = mergeSheets(before[part], chosen.filter((item) => item.kind === part), { newId, copyName });
    const sheetsMoved = JSON.stringify(after) !== JSON.stringify(before);
    if (sheetsMoved && !keepAllOwn(after)) {
      done.undo();
      draw();
      notify('restored', 'hold', t('move.fault_full'), t('move.fault_do'));
      return;
    }
    const units = chosen.some((item) => item.kind === 'prefs') ? backup.prefs.units : undefined;
    const unitsBefore = getPrefs().units;
    if (units) setPrefs({ units });
    await reopen(done.ids);
    draw();
    notify('restored', 'go', t('move.taken', { n: chosen.length }), t('move.taken_do'), {
      focus: true,
      presses: [[t('move.put_back'), () => void putBack()]],
    });

    /** Takes back what was taken in; what was changed since stays. */
    async function putBack() {
      store.keepNow();
      await store.settled();
      const back = 'undo' in done ? done.undo() : [];
      let stays = back.filter((one) => !one.back).length;
      if (sheetsMoved) {
        if (JSON.stringify(allOwn()) === JSON.stringify(after)) keepAllOwn(before);
        else stays += 1;
      }
      if (units && getPrefs().units === units) setPrefs({ units: unitsBefore });
      await reopen(back.filter((one) => one.back).map((one) => one.id));
      draw();
      notify('restored', stays ? 'watch' : 'go', t('move.is_back'), stays ? t('move.stays', { n: stays }) : '');
    }
  }

  function update() {
    const all = allJobs();
    const damaged = all.filter((one) => !one.record).length;
    say(count, [t('move.so_many', { n: all.length - damaged }), damaged ? t('move.not_in', { n: damaged }) : ''].filter(Boolean).join(' '));
  }

  return { title: t('move.backup_title'), update };
}

/** @param {Item[]} items */
const signature = (items) => JSON.stringify(items.map(({ key, state, text, here }) => [key, state, text, here]));

const when = (/** @type {number} */ ms) => new Date(ms).toLocaleString(locale(), { dateStyle: 'medium', timeStyle: 'short' });

/** @param {string} why @param {{[name: string]: string | number}} [figures] */
const refusal = (why, figures) => t(`${has(`move.refused.${why}`) ? 'move' : 'jobs'}.refused.${why}`, figures);

/** What an item is, and what of it stands where. @param {Item} item */
function describe(item) {
  if (item.state === 'left_out') return refusal(item.why ?? 'damaged', item.figures);
  const kind = t(`move.kind.${item.kind}`);
  const { here, there } = item;
  if (there === undefined || item.state === 'same') return kind;
  const write = (/** @type {number} */ at) => (item.kind === 'job' ? (at ? when(at) : t('move.no_date')) : String(at));
  if (here === undefined) return `${kind} · ${t('move.there', { there: write(there) })}`;
  return `${kind} · ${t(item.kind === 'job' ? 'move.both_saved' : 'move.both_versions', { here: write(here), there: write(there) })}`;
}
