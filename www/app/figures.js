// @ts-check
/** Writing figures in the job's units. The core does the writing; nothing is rounded here. */
import { call } from './calls.js';
import { t } from './words.js';

/** @typedef {ReturnType<typeof figures>} Figures */
/** @typedef {{low: number, likely: number, high: number}} Band */

/** W/(m²·K) in 1 Btu/(h·ft²·°F): 1055.05585262 J ÷ (3600 s × 0.09290304 m² × 5/9 K), NIST SP 811. */
export const SI = 5.678263341;

/** @param {import('./core.js').Units} units */
export function figures(units) {
  const metric = units === 'metric';
  const usual = metric ? 'metric_usual' : 'us';
  /** @param {import('./core.js').Kind} kind @param {import('./core.js').Style} [style] */
  const writes = (kind, style = usual) => (/** @type {number | undefined | null} */ value) =>
    value === undefined || value === null ? '' : call('write', kind, value, style) ?? '';
  return {
    metric,
    area: writes('area'),
    depth: writes('length', metric ? 'metric' : 'inches'),
    length: writes('length', metric ? 'metric' : 'feet_inches'),
    temp: writes('temperature'),
    step: writes('temperature_step'),
    // Kits, labels and the answer are in board feet whatever the tape reads.
    foam: writes('foam_volume', 'us'),
    weight: writes('weight'),
    speed: writes('speed'),
    density: writes('density'),
    r: writes('resistance'),
    pct: writes('percent'),
    // A rate of tax stands as it was set, however many places it has.
    rate: (/** @type {number} */ pct) => `${pct}\u00a0%`,
    money: writes('money'),
    count: writes('count'),
    number: writes('number'),
    // Tables print three places, zeros and all.
    u: (/** @type {number | undefined | null} */ value) => (value === undefined || value === null ? '' : metric ? `U\u00a0${(value * SI).toFixed(3)}\u00a0W/m²·K` : `U-${value.toFixed(3)}`),
  };
}

/** A written figure without its unit. @param {string} written */
export const bare = (written) => cut(written)[0];

/** The unit of a written figure. @param {string} written */
export const unitOf = (written) => cut(written)[1];

/** @param {string} written @returns {[string, string]} */
function cut(written) {
  const at = written.search(/[\s\u00a0][^\d\s]/);
  return at < 0 ? [written, ''] : [written.slice(0, at), written.slice(at + 1)];
}

/** Whether a band is a real range. @param {Band} band */
export const isRange = (band) => band.low !== band.high;

/** A band in words: one figure, or "812, or 780 to 850". @param {Band} band @param {(value: number) => string} write */
export function ranged(band, write) {
  const likely = write(band.likely);
  return isRange(band) ? t('sheet.or_range', { likely, low: bare(write(band.low)), high: bare(write(band.high)) }) : likely;
}

/** Adds bands up. @param {Band[]} bands @returns {Band} */
export const total = (bands) => bands.reduce((sum, one) => ({ low: sum.low + one.low, likely: sum.likely + one.likely, high: sum.high + one.high }), { low: 0, likely: 0, high: 0 });
