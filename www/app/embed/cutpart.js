// @ts-check
/**
 * The foam cut across at the top of a card, as deep as it is to be. What draws it is fetched when somebody first turns to
 * the card; until then the figures stand in its place, which is as high.
 */
import { el } from '../list.js';
import { figures } from '../figures.js';
import { byId, redraw } from '../parts.js';
import { fitted } from './drawingpart.js';

/** @typedef {import('../store.js').Store} Store */

/** @type {typeof import('./cut.js') | undefined} */
let draws;

/** @param {Store} store @param {number} id */
export function cutPart(store, id) {
  const node = el('div', 'bleed cut-part');
  const room = fitted(node, draw);

  function draw() {
    const surface = byId(store.job.surfaces, id);
    const one = store.estimate && byId(store.estimate.surfaces, id);
    const depth = one?.depth;
    node.hidden = !depth;
    if (!surface || !depth) return;
    const w = figures(store.job.units);
    redraw(node, [draws?.cut(store, surface, depth, one.area, room())
      ?? el('p', 'draw', el('b', '', w.depth(depth.aim_in.likely)), depth.promised_r && one.area?.claims_r !== false ? w.r(depth.promised_r) : undefined)]);
    if (one.area) fetched();
  }

  /** Without it the figures stand all the same; the next change asks again. */
  function fetched() {
    if (draws) return;
    void import('./cut.js').then(async (module) => {
      await module.ready();
      draws = module;
      draw();
    }, () => undefined).catch(() => undefined);
  }

  return { node, update: draw, fetched };
}
