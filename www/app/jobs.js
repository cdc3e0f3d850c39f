// @ts-check
/** The jobs shelf: every kept job, and the ways in and out of it. */
import { allJobs, nameOf, onShelf, openJob, openSample } from './jobbook.js';
import { copyJob, deleteJob, duplicateJob, newJob, renameJob, saveFile, takeIn } from './jobways.js';
import { download, openValue } from './files.js';
import { el, list } from './list.js';
import { notify } from './notices.js';
import { head, way } from './parts.js';
import { go, to } from './view.js';
import { locale, t } from './words.js';

export const words = ['jobs'];

/** @param {HTMLElement} root @param {import('./store.js').Store} store @returns {import('./view.js').View} */
export function mount(root, store) {
  const shelf = el('ul', 'rows shelf');
  const none = el('p', 'note');
  const input = el('input', {
    type: 'file', id: 'job-file', accept: '.json,application/json', class: 'vh', 'aria-label': t('jobs.take_in'),
    change: () => {
      const file = input.files?.[0];
      input.value = '';
      if (file) void takeIn(file);
    },
  });
  const sample = el('button', { type: 'button', class: 'do line wide', click: () => void openSample().then(() => go(to('sheet'))) }, t('jobs.open_sample'));

  root.append(el('main', '',
    head({ back: [to('sheet'), t('page.to_sheet')], title: t('jobs.title') }),
    el('div', 'pad tail',
      el('div', 'dos two', el('button', { type: 'button', class: 'do', click: () => void newJob().then(() => go(to('sheet'))) }, t('jobs.new')),
        el('span', 'file-press', input, el('label', { class: 'do line', for: 'job-file' }, t('jobs.take_in')))),
      none, shelf,
      el('h2', 'bar', t('jobs.this_job')),
      el('div', 'dos',
        way(t('jobs.move'), to('move')),
        el('button', { type: 'button', class: 'do line wide', click: () => saveFile() }, t('jobs.save_file')),
        el('button', {
          type: 'button', class: 'do line wide',
          click: async () => {
            if (await copyJob()) notify('copy', 'go', t('jobs.text_copied'));
            else notify('copy', 'watch', t('jobs.text_not_copied'), t('jobs.text_not_copied_do'));
          },
        }, t('jobs.copy_text')),
        sample, way(t('jobs.backup'), to('backup'))),
      el('p', 'note top', t('jobs.draft')), el('p', 'note', t('jobs.forgetful')))));

  const stop = onShelf(() => update());

  function update() {
    const all = allJobs();
    none.textContent = t('jobs.none');
    none.hidden = all.length > 0;
    sample.hidden = store.keeping === 'sample';
    list(shelf, all, (one) => one.id, (one) => (one.record ? jobRow(store, one.id) : damagedRow(one)));
  }

  return { title: t('jobs.title'), update, unmount: stop };
}

/** @param {import('./store.js').Store} store @param {string} id @returns {import('./list.js').Row<import('./shelf.js').Listed>} */
function jobRow(store, id) {
  const name = el('b');
  const about = el('small');
  const value = el('span', 'v act');
  const opens = el('button', { type: 'button', class: 'press', click: () => void openJob(id).then((ok) => ok && go(to('sheet'))) },
    el('span', 'k', name, about), value);
  const edit = el('input', { type: 'text', id: `rename-${id}`, autocomplete: 'off', input: () => renameJob(id, edit.value) });
  const label = el('label', { for: `rename-${id}` }, t('jobs.name'));
  const renaming = el('div', { class: 'field full', hidden: true }, label, el('span', 'box text', edit));
  /** @param {string} key @param {() => void} act @param {Record<string, string>} [more] */
  const press = (key, act, more = {}) => el('button', { type: 'button', class: 'link', click: act, ...more }, t(`jobs.${key}`));
  const rename = press('rename', () => {
    renaming.hidden = !renaming.hidden;
    rename.setAttribute('aria-expanded', String(!renaming.hidden));
    if (!renaming.hidden) edit.focus();
  }, { 'aria-expanded': 'false' });
  const presses = [rename, press('duplicate', () => void duplicateJob(id).then(() => go(to('sheet')))), press('file', () => saveFile(id)), press('delete', () => void deleteJob(id))];
  const node = el('li', 'job', opens, el('div', 'moves', ...presses), renaming);
  return {
    node,
    update(one) {
      const record = one.record;
      if (!record) return;
      const here = store.job.id === id;
      const job = here ? store.job : record.job;
      const newer = !here && !('job' in openValue(record.job));
      name.textContent = nameOf(job);
      const when = new Date(record.saved_at).toLocaleString(locale(), { dateStyle: 'medium', timeStyle: 'short' });
      about.textContent = [job.place, newer ? t('jobs.newer') : t('jobs.saved', { when })].filter(Boolean).join(' · ');
      value.textContent = here ? t('jobs.open_now') : '';
      node.classList.toggle('here', here);
      for (const one of presses) one.setAttribute('aria-label', t('jobs.press_of', { press: one.textContent ?? '', name: nameOf(job) }));
      if (document.activeElement !== edit) edit.value = job.name;
    },
  };
}

/** A key that holds no job that can be understood: left as it is, and handed over on demand. @param {import('./shelf.js').Listed} one @returns {import('./list.js').Row<import('./shelf.js').Listed>} */
function damagedRow({ id, damaged }) {
  return {
    node: el('li', 'job', el('span', 'k', el('b', '', t('jobs.damaged')), el('small', '', t('jobs.damaged_do', { id }))),
      el('div', 'moves', el('button', { type: 'button', class: 'link', click: () => download(`${id}.json`, damaged ?? '') }, t('jobs.file')),
        el('button', { type: 'button', class: 'link', click: () => void deleteJob(id) }, t('jobs.delete')))),
  };
}
