// @ts-check
/** What governs, in our words and, below, in the host's: theirs is added to ours and never stands in its place. */
import { el } from '../list.js';
import { t } from '../words.js';

/** @param {import('./settings.js').Settings} settings */
export function footPart({ company, disclaimer, contact }) {
  return el('footer', 'foot', el('p', 'note', t('embed.governs')),
    disclaimer ? el('p', 'note theirs', el('b', '', company ? t('embed.says', { company }) : t('embed.says_host')), ' ', disclaimer) : undefined,
    contact ? el('div', 'dos no-print', contactWay(contact)) : undefined,
    el('p', 'note', t('embed.private')));
}

/** Page addresses open a tab of their own; mail and telephone need none. @param {{name: string, link: string}} contact */
function contactWay({ name, link }) {
  const page = link.startsWith('https:');
  return el('a', { class: 'do line wide', href: link, ...(page ? { target: '_blank', rel: 'noopener noreferrer' } : {}) }, name, page ? el('span', 'vh', ` (${t('embed.new_tab')})`) : undefined);
}
