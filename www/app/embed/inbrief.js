// @ts-check
/**
 * The answer in few figures, each with what it is of: as the cells of the answer show it, and in one line under the
 * depth of each surface, so that it is in sight when a depth is pressed.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 * @typedef {{figure: string, below: string, working: string, kind: string}} Figure  `working`: what opens its working
 */
import { bare, figures, isRange } from '../figures.js';
import { el } from '../list.js';
import { redraw } from '../parts.js';
import { worked } from './settled.js';
import { t } from '../words.js';

/** @param {Store} store @param {Settings} settings @param {import('../core.js').Estimate} estimate @returns {Figure[]} */
export function inBrief(store, settings, { quantity, purchase, spraying }) {
  const w = figures(store.job.units);
  const has = (/** @type {import('./settings.js').Section} */ one) => settings.sections.has(one);
  const { n, of } = worked(store);
  const none = n === 0;
  const partly = !none && n < of;
  const up = quantity.to_spray_up;
  const big = purchase.too_big;
  const kits = big ? big.largest_kits : purchase.buy?.kits;
  const { price } = purchase;
  const part = partly ? 'part' : '';
  const figure = (/** @type {string} */ figure, /** @type {string} */ below, /** @type {string} */ working, kind = part) => ({ figure: none ? '–' : figure, below, working: none ? '' : working, kind });
  return [
    figure(bare(w.foam(up.likely)), none || !partly && !isRange(up) ? t('sheet.board_feet', { n: none ? 0 : up.likely })
      : partly ? t('embed.feet_partly', { n, of }) : t('embed.feet_range', { low: bare(w.foam(up.low)), high: bare(w.foam(up.high)) }), 'quantity.to_spray_up'),
    ...has('kits') ? [figure(kits === undefined ? '–' : String(kits), big ? t('page.too_big') : t(partly ? 'embed.kits_partly' : 'sheet.kits_n', { n: kits ?? 0 }), big ? '' : 'purchase.buy.left', big ? 'big' : part)] : [],
    ...has('spraying') ? [figure(spraying.lifts ? String(spraying.lifts) : '–', t('sheet.passes_n', { n: spraying.lifts }), 'spraying.lifts')] : [],
    ...has('price') ? [figure(!price || big ? '–' : w.money(price.total), partly ? t('embed.price_partly') : t('embed.total'), price && !big ? 'purchase.price.total' : '')] : [],
  ];
}

/** The same in one line; a press goes to the answer. What changes in it is said once, by the announcer. @param {Store} store @param {Settings} settings */
export function briefLine(store, settings) {
  const words = el('span');
  const node = el('button', { type: 'button', class: 'brief', click: () => {
    const answer = document.getElementById('total');
    answer?.focus({ preventScroll: true });
    answer?.parentElement?.scrollIntoView();
  } }, el('span', 'vh', `${t('embed.answer')}: `), words);
  return {
    node,
    update() {
      const all = store.estimate;
      if (all) redraw(words, inBrief(store, settings, all).flatMap(({ figure, below, kind }, at) => [at ? ' · ' : '', ...(kind === 'big' ? [] : [el('b', '', figure), ' ']), below]));
    },
  };
}
