// @ts-check
/** A leaf of paper and what stands on it: its title block, tables with boxes to write in, and what was not measured. */
import { call, fieldRow, reading, shapeForms, unitOf } from '../calls.js';
import { letters, nameOf } from '../drawn.js';
import { figures, ranged } from '../figures.js';
import { el } from '../list.js';
import { byId, findingNote } from '../parts.js';
import { clock, has, label, locale, t } from '../words.js';

/** @typedef {import('../store.js').Store} Store */
/** @typedef {import('../parts.js').Child} Child */
/** @typedef {Node | string | undefined | false | null} Inside */

/** How wide a drawing stands on a leaf: Letter less its margins, and A4 less a little more. */
export const LEAF_WIDTH = 660;

/** The job's day of spraying as it was entered and read. @param {Store} store */
export function sprayDate(store) {
  return entryText(store, 'job', store.job.entries, 'spray_date') || t('paper.no_date');
}

/**
 * A leaf with its title block. A paper may run over several pages; the first carries the block.
 * @param {Store} store @param {string} paper @param {...Inside} inside
 */
export function leaf(store, paper, ...inside) {
  const { job } = store;
  const cell = (/** @type {string} */ name, /** @type {string} */ text, /** @type {string} */ below = '') => el('div', '', el('span', '', name), el('b', '', text), below ? el('small', '', below) : undefined);
  const printed = Date.now();
  const node = el('section', { class: 'leaf', 'data-paper': paper, 'aria-label': t('paper.on_paper', { name: t(`paper.name.${paper}`) }) },
    el('div', 'tb', cell(t('paper.job'), job.name.trim() || t('sheet.unnamed'), job.place.trim()), cell(t('paper.spraying'), sprayDate(store)),
      cell(t('paper.paper'), t(`paper.name.${paper}`)), cell(t('paper.printed'), day(printed), new Date(printed).toLocaleTimeString(locale(), { hour: 'numeric', minute: '2-digit' }))),
    ...inside.map((one) => one || undefined), el('p', 'note governs', t('sheet.governs')));
  // Nothing is pressed on paper: a figure that opens its working is a figure.
  for (const one of node.querySelectorAll('a.fig')) one.replaceWith(...one.childNodes);
  return node;
}

/** @param {number} ms */
const day = (ms) => new Date(ms).toLocaleDateString(locale(), { year: 'numeric', month: 'short', day: 'numeric' });

/** When something was: the time, and the day where it was not today. @param {number} ms */
export const when = (ms) => (Date.now() - ms > 6 * 86_400_000 ? `${day(ms)} ${new Date(ms).toLocaleTimeString(locale(), { hour: 'numeric', minute: '2-digit' })}` : clock(ms));

/** How many rows of a table at most stay together on a page. */
const WHOLE = 8;

/** A part of a paper: its heading stays with what follows, and with the whole of it where that is short. @param {string} title @param {...Inside} inside */
export function section(title, ...inside) {
  const all = inside.filter((one) => one !== undefined && one !== false && one !== null);
  const lead = all.findIndex((one) => !(one instanceof Element && one.matches('.lead')));
  const next = all[lead];
  const rows = next instanceof Element ? next.querySelectorAll('tbody > tr').length : 0;
  const first = lead < 0 ? all.length : next instanceof Element && next.matches('.note, .scroll') && rows <= WHOLE ? lead + 1 : lead;
  return el('section', 'paper-part', el('div', 'keep', el('h2', '', title), ...all.slice(0, first)), ...all.slice(first));
}

/** A box to tick with a pen; ticked where it is done. @param {boolean} [done] */
export const tick = (done = false) => el('span', { class: done ? 'tick done' : 'tick', role: 'img', 'aria-label': t(done ? 'paper.done' : 'paper.open') });

/**
 * A table whose rows are never cut and whose heads are repeated on each page. A column is a head and how its
 * cells stand: `r` a figure, `w` a place to write in, otherwise text.
 * @param {string} name @param {[string, ('' | 'r' | 'w')?][]} columns @param {{cells: Child[], kind?: string}[]} rows @param {string} [kind]
 */
export function lines(name, columns, rows, kind = '') {
  return el('div', { class: 'scroll', tabindex: 0, role: 'group', 'aria-label': name }, el('table', `t ${kind}`.trim(),
    el('thead', '', el('tr', '', ...columns.map(([head, side = '']) => el('th', { class: side, scope: 'col' }, head || el('span', 'vh', name))))),
    el('tbody', '', ...rows.map((row) => el('tr', row.kind ?? '', ...row.cells.map((one, at) =>
      at === 0 ? el('th', { scope: 'row' }, one || undefined) : el('td', columns[at]?.[1] ?? '', one || undefined)))))));
}

