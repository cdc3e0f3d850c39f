// @ts-check
/** Before foam, on paper: what stops, what comes first, what the proposal says, and what nobody has looked at. */
import { el } from '../list.js';
import { mark } from '../marks.js';
import { label, part, t } from '../words.js';
import { lines, section } from './leaf.js';

/** @param {import('../store.js').Store} store */
export function beforeFoam(store) {
  const found = store.estimate?.before;
  if (!found) return undefined;
  if (found.unanswered.length === found.questions.length) return section(t('before.title'), el('p', 'note', t('before.paper_none')));
  const rows = /** @type {const} */ (['not_this_kit', 'not_yet', 'preparation', 'sentence']).flatMap((kind) => found.follows.filter((one) => one.consequence === kind).map((one) => {
    const words = `before.${kind}.${one.key}`;
    const stop = kind === 'not_this_kit' || kind === 'not_yet';
    return { cells: [el('span', '', stop ? mark('hold') : undefined, ' ', t(`before.kind.${kind}`), el('small', '', label('job', one.question))),
      el('span', '', el('b', '', part(words, 'what')), ' ', part(words, 'do'), one.assumed ? ` ${t('before.assumed')}` : '', el('small', '', part(words, 'src')))] };
  }));
  return section(t('before.title'),
    rows.length ? lines(t('before.title'), [[''], [t('before.follows')]], rows) : el('p', 'note', t('before.no_stop')),
    found.unanswered.length ? el('p', 'note', mark('none'), ' ', t('before.paper_open', { what: found.unanswered.map((one) => label('job', one)).join(', ') })) : undefined);
}
