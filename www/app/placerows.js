// @ts-check
/** One surface of the job on the screen of place and code: what it is in the building, and what is asked of it. */
import { fieldRow } from './calls.js';
import { nameOf } from './drawn.js';
import { field, fieldId } from './field.js';
import { figures } from './figures.js';
import { el, say } from './list.js';
import { byId, pressRow, redraw, to } from './parts.js';
import { answerTo, asks } from './workline.js';
import { t } from './words.js';

/** Work on a part that stands: there it matters whether the cavity is opened. */
const STANDING = ['alteration', 'insulation_only'];

/** @param {import('./store.js').Store} store @param {number} id @returns {import('./list.js').Row<import('./job.js').Surface>} */
export function surfaceRow(store, id) {
  const title = el('h3');
  const select = el('select', { id: fieldId('surface', id, 'component'), change: () => store.dispatch({ do: 'entry', part: 'surface', id, field: 'component', text: select.value }) });
  const blank = el('option');
  blank.value = '';
  select.append(blank, ...(fieldRow('surface', 'component')?.choices ?? []).map((one) => el('option', { value: one }, t(`fields.choice.component.${one}`))));
  const fields = ['runs', 'cavity_opened'].map((name) => ({ name, ...field({ store, part: 'surface', id, field: name, quiet: true, hint: t(`place.${name}_why`) }) }));
  const asked = el('p', { class: 'note', role: 'status' });
  const on = el('div');
  const node = el('div', { class: 'group', role: 'group' }, title,
    el('div', 'fields one', el('div', { class: 'field', 'data-field': select.id }, el('label', { for: select.id }, t('fields.component')), el('span', 'box pull', select)), ...fields.map((one) => one.node)),
    asked, on);
  return {
    node,
    update(surface) {
      const { job } = store;
      const rim = surface.shape === 'rim_run';
      say(title, nameOf(surface));
      node.setAttribute('aria-label', nameOf(surface));
      say(blank, t(rim ? 'place.rim_by_shape' : 'place.not_said'));
      if (document.activeElement !== select) select.value = answerTo(job, 'surface', id, 'component');
      const is = answerTo(job, 'surface', id, 'component') || (rim ? 'rim' : '');
      for (const one of fields) {
        // A rim lies between the joists' ends.
        one.node.hidden = one.name === 'runs' ? is === 'rim' : !STANDING.includes(answerTo(job, 'job', 0, 'work'));
        one.update();
      }
      const own = asks(job, id);
      // Said once for the job; here only where this surface differs.
      say(asked, own === asks(job) ? '' : own);
      asked.hidden = !asked.textContent;
      const depth = byId(store.estimate?.surfaces ?? [], id)?.depth;
      redraw(on, [el('ul', 'rows', pressRow(to('depth', id), t('place.to_depth'), depth ? t('place.aim', { depth: figures(job.units).depth(depth.aim_in.likely) }) : t('place.no_depth'), undefined))]);
    },
  };
}