/** A row: what it is, and what is known of it. @param {string} what @param {Child} value @param {string} [below] */
export const fact = (what, value, below) => ({ cells: [below ? el('span', '', what, el('small', '', below)) : what, value] });

/** The line below a name, where there is something to say. @param {Child} what @param {string[]} below */
export const told = (what, below) => (below.length ? el('span', '', what || undefined, el('small', '', below.join('; '))) : what);

/** What was not measured: never the planned figure. */
export const unmeasured = () => el('i', '', t('paper.not_measured'));

/** A surface's own name for a field, or the field's. @param {import('../core.js').Shape} shape @param {string} field */
const fieldName = (shape, field) => (has(`surface.${shape}.${field}`) ? t(`surface.${shape}.${field}`) : label('surface', field));

/** A measure as a screen writes it. @param {Store} store @param {string} field @param {import('../figures.js').Band} value */
function measured(store, field, value) {
  const w = figures(store.job.units);
  const row = fieldRow('surface', field);
  const short = row?.us === 'in';
  /** @type {Record<string, (value: number) => string>} */
  const by = { length: short ? w.depth : w.length, member: w.depth, area: w.area, percent: w.pct, count: w.count, pitch: (rise) => call('write', 'pitch', rise, 'us') ?? '' };
  return ranged(value, by[row?.kind ?? ''] ?? w.count);
}

/** Every measure of a surface, in words. @param {Store} store @param {import('../core.js').SurfaceEstimate | undefined} one @param {import('../job.js').Surface} surface */
export function measuresOf(store, one, surface) {
  const shape = t(`takeoff.shape.${surface.shape}`);
  const area = one?.area;
  if (!area) return shape;
  const all = area.measures.map(({ field, value }) => t('paper.measure', { what: fieldName(surface.shape, field), value: measured(store, field, value) }));
  const w = figures(store.job.units);
  const openings = area.openings.map(({ id, width_in, height_in, count }) => {
    const opening = byId(surface.openings, id);
    return t('paper.opening', { n: w.count(count.likely), name: opening?.name.trim() || t('surface.opening', { letter: letters(surface).get(id) ?? '' }), width: ranged(width_in, w.length), height: ranged(height_in, w.length) });
  });
  const asked = shapeForms().find((form) => form.shape === surface.shape)?.entries ?? [];
  const told = entered(store, 'surface', surface.entries.filter((one) => String(fieldRow('surface', one.field)?.kind) === 'choice' && asked.some((it) => it.field === one.field)));
  return [shape, ...all, ...told, ...openings].join('; ');
}

/**
 * What was entered in a field, in the job's own form; empty where it is blank.
 * @param {Store} store @param {import('../core.js').Part} of @param {readonly any[]} entries @param {string} field
 */
export function entryText(store, of, entries, field) {
  const entry = entries.find((one) => one.field === field && one.text.trim());
  const row = fieldRow(of, field);
  if (!entry || !row) return '';
  if (String(row.kind) === 'choice') return has(`fields.choice.${field}.${entry.text}`) ? t(`fields.choice.${field}.${entry.text}`) : has(`fields.choice.${entry.text}`) ? t(`fields.choice.${entry.text}`) : entry.text;
  return reading(row, entry.text, entry.unit ?? unitOf(of, field, store.job.units), entry.sense, store.job.units)?.as || entry.text.trim();
}

/** Everything entered in a part, `what value` each. @param {Store} store @param {import('../core.js').Part} of @param {readonly any[]} entries @param {readonly string[]} [without] */
export const entered = (store, of, entries, without = []) => entries.filter((one) => one.text.trim() && !without.includes(one.field))
  .map((one) => t(String(fieldRow(of, one.field)?.kind) === 'choice' && !label(of, one.field).endsWith('?') ? 'paper.told' : 'paper.measure', { what: label(of, one.field), value: entryText(store, of, entries, one.field) }));

/** A finding with the name of what it is about. @param {Store} store @param {import('../core.js').Finding} one */
export function found(store, one) {
  const { job } = store;
  const { part, id } = one.at;
  const surface = part === 'surface' ? byId(job.surfaces, id) : job.surfaces.find((it) => part === 'opening' && byId(it.openings, id) || part === /** @type {any} */ ('patch') && byId(it.patches ?? [], id));
  const kit = part === 'kit' ? byId(job.kits, id)?.name : part === /** @type {any} */ ('owned') ? byId(job.stock ?? [], id)?.name : part === 'foam' ? byId(job.foams, id)?.name : '';
  const name = surface ? nameOf(surface) : kit;
  const node = findingNote(one);
  if (name) node.querySelector('b')?.prepend(`${name}: `);
  return node;
}
