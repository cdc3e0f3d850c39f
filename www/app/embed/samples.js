// @ts-check
/** Our invented foam and kits, for a host that has given none of its own. */

import { note } from '../parts.js';
import { t } from '../words.js';
import { unpriced } from './estimated.js';

/** @typedef {import('../changes.js').Sheet} Sheet */

/**
 * The sheets that a job begins with: the host's, or samples in place of those that are not there. Their prices are
 * invented: none is in the job, so that nobody takes one for the company's, here or wherever the job is opened.
 * @param {import('./settings.js').Settings} settings
 */
export async function samples({ foams, kits }) {
  return {
    foams: foams.length ? foams : (await fetched('foams')).slice(0, 1),
    kits: kits.length ? kits : unpriced(await fetched('kits')),
  };
}

/** What of the sheets is ours and not the company's, in words; none where all are theirs. @param {Pick<import('./settings.js').Settings, 'foams' | 'kits'>} settings */
export function invented({ foams, kits }) {
  const which = foams.length ? (kits.length ? '' : 'kits') : kits.length ? 'foam' : 'both';
  return which ? [t(`embed.invented_${which}`), t('embed.invented_do')] : [];
}

/** The same as a note; nothing where all are theirs. @param {import('./settings.js').Settings} settings */
export function examples(settings) {
  const [what, todo] = invented(settings);
  return what ? note('watch', what, todo) : undefined;
}

/** @param {'foams' | 'kits'} file @returns {Promise<Sheet[]>} */
async function fetched(file) {
  const answer = await fetch(new URL(`../sample/${file}.json`, import.meta.url));
  if (!answer.ok) throw new Error(`sample/${file}.json: ${answer.status}`);
  return answer.json();
}
