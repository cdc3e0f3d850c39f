// @ts-check
/** What is to be paid: what comes to the cost of the kits, and the sum. */
import { label, t } from './words.js';

/** @typedef {{of: 'tax' | 'delivery' | 'total', what: string, below: string, value: string}} Paid */

/**
 * Sales tax, delivery and the sum, in words; nothing where the kits are all there is to pay. While tax or delivery
 * cannot be read, the sum is a dash.
 * @param {import('./core.js').Purchase} purchase @param {import('./figures.js').Figures} w
 * @returns {Paid[]}
 */
export function paid({ buy, price }, w) {
  if (buy?.cost === undefined || price?.total === buy.cost) return [];
  if (!price) return [{ of: 'total', what: t('kits.pay'), below: t('kits.pay_open'), value: '–' }];
  /** @type {Paid[]} */
  const all = [];
  if (price.tax) all.push({ of: 'tax', what: label('job', 'sales_tax'), below: t('kits.tax_at', { rate: w.rate(price.tax_pct), cost: w.money(price.kits) }), value: w.money(price.tax) });
  if (price.delivery) all.push({ of: 'delivery', what: label('job', 'delivery'), below: '', value: w.money(price.delivery) });
  return [...all, { of: 'total', what: t('kits.pay'), below: t('kits.pay_why'), value: w.money(price.total) }];
}
