// @ts-check
/** Our invented foam and kits, for a host that has given none of its own. */

import { note } from '../parts.js';
import { t } from '../words.js';

/** @typedef {import('../changes.js').Sheet} Sheet */

/** The sheets that a job begins with: the host's, or samples in place of those that are not there. @param {import('./settings.js').Settings} settings */
export async function samples({ foams, kits }) {
  return {
    foams: foams.length ? foams : (await fetched('foams')).slice(0, 1),
    kits: kits.length ? kits : await fetched('kits'),
  };
}

/** What of the sheets is ours and not the company's, as a note; nothing where all are theirs. @param {import('./settings.js').Settings} settings */
export function examples({ foams, kits }) {
  const which = foams.length ? (kits.length ? '' : 'kits') : kits.length ? 'foam' : 'both';
  return which ? note('watch', t(`embed.invented_${which}`), t('embed.invented_do')) : undefined;
}

/** @param {'foams' | 'kits'} file @returns {Promise<Sheet[]>} */
async function fetched(file) {
  const answer = await fetch(new URL(`../sample/${file}.json`, import.meta.url));
  if (!answer.ok) throw new Error(`sample/${file}.json: ${answer.status}`);
  return answer.json();
}
