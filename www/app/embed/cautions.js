// @ts-check
/** The cautions that stand under every estimate, whatever a host switches off, each with where it is from. */
import { el, list } from '../list.js';
import { mark } from '../marks.js';
import { t } from '../words.js';

/** @typedef {import('../store.js').Store} Store */

/** In the order in which they are told; `embed.caution.<key>`, `_do`, `_src`. */
export const CAUTIONS = /** @type {const} */ (['out', 'breath', 'bare', 'flames', 'flues', 'wiring', 'under', 'hands', 'estimate']);

/** What lies or may lie under a floor, over a basement or a crawlspace. @type {readonly string[]} */
const UNDER = ['rim_run', 'footprint', 'framed_floor'];

/** Those that hold for what is measured. @param {Store} store */
const told = ({ job }) => CAUTIONS.filter((key) => key !== 'under' || job.surfaces.some((one) => UNDER.includes(one.shape)));

/** @param {typeof CAUTIONS[number]} key */
const caution = (key) => el('div', 'say watch', mark('watch'), el('span', '', el('b', '', t(`embed.caution.${key}`)), ' ',
  t(`embed.caution.${key}_do`), el('span', 'src', t(`embed.caution.${key}_src`))));

/** Each caution with its source. @param {Store} store */
export const cautions = (store) => told(store).map(caution);

/** The cautions as a section of the sheet. @param {Store} store */
export function cautionPart(store) {
  const all = el('ul');
  const node = el('section', { class: 'cautions', 'aria-labelledby': 'cautions' }, el('h2', { id: 'cautions' }, t('embed.cautions')), all);
  return { node, update: () => list(all, told(store), (key) => key, (key) => ({ node: el('li', '', caution(key)) })) };
}
