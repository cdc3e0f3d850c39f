// @ts-check
/**
 * The estimate of the frame. The core buys at the least cost, and nothing without a price. Where no kit of the list has
 * one, as our examples have none here, each counts the same: then it buys the fewest kits, and of those what leaves
 * least over. What they would cost is handed on to nobody.
 *
 * @typedef {import('../job.js').Job} Job
 */
import { call, now } from '../calls.js';

/** Whether an entry is a price that was entered. @param {import('../core.js').Entered} one */
const isPrice = (one) => one.field === 'price' && one.text.trim() !== '';

/** Whether any kit has a price. @param {{entries: readonly import('../core.js').Entered[]}[]} kits */
export const priced = (kits) => kits.some(({ entries }) => entries.some(isPrice));

/** Sheets without what they cost. @template {{entries: import('../core.js').Entered[]}} S @param {readonly S[]} sheets @returns {S[]} */
export const unpriced = (sheets) => sheets.map((one) => ({ ...one, entries: one.entries.filter(({ field }) => field !== 'price') }));

/** @param {Job} job @returns {import('../core.js').Estimate | undefined} */
export function estimated(job) {
  if (priced(job.kits) || !job.kits.length) return call('estimate', job, now());
  const alike = unpriced(job.kits).map((kit) => ({ ...kit, entries: [...kit.entries, { field: 'price', text: '1' }] }));
  const found = call('estimate', { ...job, kits: alike }, now());
  return found && { ...found, purchase: JSON.parse(JSON.stringify(found.purchase, (key, value) => (/^(cost|price|least_cost)$/.test(key) ? undefined : value))) };
}
