// @ts-check
/** The job sheet: numbered sections that open in place, and the answer at the foot. */
import { answerBar, VERDICT, verdictLine } from './answer.js';
import { bare, figures, isRange, ranged, total, unitOf } from './figures.js';
import { bars, depths, describe, kits, lifts, mixWords, nameOf, readings, strip } from './drawn.js';
import { field } from './field.js';
import { el } from './list.js';
import { mark } from './marks.js';
import { between, breadth, byId, caution, findingNote, framed, head, press, pressRow, redraw, row, table, to, way, worked } from './parts.js';
import { paid } from './price.js';
import { bubble } from './svg.js';
import { untilText } from './until.js';
import { day, finding, label, span, t } from './words.js';
import { go } from './view.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./parts.js').Child} Child */
/**
 * @typedef {{mark?: 'watch' | 'none' | 'hold', why: string, figure?: string, word?: 'go' | 'hold' | 'none', below: string, partly?: boolean, inside: Child[]}} Section
 */

/** Which sections stand open; kept while the page is. */
const open = new Set(['measure']);

/** @param {Store} store @returns {Section} */
function measure(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const done = (estimate?.surfaces ?? []).filter((one) => one.area);
  const net = total(done.flatMap((one) => (one.area ? [one.area.net_ft2] : [])));
  const lack = firstLack(store);
  const openings = done.some((one) => one.area && one.area.openings_ft2.likely > 0);
  const framing = done.some((one) => one.area && one.area.framing_ft2.likely > 0);
  const taken = openings && framing ? 'both' : openings ? 'openings' : framing ? 'framing' : 'plain';
  const partly = done.length < job.surfaces.length;
  return {
    mark: lack ? 'none' : undefined,
    why: job.surfaces.length === 0 ? t('sheet.measure_none') : lack ?? t(`sheet.measure_${taken}`, { n: job.surfaces.length }),
    figure: done.length ? bare(w.area(net.likely)) : '–',
    partly,
    below: t(partly && done.length ? 'sheet.area_so_far' : isRange(net) ? 'sheet.area_range' : 'sheet.area', { unit: unitOf(w.area(1)), low: bare(w.area(net.low)), high: bare(w.area(net.high)) }),
    inside: [
      job.surfaces.length > 0 && el('ul', 'rows', ...job.surfaces.map((surface) => {
        const one = estimate && byId(estimate.surfaces, surface.id);
        const lacks = !one?.area;
        return pressRow(to('surface', surface.id), nameOf(surface),
          lacks ? el('span', '', mark('none'), [lackOf(store, surface.id) ?? t('sheet.incomplete'), untilText(store, one)].filter(Boolean).join('. ')) : describe(store, one, surface),
          one?.area ? w.area(one.area.net_ft2.likely) : undefined);
      })),
      el('div', 'dos', press(t('takeoff.add'), 'add-surface', () => addSurface(store), job.surfaces.length ? 'line wide' : 'wide'), way(t('sheet.seal'), to('seal'))),
    ],
  };
}

/** The surface that was added last, and whose depth it took over. @type {{id: number, from?: number}} */
export let added = { id: 0 };

/** Adds a surface of the last one's shape, to the depth that was chosen there, and goes to it. @param {Store} store */
export function addSurface(store) {
  const id = store.job.next_id;
  const last = store.job.surfaces.at(-1);
  const way = last?.depth_way === 'target_r' ? 'target_r' : 'typed';
  const entries = (last?.depth_way === way ? last.entries : []).filter((one) => one.field === (way === 'typed' ? 'depth' : 'target_r'));
  store.dispatch({ do: 'add_surface', shape: last?.shape ?? 'framed_wall', entries, depth_way: entries.length ? way : 'typed' });
  added = { id, from: entries.length ? last?.id : undefined };
  go(to('surface', id));
}

/** What a surface is waiting for, in words. @param {Store} store @param {number} id */
export function lackOf(store, id) {
  const surface = byId(store.job.surfaces, id);
  const found = store.estimate?.findings.find((one) => one.severity === 'stop'
    && (one.at.part === 'surface' && one.at.id === id || one.at.part === 'opening' && surface?.openings.some((opening) => opening.id === one.at.id)));
  if (!found) return undefined;
  return found.code === 'needed' ? t('sheet.missing', { field: label(found.at.part, found.at.field) }) : finding(found).what;
}

/** The first surface that waits for something. @param {Store} store */
function firstLack(store) {
  const first = store.estimate?.surfaces.find((one) => !one.area);
  const surface = first && byId(store.job.surfaces, first.id);
  return surface && t('sheet.lack_of', { name: nameOf(surface), what: lackOf(store, surface.id) ?? t('sheet.incomplete') });
}

