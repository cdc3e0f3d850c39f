// @ts-check
/**
 * "Take this with me": what the visitor entered, as a link into the full tool or as a job file. The link is made
 * when the panel is opened and after each change while it stands open. A frame may be kept from opening tabs, from
 * the clipboard and from handing out files; the field with the link is what is left then. Firefox takes a file for a
 * page that the frame goes to, and asks the policy of the page around for it: `frame-src` has to name `blob:`.
 *
 * @typedef {import('../job.js').Job} Job
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 */
import { download, fileName, textOf } from '../files.js';
import { el, say } from '../list.js';
import { press } from '../parts.js';
import { copy } from '../share.js';
import { t } from '../words.js';

/** The full tool: this module lies in a folder of the hashed folder, and that one in the site's root. */
const TOOL = new URL('../../index.html', import.meta.url).href;

/** The visitor's job as it is taken: with a name by which it is found again where it had none. @param {Job} job @param {Pick<Settings, 'company'>} settings @returns {Job} */
export function taken(job, { company }) {
  return { ...job, name: job.name.trim() || (company ? t('embed_ways.job_from', { company }) : t('embed_ways.job')) };
}

/** @param {Store} store @param {Settings} settings */
export function takePart(store, settings) {
  const open = el('a', { class: 'do wide', 'data-key': 'take-open', target: '_blank', rel: 'noopener' },
    t('embed_ways.open_tool'), el('span', 'vh', ` (${t('embed_ways.new_tab')})`));
  const length = el('p', 'note');
  const address = el('textarea', { id: 'take-link', rows: 3, readonly: true, spellcheck: 'false' });
  const status = el('p', { class: 'note', role: 'status' });
  const linked = el('div', { hidden: true }, el('div', 'dos', open, press(t('embed_ways.copy'), 'take-copy', () => void copyLink())),
    el('div', 'field full', el('label', { for: 'take-link' }, t('embed_ways.link')), el('span', 'box long', address)), length);
  const node = el('details', { class: 'more no-print take', toggle: () => void pack() }, el('summary', '', t('embed_ways.take')),
    el('div', 'folded', el('p', 'note', t('embed_ways.take_note')), linked,
      el('div', 'dos', press(t('embed_ways.save'), 'take-save', save)), status, el('p', 'note', t('embed_ways.nothing_happens'))));

  /** The job whose link is shown, or being made. @type {Job | undefined} */
  let packed;

  async function pack() {
    const { job } = store;
    if (!node.open || packed === job) return;
    packed = job;
    try {
      const { canLink, linkOf, LONG_LINK } = await import('../link.js');
      const link = canLink() ? await linkOf(taken(job, settings), TOOL) : '';
      if (packed === job) show(link, LONG_LINK);
    } catch {
      // Its module could not be fetched: the next change asks again, and the file needs none.
      packed = undefined;
      show('', 0);
    }
  }

  /** @param {string} link @param {number} long */
  function show(link, long) {
    linked.hidden = !link;
    address.value = link;
    if (link) open.href = link;
    say(length, [t('embed_ways.length', { n: link.length }), link.length > long ? t('embed_ways.long') : ''].filter(Boolean).join(' '));
    say(status, link ? '' : t('embed_ways.no_link'));
  }

  async function copyLink() {
    say(status, '');
    say(status, t(await copy(address.value) || copiedByHand() ? 'embed_ways.copied' : 'embed_ways.by_hand'));
  }

  /** Where the clipboard is refused the marked text can still be copied the old way, or by hand. */
  function copiedByHand() {
    address.focus();
    address.select();
    try {
      return document.execCommand('copy');
    } catch {
      return false;
    }
  }

  function save() {
    const job = taken(store.job, settings);
    download(fileName(job), textOf(job));
    say(status, t('embed_ways.saved'));
  }

  return { node, update: () => void pack() };
}
