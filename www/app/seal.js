// @ts-check
/** Air sealing only: a guided list of what is sealed, in feet and counts. Each line is an ordinary surface of the job. */
import { answerBar } from './answer.js';
import { shapeForms } from './calls.js';
import { entryOf } from './changes.js';
import { nameOf } from './drawn.js';
import { field, fieldId } from './field.js';
import { figures, ranged } from './figures.js';
import { el, list } from './list.js';
import { mark } from './marks.js';
import { byId, caution, head, note, press, pressRow, redraw, to, way, worked } from './parts.js';
import { jobName, lackOf } from './sheet.js';
import { has, t } from './words.js';

/** @typedef {import('./core.js').Shape} Shape */

export const words = ['takeoff', 'sheet', 'surface', 'seal'];

/** What is sealed, in the order in which one walks from the attic down, and how it is measured. @type {[string, Shape][]} */
const KINDS = [['top_plates', 'strip'], ['chases', 'strip'], ['soffits', 'strip'], ['holes', 'penetrations'], ['gaps', 'gap'], ['sill_joint', 'strip']];

/** Whether a shape only seals. @param {Shape} shape */
const seals = (shape) => shapeForms().find((one) => one.shape === shape)?.group === 'seals';

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const others = el('div');
  const bar = answerBar();
  const sections = KINDS.map(([kind, shape]) => {
    const lines = el('div');
    const add = el('div', 'dos');
    const node = el('section', '', el('h2', 'bar', t(`fields.choice.seals.${kind}`)), el('p', 'note', t(`seal.how.${kind}`)), lines, add);
    return {
      node,
      update() {
        const mine = of(kind);
        list(lines, mine, (one) => `${one.id}-${one.shape}`, (one) => line(kind, one.id, one.shape));
        redraw(add, [press(t(mine.length ? 'seal.another' : 'seal.add', { what: t(`fields.choice.seals.${kind}`) }), `add-${kind}`, () => begin(kind, shape))]);
      },
    };
  });
  root.append(el('main', '', top, el('div', 'pad top',
    el('div', 'says', note('watch', t('seal.no_r'), t('seal.no_r_do'))), ...sections.map((one) => one.node),
    el('h2', 'bar', t('seal.never')), el('div', 'says', note('hold', t('seal.flues'), t('seal.flues_do')), note('hold', t('seal.cavities'), t('seal.cavities_do')), note('hold', t('seal.frames'), t('seal.frames_do')), caution('seal.draft')),
    others, el('div', 'dos', way(t('seal.to_sheet'), to('sheet', 'measure'), 'wide')))), bar.node);

  /** The job's lines of a kind. @param {string} kind */
  const of = (kind) => store.job.surfaces.filter((one) => seals(one.shape) && entryOf(store.job, 'surface', one.id, 'seals')?.text === kind);

  /** @param {string} kind @param {Shape} shape */
  function begin(kind, shape) {
    const id = store.job.next_id;
    const n = of(kind).length;
    const name = t(`fields.choice.seals.${kind}`);
    store.dispatch({ do: 'add_surface', shape, name: n ? `${name} ${n + 1}` : name, entries: [{ field: 'seals', text: kind }] });
    void store.settled().then(() => document.getElementById(fieldId('surface', id, asked(shape)[0] ?? ''))?.focus());
  }

  /** What a shape asks, and how deep. @param {Shape} shape */
  function asked(shape) {
    // Holes are counted; how many alike would count them twice.
    const all = (shapeForms().find((one) => one.shape === shape)?.entries ?? []).map((one) => one.field).filter((one) => one !== 'times' || shape !== 'penetrations');
    return all.includes('depth') ? all : [...all, 'depth'];
  }

  /** One line of the list: its measures, and what it takes. @param {string} kind @param {number} id @param {Shape} shape */
  function line(kind, id, shape) {
    const first = (/** @type {string[]} */ ...keys) => keys.find(has);
    const named = new Map(asked(shape).map((one) => [one, first(`seal.${kind}.${one}`, `seal.${shape}.${one}`, `surface.${shape}.${one}`)]));
    const fields = asked(shape).map((one) => {
      const name = named.get(one);
      const hint = first(`seal.${kind}.${one}.hint`, `seal.${shape}.${one}.hint`, `surface.${shape}.${one}.hint`);
      return field({ store, part: 'surface', id, field: one, label: name && t(name), hint: hint && t(hint), quiet: true });
    });
    const title = el('h3');
    const takes = el('p', { class: 'takes', role: 'status' });
    const gone = el('button', { type: 'button', class: 'link', click: () => store.dispatch({ do: 'remove', part: 'surface', id }) }, t('seal.remove'));
    const node = el('div', { class: 'group', role: 'group' }, el('div', 'group-head', title, gone), el('div', 'fields', ...fields.map((one) => one.node)), takes);
    return {
      node,
      update() {
        const surface = byId(store.job.surfaces, id);
        if (!surface) return;
        const w = figures(store.job.units);
        const one = store.estimate && byId(store.estimate.surfaces, id);
        title.textContent = nameOf(surface);
        node.setAttribute('aria-label', nameOf(surface));
        gone.setAttribute('aria-label', `${t('seal.remove')}: ${nameOf(surface)}`);
        for (const each of fields) each.update();
        redraw(takes, one?.area && one.in_place
          ? [worked(ranged(one.area.net_ft2, w.area), 'surface', id, 'area.net_ft2'), ' · ', worked(ranged(one.in_place, w.foam), 'surface', id, 'in_place'), ' · ', t('seal.none_claimed')]
          : [mark('none'), ' ', lacks(id, named) ?? lackOf(store, id) ?? t('sheet.incomplete')]);
      },
    };
  }

  /** What is missing, by the name that it has here. @param {number} id @param {Map<string, string | undefined>} named */
  function lacks(id, named) {
    const missing = (store.estimate?.findings ?? []).find((one) => one.code === 'needed' && one.at.part === 'surface' && one.at.id === id);
    const name = missing && named.get(missing.at.field);
    return name && t('sheet.missing', { field: t(name) });
  }

  return {
    title: t('seal.title'),
    update() {
      bar.update(store);
      redraw(top, [head({ back: [to('sheet', 'measure'), jobName(store)], title: t('seal.title'), sub: t('seal.lead') })]);
      for (const one of sections) one.update();
      const rest = store.job.surfaces.filter((one) => seals(one.shape) && !KINDS.some(([kind]) => of(kind).includes(one)));
      redraw(others, rest.length ? [el('h2', 'bar', t('seal.others')), el('ul', 'rows', ...rest.map((one) => pressRow(to('surface', one.id), nameOf(one), '', undefined)))] : []);
    },
  };
}
