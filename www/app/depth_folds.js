// @ts-check
/**
 * What a depth hangs on besides the foam, folded away: what the surface is built of, the cover over the foam, and
 * the answers in every climate zone. Module and words of a fold are fetched when it is first opened.
 *
 * @typedef {import('./store.js').Store} Store
 * @typedef {{node: HTMLElement, update: () => void}} Part
 * @typedef {'built' | 'cover' | 'zones'} Name
 */
import { entryOf } from './changes.js';
import { el, say } from './list.js';
import { byId } from './parts.js';
import { style } from './styles.js';
import { has, need, t } from './words.js';

/** @type {[Name, () => Promise<{part: (store: Store, id: number) => Part}>][]} */
const FOLDS = [
  ['built', () => import('./builtof.js')],
  ['cover', () => import('./coverform.js')],
  ['zones', () => import('./allzones.js')],
];

/** What is open stays open on the way back from a figure's working. @type {Set<string>} */
const opened = new Set();

/** The folds of a surface. @param {Store} store @param {number} id */
export function depthFolds(store, id) {
  const folds = FOLDS.map(([name, fetched]) => fold(store, id, name, fetched));
  return { nodes: folds.map((one) => one.node), update: () => { for (const one of folds) one.update(); } };
}

/** @param {number} id @param {Name} name */
const foldId = (id, name) => `surface-${id}-fold-${name}`;

/** @param {Store} store @param {number} id @param {Name} name @param {() => Promise<{part: (store: Store, id: number) => Part}>} fetched */
function fold(store, id, name, fetched) {
  const key = `${store.job.id} ${id} ${name}`;
  const said = el('small');
  const body = el('div', 'folded');
  const node = el('details', { class: 'more no-print', id: foldId(id, name), open: opened.has(key) },
    el('summary', '', el('span', 'k', t(`depth.fold.${name}`), said)), body);
  /** @type {Part | undefined} */
  let part;
  /** @type {Promise<void> | undefined} */
  let coming;
  const fill = () => coming ??= Promise.all([fetched(), need('built'), style('built')]).then(([made]) => {
    part = made.part(store, id);
    body.replaceChildren(part.node);
    part.update();
  }, () => {
    coming = undefined;
    body.replaceChildren(el('p', 'note', t('depth.fold_missing')));
  });
  node.addEventListener('toggle', () => {
    if (!node.open) opened.delete(key);
    else opened.add(key);
    if (node.open) void fill();
    if (node.open) part?.update();
  });
  if (node.open) void fill();
  return {
    node,
    update: () => {
      say(said, answer(store, id, name));
      if (node.open) part?.update();
    },
  };
}

/** What has been said so far, for the line below a fold's name. @param {Store} store @param {number} id @param {Name} name */
function answer({ job }, id, name) {
  const said = (/** @type {'job' | 'surface'} */ part, /** @type {string} */ field) => {
    const word = entryOf(job, part, part === 'job' ? 0 : id, field)?.text;
    return word && t(has(`fields.choice.${field}.${word}`) ? `fields.choice.${field}.${word}` : `fields.choice.${word}`);
  };
  if (name === 'zones') return said('job', 'zone') ?? t('depth.fold_zone');
  // A rim is one by its shape; what stays exposed has no cover.
  if (name === 'built') return said('surface', 'component') ?? (byId(job.surfaces, id)?.shape === 'rim_run' ? t('fields.choice.component.rim') : t('depth.fold_open'));
  return said('surface', 'cover') ?? said('surface', 'exposure') ?? t('depth.fold_open');
}
