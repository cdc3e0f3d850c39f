// @ts-check
/** The job sheet on paper: what is sprayed and how deep, board feet, kits, passes, the verdict and everything said. */
import { titleBlock, VERDICT, verdictLine } from '../answer.js';
import { codeAsks } from '../csv.js';
import { mixWords, nameOf, strip } from '../drawn.js';
import { bare, figures, ranged, total, unitOf } from '../figures.js';
import { el } from '../list.js';
import { mark } from '../marks.js';
import { breadth, byId, caution, framed } from '../parts.js';
import { paid } from '../price.js';
import { amount, nozzleWords, ranges } from '../sheet.js';
import { countsWords } from '../stock.js';
import { finding, span, t } from '../words.js';
import { entered, fact, found, leaf, LEAF_WIDTH, lines, measuresOf, section, told, unmeasured } from './leaf.js';
import { layered } from './layered.js';
import { beforeFoam } from './before.js';
import { questions, readings } from './readings.js';

/** @typedef {import('../store.js').Store} Store */

/** @param {Store} store @param {HTMLElement} root */
export function jobSheet(store, root) {
  const { estimate } = store;
  if (!estimate) return undefined;
  const block = titleBlock();
  block.update(store);
  // What is pressed on the screen is read further down on paper.
  for (const one of block.node.querySelectorAll('span')) if (one.textContent === t('sheet.press_to_read') || one.textContent === t('sheet.see_why')) one.textContent = t('paper.see_verdict');
  return leaf(store, 'sheet', block.node, drawn(store, root),
    beforeFoam(store),
    section(t('paper.surfaces'), surfaces(store)),
    section(t('paper.depths'), depths(store), el('p', 'note', t('paper.depths_note')), place(store)),
    layered(store),
    section(t('sheet.amount'), ...amount(store).inside),
    section(t('sheet.kits'), ...kits(store)),
    section(t('paper.passes'), passes(store)),
    section(t('ready.title'), ...verdict(store)),
    section(t('paper.findings'), estimate.findings.length ? el('div', 'says', ...estimate.findings.map((one) => found(store, one))) : el('p', 'note', t('paper.no_findings'))),
    section(t('spraying.safe'), el('div', 'says cautions', ...['spraying.protect', 'spraying.air', 'spraying.out', 'spraying.burn', 'spraying.seal', 'spraying.cylinder', 'ready.flames', 'ready.hot_kits', 'ready.cure'].map(caution))));
}

/** The drawing as the leaf has room for it, and for the screen as wide as that is. @param {Store} store @param {HTMLElement} root */
function drawn(store, root) {
  const at = (/** @type {number} */ width, /** @type {string} */ kind) => {
    const shown = strip(store, width);
    return shown && el('div', kind, framed(shown.svg, shown.hidden ? t('sheet.strip_more', { n: shown.hidden }) : t('sheet.strip_caption'), shown.square));
  };
  const room = Math.min(LEAF_WIDTH, Math.max(300, breadth(root) - 24));
  return el('div', 'drawn', at(LEAF_WIDTH, 'on-paper'), at(room, 'on-screen'));
}

/** @param {Store} store */
function surfaces(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const unit = unitOf(w.area(1));
  const areas = (estimate?.surfaces ?? []).flatMap((one) => (one.area ? [one.area.net_ft2] : []));
  const partly = areas.length < job.surfaces.length;
  const net = total(areas);
  return lines(t('paper.surfaces'), [[t('sheet.col_surface')], [t('paper.gross', { unit }), 'r'], [t('paper.openings', { unit }), 'r'], [t('paper.framing', { unit }), 'r'], [t('sheet.col_net', { unit }), 'r']], [
    ...job.surfaces.map((surface) => {
      const one = estimate ? byId(estimate.surfaces, surface.id) : undefined;
      const area = one?.area;
      const name = el('span', '', nameOf(surface), el('small', '', measuresOf(store, one, surface)));
      const bands = area ? [area.gross_ft2, area.openings_ft2, area.framing_ft2] : [];
      return { cells: [name, ...(area ? [...bands.map((band) => bare(w.area(band.likely))), el('b', '', ranged(area.net_ft2, (value) => bare(w.area(value))))] : ['', '', '', unmeasured()])] };
    }),
    { kind: 'sum', cells: [partly ? t('paper.so_far', { n: areas.length, of: job.surfaces.length }) : t('paper.all_net'), '', '', '', el('b', '', areas.length ? ranged(net, (value) => bare(w.area(value))) : '–')] },
  ]);
}

const ASKED = ['target_r', 'component', 'code_path', 'exposure', 'spot', 'promise', 'most'];
/** Where the job stands, and by which book. */
const PLACE = ['work', 'zone', 'edition'];

/** What was asked and answered about a surface's depth. @param {Store} store @param {import('../job.js').Surface} surface */
function asked(store, surface) {
  const { job } = store;
  const foam = job.foams.length > 1 && byId(job.foams, surface.foam || job.foam);
  return [...(surface.depth_way === 'typed' ? [] : [t(`depth.way.${surface.depth_way}`)]), ...(foam ? [foam.name.trim() || t('depth.foam_unnamed')] : []),
    ...entered(store, 'surface', surface.entries.filter((one) => ASKED.includes(one.field) && (one.field !== 'target_r' || surface.depth_way === 'target_r'))), ...codeLine(store, surface)];
}

