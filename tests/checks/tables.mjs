// The tables of every whole job, and beside each cell the figure as the page writes it, as JSON.
//
//   node tests/checks/tables.mjs SITE

import { readFileSync, readdirSync } from 'node:fs';
import { use } from '../../www/app/calls.js';
import { kitsCsv, surfacesCsv } from '../../www/app/csv.js';
import { nameOf } from '../../www/app/drawn.js';
import { figures } from '../../www/app/figures.js';
import { give, t } from '../../www/app/words.js';
import { core, jobs } from './shipped.mjs';

/** What the energy code asks: from the list of every rule, as the inspector's sheet prints it, in Spanish with its own word. */
function energy(depth, w, language) {
  const row = (printed) => `R-${language === 'es' ? printed.split(' or ').join(' o ') : printed}`;
  const all = [];
  for (const { rule, stands, printed, asks } of depth?.marks ?? []) {
    if (stands !== 'applies') continue;
    if (rule === 'code_r' || rule === 'fill_floor' || rule === 'small_ceiling') all.push(printed ? row(printed) : w.r(asks));
    if (rule === 'code_u') all.push(printed ? row(printed) : w.u(asks));
  }
  return all.filter(Boolean).join('; ');
}

/** The rows below the kits: what was entered of tax and delivery, and the sum of all. */
function added({ buy, price }, text, figure, w) {
  if (!price || price.tax + price.delivery === 0) return buy?.cost === undefined || price ? [] : [[text(t('kits.pay')), ...Array(5).fill(figure(''))]];
  const row = (what, cents) => [text(what), ...Array(4).fill(figure('')), figure(w.money(cents))];
  return [
    ...(price.tax ? [row(t('fields.sales_tax'), price.tax)] : []), ...(price.delivery ? [row(t('fields.delivery'), price.delivery)] : []),
    row(t('kits.pay'), buy.cost + price.tax + price.delivery),
  ];
}

const shipped = await core(process.argv[2]);
use(shipped);
const tables = [];
for (const language of ['en', 'es']) {
  for (const file of readdirSync(`www/words/${language}`)) give(file.replace('.json', ''), JSON.parse(readFileSync(`www/words/${language}/${file}`, 'utf8')), language);
  for (const { name, job: stored, now } of jobs()) {
    const { job } = shipped.job_open(JSON.stringify(stored));
    // As it is, in the other units, and with texts that a table has to be careful with.
    const odd = { ...job, surfaces: job.surfaces.map((one, at) => ({ ...one, name: ['=1+1', 'a "b", c', 'two\r\nlines', '-x', '@y', 'ñ;𝒳'][at % 6] })), kits: job.kits.map((one) => ({ ...one, name: '+SUM(A1)' })) };
    for (const shown of [job, { ...job, units: job.units === 'us' ? 'metric' : 'us' }, odd]) {
      const estimate = shipped.estimate(shown, now);
      const w = figures(shown.units);
      const text = (written) => ['text', written];
      const figure = (written) => ['figure', String(written ?? '')];
      tables.push({
        job: name, language, table: 'surfaces', csv: surfacesCsv({ job: shown, estimate }),
        rows: shown.surfaces.map((surface) => {
          const one = estimate.surfaces.find(({ id }) => id === surface.id) ?? {};
          const { area, depth, in_place, lifts } = one;
          return [text(nameOf(surface)), text(t(`takeoff.shape.${surface.shape}`)),
            ...[area?.net_ft2.likely, area?.net_ft2.low, area?.net_ft2.high, area?.openings_ft2.likely, area?.framing_ft2.likely].map((value) => figure(w.area(value))),
            ...[depth?.aim_in.likely, depth?.promised_in, depth?.most_in].map((value) => figure(w.depth(value))), figure(w.r(depth?.promised_r)),
            ...[in_place?.likely, in_place?.low, in_place?.high].map((value) => figure(w.foam(value))), figure(lifts?.count),
            text(depth?.component ? t(`fields.choice.component.${depth.component}`) : ''), text(energy(depth, w, language)),
            ...[depth?.window.least_in, depth?.window.most_in].map((value) => figure(w.depth(value))), figure(w.u(depth?.assembly?.u)), figure(w.r(depth?.assembly?.effective_r)), figure(w.money(depth?.cover.cost))];
        }),
      }, {
        job: name, language, table: 'kits', csv: kitsCsv({ job: shown, estimate }),
        rows: shown.kits.map((kit) => {
          const size = estimate.purchase.sizes.find((one) => one.kit === kit.id);
          const line = estimate.purchase.lines.find((one) => one.kit === kit.id);
          return [text(kit.name.trim() || t('kits.unnamed')), figure(w.foam(size?.label)), figure(w.foam(size?.usable)), figure(w.money(size?.price)), figure(estimate.purchase.buy ? line?.count ?? 0 : ''), figure(line ? w.money(line.cost) : '')];
        }).concat(added(estimate.purchase, text, figure, w)),
      });
    }
  }
}
process.stdout.write(JSON.stringify(tables));
