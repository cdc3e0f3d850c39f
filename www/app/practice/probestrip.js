// @ts-check
/** Foam of uneven depth, cut across: so many equal parts, each as deep as it was probed. */
import { drawing, foam, line, r2, s, text } from '../svg.js';

const TALL = 92;
const TOP = 26;

/** @param {{inches: number, text: string}[]} depths @param {{width: number, label: string}} how */
export function probeStrip(depths, { width, label }) {
  const [left, right, floor] = [16, width - 16, TOP + TALL];
  const each = (right - left) / Math.max(1, depths.length);
  const most = Math.max(...depths.map((one) => one.inches), 0.01);
  const { defs, fill } = foam(true);
  /** @type {Node[]} */
  const parts = [defs];
  let edge = `M${left} ${floor}`;
  depths.forEach(({ inches, text: said }, at) => {
    const [x, y] = [left + at * each, floor - (inches / most) * TALL];
    parts.push(s('rect', { x, y, width: each, height: floor - y, fill }));
    if (at) parts.push(line('hair dash', `M${r2(x)} ${r2(y)}V${floor}`));
    edge += `L${r2(x)} ${r2(y)}H${r2(x + each)}`;
    parts.push(text('b m halo', x + each / 2, y - 7, said));
  });
  parts.push(line('foamedge bold', `${edge}V${floor}`), line('cut', `M${left - 6} ${floor}H${right + 6}`));
  return drawing(width, floor + 10, label, parts);
}
