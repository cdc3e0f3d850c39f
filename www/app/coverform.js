// @ts-check
/** The cover over the foam: what is asked in this room, what was chosen, and what it costs. */
import { field } from './field.js';
import { figures } from './figures.js';
import { el } from './list.js';
import { byId, caution, note, redraw, row, worked } from './parts.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

/** @param {Store} store @param {number} id */
export function part(store, id) {
  const room = field({ store, part: 'surface', id, field: 'room', hint: t('built.why.room') });
  const cover = field({ store, part: 'surface', id, field: 'cover' });
  const price = field({ store, part: 'surface', id, field: 'cover_price', hint: t('built.why.cover_price') });
  const asks = el('div', 'says');
  const sum = el('div');
  const node = el('div', 'built', el('p', 'note', t('built.cover_why')), el('div', 'fields one', room.node), asks,
    el('div', 'fields one', cover.node, price.node), sum);
  return {
    node,
    update: () => {
      for (const shown of [room, cover, price]) shown.update();
      const said = store.estimate && byId(store.estimate.surfaces, id)?.depth?.cover;
      const w = figures(store.job.units);
      const all = store.estimate?.cover_cost;
      redraw(asks, said ? [
        note(said.asked === 'not_said' ? 'none' : 'watch', t(`built.asked.${said.asked}`), t(`built.asked_do.${said.asked}`)),
        // A cover that is not enough is said beside its field.
        said.enough === undefined || said.enough === null || (!said.enough && said.chosen !== 'none') ? undefined
          : note(said.enough ? 'watch' : 'hold', t(said.enough ? 'built.enough' : 'built.not_enough', { cover: t(`fields.choice.cover.${said.chosen}`) }), t(said.enough ? 'built.enough_do' : 'built.not_enough_do')),
      ] : [el('p', 'note', t('built.no_depth'))]);
      redraw(sum, [
        said ? el('ul', 'rows',
          said.area_ft2 === undefined || said.area_ft2 === null ? undefined : row(t('built.cover_area'), t('built.cover_area_why'), w.area(said.area_ft2)),
          said.cost === undefined || said.cost === null ? undefined : row(t('built.cover_cost'), t('built.cover_cost_why', { price: w.money(said.price_ft2) }), worked(w.money(said.cost), 'surface', id, 'depth.cover.cost')),
          all === undefined || all === null || all === said.cost ? undefined : row(t('built.covers_cost'), t('built.covers_cost_why'), worked(w.money(all), 'job', 0, 'cover_cost'))) : undefined,
        el('div', 'says', caution('built.cover_caution')),
      ]);
    },
  };
}
