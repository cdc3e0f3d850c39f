// @ts-check
/** Which of the host's foams is reckoned with, where there are several. */
import { el, say } from '../list.js';
import { t } from '../words.js';

/** @param {import('../store.js').Store} store */
export function foamPart(store) {
  const inputs = store.job.foams.map(({ id }) => el('input', { type: 'radio', name: 'foam', value: id, click: () => store.dispatch({ do: 'foam', id: 0, foam: id }) }));
  const names = inputs.map(() => el('span'));
  const node = el('fieldset', 'choices', el('legend', '', t('embed.foam')), el('div', 'keys-row many', ...inputs.map((one, at) => el('label', 'key-choice', one, names[at]))));
  return {
    node,
    update() {
      inputs.forEach((input, at) => {
        input.checked = Number(input.value) === store.job.foam;
        say(names[at], store.job.foams[at]?.name.trim() || t('embed.foam_n', { n: at + 1 }));
      });
    },
  };
}
