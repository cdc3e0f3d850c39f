// @ts-check
/** Handing things on through the device's own way of sharing, where it has one, or the clipboard. */

/** Whether the device can hand things to another app. */
export const canShare = () => typeof navigator.share === 'function';

/**
 * Offers the file, else the link, else the text: the first that the device takes. Some devices say that they
 * take a file and then refuse its kind, so a refusal goes on to the next.
 * @param {{title: string, file?: File, url?: string, text?: string}} what
 * @returns {Promise<'file' | 'url' | 'text' | 'put away' | 'refused'>}
 */
export async function share({ title, file, url, text }) {
  /** @type {['file' | 'url' | 'text', ShareData | undefined][]} */
  const ways = [
    ['file', file && { title, files: [file] }],
    ['url', url ? { title, url } : undefined],
    ['text', text ? { title, text } : undefined],
  ];
  for (const [way, data] of ways) {
    if (!data || !canShare()) continue;
    // Without `canShare` a device takes links and texts only.
    if (navigator.canShare ? !navigator.canShare(data) : way === 'file') continue;
    try {
      await navigator.share(data);
      return way;
    } catch (error) {
      if (error instanceof Error && error.name === 'AbortError') return 'put away';
    }
  }
  return 'refused';
}

/** Copies a text. @param {string} text @returns {Promise<boolean>} */
export async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
