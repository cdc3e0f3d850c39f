// @ts-check
/** What a surface is built of, and what the code asks there: cards of an exercise. */
import { call } from '../calls.js';
import { entryOf } from '../changes.js';
import { figures } from '../figures.js';
import { codeRow } from '../levels.js';
import { el } from '../list.js';
import { byId, table } from '../parts.js';
import { label, t } from '../words.js';
import { card, facts } from './cardparts.js';
import { entryText } from './plain.js';
import { fineR } from './written.js';

/** @typedef {import('./cards.js').About} About */

/**
 * The two paths through a wall, layer by layer from outside to inside: through the foam and through the stud. What the
 * paths come to is not said.
 * @param {About} about
 */
export function layersCard({ store, shown }) {
  const built = byId(store.estimate?.surfaces ?? [], shown.id)?.depth?.assembly;
  if (!built) return undefined;
  const w = figures(store.job.units);
  const r = (/** @type {number} */ value) => fineR(value, store.job.units);
  const framed = built.by === 'framed';
  const named = store.job.surfaces.flatMap((one) => one.layers ?? []);
  const layer = (/** @type {typeof built.layers[number]} */ one) => {
    // A layer is called what the exercise calls it; else by its material.
    const what = byId(named, one.id)?.name || (one.material === 'typed' ? t('practice.ex_layer') : t(`fields.choice.made_of.${one.material}`));
    // A board that comes in one thickness has it in its name.
    return one.thickness_in && !/[\d¼½¾⅛⅜⅝⅞]/.test(what) ? `${what}, ${w.depth(one.thickness_in)}` : what;
  };
  const both = (/** @type {string} */ name, /** @type {number} */ value) => ({ cells: [name, r(value), ...(framed ? [r(value)] : [])] });
  const of = (/** @type {import('../core.js').Position} */ position) => built.layers.filter((one) => one.position === position);
  const stud = framed && built.member_path_r !== undefined ? built.member_path_r - built.both_r : undefined;
  const name = t('practice.ex_layers');
  return card(name, el('div', 'pad ex-layers',
    table(name, ['', t('practice.ex_path_foam'), ...(framed ? [t('practice.ex_path_stud')] : [])], [
      ...(built.outside_film_r ? [both(t('inspector.film_outside'), built.outside_film_r)] : []),
      ...of('outside').map((one) => both(layer(one), one.r)),
      { cells: [`${t('practice.ex_foam_layer')}, ${w.depth(built.foam_in)}`, r(built.foam_r), ...(framed ? ['–'] : [])] },
      ...of('cavity').map((one) => ({ cells: [layer(one), r(one.r), ...(framed ? ['–'] : [])] })),
      ...(stud === undefined ? [] : [{ cells: [[t('practice.ex_stud'), built.member_in ? w.depth(built.member_in) : ''].filter(Boolean).join(', '), '–', r(stud)] }]),
      ...of('inside').map((one) => both(layer(one), one.r)),
      ...(built.inside_film_r ? [both(t('inspector.film_inside'), built.inside_film_r)] : []),
    ]),
    framed && built.framing_pct !== undefined ? facts([[t('practice.ex_framing_share'), w.pct(built.framing_pct)]]) : undefined));
}

/** Zone, edition and kind of work, and what the first surface is. @param {About} about */
export function placeCard({ store }) {
  const { job } = store;
  const first = job.surfaces[0];
  const rows = /** @type {[import('../core.js').Part, string][]} */ ([['job', 'zone'], ['job', 'edition'], ['job', 'work'], ['surface', 'component'], ['surface', 'runs']]).flatMap(([part, field]) => {
    const entry = entryOf(job, part, part === 'job' ? 0 : first?.id ?? 0, field);
    return entry?.text.trim() ? [/** @type {[string, string]} */ ([label(part, field), entryText(part, entry, job.units)])] : [];
  });
  return rows.length ? card(t('practice.ex_place'), el('div', 'pad', facts(rows))) : undefined;
}

/** Columns of the code's table that stand for more than one zone. @type {Record<number, string>} */
const COLUMNS = { 4: 'ex_zone_4', 5: 'ex_zone_5', 7: 'ex_zone_7' };

/** How a row of an edition that has no ci is to be read, and which rows are of that kind. @type {[string, (printed: string) => boolean][]} */
const OLDER_ROWS = [['practice.ex_code_slash', (printed) => printed.includes('/')], ['practice.ex_code_plus', (printed) => printed.includes('+') && !printed.includes('ci')]];

/** How R is made RSI. */
export const rUnitsCard = () => card(t('practice.ex_r_units'), el('div', 'pad', el('p', '', t('practice.ex_rsi'))));

/** What the code prints by zone. @param {About} about */
export function codeTableCard({ store, shown }) {
  const zones = call('depths_by_zone', store.job, shown.id) ?? [];
  const rows = shown.at.map((zone) => ({ zone, printed: zones.find((one) => one.zone === (zone >= 7 ? String(zone) : `${zone}a`))?.printed ?? '' }));
  if (!rows.some((one) => one.printed)) return undefined;
  const name = t('practice.ex_code_table');
  return card(name, el('div', 'pad ex-wraps', table(name, [label('job', 'zone'), t('practice.ex_printed')], rows.map(({ zone, printed }) => ({ cells: [COLUMNS[zone] ? t(`practice.${COLUMNS[zone]}`) : String(zone), codeRow(printed) || '–'] }))),
    ...OLDER_ROWS.filter(([, stands]) => rows.some((one) => stands(one.printed))).map(([key]) => el('p', 'note', t(key))),
    el('p', 'note', store.job.units === 'metric' ? t('practice.ex_rsi') : '', store.job.units === 'metric' ? ' ' : '', t('practice.ex_local_code'))));
}
