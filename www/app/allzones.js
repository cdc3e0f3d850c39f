// @ts-check
/** What the rules ask of a surface in every climate zone, for whoever does not know the zone or wants to compare. */
import { call } from './calls.js';
import { entryOf } from './changes.js';
import { field } from './field.js';
import { figures } from './figures.js';
import { codeRow } from './levels.js';
import { el } from './list.js';
import { redraw, table } from './parts.js';
import { has, label, t } from './words.js';

/** @typedef {import('./store.js').Store} Store @typedef {import('./core.js').ZoneDepth} ZoneDepth */

/** @param {Store} store @param {number} id */
export function part(store, id) {
  const asked = ['work', 'edition'].map((name) => field({ store, part: 'job', id: 0, field: name }));
  const answers = el('div');
  const node = el('div', 'built', el('p', 'note', t('built.zones_why')), el('div', 'fields one', ...asked.map((one) => one.node)), answers);
  /** @type {unknown} */
  let before;
  return {
    node,
    update: () => {
      for (const shown of asked) shown.update();
      if (before === store.job) return;
      before = store.job;
      const zones = call('depths_by_zone', store.job, id) ?? [];
      const chosen = entryOf(store.job, 'job', 0, 'zone')?.text;
      const w = figures(store.job.units);
      const lacking = zones[0]?.missing ?? [];
      const silent = zones.every((one) => !one.printed && !one.least_in);
      redraw(answers, [
        silent ? el('p', 'note top', t('built.zones_none')) : undefined,
        lacking.length ? el('p', 'note top', t('built.zones_lack', { list: lacking.map((name) => label(name === 'edition' || name === 'work' ? 'job' : 'surface', name)).join(' · ') })) : undefined,
        silent ? undefined : table(t('built.zones'), [t('built.zone'), t('built.printed'), t('built.least'), t('built.most')], zones.map((one) => ({
          kind: one.zone === chosen ? 'pick' : '',
          cells: [
            el('button', {
              type: 'button', class: 'link', 'data-key': `zone-${one.zone}`, 'aria-pressed': String(one.zone === chosen),
              'aria-label': t('built.use_zone', { zone: t(`fields.choice.zone.${one.zone}`) }),
              click: () => store.dispatch({ do: 'entry', part: 'job', id: 0, field: 'zone', text: one.zone }),
            }, t(`fields.choice.zone.${one.zone}`)),
            codeRow(one.printed) || t('built.no_row'),
            bound(w.depth(one.least_in), one.least_by, one.cross ? t('built.cross') : ''),
            bound(w.depth(one.most_in), one.most_by, ''),
          ],
        })), 2),
        el('p', 'note', t('built.zones_note')),
      ]);
    },
  };
}

/** A bound with the rule that decides it. @param {string} depth @param {import('./core.js').Rule | null | undefined} by @param {string} said */
const bound = (depth, by, said) => (depth ? el('span', 'bound', el('b', '', depth), by && has(`built.by.${by}`) ? el('small', '', t(`built.by.${by}`)) : undefined, said ? el('small', 'w-hold', said) : undefined) : t('built.nothing'));
