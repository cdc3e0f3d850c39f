// @ts-check
/**
 * Job files: plain JSON of the job document. A file is opened by the core's own reader, which refuses what is
 * too long, too deep, foreign, newer or damaged, with the reason; nothing on the shelf is touched by that.
 *
 * @typedef {import('./job.js').Job} Job
 */
import { call } from './calls.js';

/** @typedef {{job: Job} | {refused: string, figures: Record<string, string | number>}} Opened */

/** More than a job file may hold, told before it is read into memory. */
export const MOST_BYTES = 2_000_000;

/** A job as the text of its file. @param {Job} job */
export function textOf(job) {
  return `${JSON.stringify(job, null, 1)}\n`;
}

/** A file name out of the job's name: letters and digits of any script. @param {Job} job @param {string} [ending] */
export function fileName(job, ending = 'foamwright.json') {
  const plain = job.name.normalize('NFKC').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '').slice(0, 60);
  return `${plain || 'job'}.${ending}`;
}

/** Hands a text over as a file. @param {string} name @param {string} text @param {string} [type] */
export function download(name, text, type = 'application/json') {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Opens a file that was chosen or dropped. @param {File} file @returns {Promise<Opened>} */
export async function openFile(file) {
  if (file.size > MOST_BYTES) return { refused: 'too_long', figures: {} };
  let text;
  try {
    text = await file.text();
  } catch {
    return { refused: 'unreadable', figures: {} };
  }
  return openText(text);
}

/** Opens the text of a job file. @param {string} text @returns {Opened} */
export function openText(text) {
  const opened = call('job_open', text.replace(/^\uFEFF/, ''));
  return told(opened);
}

/** Checks a job that is already a value, from the shelf. @param {unknown} value @returns {Opened} */
export function openValue(value) {
  return told(call('job_check', value));
}

/** @param {import('./core.js').Opened | undefined} opened @returns {Opened} */
function told(opened) {
  if (opened?.job) return { job: /** @type {Job} */ (opened.job) };
  const refused = opened?.refused;
  return { refused: refused?.why ?? 'not_now', figures: { version: refused?.version ?? 0, detail: refused?.detail ?? '' } };
}
