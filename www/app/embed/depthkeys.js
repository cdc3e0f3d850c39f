// @ts-check
/**
 * How deep a surface is to be foamed: the depths that the host offers, each with the R that can be promised at it,
 * and another one, typed.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 */
import { call, now } from '../calls.js';
import { entryOf } from '../changes.js';
import { field, fieldId } from '../field.js';
import { figures } from '../figures.js';
import { el, say } from '../list.js';
import { byId } from '../parts.js';
import { has, t } from '../words.js';

/**
 * What the core says of a depth on a surface of this shape. It is asked once for each: neither measures nor openings
 * change what a foam promises at a depth.
 * @param {Store} store
 */
export function promises(store) {
  /** @type {Map<string, import('../core.js').Depth | undefined>} */
  const known = new Map();
  return (/** @type {import('../job.js').Surface} */ surface, /** @type {string} */ text) => {
    const key = [store.job.id, store.job.units, store.job.foam, surface.shape, text].join(' ');
    if (!known.has(key)) {
      const alone = { ...surface, entries: [{ field: 'depth', text }], openings: [], patches: [], legs: [], layers: [] };
      known.set(key, call('estimate', { ...store.job, surfaces: [alone] }, now())?.surfaces[0]?.depth);
    }
    return known.get(key);
  };
}

/**
 * @param {Store} store @param {Settings} settings @param {number} id  of the surface
 * @param {ReturnType<typeof promises>} promised
 */
export function depthPart(store, settings, id, promised) {
  const dom = fieldId('surface', id, 'depth');
  const typed = () => entryOf(store.job, 'surface', id, 'depth')?.text ?? '';
  const offered = settings.depths;
  // Another depth is typed where none is offered, or where what stands there is none of them.
  let other = !offered.length || typed() !== '' && !offered.includes(typed());
  let before = typed();
  const keys = [...offered, ''].map((text) => {
    const input = el('input', { type: 'radio', name: `${dom}-key`, value: text || 'other', click: () => press(text) });
    const figure = el('span');
    const below = el('small');
    return { text, input, figure, below, node: el('label', 'key-choice', input, el('span', 'depth-key', figure, below)) };
  });
  // Nobody takes the R of an example for the company's.
  const by = settings.foams.length ? '' : ` ${t('embed.by_example')}`;
  const legend = el('legend');
  const own = field({ store, part: 'surface', id, field: 'depth', label: t('embed.depth_typed'), quiet: true });
  const node = el('fieldset', 'choices', legend, offered.length ? el('div', 'keys-row many', ...keys.map((one) => one.node)) : undefined, own.node);

  /** @param {string} text */
  function press(text) {
    other = text === '';
    if (text) store.dispatch({ do: 'entry', part: 'surface', id, field: 'depth', text });
    else {
      update();
      own.input.focus();
      own.input.select();
    }
  }

  function update() {
    const surface = byId(store.job.surfaces, id);
    if (!surface) return;
    const w = figures(store.job.units);
    const text = typed();
    // Undo may have put another one there.
    if (text !== before && text !== '' && document.activeElement !== own.input) other = !offered.length || !offered.includes(text);
    before = text;
    for (const key of keys) {
      key.input.checked = key.text === '' ? other : !other && key.text === text;
      const depth = key.text ? promised(surface, key.text) : undefined;
      say(key.figure, key.text ? (depth ? w.depth(depth.aim_in.likely) : key.text) : t('embed.another_depth'));
      say(key.below, depth?.promised_r ? `${w.r(depth.promised_r)}${by}` : '');
      key.below.hidden = !key.below.textContent;
    }
    const name = has(`surface.${surface.shape}.depth`) ? t(`surface.${surface.shape}.depth`) : t('surface.depth');
    say(legend, keys.some((one) => one.below.textContent) ? t('embed.depth_r', { depth: name }) : name);
    own.node.hidden = offered.length > 0 && !other;
    own.update();
  }

  return { node, update };
}
