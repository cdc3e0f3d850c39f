// @ts-check
/**
 * "Take this with me". What stands in it is fetched with the first change, or when it is opened.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 */
import { el } from '../list.js';
import { need, t } from '../words.js';

/** @param {Store} store @param {Settings} settings */
export function takePart(store, settings) {
  const folded = el('div', 'folded');
  const node = el('details', { class: 'more no-print take', toggle: () => void fill() }, el('summary', '', t('embed_ways.take')), folded);
  const first = store.job;
  /** @type {{update: () => void} | undefined} */
  let made;
  /** @type {Promise<void> | undefined} */
  let asked;

  function fetched() {
    asked ??= Promise.all([import('./taking.js'), need('embed_ways')]).then(([{ taking }]) => {
      const { inside, update } = taking(store, settings, () => node.open);
      made = { update };
      folded.replaceChildren(...inside);
    }).catch(() => {
      asked = undefined;
      folded.replaceChildren(el('p', 'note', t('embed_ways.no_take')));
    });
    return asked;
  }

  async function fill() {
    if (node.open) await fetched();
    made?.update();
  }

  return {
    node,
    update() {
      if (node.open || store.job !== first) void fetched().then(() => made?.update());
    },
  };
}