/** Kind of work, climate zone and edition, where any of them was said. @param {Store} store */
function place(store) {
  const said = entered(store, 'job', store.job.entries.filter((one) => PLACE.includes(one.field)));
  return said.length ? el('p', 'note', said.join('; ')) : undefined;
}

/** What the energy code asks of a surface. @param {Store} store @param {import('../job.js').Surface} surface */
function codeLine(store, surface) {
  const depth = store.estimate && byId(store.estimate.surfaces, surface.id)?.depth;
  const asks = depth && codeAsks(depth, figures(store.job.units));
  return asks ? [t('inspector.code_asks', { asks })] : [];
}

/** @param {Store} store */
function depths(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const unit = unitOf(w.depth(1));
  return lines(t('paper.depths'), [[t('sheet.col_surface')], [t('sheet.col_aim', { unit }), 'r'], [t('paper.promise', { unit }), 'r'], [t('paper.most', { unit }), 'r'], [t('paper.r_promised'), 'r']], job.surfaces.map((surface) => {
    const depth = estimate ? byId(estimate.surfaces, surface.id)?.depth : undefined;
    return { cells: [told(nameOf(surface), asked(store, surface)), ...(depth ? [el('b', '', ranged(depth.aim_in, (value) => bare(w.depth(value)))), bare(w.depth(depth.promised_in)), bare(w.depth(depth.most_in)), depth.promised_r === undefined ? t('paper.no_r') : w.r(depth.promised_r)] : [el('i', '', t('paper.no_depth')), '', '', ''])] };
  }));
}

/** @param {Store} store */
function kits(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const p = estimate?.purchase;
  const buy = p?.buy;
  const big = p?.too_big;
  if (!p || !buy) return [el('p', 'note', t('kits.none_fit'))];
  const reason = job.purchase?.reason.trim();
  return [
    big && el('p', 'lead', mark('hold'), ' ', t('kits.big_lead', { amount: w.foam(big.to_spray), limit: bare(w.foam(big.limit)), n: big.largest_kits, kits: big.kits_limit }), ' ', t('kits.big_do')),
    lines(t('sheet.kits'), [[t('paper.what')], ['', 'r']], [
      ...p.stock.map((one) => fact(byId(job.stock, one.kit)?.name || t('kits.unnamed'), one.counts === 'yes' ? w.foam(one.counted) : t('paper.not_counted'), `${t('kits.from_shelf')}: ${countsWords(one, w)}`)),
      ...(p.stock.length ? [fact(t('kits.to_buy'), w.foam(p.to_buy.likely), t('kits.to_buy_why', { amount: w.foam(estimate?.quantity.to_spray.likely ?? 0) }))] : []),
      fact(t('kits.title'), el('b', '', mixWords(store, buy.buy) || t('paper.nothing')), p.chosen ? t('kits.yours') : t('kits.least_cost')),
      fact(t('kits.usable'), w.foam(buy.usable), t('kits.on_label', { amount: w.foam(buy.label) })),
      fact(t(buy.left < 0 ? 'kits.short' : 'kits.left'), w.foam(Math.abs(buy.left)), t('kits.after', { amount: w.foam(estimate?.quantity.to_spray_up.likely) })),
      fact(t('kits.break'), w.pct(buy.break_factor_pct), t(p.stock_kits ? 'kits.break_shelf' : 'kits.break_why', { pct: w.pct(buy.break_factor_pct), now: w.pct(p.yield_factor_pct) })),
      ...(buy.cost === undefined ? [] : [fact(t('kits.cost'), el('b', '', w.money(buy.cost)), p.chosen && reason ? reason : undefined)]),
      ...paid(p, w).map(({ of, what, below, value }) => fact(what, of === 'total' ? el('b', '', value) : value, below)),
    ], 'facts'),
    ranges(store),
  ];
}

/** @param {Store} store */
function passes(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const plan = estimate?.spraying;
  return lines(t('paper.passes'), [[t('sheet.col_surface')], [t('sheet.col_passes'), 'r'], [t('paper.wait'), 'r']], [
    ...job.surfaces.flatMap((surface) => {
      const it = estimate ? byId(estimate.surfaces, surface.id)?.lifts : undefined;
      if (!it) return [];
      return [{ cells: [nameOf(surface), t('spraying.n_of', { n: it.count, each: w.depth(it.each_in) }), waitWords(it)] }];
    }),
    ...(plan?.lifts ? [{ kind: 'sum', cells: [t('paper.all_passes'), el('b', '', String(plan.lifts)), ''] },
      { cells: [el('span', '', t('spraying.nozzles_at_hand'), el('small', '', nozzleWords(plan))), el('b', '', String(plan.nozzles)), ''] }] : []),
  ]);
}

/** The wait between passes, and who asks for it. @param {import('../core.js').Lifts} it */
export const waitWords = (it) => it.count === 1 ? t('spraying.one_pass') : it.wait_min === undefined ? t('spraying.by.label_only') : t(`spraying.by.${it.wait_by}`, { wait: span(it.wait_min) });

/** @param {Store} store */
function verdict(store) {
  const { estimate } = store;
  const is = estimate?.readiness;
  const state = is?.verdict ?? 'not_read';
  const blamed = is?.blame === undefined ? undefined : estimate?.findings[is.blame];
  const said = blamed && finding(blamed);
  return [
    el('p', 'lead', mark(VERDICT[state]), ' ', el('b', '', t(`ready.verdict_${state}`)), ' ', state === 'go' ? verdictLine(store) : '', ' ', said ? `${said.what} ${said.do}` : t(`ready.why_${state}`)),
    readings(store),
    questions(store),
  ];
}
