// @ts-check
/** What is bought: a foam's data sheet, the kits on the shelf. */
import { call } from '../calls.js';
import { el } from '../list.js';
import { byId, table } from '../parts.js';
import { label, t } from '../words.js';
import { card, facts } from './cardparts.js';
import { entriesOf, entryText } from './plain.js';

/** @typedef {import('./cards.js').About} About */

/** How square meters and millimeters become board feet. */
export function foamUnitsCard() {
  return card(t('practice.ex_foam_units'), el('div', 'pad', el('p', '', t('practice.ex_foam_units_line'))));
}

/** A foam's data sheet. @param {About} about */
export function foamCard({ store, shown }) {
  const sheet = byId(store.job.foams, shown.id) ?? (shown.id ? undefined : store.job.foams[0]);
  if (!sheet) return undefined;
  const { units } = store.job;
  const rows = sheet.r_at.map((one) => entriesOf('r_row', one.entries, units)).filter((one) => one.length);
  const cell = (/** @type {ReturnType<typeof entriesOf>} */ of, /** @type {string} */ field) => of.find((one) => one.field === field)?.text ?? '–';
  const name = t('practice.ex_foam', { name: sheet.name || t('settings.foam_unnamed') });
  const listed = entriesOf('foam', sheet.entries, units);
  return card(name, el('div', 'pad',
    rows.length ? table(name, [label('r_row', 'thickness'), label('r_row', 'r')], rows.map((one) => ({ cells: [cell(one, 'thickness'), cell(one, 'r')] }))) : undefined,
    listed.length ? facts(listed.map((one) => [one.name, one.text])) : undefined));
}

/** What counts for every kit, and what else the job was told. */
const OF_JOB = ['yield_factor', 'fixed_loss', 'over_depth', 'other_waste', 'sales_tax', 'delivery'];
/** Said also where it was left at what the tool takes. */
const USUAL = ['yield_factor', 'fixed_loss'];

/** The shelf: each kit's label and price, the factor, what every kit loses. @param {About} about */
export function kitsCard({ store }) {
  const { job } = store;
  if (!job.kits.length) return undefined;
  const given = OF_JOB.flatMap((field) => {
    const entry = job.entries.find((one) => one.field === field && one.text.trim());
    const text = entry ? entryText('job', entry, job.units) : USUAL.includes(field) ? usual(field, job.units) : '';
    return text ? [/** @type {[string, string]} */ ([label('job', field), text])] : [];
  });
  const columns = [...new Set(job.kits.flatMap((one) => one.entries.filter((entry) => entry.text.trim()).map((entry) => entry.field)))];
  const rows = job.kits.map((one) => ({ cells: columns.map((field) => {
    const entry = one.entries.find((it) => it.field === field && it.text.trim());
    return entry ? entryText('kit', entry, job.units) : '–';
  }) }));
  return card(t('practice.ex_kits'), el('div', 'pad', table(t('practice.ex_kits'), columns.map((field) => label('kit', field)), rows), facts(given)));
}

/** What the tool takes where nothing was said. @param {string} field @param {import('../core.js').Units} units */
function usual(field, units) {
  const row = (call('fields') ?? []).find((one) => one.part === 'job' && one.field === field);
  return row?.default ? entryText('job', { field, text: row.default }, units) : '';
}
