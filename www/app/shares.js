// @ts-check
/** Published shares of framing. */
import { fieldRow } from './calls.js';
import { el } from './list.js';
import { more } from './parts.js';
import { t } from './words.js';

/** Published framing shares, each one press. @param {import('./store.js').Store} store @param {number} id */
export const shares = (store, id) => more(t('surface.share_offer'), el('div', 'field wide',
  el('p', 'src', t('surface.share_source')),
  el('div', 'meanings', ...(fieldRow('surface', 'framing_share')?.choices ?? []).map((one) => el('button', {
    type: 'button', class: 'do line', click: () => store.dispatch({ do: 'entries', part: 'surface', id, entries: [{ field: 'framing_share', text: one }] }),
  }, t(`fields.choice.framing_share.${one}`))))));
