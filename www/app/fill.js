// @ts-check
/**
 * Several measures typed into one box (`10' x 14' x 8'`, `6 @ 2' x 4'`): one press puts each into its own box, as
 * ordinary entries and one step of undo. Nothing is put anywhere without the press.
 */
import { el } from './list.js';
import { t } from './words.js';

/**
 * The presses for a text that holds several measures: one for each way to understand it that has its boxes here.
 * @param {import('./store.js').Store} store @param {import('./core.js').Part} part @param {number} id
 * @param {string[]} lengths  the boxes for its lengths, in the order in which they are said
 * @param {string} count  the box for how many; empty where there is none
 * @param {(field: string) => string} name
 * @returns {(lists: import('./core.js').EchoPart[][]) => HTMLElement[]}
 */
export function fills(store, part, id, lengths, count, name) {
  return (lists) => lists.flatMap((parts) => {
    const boxes = lengths.values();
    const fields = parts.map((one) => (one.unit === 'each' ? count : boxes.next().value ?? ''));
    if (fields.includes('')) return [];
    return el('button', {
      type: 'button', class: 'do line',
      click: () => {
        store.dispatch({ do: 'entries', part, id, entries: parts.map((one, at) => ({
          field: fields[at] ?? '', text: one.text, ...(one.unit === 'each' ? {} : { unit: one.unit }), ...(one.sense ? { sense: one.sense } : {}),
        })) });
        const inputs = fields.map((field) => /** @type {HTMLInputElement | null} */ (document.getElementById(`${part}-${id}-${field}`)));
        // A box that is being typed into is never rewritten, so the pressed text is put there.
        inputs.forEach((input, at) => { if (input) input.value = parts[at]?.text ?? ''; });
        inputs[0]?.focus();
      },
    }, t('fields.fill', { fields: fields.map((field) => name(field).toLocaleLowerCase()).join(', '), as: parts.map((one) => one.reading).join(' × ') }));
  });
}
