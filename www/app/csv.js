// @ts-check
/**
 * Tables for a spreadsheet: RFC 4180 (commas, CRLF, every text in quotes, quotes doubled), in UTF-8 with its
 * mark at the front, without which a spreadsheet program takes it for the code page of its country (common
 * practice, no source). A text that a program would take for a formula gets an apostrophe before it (OWASP, CSV
 * Injection). A number is the page's own figure: a point, no thousands mark, no unit; units are in the head.
 */
import { bare, figures, unitOf } from './figures.js';
import { nameOf } from './drawn.js';
import { codeRow } from './levels.js';
import { byId } from './parts.js';
import { paid } from './price.js';
import { t } from './words.js';

/** @typedef {string | number | undefined} Cell */

/** What a spreadsheet program may take for the beginning of a formula; the wide forms too. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;

/** @param {Cell[][]} rows */
export function csv(rows) {
  return `\uFEFF${rows.map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

/** @param {Cell} value */
function cell(value) {
  if (value === undefined) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? plain(value) : '';
  // Other controls have no place in a text cell, and some readers stop at them.
  const text = value.replace(/[\0-\x08\x0b\x0c\x0e-\x1f\x7f]/g, ' ');
  return `"${(FORMULA.test(text) ? `'${text}` : text).replace(/"/g, '""')}"`;
}

/** A number without an exponent. @param {number} value */
const plain = (value) => (/e/.test(String(value)) ? value.toLocaleString('en-US', { useGrouping: false, maximumFractionDigits: 20 }) : String(value));

const PARTS = /** @type {Record<string, number>} */ ({ '⅛': 0.125, '¼': 0.25, '⅜': 0.375, '½': 0.5, '⅝': 0.625, '¾': 0.75, '⅞': 0.875 });

/** The number that a written figure shows: `1,234` is 1234, `3¼ in` is 3.25, `3 3/16 in` is 3.1875, `R-15` is 15, `U-0.060` is 0.06. @param {string} written */
export function shown(written) {
  const text = bare(written).replace(/^(RSI|R-|U-|U)\s*/, '').replace(/[$,]/g, '').replace(/^−/, '-');
  const inches = text.match(/^(-?)(\d*)(?:([⅛¼⅜½⅝¾⅞])|(?:^|\s)(\d+)\/16)$/);
  if (inches) return (inches[1] ? -1 : 1) * (Number(inches[2]) + (inches[3] ? PARTS[inches[3]] : Number(inches[4]) / 16));
  const plain = text.replace(/\s/g, '');
  if (!/^-?\d+(\.\d+)?$/.test(plain)) return undefined;
  // From a meter on a depth is written in meters, to the millimeter; its column is in millimeters.
  return unitOf(written) === 'm' ? Math.round(Number(plain) * 1000) : Number(plain);
}

/** Every surface, in the order of the sheet. What is not known yet is an empty cell. @param {import('./store.js').Store} store */
export function surfacesCsv({ job, estimate }) {
  const w = figures(job.units);
  const [area, depth] = [unitOf(w.area(1)), unitOf(w.depth(1))];
  const heads = [t('move.col_surface'), t('move.col_shape'), t('move.col_net', { unit: area }), t('move.col_net_low', { unit: area }), t('move.col_net_high', { unit: area }),
    t('move.col_openings', { unit: area }), t('move.col_framing', { unit: area }), t('move.col_aim', { unit: depth }), t('move.col_promise', { unit: depth }), t('move.col_most', { unit: depth }),
    t('move.col_r', { unit: w.metric ? 'RSI' : 'R' }), t('move.col_in_place'), t('move.col_in_place_low'), t('move.col_in_place_high'), t('move.col_passes'),
    t('move.col_component'), t('move.col_asks'), t('move.col_rules_least', { unit: depth }), t('move.col_rules_most', { unit: depth }),
    t('move.col_u', { unit: w.metric ? 'W/m²·K' : 'Btu/h·ft²·°F' }), t('move.col_effective', { unit: w.metric ? 'RSI' : 'R' }), t('move.col_cover_cost')];
  return csv([heads, ...job.surfaces.map((surface) => {
    const one = estimate && byId(estimate.surfaces, surface.id);
    const { area: a, depth: d, in_place: foam } = one ?? {};
    return [nameOf(surface), t(`takeoff.shape.${surface.shape}`),
      ...(a ? [shown(w.area(a.net_ft2.likely)), shown(w.area(a.net_ft2.low)), shown(w.area(a.net_ft2.high)), shown(w.area(a.openings_ft2.likely)), shown(w.area(a.framing_ft2.likely))] : Array(5)),
      ...(d ? [shown(w.depth(d.aim_in.likely)), shown(w.depth(d.promised_in)), shown(w.depth(d.most_in)), shown(w.r(d.promised_r))] : Array(4)),
      ...(foam ? [shown(w.foam(foam.likely)), shown(w.foam(foam.low)), shown(w.foam(foam.high))] : Array(3)),
      one?.lifts?.count,
      d?.component ? t(`fields.choice.component.${d.component}`) : undefined, d ? codeAsks(d, w) : undefined,
      shown(w.depth(d?.window.least_in)), shown(w.depth(d?.window.most_in)), shown(w.u(d?.assembly?.u)), shown(w.r(d?.assembly?.effective_r)), shown(w.money(d?.cover.cost))];
  })]);
}

/** Marks of the energy code, which ask for an R or a U. */
const ENERGY = ['code_r', 'code_u', 'fill_floor', 'small_ceiling'];

/** What the energy code asks of a surface by the way that was chosen, as its table prints it. @param {import('./core.js').Depth} depth @param {import('./figures.js').Figures} w */
export const codeAsks = (depth, w) => depth.marks.filter((mark) => mark.stands === 'applies' && ENERGY.includes(mark.rule))
  .map((mark) => (mark.printed ? `R-${codeRow(mark.printed)}` : mark.rule === 'code_u' ? w.u(mark.asks) : w.r(mark.asks))).filter(Boolean).join('; ') || undefined;

/** Every kit that may be bought, how many of each are to be bought, and tax, delivery and the sum where there are any. @param {import('./store.js').Store} store */
export function kitsCsv({ job, estimate }) {
  const w = figures(job.units);
  const heads = [t('move.col_kit'), t('move.col_label'), t('move.col_usable'), t('move.col_price'), t('move.col_buy'), t('move.col_cost')];
  const { sizes = [], lines = [], buy } = estimate?.purchase ?? {};
  const added = estimate ? paid(estimate.purchase, w) : [];
  return csv([heads, ...job.kits.map((kit) => {
    const size = sizes.find((one) => one.kit === kit.id);
    const line = lines.find((one) => one.kit === kit.id);
    return [kit.name.trim() || t('kits.unnamed'), shown(w.foam(size?.label)), shown(w.foam(size?.usable)), shown(w.money(size?.price)),
      buy && (line?.count ?? 0), line && shown(w.money(line.cost))];
  }), ...added.map(({ what, value }) => [what, undefined, undefined, undefined, undefined, shown(value)])]);
}
