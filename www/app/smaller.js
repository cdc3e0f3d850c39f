// @ts-check
/**
 * A picture made smaller on the device: at most 1600 px long for looking at it, 320 px for a strip, as JPEG. It is
 * painted anew, so that nothing of what a camera writes into its files (the place, above all) stays in it.
 */

const LONG = 1600;
const STRIP = 320;
const QUALITY = 0.82;

/** @param {Blob} file @returns {Promise<{picture: ArrayBuffer, thumb: ArrayBuffer}>} */
export async function smaller(file) {
  const { image, width, height, done } = await decode(file);
  try {
    return { picture: await jpeg(image, width, height, LONG), thumb: await jpeg(image, width, height, STRIP) };
  } finally {
    done();
  }
}

/** @param {Blob} file @returns {Promise<{image: CanvasImageSource, width: number, height: number, done: () => void}>} */
async function decode(file) {
  try {
    const image = await createImageBitmap(file);
    return { image, width: image.width, height: image.height, done: () => image.close() };
  } catch {
    // Some browsers show kinds of pictures (a phone's own, drawings) that they do not decode by that call.
    const image = new Image();
    const url = URL.createObjectURL(file);
    image.src = url;
    const done = () => URL.revokeObjectURL(url);
    try {
      await image.decode();
      if (!image.naturalWidth || !image.naturalHeight) throw new Error('a picture without a size');
    } catch (error) {
      done();
      throw error;
    }
    return { image, width: image.naturalWidth, height: image.naturalHeight, done };
  }
}

/** @param {CanvasImageSource} image @param {number} width @param {number} height @param {number} most @returns {Promise<ArrayBuffer>} */
async function jpeg(image, width, height, most) {
  const scale = Math.min(1, most / Math.max(width, height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const brush = canvas.getContext('2d');
  if (!brush) throw new Error('no canvas');
  // What is clear in a picture would be black in a JPEG.
  brush.fillStyle = '#fff';
  brush.fillRect(0, 0, canvas.width, canvas.height);
  brush.imageSmoothingQuality = 'high';
  brush.drawImage(image, 0, 0, canvas.width, canvas.height);
  /** @type {Blob | null} */
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  if (!blob) throw new Error('no picture');
  return blob.arrayBuffer();
}
