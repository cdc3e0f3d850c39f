// @ts-check
/** A job as a short plain text for a message, in the words and figures of the page. */
import { isSample } from './catalogue.js';
import { codeAsks } from './csv.js';
import { mixWords, nameOf } from './drawn.js';
import { figures, ranged } from './figures.js';
import { byId } from './parts.js';
import { stopped } from './sheet.js';
import { clock, finding, locale, t } from './words.js';

/** One line, whatever was typed. @param {string} text */
const line = (text) => text.replace(/[\s\0-\x1f]+/g, ' ').trim();

/** Kind of work, climate zone and edition, as far as they were said. @param {import('./job.js').Job} job */
export function placeWords(job) {
  return ['work', 'zone', 'edition'].flatMap((field) => {
    const word = job.entries.find((one) => one.field === field)?.text;
    return word ? [t(`move.said_${field}`, { what: t(`fields.choice.${field}.${word}`) })] : [];
  }).join(', ');
}

/** @param {import('./store.js').Store} store @param {number} [at]  the instant it was worked out */
export function messageOf(store, at = Date.now()) {
  const { job, estimate } = store;
  const w = figures(job.units);
  /** @type {string[]} */
  const lines = [[line(job.name) || t('page.unnamed'), line(job.place)].filter(Boolean).join(', ')];
  const date = job.entries.find((one) => one.field === 'spray_date')?.text ?? '';
  if (line(date)) lines.push(t('sheet.spraying', { date: line(date) }));
  const where = placeWords(job);
  if (where) lines.push(t('move.place_line', { where }));
  const before = estimate?.before;
  if (before && before.unanswered.length < before.questions.length) {
    const of = before.questions.length;
    lines.push(t('move.before_line', { n: of - before.unanswered.length, of }));
    const stops = stopped(store);
    if (stops) lines.push(t('move.stops_line', { what: stops }));
  }
  for (const surface of job.surfaces) {
    const one = estimate && byId(estimate.surfaces, surface.id);
    const name = line(nameOf(surface));
    const about = [
      one?.area ? ranged(one.area.net_ft2, w.area) : t('move.no_area'),
      one?.depth ? t('move.deep', { depth: ranged(one.depth.aim_in, w.depth) }) : t('move.no_depth'),
      one?.depth && codeAsks(one.depth, w) ? t('move.asks', { asks: codeAsks(one.depth, w) ?? '' }) : '',
      one?.depth?.promised_r === undefined ? '' : t('move.promises', { r: w.r(one.depth.promised_r), depth: w.depth(one.depth.promised_in) }),
    ];
    lines.push(t('move.surface_line', { name, about: about.filter(Boolean).join(', ') }));
  }
  if (estimate) {
    const { quantity: q, purchase: p, spraying, readiness } = estimate;
    const partly = q.surfaces > 0 && q.surfaces < q.of;
    lines.push(t('move.amount_line', { amount: q.surfaces ? ranged(q.to_spray_up, w.foam) : '–' }) + (partly ? ` (${t('page.part', { n: q.surfaces, of: q.of })})` : ''));
    if (p.too_big) lines.push(t('move.big_line', { amount: w.foam(p.too_big.to_spray), limit: w.foam(p.too_big.limit), kits: p.too_big.kits_limit }));
    if (p.stock_kits) lines.push(t('move.stock_line', { n: p.stock_kits, amount: w.foam(p.from_stock) }));
    lines.push(t('move.kits_line', { kits: q.surfaces && p.buy?.enough && !p.buy.kits ? t('move.none_to_buy') : p.buy?.kits ? `${line(mixWords(store, p.buy.buy))}${p.buy.enough ? '' : ` (${t('kits.short_why')})`}` : '–' }));
    lines.push(t('move.passes_line', { n: spraying.lifts || '–' }));
    const blamed = readiness.blame === undefined ? undefined : estimate.findings[readiness.blame];
    const why = readiness.verdict === 'go' ? (readiness.until_ms === undefined ? '' : t('ready.until', { time: clock(readiness.until_ms, at) })) : blamed ? finding(blamed).what : '';
    lines.push(t('move.verdict_line', {
      when: new Date(at).toLocaleString(locale(), { dateStyle: 'medium', timeStyle: 'short' }),
      verdict: [t(`ready.verdict_${readiness.verdict}`), line(why)].filter(Boolean).join(', '),
    }));
  }
  if (store.keeping === 'sample' || [...job.foams, ...job.kits].some(isSample)) lines.push(t('move.samples_line'));
  lines.push(t('move.governs_line'));
  return lines.join('\n');
}
