// @ts-check
/**
 * The estimate on paper: a leaf of its own, laid out only for printing, so that nothing which stands folded on the
 * screen is missing and no press is on it. It is fetched with the first change or the first press; what is printed
 * before that is the sheet as it stands.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 */
import { el, say } from '../list.js';
import { press } from '../parts.js';
import { t } from '../words.js';
import { cautions } from './cautions.js';
import { governs } from './foot.js';

/** @param {Store} store @param {Settings} settings */
export function printPart(store, settings) {
  const paper = el('div', { class: 'printed', hidden: true });
  const page = document.documentElement;
  page.classList.remove('papered');
  document.body.append(paper);
  /** @type {typeof import('./paper.js') | undefined} */
  let module;
  /** @type {Promise<void> | undefined} */
  let asked;
  const first = store.job;

  /** Resolves when the leaf can be laid out, or cannot be had: then the sheet prints as it stands. */
  function fetched() {
    asked ??= import('./paper.js').then(async (made) => {
      await made.ready();
      module = made;
    }).catch(() => { asked = undefined; });
    return asked;
  }

  let printing = false;

  function draw() {
    printing = true;
    if (!paper.isConnected) removeEventListener('beforeprint', draw);
    else if (module && store.estimate) {
      paper.replaceChildren(...module.leaf(store, settings, cautions(store), governs(settings)));
      page.classList.add('papered');
    }
  }
  // The browser's own way to print comes here too.
  addEventListener('beforeprint', draw);

  const status = el('p', { class: 'note', role: 'status' });
  const node = el('div', 'no-print', el('div', 'dos', press(t('embed_ways.print'), 'print', () => void print())), status);

  async function print() {
    await fetched();
    printing = false;
    window.print();
    // A frame may be kept from printing: then nothing has begun.
    say(status, printing ? '' : t('embed_ways.no_print'));
  }

  return {
    node,
    update() {
      if (store.job !== first) void fetched();
    },
  };
}
