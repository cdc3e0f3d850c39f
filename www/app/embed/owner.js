// @ts-check
/** Tells the page's owner in the console what of the settings is not taken, and why; visitors see nothing of it. */
import { call } from '../calls.js';
import { need } from '../words.js';
import { checkSheets } from './sheetcheck.js';
import { faultText } from './faulttext.js';

/** @param {import('./settings.js').Settings} settings @param {import('./faults.js').Fault[]} faults found in reading them */
export async function tellOwner(settings, faults) {
  const all = [...faults, ...checkSheets(settings, call)];
  if (!all.length) return;
  await need('embed_faults');
  for (const fault of all) console.warn(faultText(fault));
}
