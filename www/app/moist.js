// @ts-check
/** Stands in until the screen itself is merged. */
import { el } from './list.js';
import { head, redraw, to } from './parts.js';
import { t } from './words.js';

export const words = ['ahead'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root) {
  const top = el('div');
  root.append(el('main', '', top));
  return { title: t('ahead.moist'), update: () => redraw(top, [head({ back: [to('ahead'), t('ahead.title')], title: t('ahead.moist') })]) };
}
