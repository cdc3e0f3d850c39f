// @ts-check
/**
 * What stands in "Take this with me": what the visitor entered, as a link into the full tool or as a job file. The link
 * is made when the panel is opened and after each change while it stands open. A frame may be kept from opening tabs, from
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
import { priced, unpriced } from './estimated.js';
import { invented } from './samples.js';

/** The full tool: this module lies in a folder of the hashed folder, and that one in the site's root. */
const TOOL = new URL('../../index.html', import.meta.url).href;

/** What is added to the price of the kits. */
const CHARGES = ['sales_tax', 'delivery'];

/**
 * The visitor's job as it is taken: with a name by which it is found again where it had none, and with a note of what
 * in it is an example of ours; then it does not go under the company's name either. Prices go along where they are
 * shown. Kits without a price cannot be compared, so those that stand here go along as chosen.
 * @param {Pick<Store, 'job' | 'estimate'>} store @param {Pick<Settings, 'company' | 'foams' | 'kits' | 'sections'>} settings @returns {Job}
 */
export function taken({ job, estimate }, settings) {
  const { company, sections } = settings;
  const ours = invented(settings);
  const { buy, too_big: big } = estimate?.purchase ?? {};
  const shown = sections.has('price');
  const kits = shown ? job.kits : unpriced(job.kits);
  return {
    ...job,
    name: job.name.trim() || (company && !ours.length ? t('embed_ways.job_from', { company }) : t('embed_ways.job')),
    note: [job.note.trim(), ...ours].filter(Boolean).join(' '),
    entries: shown ? job.entries : job.entries.filter(({ field }) => !CHARGES.includes(field)),
    kits,
    ...(buy?.enough && !big && !priced(kits) ? { purchase: { buy: buy.buy, reason: '' } } : {}),
  };
}

/** @param {Store} store @param {Settings} settings @param {() => boolean} stands  whether the panel is open */
export function taking(store, settings, stands) {
  const open = el('a', { class: 'do wide', 'data-key': 'take-open', target: '_blank', rel: 'noopener' },
    t('embed_ways.open_tool'), el('span', 'vh', ` (${t('embed_ways.new_tab')})`));
  const length = el('p', 'note');
  const address = el('textarea', { id: 'take-link', rows: 3, readonly: true, spellcheck: 'false' });
  const status = el('p', { class: 'note', role: 'status' });
  const linked = el('div', { hidden: true }, el('div', 'dos', open, press(t('embed_ways.copy'), 'take-copy', () => void copyLink())),
    el('div', 'field full', el('label', { for: 'take-link' }, t('embed_ways.link')), el('span', 'box long', address)), length);
  const inside = [el('p', 'note', t('embed_ways.take_note')), linked, el('div', 'dos', press(t('embed_ways.save'), 'take-save', save)), status, el('p', 'note', t('embed_ways.nothing_happens'))];

  /** The job whose link is shown, or being made. @type {Job | undefined} */
  let packed;

  async function pack() {
    const { job } = store;
    if (!stands() || packed === job) return;
    packed = job;
    try {
      const { canLink, linkOf, LONG_LINK } = await import('../link.js');
      const link = canLink() ? await linkOf(taken(store, settings), TOOL) : '';
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
    const job = taken(store, settings);
    download(fileName(job), textOf(job));
    say(status, t('embed_ways.saved'));
  }

  return { inside, update: () => void pack() };
}
