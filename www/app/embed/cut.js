// @ts-check
/**
 * The foam cut across, to scale: what it is sprayed on, its face as uneven as it may be, and the depth to aim at. Of a
 * rim also what stands above and below it. A surface overhead has its foam below.
 */
import { hatched } from '../drawing/hatches.js';
import { figures } from '../figures.js';
import { nameOf, squareWords } from '../named.js';
import { framed } from '../parts.js';
import { d, drawing, foam, grid, line, r2, rect, s, square, text, twoLines } from '../svg.js';
import { need, t } from '../words.js';

/** @typedef {import('../core.js').Depth} Depth */

/** Resolves when its words are there. */
export const ready = () => need('embed_ways');

/** The most and the least pixels to an inch: what was mistyped is drawn past the edge. */
const [LARGEST, LEAST] = [13, 1];
/** How high a cut through something upright is, and where a rim begins and how high it is. */
const [HIGH, TOP, RIM] = [164, 20, 122];
/** How thick what the foam is on is drawn, and where its face is: from the left, or from the top where it is overhead. */
const [THICK, FACE, UNDER] = [20, 84, 32];
/** Room for what is said beside the foam, and below it. */
const [BESIDE, BELOW] = [128, 64];
const OVERHEAD = ['framed_floor', 'framed_slope'];
/** What is behind, by what it is part of; nothing is said of what nobody has told. @type {Record<string, import('../drawing/hatches.js').Hatch>} */
const ON = { rim_run: 'wood', framed_wall: 'wood', framed_floor: 'wood', framed_slope: 'wood', mass_wall_inside: 'masonry', mass_wall_outside: 'masonry', basement_wall: 'masonry', crawl_wall: 'masonry' };

/**
 * @param {import('../store.js').Store} store @param {import('../job.js').Surface} surface @param {Depth} depth
 * @param {import('../core.js').SurfaceArea | undefined} area @param {number} width
 */
export function cut(store, surface, depth, area, width) {
  const w = figures(store.job.units);
  const aim = depth.aim_in.likely;
  const over = OVERHEAD.includes(surface.shape);
  const rim = surface.shape === 'rim_run';
  const band = rim ? area?.measures.find((one) => one.field === 'band')?.value.likely : undefined;
  const low = depth.promised_in;
  const high = Math.max(aim, Math.min(depth.most_in, 2 * aim - low));
  const k = Math.max(LEAST, Math.min(LARGEST, (over ? HIGH - UNDER : width - FACE - BESIDE) / high, band ? RIM / band : LARGEST));
  const thinnest = depth.promised_r && area?.claims_r !== false ? t('embed_ways.cut_thin', { r: w.r(depth.promised_r) }) : '';
  const words = { aim: w.depth(aim), below: [t('embed_ways.cut_aim'), thinnest] };
  const face = { aim: aim * k, low: low * k, high: high * k };
  const on = ON[depth.component ?? ''] ?? ON[surface.shape] ?? 'plain';
  const { inches, count } = square(k, w.metric);
  const label = t('embed_ways.cut_label', { name: nameOf(surface), depth: words.aim }) + (thinnest && ` ${thinnest}.`);
  const height = over ? Math.max(HIGH, UNDER + face.high + BELOW) : HIGH;
  const from = rim ? TOP : 0;
  const run = over ? width : rim ? RIM : HIGH;
  const parts = [grid(width, height, over ? 0 : FACE, over ? UNDER : from, inches * k),
    ...over ? hatched(on, 0, UNDER - THICK, width, THICK) : rim ? frame(width) : hatched(on, FACE - THICK, -2, THICK, HIGH + 4),
    ...foamed(face, run, (u, v) => (over ? d(u, UNDER + v) : d(FACE + v, from + u))),
    ...over ? saidBelow(face, width, words) : saidBeside(face, width, from + run * 0.6, words), ...rim ? ends(face, width, band ? w.depth(band) : '') : []];
  return framed(drawing(width, height, label, parts), squareWords(w.metric, count));
}

/** A rim with the floor above it and the plate below. @param {number} width */
function frame(width) {
  const [left, foot] = [FACE - THICK, TOP + RIM];
  return [rect('wood', left, TOP, THICK, RIM), line('hair', d('M', left, TOP, 'L', FACE, foot, 'M', FACE, TOP, 'L', left, foot)),
    rect('wood', left, TOP - 10, width, 10), rect('wood', left, foot, 72, 20), line('hair', d('M', left, foot, 'l 72 20 m 0 -20 l -72 20'))];
}

/** What stands at the ends of a rim, by name, and how high it is. @param {{high: number}} face @param {number} width @param {string} band */
function ends({ high }, width, band) {
  const foot = TOP + RIM;
  const x = FACE + high + 18;
  const [y, at] = [TOP + RIM / 2, 44];
  return [...twoLines(t('embed_ways.cut_floor'), width - x - 6, 13.5).slice(0, 1).map((one) => text('q halo', x, TOP + 17, one)), text('q halo', Math.max(x, FACE + 60), foot + 15, t('embed_ways.cut_sill')),
    ...band ? [line('dim', d('M', at, TOP - 4, 'V', foot + 4)), line('hair', d('M', FACE - THICK - 4, TOP, 'H', at - 5, 'M', FACE - THICK - 4, foot, 'H', at - 5)),
      line('tick', d('M', at - 4, TOP + 4, 'l 8 -8 M', at - 4, foot + 4, 'l 8 -8')), s('text', { class: 'm halo b', transform: `translate(${at - 7} ${r2(y)}) rotate(-90)` }, band)] : []];
}

/**
 * The foam along a run: its face is thinnest at one spot, thickest at another, and as deep as the aim where the arrow is.
 * @param {{aim: number, low: number, high: number}} face @param {number} run @param {(along: number, out: number) => string} at
 */
function foamed({ aim, low, high }, run, at) {
  const { defs, fill } = foam();
  /** @type {[number, number][]} */
  const points = [[0, aim], [0.18, high], [0.4, low], [0.6, aim], [0.82, high], [1, aim]];
  const edge = points.map(([u, v], index) => {
    if (!index) return `M${at(0, v)}`;
    const [before, was] = points[index - 1];
    const mid = ((before + u) / 2) * run;
    return `C${at(mid, was)} ${at(mid, v)} ${at(u * run, v)}`;
  }).join('');
  return [defs, s('path', { d: `${edge}L${at(run, 0)}L${at(0, 0)}Z`, fill }), line('foamedge bold', edge), line('cut', `M${at(0, 0)}L${at(run, 0)}`),
    line('on', `M${at(run * 0.6, 0)}L${at(run * 0.6, aim)}`), ...[0, aim].map((v) => line('on tick', `M${at(run * 0.6, v)}m-4 4l8 -8`))];
}

/** @typedef {{aim: string, below: string[]}} Said */

/** @param {{high: number}} face @param {number} width @param {number} y @param {Said} words */
function saidBeside({ high }, width, y, { aim, below }) {
  const x = FACE + high + 18;
  const lines = below.filter(Boolean).flatMap((one) => twoLines(one, width - x - 6, 14));
  return [text('on xl halo', x, y - 10, aim), ...lines.map((one, at) => text('halo', x, y + 8 + 16 * at, one))];
}

/** @param {{high: number}} face @param {number} width @param {Said} words */
function saidBelow({ high }, width, { aim, below }) {
  const y = UNDER + high + 26;
  return [text('on xl halo', 16, y, aim), ...twoLines(below.filter(Boolean).join(' · '), width - 32, 13.5).map((one, at) => text('halo', 16, y + 18 + 15 * at, one))];
}
