// @ts-check
/**
 * A whole job within a link: its JSON, deflated by the browser itself (raw DEFLATE, RFC 1951) and written in
 * base64url (RFC 4648 section 5, without padding) behind `#/open/`. A browser sends no fragment to a server
 * (RFC 3986 section 3.5), so the job goes only where the link goes.
 *
 * @typedef {import('./job.js').Job} Job
 */
import { MOST_BYTES } from './files.js';
import { LINK } from './view.js';

/** Longer than this, some apps cut a link or make no link of it. Common practice, no source. */
export const LONG_LINK = 2000;

/** Base64url of what no longer could be a job: nothing is decoded that is longer. */
const MOST_TEXT = Math.ceil(MOST_BYTES * 1.4);

/** So much is handed to the decompressor at a time: DEFLATE gives back at most 1032 times as much. */
const SLICE = 1024;

/** Whether this browser can make and open links. */
export function canLink() {
  return typeof CompressionStream === 'function' && typeof DecompressionStream === 'function';
}

/** The link to a job. @param {Job} job @param {string} page  the page's address; what follows `?` or `#` is left off */
export async function linkOf(job, page) {
  const bytes = new TextEncoder().encode(JSON.stringify(job));
  const packed = await new Response(sliced(bytes).pipeThrough(new CompressionStream('deflate-raw'))).arrayBuffer();
  return page.replace(/[?#].*$/s, '') + LINK + toText(new Uint8Array(packed));
}

/**
 * The text of the job in a link. Reading stops as soon as more comes out than a job file may hold.
 * @param {string} text
 * @returns {Promise<{text: string} | {refused: 'too_long' | 'cut' | 'no_links'}>}
 */
export async function unpack(text) {
  if (!canLink()) return { refused: 'no_links' };
  if (text.length > MOST_TEXT) return { refused: 'too_long' };
  // What a message puts after a link, a period or a bracket, is not of it.
  const bytes = fromText(text.replace(/[^\w-]+$/, ''));
  if (!bytes?.length) return { refused: 'cut' };
  const reader = sliced(bytes).pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let out = '';
  let length = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return { text: out + decoder.decode() };
      length += value.length;
      if (length > MOST_BYTES) {
        void reader.cancel().catch(() => {});
        return { refused: 'too_long' };
      }
      out += decoder.decode(value, { stream: true });
    }
  } catch {
    void reader.cancel().catch(() => {});
    return { refused: 'cut' };
  }
}

/** The bytes a little at a time, each slice only when the one before is used up. @param {Uint8Array<ArrayBuffer>} bytes @returns {ReadableStream<Uint8Array<ArrayBuffer>>} */
function sliced(bytes) {
  let at = 0;
  return new ReadableStream({
    pull(to) {
      if (at >= bytes.length) return to.close();
      to.enqueue(bytes.slice(at, at += SLICE));
    },
  }, { highWaterMark: 0 });
}

/** @param {Uint8Array} bytes */
function toText(bytes) {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}

/** @param {string} text @returns {Uint8Array<ArrayBuffer> | undefined} */
function fromText(text) {
  if (!/^[\w-]*$/.test(text)) return undefined;
  try {
    return Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), (one) => one.charCodeAt(0));
  } catch {
    return undefined;
  }
}
