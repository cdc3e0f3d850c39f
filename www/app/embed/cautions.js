// @ts-check
/** The cautions that stand under every estimate, whatever a host switches off, each with where it is from. */
import { el } from '../list.js';
import { mark } from '../marks.js';
import { t } from '../words.js';

/** In the order in which they are told; `embed.caution.<key>`, `_do`, `_src`. */
export const CAUTIONS = /** @type {const} */ (['out', 'breath', 'bare', 'flames', 'flues', 'wiring', 'hands', 'estimate']);

/** The cautions as a section of their own. */
export function cautionPart() {
  return el('section', { class: 'cautions', 'aria-labelledby': 'cautions' }, el('h2', { id: 'cautions' }, t('embed.cautions')),
    el('ul', '', ...CAUTIONS.map((key) => el('li', '', mark('watch'), el('div', '', el('b', '', t(`embed.caution.${key}`)), ' ', t(`embed.caution.${key}_do`), el('span', 'src', t(`embed.caution.${key}_src`)))))));
}