/** What the walkthrough before foam stops, by the names of its questions. @param {Store} store */
export function stopped(store) {
  return found(store, (one) => one.code === 'not_this_kit' || one.code === 'not_yet').map((one) => label('job', one.at.field)).join(' · ');
}

/** The way to the walkthrough before foam, with what it found. @param {Store} store */
function beforeRow(store) {
  const before = store.estimate?.before;
  const of = before?.questions.length ?? 0;
  const n = of - (before?.unanswered.length ?? 0);
  const stops = stopped(store);
  return el('div', 'pad', el('ul', 'rows', pressRow(to('before'), t('sheet.before'),
    stops ? el('span', '', mark('hold'), t('sheet.before_stops', { what: stops })) : n < of ? el('span', '', mark('none'), n ? t('sheet.before_some', { n, of }) : t('sheet.before_none')) : t('sheet.before_some', { n, of }),
    stops && n < of ? t('sheet.before_count', { n, of }) : undefined)));
}

/** @param {Store} store @param {(found: import('./core.js').Finding) => boolean} which */
const found = (store, which) => (store.estimate?.findings ?? []).filter(which);

const DEPTH_CODES = new Set(['target_beyond_sheet', 'no_listed_r', 'below_listed', 'deeper_than_cavity', 'depths_cross', 'thinner_than_lift', 'rules_cross', 'exposed_too_thick', 'exposed_over_tested', 'exposed_not_available', 'cover_asked', 'ignition_asked', 'bare_in_weather', 'cover_not_enough', 'nothing_left']);
const LIFT_CODES = new Set(['lifts_cross', 'thick_lift']);
const KIT_CODES = new Set(['kit_unusable', 'not_enough_kits', 'chosen_too_little', 'chosen_dearer', 'too_big', 'mass_short']);

/** A surface's finding as a note under its name. @param {Store} store @param {import('./core.js').Finding} one */
function named(store, one) {
  const surface = byId(store.job.surfaces, one.at.id);
  const node = findingNote(one);
  if (surface && job1(store)) node.querySelector('b')?.prepend(nameOf(surface) + ': ');
  return node;
}

/** @param {Store} store */
const job1 = (store) => store.job.surfaces.length > 1;

/** The way to place and code, with what is said there. @param {Store['job']} job */
function placeRow(job) {
  const said = ['work', 'edition', 'zone'].flatMap((name) => job.entries.filter((one) => one.field === name).map((one) => t(`fields.choice.${name}.${one.text}`)));
  return pressRow(to('place'), t('sheet.place'), said.join(' · ') || t('sheet.place_none'), undefined);
}

/** @param {Store} store @param {HTMLElement} root @returns {Section} */
function depth(store, root) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const list = bars(store);
  const crossed = found(store, (one) => one.at.part === 'surface' && DEPTH_CODES.has(one.code));
  const deepest = list.reduce((most, one) => Math.max(most, one.aim), 0);
  const thinnest = list.reduce((least, one) => Math.min(least, one.aim), Infinity);
  const partly = list.length < job.surfaces.length;
  const lacking = estimate?.surfaces.find((one) => one.area && !one.depth);
  const lackName = lacking && byId(job.surfaces, lacking.id);
  const first = crossed[0];
  const firstName = first && byId(job.surfaces, first.at.id);
  return {
    mark: first ? (first.severity === 'stop' ? 'hold' : 'watch') : lackName ? 'none' : undefined,
    why: first && firstName ? t('sheet.lack_of', { name: nameOf(firstName), what: finding(first).what })
      : lackName ? t('sheet.lack_of', { name: nameOf(lackName), what: lackOf(store, lackName.id) ?? t('sheet.incomplete') })
        : !list.length ? t('sheet.depth_none') : thinnest === deepest ? t('sheet.depth_same', { n: list.length }) : t('sheet.depth_span', { low: bare(w.depth(thinnest)), high: w.depth(deepest) }),
    figure: list.length ? bare(w.depth(deepest)) : '–',
    partly: partly && list.length > 0,
    below: list.length ? t('sheet.deepest', { unit: unitOf(w.depth(deepest)) }) : '',
    inside: [
      depths(store, between(root)),
      list.length > 0 && el('p', 'note', t('takeoff.bars_key')),
      el('div', 'says', ...crossed.map((one) => named(store, one))),
      el('ul', 'rows plain', placeRow(job), ...job.surfaces.map((surface) => {
        const one = estimate && byId(estimate.surfaces, surface.id);
        const r = one?.depth?.promised_r;
        return pressRow(to('depth', surface.id), nameOf(surface),
          one?.depth ? (r === undefined ? t('takeoff.no_r') : t('takeoff.promised_r', { r: w.r(r), depth: w.depth(one.depth.promised_in) })) : t('takeoff.choose'),
          one?.depth ? t('takeoff.aim_short', { depth: w.depth(one.depth.aim_in.likely) }) : el('span', 'act', t('takeoff.set')));
      })),
    ],
  };
}

