// @ts-check
/** The cautions that stand under every estimate, whatever a host switches off, each with where it is from. */
import { el } from '../list.js';
import { mark } from '../marks.js';
import { t } from '../words.js';

/** In the order in which they are told; `embed.caution.<key>`, `_do`, `_src`. */
export const CAUTIONS = /** @type {const} */ (['out', 'breath', 'bare', 'flames', 'flues', 'wiring', 'hands', 'estimate']);

/** Each caution with its source. */
export const cautions = () => CAUTIONS.map((key) => el('div', 'say watch', mark('watch'), el('span', '', el('b', '', t(`embed.caution.${key}`)), ' ',
  t(`embed.caution.${key}_do`), el('span', 'src', t(`embed.caution.${key}_src`)))));

/** The cautions as a section of the sheet. */
export const cautionPart = () => el('section', { class: 'cautions', 'aria-labelledby': 'cautions' }, el('h2', { id: 'cautions' }, t('embed.cautions')),
  el('ul', '', ...cautions().map((one) => el('li', '', one))));
