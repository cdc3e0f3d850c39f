// @ts-check
/** A surface's drawing to scale on its card. What draws is fetched when the first surface is measured. */
import { el, say } from '../list.js';
import { byId, framed, redraw } from '../parts.js';
import { label, t } from '../words.js';
import { fieldId } from '../field.js';
import { openingName } from '../named.js';

/** @typedef {import('../store.js').Store} Store */

/** @type {typeof import('../toscale.js') | undefined} */
let draws;

/** @param {Store} store @param {number} id */
export function drawingPart(store, id) {
  const yet = el('p', 'note');
  const drawing = el('div', 'bleed');
  const node = el('div', '', yet, drawing);
  let active = '';
  let pressing = false;
  const room = fitted(drawing, () => {
    const surface = now();
    if (surface) draw(surface);
  });

  // Not between the two halves of a press: the drawing made anew would lose it.
  drawing.addEventListener('pointerdown', () => {
    pressing = true;
    const over = () => setTimeout(() => { pressing = false; });
    for (const end of ['pointerup', 'pointercancel']) window.addEventListener(end, over, { once: true });
  });

  /** @param {import('../job.js').Surface} surface */
  function draw(surface) {
    const known = draws?.outlineOf(store, id);
    if (!draws || !known || pressing) return;
    active = document.activeElement?.id ?? '';
    const { svg, said, scale } = draws.toScale(store, surface, known.outline, known.area, {
      width: room(), active,
      press: (at) => focusField(fieldId(at.part, at.id, at.field)),
      pressLabel: (one) => t('surface.press', { what: (one.at.part === 'opening' ? openingName(surface, one.at.id) + ', ' : '') + label(one.at.part, one.at.field), value: one.text }),
    });
    redraw(drawing, [framed(svg, said, scale)]);
  }

  const now = () => byId(store.job.surfaces, id);

  return {
    node,
    /** The field that has the focus lights its dimension. */
    light() {
      const surface = now();
      if (surface && active !== (document.activeElement?.id ?? '')) draw(surface);
    },
    /** @param {import('../job.js').Surface} surface @param {string} lacking what is still needed, in words */
    update(surface, lacking) {
      const area = store.estimate?.surfaces.find((one) => one.id === id)?.area;
      say(yet, area ? '' : lacking);
      yet.hidden = !yet.textContent;
      if (!area) redraw(drawing, []);
      else if (draws) draw(surface);
      // Without its module the figures stand all the same; the next change asks again.
      else void import('../toscale.js').then((module) => {
        draws = module;
        const there = now();
        if (there) draw(there);
      }, () => undefined);
    },
  };
}

/**
 * How wide a drawing may be; it is drawn again wherever its room is another than it was laid out for.
 * @param {HTMLElement} node @param {() => void} again
 */
export function fitted(node, again) {
  let laid = 0;
  new ResizeObserver(() => {
    if (laid && node.clientWidth && laid !== node.clientWidth) again();
  }).observe(node);
  return () => (laid = node.clientWidth || laid || 328);
}

/** Goes to a field, which may be folded away. @param {string} dom */
export function focusField(dom) {
  const input = document.getElementById(dom);
  const folded = input?.closest('details');
  if (folded) folded.open = true;
  input?.focus();
}