/** @param {Store} store @returns {Section} */
export function amount(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const q = estimate?.quantity;
  if (!q || !q.surfaces) return { why: t('sheet.amount_none'), figure: '–', below: t('sheet.board_feet', { n: 0 }), inside: [el('p', 'note', t('sheet.amount_note'))] };
  const { over_depth_pct: { likely: over }, other_waste_pct: { likely: waste } } = q.allowances;
  const partly = q.surfaces < q.of;
  const rows = (estimate?.surfaces ?? []).flatMap((one) => {
    const surface = byId(job.surfaces, one.id);
    if (!surface || !one.in_place || !one.area || !one.depth) return [];
    // What goes on with the left-over foam is not bought for, and stands under the sum.
    const spare = !one.bought;
    return [{ spare, cells: [spare ? t('sheet.with_left', { name: nameOf(surface) }) : nameOf(surface), worked(bare(w.area(one.area.net_ft2.likely)), 'surface', one.id, 'area.net_ft2'), worked(bare(w.depth(one.depth.aim_in.likely)), 'surface', one.id, 'depth.aim_in'), worked(bare(w.foam(one.in_place.likely)), 'surface', one.id, 'in_place')] }];
  });
  return {
    mark: partly ? 'none' : undefined,
    why: partly ? t('sheet.amount_part', { n: q.surfaces, of: q.of }) : over + waste > 0 ? t('sheet.amount_plus', { pct: w.pct(over + waste) }) : t('sheet.amount_plain'),
    figure: bare(w.foam(q.to_spray_up.likely)),
    partly,
    below: isRange(q.to_spray_up) ? t('sheet.bdft_range', { low: bare(w.foam(q.to_spray_up.low)), high: bare(w.foam(q.to_spray_up.high)) }) : unitOf(w.foam(q.to_spray_up.likely)),
    inside: [
      table(t('sheet.amount'), [t('sheet.col_surface'), t('sheet.col_net', { unit: unitOf(w.area(1)) }), t('sheet.col_aim', { unit: unitOf(w.depth(1)) }), t('sheet.col_bdft')], [
        ...rows.filter((one) => !one.spare),
        { cells: [t('sheet.in_place'), '', '', worked(bare(w.foam(q.in_place.likely)), 'job', 0, 'quantity.in_place')] },
        ...(over > 0 ? [{ cells: [t('sheet.over_depth', { pct: w.pct(over) }), '', '', worked(bare(w.foam(q.over_depth.likely)), 'job', 0, 'quantity.over_depth')] }] : []),
        ...(waste > 0 ? [{ cells: [t('sheet.other_waste', { pct: w.pct(waste) }), '', '', worked(bare(w.foam(q.other_waste.likely)), 'job', 0, 'quantity.other_waste')] }] : []),
        { kind: 'sum', cells: [el('b', '', t('sheet.to_spray')), '', '', el('b', '', worked(bare(w.foam(q.to_spray_up.likely)), 'job', 0, 'quantity.to_spray_up'))] },
        ...rows.filter((one) => one.spare),
      ]),
      el('p', 'note', isRange(q.to_spray_up) ? t('sheet.amount_range', { likely: w.foam(q.to_spray_up.likely), low: bare(w.foam(q.to_spray_up.low)), high: bare(w.foam(q.to_spray_up.high)) }) : t('sheet.amount_note')),
    ],
  };
}

