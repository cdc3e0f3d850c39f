// @ts-check
/** Spraying: passes of every surface, the waits and who asked for them, nozzles, and what can hurt. */
import { answerBar } from './answer.js';
import { lifts, nameOf } from './drawn.js';
import { figures } from './figures.js';
import { el } from './list.js';
import { between, byId, caution, findingNote, framed, head, redraw, row, src, to, way, worked } from './parts.js';
import { jobName, nozzleWords } from './sheet.js';
import { span, t } from './words.js';

export const words = ['sheet', 'spraying', 'ready', 'people'];

const BEFORE = ['edges', 'warm', 'bare', 'idle', 'upright', 'off_ratio'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const main = el('div');
  const bar = answerBar();
  root.append(el('main', '', top, main), bar.node);

  function update() {
    bar.update(store);
    const { job, estimate } = store;
    const w = figures(job.units);
    const plan = estimate?.spraying;
    const done = (estimate?.surfaces ?? []).filter((one) => one.lifts);
    redraw(top, [head({ back: [to('sheet', 'spray'), jobName(store)], title: t('spraying.title') }),
      plan?.lifts ? el('p', 'key', el('b', '', worked(String(plan.lifts), 'job', 0, 'spraying.lifts')), el('span', '', t('spraying.key', { n: plan.lifts }), el('br'), t('spraying.key_2', { n: plan.nozzles }))) : undefined]);
    const svg = lifts(store, between(root));
    const found = (estimate?.findings ?? []).filter((one) => ['lifts_cross', 'thick_lift', 'thinner_than_lift'].includes(one.code));
    redraw(main, [
      done.length ? el('div', 'pad top', way(t('spraying.day'), to('day'), 'wide'), el('p', 'note', t('spraying.day_note'))) : undefined,
      svg ? el('figure', 'draw', el('div', 'pad top', svg), el('figcaption', '', el('span', '', t('spraying.drawn')))) : el('p', 'note pad', t('sheet.spray_none')),
      el('div', 'pad top', el('div', 'says', ...found.map((one) => {
        const node = findingNote(one);
        const surface = byId(job.surfaces, one.at.id);
        if (surface && job.surfaces.length > 1) node.querySelector('b')?.prepend(nameOf(surface) + ': ');
        return node;
      }))),
      el('div', 'pad', el('h2', 'bar', t('spraying.each')), el('ul', 'rows', ...done.flatMap((one) => {
        const surface = byId(job.surfaces, one.id);
        const it = one.lifts;
        if (!surface || !it) return [];
        const wait = it.count === 1 ? t('spraying.one_pass') : it.wait_min === undefined ? t('spraying.by.label_only') : t(`spraying.by.${it.wait_by}`, { wait: span(it.wait_min) });
        return [el('li', '', el('span', 'k', el('b', '', nameOf(surface)), el('small', '', wait)),
          el('span', 'v', worked(t('spraying.n_of', { n: it.count, each: w.depth(it.each_in) }), 'surface', one.id, 'lifts.each_in'),
            it.count > 1 && it.waits_min !== undefined ? el('small', '', t('spraying.waits', { wait: span(it.waits_min) })) : undefined))];
      })), el('p', 'note', t('spraying.waits_note'))),
      plan && done.length ? el('div', 'pad', el('h2', 'bar', t('spraying.nozzles')), el('ul', 'rows', row(t('spraying.nozzles_at_hand'), nozzleWords(plan), worked(String(plan.nozzles), 'job', 0, 'spraying.nozzles'))), el('p', 'note', t('spraying.nozzles_note'))) : undefined,
      el('div', 'pad', el('h2', 'bar', t('spraying.safe')), el('div', 'says', caution('spraying.protect'), caution('spraying.air'), caution('spraying.out'), caution('spraying.burn'), caution('spraying.seal'), caution('spraying.cylinder')), el('div', 'dos no-print', way(t('people.title'), to('people')))),
      el('div', 'pad tail', el('h2', 'bar', t('spraying.before')), el('ul', 'rows', ...BEFORE.map((one) => row(t(`spraying.do.${one}`), t(`spraying.why.${one}`), undefined))), src(t('spraying.practice')), el('p', 'note', t('sheet.governs')),
        el('div', 'dos no-print', way(t('spraying.print'), to('paper', 'day')))),
    ]);
  }

  return { title: t('spraying.title'), update };
}
