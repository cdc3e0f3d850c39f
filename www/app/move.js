// @ts-check
/** Move or print: the open job as a link, a file, a message, a table or paper. */
import { kitsCsv, surfacesCsv } from './csv.js';
import { download, fileName, textOf } from './files.js';
import { nameOf } from './jobbook.js';
import { saveFile } from './jobways.js';
import { canLink, linkOf, LONG_LINK } from './link.js';
import { el, say } from './list.js';
import { messageOf } from './message.js';
import { hush, notify } from './notices.js';
import { head, press, way } from './parts.js';
import { canShare, copy, share } from './share.js';
import { to } from './view.js';
import { t } from './words.js';

export const words = ['takeoff', 'move', 'jobs', 'sheet', 'kits', 'ready'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const about = el('p', 'note');
  const length = el('p', 'note');
  const address = el('textarea', { id: 'link', rows: 3, readonly: true, spellcheck: 'false', 'aria-label': t('move.link') });
  const linkPart = el('div', {}, el('div', 'dos', press(t('move.copy_link'), 'copy-link', () => void copyLink())), length,
    el('details', 'more', el('summary', '', t('move.show_link')), el('div', 'field full', el('span', 'box long', address))));
  const text = el('p', { class: 'message', id: 'message' });
  root.append(el('main', '', top, el('div', 'pad tail',
    el('h2', 'bar', t('move.send')), about,
    el('div', 'dos',
      canShare() && press(t('move.share'), 'share', () => void shareJob(), 'wide'),
      press(t('jobs.save_file'), 'save', () => saveFile())),
    canLink() ? linkPart : el('p', 'note top', t('move.no_link')),
    el('h2', 'bar', t('move.message')), text,
    el('div', 'dos', canShare() && press(t('move.share_message'), 'share-message', () => void shareMessage()), press(t('move.copy_message'), 'copy-message', () => void told(copy(messageOf(store)), 'message'))),
    el('h2', 'bar', t('move.tables')), el('p', 'note', t('move.tables_note')),
    el('div', 'dos', press(t('move.surfaces_csv'), 'surfaces-csv', () => table('surfaces', surfacesCsv(store))), press(t('move.kits_csv'), 'kits-csv', () => table('kits', kitsCsv(store)))),
    el('h2', 'bar', t('move.paper')),
    el('div', 'dos', way(t('page.print'), to('paper', 'sheet'))),
    el('h2', 'bar', t('move.everything')), el('p', 'note', t('move.everything_note')),
    el('div', 'dos', way(t('move.backup'), to('backup'))))));

  /** The link of the job that is shown; made ahead, because sharing has to follow the press at once. */
  let link = '';
  /** @type {import('./job.js').Job | undefined} */
  let linked;

  async function makeLink() {
    const { job } = store;
    if (linked === job || !canLink()) return;
    linked = job;
    const made = await linkOf(job, location.href);
    if (linked !== job) return;
    link = made;
    address.value = link;
    say(length, [t('move.length', { n: link.length }), link.length > LONG_LINK ? t('move.long') : ''].filter(Boolean).join(' '));
  }

  /** What went into the clipboard, or where the text can be taken by hand. @param {Promise<boolean>} copied @param {'link' | 'message'} what */
  async function told(copied, what) {
    hush('copy');
    if (await copied) {
      notify('copy', 'go', t(`move.copied_${what}`), what === 'link' ? t('move.link_holds') : '');
      return;
    }
    notify('copy', 'watch', t('jobs.text_not_copied'), t(`move.by_hand_${what}`));
    if (what === 'link') {
      linkPart.querySelector('details')?.setAttribute('open', '');
      address.focus();
      address.select();
    } else getSelection()?.selectAllChildren(text);
  }

  async function copyLink() {
    await makeLink();
    await told(copy(link), 'link');
  }

  async function shareJob() {
    const { job } = store;
    const file = typeof File === 'function' ? new File([textOf(job)], fileName(job), { type: 'application/json' }) : undefined;
    const way = await share({ title: nameOf(job), file, url: linked === job ? link : '', text: messageOf(store) });
    if (way !== 'refused') return;
    if (link) await copyLink();
    else saveFile();
  }

  async function shareMessage() {
    const message = messageOf(store);
    if (await share({ title: nameOf(store.job), text: message }) === 'refused') await told(copy(message), 'message');
  }

  /** @param {'surfaces' | 'kits'} name @param {string} rows */
  function table(name, rows) {
    download(fileName(store.job, `${t(`move.file_${name}`)}.csv`), rows, 'text/csv');
  }

  function update() {
    top.replaceChildren(head({ back: [to('sheet'), t('page.to_sheet')], title: t('move.title'), sub: nameOf(store.job) }));
    say(about, t('move.holds'));
    say(text, messageOf(store));
    void makeLink();
  }

  return { title: t('move.title'), update };
}
