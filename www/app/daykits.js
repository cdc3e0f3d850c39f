// @ts-check
/** The kits of the day: how warm each was when it was opened and ended, and the yield it reached. */
import { now } from './calls.js';
import { field } from './field.js';
import { figures } from './figures.js';
import { el, list, say } from './list.js';
import { mark } from './marks.js';
import { byId, findingNote, press, redraw, row, worked } from './parts.js';
import { clock, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./core.js').KitRun} KitRun */

/** Opens a kit: it stands in the log with its sheet and the next number. @param {Store} store @param {number} kit  an id in the job's kits or stock; 0: none */
export function openKit(store, kit) {
  const n = store.job.events.filter((one) => one.what === 'kit_on').length + 1;
  const name = sheetName(store, kit);
  store.dispatch({ do: 'add_event', what: 'kit_on', key: kit ? String(kit) : '', name: name ? t('day.kit_of', { n, name }) : t('day.kit_n', { n }), now: now() });
}

/** The kits that may be opened: those that are there already, then those of the purchase; without one, every sheet. @param {Store} store @returns {number[]} */
export function kitsAtHand(store) {
  const bought = store.estimate?.purchase.buy?.buy.map((one) => one.kit) ?? [];
  const there = (store.estimate?.purchase.stock ?? []).filter((one) => one.counts === 'yes').map((one) => one.kit);
  const planned = [...there, ...bought];
  return planned.length ? planned : store.job.kits.map((one) => one.id);
}

/** @param {Store} store @param {number} kit */
export const sheetName = (store, kit) => (byId(store.job.kits, kit) ?? byId(store.job.stock, kit))?.name.trim() ?? '';

/** @param {Store} store @param {() => boolean} fresh */
export function dayKits(store, fresh) {
  const runs = el('div');
  const presses = el('div', 'dos no-print');
  const node = el('section', 'pad', el('h2', 'bar', t('day.kits')), el('p', 'note', t('day.kits_note')), runs, presses);

  /** @param {KitRun} run */
  function entry({ id }) {
    const heading = el('h3');
    const start = ['cylinder_a', 'cylinder_b'].map((name) => field({ store, part: 'event', id, field: name, quiet: true }));
    /** @type {ReturnType<typeof field>[]} */
    let end = [];
    let off = 0;
    const ended = el('div');
    const results = el('div');
    const node = el('section', { class: 'group kit-run' }, heading, el('p', 'note', t('day.at_start')), el('div', 'fields', ...start.map((one) => one.node)), ended, results);
    return {
      node,
      /** @param {KitRun} run */
      update(run) {
        const w = figures(store.job.units);
        const event = byId(store.job.events, id);
        const last = byId(store.job.events, run.off);
        say(heading, `${event?.name.trim() || t('day.kit')}, ${event ? clock(event.at.ms) : ''}${last ? ` – ${clock(last.at.ms)}` : ''}`);
        if (off !== run.off) {
          off = run.off;
          end = off ? ['sprayed_area', 'mean_depth', 'cylinder_a', 'cylinder_b'].map((name) => field({ store, part: 'event', id: off, field: name, quiet: true })) : [];
          ended.replaceChildren(...(off ? [el('p', 'note', t('day.at_end')), el('div', 'fields', ...end.map((one) => one.node))] : []));
        }
        for (const one of [...start, ...end]) one.update();
        const found = (store.estimate?.findings ?? []).filter((one) => one.at.part === 'event' && (one.at.id === id || one.at.id === off) && one.code === 'kit_gave_less');
        redraw(results, [
          run.in_place === undefined && run.achieved_pct === undefined ? undefined : el('ul', 'rows',
            run.in_place === undefined ? undefined : row(t('day.in_place'), '', worked(w.foam(run.in_place), 'run', id, 'in_place')),
            run.achieved_pct === undefined ? undefined : row(t('day.achieved'), t('day.planned', { planned: w.pct(run.planned_pct) }), worked(w.pct(run.achieved_pct), 'run', id, 'achieved_pct'))),
          run.outside ? el('p', 'note', mark('hold'), ' ', t('day.outside')) : undefined,
          ...found.map(findingNote),
        ]);
      },
    };
  }

  return {
    node,
    update() {
      const all = store.estimate?.day.runs ?? [];
      list(runs, all, (run) => run.id, entry);
      const open = all.some((run) => run.off === 0);
      const kits = kitsAtHand(store);
      redraw(presses, open ? [press(t('day.kit_off'), 'kit-off', () => {
        if (fresh()) store.dispatch({ do: 'add_event', what: 'kit_off', now: now() });
      })] : (kits.length ? kits : [0]).map((kit) => press(t(kit ? 'day.kit_on_of' : 'day.kit_on', { name: sheetName(store, kit) || t('day.kit') }), `kit-on-${kit}`, () => {
        if (fresh()) openKit(store, kit);
      })));
    },
  };
}
