// @ts-check
/** What governs, in our words and, below, in the host's: theirs is added to ours and never stands in its place. */
import { el } from '../list.js';
import { t } from '../words.js';

/** @typedef {import('./settings.js').Settings} Settings */

/** Who says what the host adds. @param {Settings} settings */
const says = ({ company }) => (company ? t('embed.says', { company }) : t('embed.says_host'));

/** What governs, as plain lines. @param {Settings} settings */
export const governs = (settings) => [t('embed.governs'), ...(settings.disclaimer ? [`${says(settings)} ${settings.disclaimer}`] : [])];

/** @param {Settings} settings */
export function footPart(settings) {
  const { disclaimer, contact } = settings;
  return el('footer', 'foot', el('p', 'note', t('embed.governs')),
    disclaimer ? el('p', 'note', el('b', '', says(settings)), ' ', disclaimer) : undefined,
    contact ? el('div', 'dos no-print', contactWay(contact)) : undefined,
    el('p', 'note', t('embed.private')));
}

/** Page addresses open a tab of their own; mail and telephone need none. @param {NonNullable<Settings['contact']>} contact */
function contactWay({ name, link }) {
  const page = link.startsWith('https:');
  return el('a', { class: 'do line wide', href: link, ...(page ? { target: '_blank', rel: 'noopener noreferrer' } : {}) }, name, page ? el('span', 'vh', ` (${t('embed.new_tab')})`) : undefined);
}
