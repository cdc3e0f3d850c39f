// @ts-check
/**
 * The words that entries and surfaces may use, for settings that are read before the core is asked. The types hold
 * that none is missing, and a test that the published schema has the same.
 */

/** @type {Record<import('../core.js').Shape, true>} */
export const SHAPES = {
  typed_area: true, rectangle: true, footprint: true, framed_wall: true, framed_floor: true, framed_slope: true, rim_run: true,
  bays: true, pitched_plane: true, gable: true, band: true, strip: true, hip_roof: true, triangle: true, trapezoid: true,
  polygon: true, arch: true, cylinder: true, dome: true, box_duct: true, round_duct: true, room: true, gap: true, penetrations: true,
};

/** @type {Record<import('../core.js').Unit, true>} */
export const UNITS = {
  ft: true, in: true, m: true, cm: true, mm: true, in12: true, deg: true, ft2: true, in2: true, m2: true, f: true, c: true,
  lb: true, oz: true, kg: true, g: true, lb_ft3: true, kg_m3: true, each: true, pct: true, r: true, rsi: true, perm: true,
  metricperm: true, bd_ft: true, ft3: true, l: true, m3: true, sec: true, min: true, hr: true, day: true, mph: true, kmh: true,
  mps: true, usd: true, date: true, clock: true, arc: true, cfm: true, lps: true, m3h: true, btuh: true, kw: true, w: true, one: true,
};

/** @type {Record<import('../core.js').Sense, true>} */
export const SENSES = {
  feet_inches: true, decimal_feet: true, sum: true, range: true, difference: true, thousands: true, decimal_comma: true,
  converted: true, literal: true, nominal: true, month_first: true, day_first: true, morning: true, afternoon: true,
  box_unit: true, other_unit: true, depth_first: true,
};
