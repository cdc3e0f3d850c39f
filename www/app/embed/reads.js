// @ts-check
/**
 * Whether the core takes a text where it stands, and the settings without the depths that it does not take: a press
 * that chooses something which cannot be read is worse than none.
 *
 * @typedef {import('../core.js').Field} Field
 * @typedef {import('../core.js').Entered} Entered
 * @typedef {import('./settings.js').Settings} Settings
 * @typedef {typeof import('../calls.js').call} Call
 */
import { DEPTHS, shallow } from './settings.js';

/**
 * Why a measured text is not taken; blank where it is, and where nobody can say.
 * @param {Field} row @param {Entered} entered @param {'us' | 'metric'} units @param {Call} call
 */
export function refused(row, { text, unit, sense }, units, call) {
  const echo = call('read', text.trim(), row.kind, unit ?? (units === 'metric' ? row.metric : row.us), sense ?? undefined, units);
  if (!echo) return '';
  if (echo.state === 'ask') return 'two_meanings';
  const { low, high } = echo;
  if (low === undefined || high === undefined) return 'not_read';
  return low < row.least ? 'below' : high > row.most ? 'above' : '';
}

/**
 * Settings whose depths the core takes: another stands in place of none. What is left out is told to the page's owner
 * by `sheetcheck.js`.
 * @param {Settings} settings @param {Field | undefined} row  of a surface's depth @param {Call} call @returns {Settings}
 */
export function readable(settings, row, call) {
  if (!row) return settings;
  const taken = (/** @type {Entered} */ one) => one.field !== 'depth' || !refused(row, one, settings.units, call);
  const depths = settings.depths.filter((text) => taken({ field: 'depth', text }));
  const fit = {
    ...settings,
    depths: depths.length || !settings.depths.length ? depths : [...DEPTHS[settings.units]],
    start: settings.start.map((one) => ({ ...one, entries: one.entries.filter(taken) })),
  };
  return shallow(fit) ? { ...fit, sections: new Set([...fit.sections, 'depth']) } : fit;
}