/** @param {Store} store @param {HTMLElement} root @returns {Section} */
function buying(store, root) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const p = estimate?.purchase;
  const big = p?.too_big;
  const notes = found(store, (one) => KIT_CODES.has(one.code));
  const onward = el('div', 'dos', way(t('kits.open'), to('kits')));
  if (!p || !p.buy) {
    const first = notes.find((one) => one.severity === 'stop');
    return { mark: first ? 'hold' : undefined, why: first ? finding(first).what : estimate?.quantity.surfaces ? t('kits.none_fit') : t('sheet.amount_none'), figure: '–', below: t('sheet.kits_n', { n: 0 }), inside: [el('div', 'says', ...notes.map(findingNote)), onward] };
  }
  const partly = (estimate?.quantity.surfaces ?? 0) < (estimate?.quantity.of ?? 0);
  const dearer = p.dearer_by;
  const reason = job.purchase?.reason.trim();
  const cost = p.buy.cost === undefined ? '' : w.money(p.buy.cost);
  return {
    mark: big || !p.buy.enough ? 'hold' : dearer ? 'watch' : undefined,
    why: big ? t('kits.big_why', { amount: w.foam(big.to_spray), limit: bare(w.foam(big.limit)), kits: big.kits_limit })
      : !p.buy.enough ? t('kits.short_why') : dearer ? t('kits.dearer_why', { more: w.money(dearer), reason: reason ?? '' }).replace(/[:\s]+$/, '') : t(p.chosen ? 'kits.chosen_why' : 'kits.least_why', { cost }).replace(/[:\s]+$/, ''),
    ...(big ? { word: /** @type {const} */ ('hold'), figure: t('sheet.too_big') } : { figure: String(p.buy.kits) }),
    below: big ? t('kits.big_below') : [mixWords(store, p.buy.buy), p.stock_kits ? t('kits.and_shelf', { n: p.stock_kits }) : ''].filter(Boolean).join(', '),
    partly,
    inside: [
      el('div', 'says', ...notes.map(findingNote)),
      kits(store, between(root)),
      el('ul', 'rows',
        p.stock_kits > 0 && row(t('kits.from_shelf'), t('kits.and_shelf', { n: p.stock_kits }), worked(w.foam(p.from_stock), 'job', 0, 'purchase.from_stock')),
        row(t('kits.usable'), t('kits.on_label', { amount: w.foam(p.buy.label) }), worked(w.foam(p.buy.usable), 'job', 0, 'purchase.buy.usable')),
        row(t('kits.left'), t('kits.after', { amount: w.foam(estimate?.quantity.to_spray_up.likely) }), worked(w.foam(p.buy.left), 'job', 0, 'purchase.buy.left')),
        p.buy.cost === undefined ? undefined : row(t('kits.cost'), p.chosen && reason ? reason : undefined, worked(cost, 'job', 0, 'purchase.buy.cost')),
        ...paid(p, w).slice(-1).map(({ what, below, value }) => row(what, below, p.price ? worked(value, 'job', 0, 'purchase.price.total') : value))),
      ranges(store),
      onward,
    ],
  };
}

/** What to buy at either end of a range. @param {Store} store */
export function ranges(store) {
  const p = store.estimate?.purchase;
  if (!p?.least_at_low || !p.least_at_high) return undefined;
  const [low, high] = [mixWords(store, p.least_at_low.buy), mixWords(store, p.least_at_high.buy)];
  return low === high ? undefined : el('p', 'note', t('kits.range', { low, high }));
}

/** @param {Store} store @param {HTMLElement} root @returns {Section} */
function ready(store, root) {
  const found = store.estimate?.readiness;
  const verdict = found?.verdict ?? 'not_read';
  const blamed = found?.blame === undefined ? undefined : store.estimate?.findings[found.blame];
  const said = blamed && finding(blamed);
  return {
    why: said?.what ?? t(`ready.why_${verdict}`),
    word: VERDICT[verdict], figure: t(`ready.verdict_${verdict}`),
    below: verdict === 'go' ? verdictLine(store) : '',
    inside: [
      said?.do ? el('p', 'note', said.do) : undefined,
      el('div', 'bleed', readings(store, breadth(root))),
      el('div', 'dos', way(t(verdict === 'not_read' ? 'ready.take' : 'ready.open'), to('ready')), way(t('sheet.ahead'), to('ahead'))),
    ],
  };
}

/** @param {Store} store @param {HTMLElement} root @returns {Section} */
function spray(store, root) {
  const { job, estimate } = store;
  const plan = estimate?.spraying;
  const notes = found(store, (one) => one.at.part === 'surface' && LIFT_CODES.has(one.code));
  const each = (estimate?.surfaces ?? []).flatMap((one) => {
    const surface = byId(job.surfaces, one.id);
    return surface && one.lifts ? [t('spraying.so_many', { name: nameOf(surface), n: one.lifts.count })] : [];
  });
  const first = notes[0];
  return {
    mark: first ? 'watch' : undefined,
    why: first ? finding(first).what : !each.length ? t('sheet.spray_none') : each.length > 4 ? t('spraying.many', { n: each.length }) : each.join(', '),
    figure: plan?.lifts ? String(plan.lifts) : '–',
    below: t('sheet.passes_lifts', { n: plan?.lifts ?? 0 }),
    partly: each.length > 0 && each.length < job.surfaces.length,
    inside: [
      lifts(store, between(root)),
      el('div', 'says', ...notes.map((one) => named(store, one)), each.length ? caution('spraying.protect') : undefined),
      each.length && plan ? el('ul', 'rows', row(t('spraying.nozzles'), nozzleWords(plan), worked(String(plan.nozzles), 'job', 0, 'spraying.nozzles'))) : undefined,
      el('div', 'dos', way(t('spraying.open'), to('spray')), each.length ? way(t('spraying.day'), to('day')) : undefined),
    ],
  };
}

