// @ts-check
/** In which unit a figure of the working is written: that of its step, or what the name of its path says. */
import { call, fieldRow } from './calls.js';
import { timeOf, wall } from './wallclock.js';
import { span } from './words.js';

/** @typedef {ReturnType<typeof import('./figures.js').figures>} Figures */

/** The unit of a measure of a surface by its kind. @type {Record<string, string>} */
const MEASURED = { number: 'number', length: 'ft_in', area: 'ft2', percent: 'pct', count: 'each', member: 'in', pitch: 'pitch' };

/** The unit that the last name of a path says: the first row that fits. @type {[RegExp, string][]} */
const NAMED = [
  [/_length$/, 'ft_in'], [/^bays_along$|^ends$|_sides$/, 'each'], [/^price/, 'usd'], [/ft2(_in)?$/, 'ft2'], [/^tax_pct$/, 'rate'], [/pct$/, 'pct'],
  [/(spread|apart|inside_by|meter)_f$/, 'f_step'], [/_f$/, 'f'], [/_lb(_hr)?$/, 'lb'], [/ft3$/, 'ft3'], [/^(changes|mixing)$/, 'number'],
  [/^flow$/, 'cfm'], [/^hours$/, 'hr'], [/^spray_at$/, 'wall'], [/_btu$/, 'btu'], [/_btu_hr$/, 'btuh'], [/_min$/, 'min'], [/(^|_)r$/, 'r'], [/_in$/, 'in'],
  [/_deg$/, 'deg'], [/(cost|price|dearer_by|tax|delivery)$/, 'usd'], [/(count|kits|members|lifts|nozzles|limit|surfaces|of)$/, 'each'], [/density/, 'density'],
];

/** Cubic meters in a cubic foot: 0.3048³. */
const M3 = 0.028316846592;

/** A value as the core writes its kind. @param {Figures} w @param {import('./core.js').Kind} kind @param {number} value */
const written = (w, kind, value) => call('write', kind, value, w.metric ? 'metric_usual' : 'us') ?? '';

/** What writes each unit. @param {Figures} w @returns {Record<string, (value: number) => string>} */
const writers = (w) => ({
  ft2: w.area, in: w.depth, ft_in: w.length, bdft: w.foam, f: w.temp, f_step: w.step, usd: w.money, each: w.count, number: w.number,
  pct: w.pct, rate: w.rate, mph: w.speed, lb: w.weight, r: w.r, density: w.density, min: span, clock: timeOf, wall,
  hr: (hours) => `${w.number(Math.round(hours * 10) / 10)}\u00a0h`,
  cfm: (flow) => written(w, 'airflow', flow),
  ft3: (volume) => (w.metric ? `${w.number(volume * M3)}\u00a0m³` : `${w.number(volume)}\u00a0ft³`),
  btuh: (power) => written(w, 'power', power),
  btu: (heat) => (w.metric ? `${w.number(Math.round(heat / 341.2) / 10)}\u00a0kWh` : `${w.number(Math.round(heat))}\u00a0Btu`),
  u: (u) => (w.metric ? w.u(u) : `U-${u.toFixed(4)}`),
  deg: (turn) => `${Math.round(turn * 100) / 100}°`,
  pitch: (rise) => `${Math.round(rise * 12_000) / 1_000} ÷ 12`,
});

/** What writes the value at a path. @param {Figures} w @param {string} path @param {string} [unit] of its step @returns {(value: number) => string} */
export function writer(w, path, unit) {
  const name = path.slice(path.lastIndexOf('.') + 1);
  const measured = path.includes('measures.') ? fieldRow('surface', name)?.kind : undefined;
  const own = measured === 'length' && path.startsWith('ground.') ? 'in' : measured && MEASURED[measured];
  return writers(w)[unit ?? own ?? NAMED.find(([form]) => form.test(name))?.[1] ?? 'bdft'] ?? w.foam;
}
