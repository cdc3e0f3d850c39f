// @ts-check
/** A cut through everything that a surface is built of, from the outside in, with the numbers of the list. */
import { drawing, foam, rect, s, text } from '../svg.js';

/** @typedef {import('../core.js').Assembly} Assembly */

const WIDTH = 328;
const TALL = 74;

/**
 * The bands of a cut: their widths follow their thickness, but none is too narrow for its number.
 * @param {Pick<Assembly, 'layers' | 'foam_in'>} whole
 * @param {number} width
 * @returns {{kind: 'layer' | 'foam', id: number, material: string, airy: boolean, x: number, w: number}[]}  `id` 0 is the foam
 */
export function bands(whole, width) {
  const at = (/** @type {string} */ position) => whole.layers.filter((layer) => layer.position === position)
    .map((layer) => ({ kind: /** @type {const} */ ('layer'), id: layer.id, material: layer.material, airy: layer.airy, inches: layer.thickness_in ?? (layer.airy ? 3.5 : 0.5) }));
  const all = [...at('outside'), { kind: /** @type {const} */ ('foam'), id: 0, material: '', airy: false, inches: whole.foam_in }, ...at('cavity'), ...at('inside')];
  const least = Math.min(24, width / all.length);
  const spare = width - least * all.length;
  const inches = all.reduce((sum, one) => sum + one.inches, 0) || 1;
  let x = 0;
  return all.map(({ inches: thick, ...one }) => {
    const w = least + spare * (thick / inches);
    x += w;
    return { ...one, x: x - w, w };
  });
}

/** @param {Assembly} whole @param {{foam: string, out: string, in: string, of: (word: string) => string, nth: (id: number) => number, label: string}} words */
export function layerStrip(whole, words) {
  const { defs, fill } = foam();
  const cut = bands(whole, WIDTH - 2);
  const list = cut.map((one) => (one.kind === 'foam' ? words.foam : `${words.nth(one.id)} ${words.of(one.material)}`)).join(', ');
  return drawing(WIDTH, TALL + 22, `${words.label} ${list}`, [defs, ...cut.map((one) => {
    const band = (/** @type {string} */ kind) => rect(kind, one.x + 1, 1, one.w, TALL - 2);
    if (one.kind === 'foam') {
      const filled = s('rect', { x: one.x + 1, y: 1, width: one.w, height: TALL - 2, fill });
      return s('g', {}, filled, band('cut'), text('halo onfoam b m', one.x + 1 + one.w / 2, TALL / 2 + 5, words.foam));
    }
    return s('g', {}, band(one.airy ? 'void' : 'sheathed'), text('halo b m', one.x + 1 + one.w / 2, TALL / 2 + 5, String(words.nth(one.id))));
  }), text('halo q', 1, TALL + 16, words.out), text('halo q e', WIDTH - 1, TALL + 16, words.in)]);
}
