// @ts-check
/**
 * What the core says of a host's settings: each measured text is read as it would be in a job, so that the page's owner
 * is told at once which entry of which sheet is not taken. Nothing is changed by that: the texts stand, and the
 * estimate tells a visitor where one of them counts.
 *
 * @typedef {typeof import('../calls.js').call} Call
 * @typedef {import('../core.js').Field} Field
 * @typedef {import('../core.js').Part} Part
 * @typedef {import('../core.js').Entered} Entered
 * @typedef {import('./settings.js').Settings} Settings
 * @typedef {import('./faults.js').Fault} Fault
 */
import { now } from '../calls.js';
import { asJob } from '../cataloguefile.js';
import { priced } from './estimated.js';
import { Faults } from './faults.js';
import { refused } from './reads.js';

/** What a sheet has to say before it can be bought. */
const LACKED = /** @type {const} */ (['label_yield', 'price']);

/** Everything in these settings that the core does not take. @param {Settings} settings @param {Call} call @returns {Fault[]} */
export function checkSheets(settings, call) {
  return new Check(settings, call).all();
}

class Check {
  /** @param {Settings} settings @param {Call} call */
  constructor(settings, call) {
    this.settings = settings;
    this.call = call;
    this.faults = new Faults();
    /** @type {Map<string, Field>} */
    this.table = new Map((call('fields') ?? []).map((row) => [`${row.part}.${row.field}`, row]));
  }

  all() {
    const { settings, faults } = this;
    // Without a core there is nothing to be said.
    if (!this.table.size) return [];
    const opened = this.call('job_check', asJob({ foam: settings.foams, kit: settings.kits, owned: [] }));
    if (opened && !opened.job) faults.add('', 'refused', 'sheet', 'stands');
    this.masses(opened?.job);
    settings.foams.forEach((sheet, i) => {
      this.entries('foam', sheet.entries, `foams[${i}].entries`);
      (sheet.r_at ?? []).forEach((row, n) => this.entries('r_row', row, `foams[${i}].r_at[${n}]`));
    });
    const some = priced(settings.kits);
    settings.kits.forEach((sheet, i) => {
      this.entries('kit', sheet.entries, `kits[${i}].entries`);
      for (const field of LACKED) {
        if ((field !== 'price' || some) && !sheet.entries.some((one) => one.field === field && one.text.trim())) faults.add(`kits[${i}].entries`, 'lacks', '', 'unpriced', { field });
      }
    });
    if (settings.kits.length && !some && settings.sections.has('price')) faults.add('kits', 'lacks', '', 'no_price', { field: 'price' });
    settings.start.forEach((one, i) => this.entries('surface', one.entries, `start[${i}].entries`));
    settings.depths.forEach((text, i) => this.entry('surface', { field: 'depth', text }, `depths[${i}]`));
    for (const field of /** @type {const} */ (['sales_tax', 'delivery'])) this.entry('job', { field, text: settings[field] }, field);
    return faults.told();
  }

  /** What only shows where sheets meet: a carton that holds less than its label needs, by the foam that is chosen at first. @param {import('../core.js').Job | undefined} job */
  masses(job) {
    if (!job) return;
    const all = this.call('estimate', { ...job, foam: job.foams?.[0]?.id ?? 0 }, now());
    for (const { code, at } of all?.findings ?? []) {
      if (code === 'mass_short') this.faults.add(`kits[${(job.kits ?? []).findIndex((one) => one.id === at.id)}].entries`, 'mass_short', '', 'stands');
    }
  }

  /** @param {Part} part @param {Entered[]} entries @param {string} at */
  entries(part, entries, at) {
    entries.forEach((one, i) => this.entry(part, one, `${at}[${i}].text`));
  }

  /** @param {Part} part @param {Entered} entered @param {string} at */
  entry(part, entered, at) {
    const { field } = entered;
    const text = entered.text.trim();
    const row = this.table.get(`${part}.${field}`);
    if (!text) return;
    if (!row) return this.faults.add(at, 'no_field', 'field', 'ignored', { field });
    if (row.kind === 'choice') {
      if (!row.choices.includes(text)) this.faults.add(at, 'choice', 'choice', 'stands', { text, choices: row.choices.join(', ') });
      return;
    }
    const why = refused(row, entered, this.settings.units, this.call);
    if (!why) return;
    const want = why === 'two_meanings' ? 'one_meaning' : why === 'not_read' ? 'measure' : 'limits';
    const style = this.settings.units === 'metric' && row.kind !== 'foam_volume' ? 'metric_usual' : 'us';
    const [least, most] = want === 'limits' ? [row.least, row.most].map((value) => this.call('write', row.kind, value, style) ?? '') : ['', ''];
    // The frame does without such a depth; everything else stands.
    this.faults.add(at, why, want, part === 'surface' && field === 'depth' ? 'left_out' : 'stands', { text, least, most });
  }
}
