// @ts-check
/** The drawings of a whole job on one sheet. */
import { answerBar } from './answer.js';
import { contact } from './contact.js';
import { el } from './list.js';
import { between, head, redraw, to, way } from './parts.js';
import { jobName } from './sheet.js';
import { t } from './words.js';

export const words = ['takeoff', 'sheet', 'surface', 'depth', 'ready', 'paper'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const sheet = el('div', 'pad');
  const bar = answerBar();
  root.append(el('main', '', top, sheet, el('div', 'pad', el('div', 'dos no-print', way(t('paper.print_drawings'), to('paper', 'drawings'))), el('p', 'note top', t('sheet.governs')))), bar.node);
  return {
    title: t('paper.name.drawings'),
    update() {
      redraw(top, [head({ back: [to('sheet'), jobName(store)], title: t('paper.name.drawings'), sub: t('paper.about.drawings') })]);
      const shown = contact(store, between(root));
      redraw(sheet, shown ? [el('p', 'note', t('paper.one_scale', { scale: shown.scale })), shown.cards] : [el('p', 'note', t('paper.none_drawn'))]);
      bar.update(store);
    },
  };
}
