// @ts-check
/**
 * How an answer comes about, in signs and figures. What a student has not worked out yet is not given away by a later
 * step's line: the right answer of an open step stands there by the step's number.
 *
 * @typedef {import('./core.js').Piece} Piece
 * @typedef {import('../core.js').Units} Units
 * @typedef {{n: number, value: number, kind: import('../core.js').Kind, text?: string}} Open
 *   an open step: its number and its right answer; or, with `text`, an answer as the student wrote it
 */
import { t } from '../words.js';
import { fineR, inBox, written } from './written.js';

const SIGNS = /** @type {Record<string, string>} */ ({ open: '(', close: ')', plus: ' + ', minus: ' − ', times: ' × ', over: ' ÷ ', root: '√' });
/** Beside which a pitch, itself a fraction, stands in brackets. */
const TIGHT = ['times', 'over', 'root'];

/** How an answer comes about, in signs and figures. Where an R below 1 is among them every R has two places, as on the card of layers. @param {readonly Piece[]} pieces @param {Units} units @param {readonly Open[]} [open] @param {Pick<import('./core.js').StepForm, 'unit'>} [of] the step whose line it is */
export function howText(pieces, units, open = [], of = undefined) {
  const fine = pieces.some((piece) => piece.is === 'figure' && piece.kind === 'resistance' && piece.value < 1);
  return pieces.map((piece, at) => {
    if (piece.is !== 'figure') return SIGNS[piece.is] ?? t(`practice.how.${piece.is}`);
    const step = open.find((one) => sameFigure(piece, one));
    const figure = () => (fine && piece.kind === 'resistance' ? fineR(piece.value, units) : inBox(piece.kind, piece.value, units, of) ?? written(piece.kind, piece.value, units));
    const text = step ? step.text ?? t('practice.ex_of_step', { n: step.n }) : figure();
    return piece.kind === 'pitch' && [pieces[at - 1], pieces[at + 1]].some((beside) => beside && TIGHT.includes(beside.is)) ? `(${text})` : text;
  }).join('').trim();
}

/** Whether two figures are one and the same. @param {{value: number, kind: string}} a @param {{value: number, kind: string}} b */
export const sameFigure = (a, b) => a.kind === b.kind && Math.abs(a.value - b.value) <= 1e-9 * Math.max(1, Math.abs(b.value));

const QUARTERS = ['', '¼', '½', '¾'];

/** Points in quarters: 5½, ¾, 8. @param {number} points */
export function quarters(points) {
  const all = Math.round(points * 4);
  const whole = Math.floor(all / 4);
  return (whole || all % 4 === 0 ? String(whole) : '') + QUARTERS[all % 4];
}