/** @param {import('./core.js').SprayPlan} plan */
export function nozzleWords(plan) {
  const has = plan.nozzles_in_cartons;
  return has === undefined || has === null ? t('spraying.nozzles_why') : has < plan.nozzles ? t('spraying.nozzles_short', { n: has, more: plan.nozzles - has }) : t('spraying.nozzles_enough', { n: has });
}

/** @type {[string, (store: Store, root: HTMLElement) => Section][]} */
const SECTIONS = [['measure', measure], ['depth', depth], ['amount', amount], ['kits', buying], ['ready', ready], ['spray', spray]];

/** Fields that a section holds besides what is drawn anew. */
const FIELDS = { amount: ['over_depth', 'other_waste'] };

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store, route) {
  const top = el('div');
  const drawing = el('div');
  const bar = answerBar();
  const asked = route.rest[0];
  if (asked && SECTIONS.some(([name]) => name === asked)) open.add(asked);

  const parts = SECTIONS.map(([name, make], at) => {
    const button = el('button', { type: 'button', class: 'row', 'aria-controls': `inside-${name}`, click: () => toggle() });
    const drawn = el('div');
    const fields = (FIELDS[/** @type {keyof typeof FIELDS} */ (name)] ?? []).map((one) => field({ store, part: 'job', id: 0, field: one, source: true }));
    const inside = el('div', { class: 'inside', id: `inside-${name}` }, drawn, fields.length ? el('div', 'fields', ...fields.map((one) => one.node)) : undefined);
    const item = el('li', { id: `section-${name}` }, el('h2', '', button), inside);
    const icon = bubble(at + 1);
    const draw = () => {
      const now = make(store, root);
      const shown = now.figure ?? '';
      redraw(button, [icon, el('span', 'what', t(`sheet.${name}`)), el('span', 'why', now.mark && mark(now.mark), now.why),
        el('span', 'ans', now.word
          ? el('span', `verdict-word long w-${now.word}`, mark(now.word), shown)
          : el('span', now.partly && shown !== '–' ? 'partly' : '', shown), now.below ? el('small', '', now.below) : undefined)]);
      redraw(drawn, now.inside);
      for (const one of fields) one.update();
      show();
    };
    const show = () => {
      item.classList.toggle('open', open.has(name));
      button.setAttribute('aria-expanded', String(open.has(name)));
    };
    const toggle = () => {
      if (!open.delete(name)) open.add(name);
      show();
    };
    return { name, item, draw };
  });

  root.append(el('main', '', top, drawing, el('ol', 'sheet', ...parts.map((one) => one.item)),
    el('div', 'pad tail', el('div', 'dos no-print', way(t('sheet.drawings'), to('drawings')), way(t('sheet.papers'), to('paper')), way(t('sheet.photos'), to('photos')), way(t('jobs.move'), to('move'))), el('p', 'note top', t('sheet.governs')))), bar.node);

  let placed = false;
  return {
    title: () => jobName(store),
    update() {
      redraw(top, [sheetHead(store), beforeRow(store)]);
      const shown = strip(store, breadth(root));
      redraw(drawing, [shown ? framed(shown.svg, shown.hidden ? t('sheet.strip_more', { n: shown.hidden }) : t('sheet.strip_caption'), shown.square) : undefined]);
      for (const one of parts) one.draw();
      bar.update(store);
      if (!placed && asked) document.getElementById(`section-${asked}`)?.scrollIntoView();
      placed = true;
    },
  };
}

/** @param {Store} store */
export const jobName = (store) => store.job.name.trim() || t('sheet.unnamed');

/** The head of the sheet, on the phone and at the left of the desktop. @param {Store} store */
export function sheetHead(store) {
  const date = store.job.entries.find((one) => one.field === 'spray_date')?.text.trim();
  return head({
    back: [to('jobs'), t('sheet.jobs')], side: el('a', { href: to('settings'), class: 'link' }, t('sheet.settings')), title: jobName(store),
    sub: [store.job.place.trim(), date && t('sheet.spraying', { date: day(date) })].filter(Boolean).join('. '),
  });
}

export { ranged, span };
