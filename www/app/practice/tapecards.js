// @ts-check
/** What is read off a measure: a piece of tape with a mark, foam probed in equal parts. */
import { figures } from '../figures.js';
import { framed } from '../parts.js';
import { t } from '../words.js';
import { card } from './cardparts.js';
import { probeStrip } from './probestrip.js';
import { standsAt, tapePiece } from './tapedraw.js';

/** @typedef {import('./cards.js').About} About */

/** Which of several. @param {string} key @param {About} about */
const nth = (key, { nth: n, count }) => (count > 1 ? t(`practice.${key}_n`, { n }) : t(`practice.${key}`));

/** Pieces of tape. @param {About} about */
export function tapeCard(about) {
  const { store, shown, width } = about;
  const metric = store.job.units === 'metric';
  const name = nth('ex_tape', about);
  return card(name, ...shown.at.map((inches) => {
    const { whole, past, ticks, flags, after } = standsAt(inches, metric);
    const unit = metric ? 'm' : 'ft';
    const where = t(`practice.ex_tape_at_${unit}`, { whole, past, ticks });
    const said = flags > 0 ? t(`practice.ex_tape_flag_${unit}`, { flags, after }) : '';
    return framed(tapePiece(inches, { metric, width, label: [name, where, said].filter(Boolean).join('. '), flag: (n) => (metric ? `${n} m` : `${n} ft`) }), t(metric ? 'practice.ex_tape_m' : 'practice.ex_tape_ft'));
  }));
}

/** Depths of equal parts, each where it was probed. @param {About} about */
export function probesCard(about) {
  const { store, shown } = about;
  const w = figures(store.job.units);
  const depths = shown.at.map((inches) => ({ inches, text: w.depth(inches) }));
  const name = nth('ex_probes', about);
  return card(name, framed(probeStrip(depths, { width: about.width, label: t('practice.ex_probes_label', { n: depths.length, list: depths.map((one) => one.text).join(', ') }) }), t('practice.ex_probes_note', { n: depths.length })));
}
