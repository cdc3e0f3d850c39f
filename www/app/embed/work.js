// @ts-check
/**
 * The working within the frame: a figure that opens its working shows it in place of the sheet, and the way back
 * gives the focus back to the figure. Links of the full tool's own kind (`#/…`) are caught, so that neither the
 * frame's address nor the history of the page around it changes.
 *
 * @typedef {import('../store.js').Store} Store
 */
import { el } from '../list.js';
import { head, note } from '../parts.js';
import { need, t } from '../words.js';
import { parse, to } from '../view.js';
import { examples } from './samples.js';

/**
 * @param {HTMLElement} root  holds both
 * @param {HTMLElement} sheet  gives way to the working
 * @param {Store} store
 * @param {import('./settings.js').Settings} settings
 */
export function startWork(root, sheet, store, settings) {
  const place = el('main', { class: 'working', hidden: true });
  sheet.after(place);
  /** What stands in place of the sheet. @type {{update: () => void} | undefined} */
  let open;
  /** The figure that was pressed. */
  let from = '';
  /** Each press outruns the ones before it. */
  let move = 0;

  /** @param {MouseEvent} event */
  function caught(event) {
    const link = event.target instanceof Element ? event.target.closest('a[href^="#/"]') : null;
    if (!link) return;
    event.preventDefault();
    // Another button than the first opens no tab of its own either.
    if (event.type !== 'click') return;
    const href = link.getAttribute('href') ?? '';
    if (parse(href).name === 'working') void show(href);
    else back();
  }
  root.addEventListener('click', caught);
  root.addEventListener('auxclick', caught);

  /** @returns {[string, string]} */
  const wayBack = () => [to('sheet'), t('embed_ways.back')];

  /** @param {string} href */
  async function show(href) {
    const mine = ++move;
    const screen = await fetched();
    if (mine !== move) return;
    from = href;
    if (screen) {
      const { top, sheet: steps, foot, update } = screen.workingSheet(store, parse(href), wayBack, { money: settings.sections.has('price') });
      open = { update };
      place.replaceChildren(top, el('div', 'pad', examples(settings)), steps, foot);
      update();
    } else {
      open = undefined;
      place.replaceChildren(head({ back: wayBack(), title: t('embed_ways.no_working') }), el('div', 'pad', note('watch', t('embed_ways.no_working_do'))));
    }
    sheet.hidden = true;
    place.hidden = false;
    place.querySelector('h1')?.focus();
  }

  /** The module of the working with its table and words, fetched when it is first asked for; nothing where it cannot be had. */
  async function fetched() {
    try {
      const screen = await import('../working.js');
      await Promise.all([screen.ready(), need(...screen.words, 'fields', 'sources')]);
      return screen;
    } catch {
      return undefined;
    }
  }

  function back() {
    move += 1;
    if (place.hidden) return;
    open = undefined;
    place.hidden = true;
    place.replaceChildren();
    sheet.hidden = false;
    /** @type {HTMLElement | null} */ (sheet.querySelector(`a[href="${CSS.escape(from)}"]`))?.focus();
  }

  return { update: () => open?.update() };
}
