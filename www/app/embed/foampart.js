// @ts-check
/** Which of the host's foams is reckoned with: one to be pressed of several, or the one that there is, by its name. */
import { el, say } from '../list.js';
import { row } from '../parts.js';
import { t } from '../words.js';

/** @param {import('../store.js').Store} store */
export function foamPart(store) {
  const named = (/** @type {number} */ at) => store.job.foams[at]?.name.trim() || t('embed.foam_n', { n: at + 1 });
  if (store.job.foams.length < 2) return { node: el('ul', 'rows', row(t('embed.foam'), '', named(0))), update: () => undefined };
  const inputs = store.job.foams.map(({ id }) => el('input', { type: 'radio', name: 'foam', value: id, click: () => store.dispatch({ do: 'foam', id: 0, foam: id }) }));
  const names = inputs.map(() => el('span'));
  const node = el('fieldset', 'choices', el('legend', '', t('embed.foam')), el('div', 'keys-row many', ...inputs.map((one, at) => el('label', 'key-choice', one, names[at]))));
  return {
    node,
    update() {
      inputs.forEach((input, at) => {
        input.checked = Number(input.value) === store.job.foam;
        say(names[at], named(at));
      });
    },
  };
}
