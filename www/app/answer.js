// @ts-check
/** The answer: four cells, always the same four, in a bar on a phone and as the title block of the desktop sheet. */
import { bare, figures, isRange } from './figures.js';
import { checkName } from './drawn.js';
import { el } from './list.js';
import { mark } from './marks.js';
import { redraw, to } from './parts.js';
import { clock, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

/** The reading to blame, or the one inside by the least, in the few words that a cell holds. @param {Store} store */
export function verdictLine(store) {
  const found = store.estimate?.readiness;
  if (!found) return '';
  const w = figures(store.job.units);
  if (found.verdict === 'go') {
    const close = found.closest === undefined ? undefined : found.checks[found.closest];
    if (close?.state === 'close' && close.inside_by_f !== undefined) return t('sheet.close', { name: checkName(close), by: bare(w.step(close.inside_by_f)) + '°' });
    return found.until_ms === undefined ? '' : t('sheet.until', { time: clock(found.until_ms) });
  }
  if (found.verdict === 'hold') {
    const at = found.blame === undefined ? undefined : store.estimate?.findings[found.blame]?.at;
    const check = found.checks.find((one) => one.id === at?.id && at?.part === 'reading');
    return check?.value_f === undefined ? t('sheet.see_why') : t('sheet.hold_for', { name: checkName(check), value: w.temp(check.value_f) });
  }
  return t('sheet.press_to_read');
}

export const VERDICT = /** @type {const} */ ({ go: 'go', hold: 'hold', not_read: 'none' });

/** @param {'nav' | 'div'} tag @param {string} kind */
function cells(tag, kind) {
  const root = el(tag, { class: kind, 'aria-label': tag === 'nav' ? t('sheet.answer_label') : '' });
  /** @param {string} href @param {string} figure @param {string} below @param {string} [state] @param {Node} [icon] */
  const cell = (href, figure, below, state = '', icon) =>
    el('a', { href, class: state }, el('b', figure.length > (state === 'big' ? 2 : icon ? 4 : 5) ? 'long' : '', icon, figure), el('span', '', below));
  return {
    node: root,
    /** @param {Store} store */
    update(store) {
      const { estimate, job } = store;
      const w = figures(job.units);
      if (!estimate) return;
      const { quantity, purchase, spraying, readiness } = estimate;
      const partly = quantity.surfaces < quantity.of;
      const none = quantity.surfaces === 0;
      const up = quantity.to_spray_up;
      const amount = none ? '–' : bare(w.foam(up.likely));
      const amountBelow = none ? t('sheet.board_feet', { n: 0 }) : partly ? t('sheet.so_far', { n: quantity.surfaces, of: quantity.of })
        : isRange(up) ? t('sheet.range', { low: bare(w.foam(up.low)), high: bare(w.foam(up.high)) }) : t('sheet.board_feet', { n: up.likely });
      const big = purchase.too_big;
      const number = big ? big.largest_kits : purchase.buy?.kits;
      const kits = none || number === undefined ? '–' : String(number);
      const passes = spraying.lifts ? String(spraying.lifts) : '–';
      const verdict = VERDICT[readiness.verdict];
      redraw(root, [
        cell(to('sheet', 'amount'), amount, amountBelow, partly && !none ? 'part' : ''),
        big ? cell(to('sheet', 'kits'), kits, t('sheet.too_big'), 'big', mark('hold'))
          : cell(to('sheet', 'kits'), kits, partly && !none ? t('sheet.or_more') : t('sheet.kits_n', { n: number ?? 0 }), partly && !none ? 'part' : ''),
        cell(to('sheet', 'spray'), passes, partly && !none ? t('sheet.or_more') : t('sheet.passes_n', { n: spraying.lifts }), partly && !none ? 'part' : ''),
        cell(to('sheet', 'ready'), t(`ready.verdict_${readiness.verdict}`), verdictLine(store), 'verdict ' + verdict, mark(verdict)),
      ]);
    },
  };
}

/** The bar at the foot of every screen. */
export const answerBar = () => cells('nav', 'answer');

/** The same as the title block of the framed sheet. */
export const titleBlock = () => cells('div', 'block');
