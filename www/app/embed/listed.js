// @ts-check
/** What hangs on a surface: its openings, and the edges of one that is walked around. Each is a group of fields. */
import { entryOf } from '../changes.js';
import { field, fieldId } from '../field.js';
import { fills } from '../fill.js';
import { el, list } from '../list.js';
import { openingName } from '../named.js';
import { byId, press } from '../parts.js';
import { t } from '../words.js';

/** @typedef {import('../store.js').Store} Store */

/** Where an opening is: only its drawing and the framing around it ask for that. */
const PLACES = ['from_left', 'sill'];

/**
 * A list of groups with a press that adds one.
 * @param {object} about
 * @param {Store} about.store @param {string} about.title @param {string} about.add @param {string} about.key
 * @param {import('../changes.js').Change} about.one  what adds one
 * @param {(id: number) => string} about.first  the field that it is begun with
 * @param {(id: number) => {node: HTMLElement, update: (at: number) => void}} about.make
 */
function groups({ store, title, add, key, one, first, make }) {
  const all = el('div');
  const heading = el('h3', 'bar', title);
  const node = el('div', '', heading, all, el('div', 'dos', press(add, key, () => {
    const id = store.job.next_id;
    store.dispatch(one);
    void store.settled().then(() => document.getElementById(first(id))?.focus());
  })));
  return {
    node,
    /** @param {readonly {id: number}[]} things */
    update(things) {
      heading.hidden = !things.length;
      list(all, things, (thing) => thing.id, (thing) => {
        const made = make(thing.id);
        return { node: made.node, update: (_, at) => made.update(at) };
      });
    },
  };
}

/** @param {string} remove @param {() => void} act @param {...HTMLElement} fields */
function group(remove, act, ...fields) {
  const title = el('h4');
  const node = el('div', { class: 'group', role: 'group' }, el('div', 'group-head', title, el('button', { type: 'button', class: 'link', click: act }, remove)), el('div', 'fields', ...fields));
  return {
    node,
    name: (/** @type {string} */ text) => {
      title.textContent = text;
      node.setAttribute('aria-label', text);
    },
  };
}

/** @param {Store} store @param {number} surface @param {() => boolean} placed  whether this shape has places for openings */
export function openings(store, surface, placed) {
  return groups({
    store, title: t('surface.openings'), add: t('surface.add_opening'), key: `add-opening-${surface}`,
    one: { do: 'add_opening', surface }, first: (id) => fieldId('opening', id, 'width'),
    make: (id) => {
      const fields = ['width', 'height', 'count', ...PLACES].map((name) => ({ name, shown: field({
        store, part: 'opening', id, field: name, label: t(`surface.opening.${name}`), hint: t(`surface.opening.${name}.hint`), quiet: true,
        fills: PLACES.includes(name) ? undefined : fills(store, 'opening', id, ['width', 'height'], 'count', (one) => t(`surface.opening.${one}`)),
      }) }));
      const made = group(t('surface.remove_opening'), () => store.dispatch({ do: 'remove', part: 'opening', id }), ...fields.map((one) => one.shown.node));
      return {
        node: made.node,
        update: () => {
          const on = byId(store.job.surfaces, surface);
          made.name(on ? openingName(on, id) : '');
          for (const one of fields) {
            one.shown.node.hidden = PLACES.includes(one.name) && !placed();
            one.shown.update();
          }
        },
      };
    },
  });
}

/** @param {Store} store @param {number} surface */
export function legs(store, surface) {
  return groups({
    store, title: t('surface.legs'), add: t('surface.add_leg'), key: `add-leg-${surface}`,
    one: { do: 'add_leg', surface }, first: (id) => fieldId('leg', id, 'length'),
    make: (id) => {
      const fields = ['length', 'turn', 'angle'].map((name) => field({
        store, part: 'leg', id, field: name, label: t(`surface.leg.${name}`), hint: name === 'angle' ? t('surface.leg.angle.hint') : '', quiet: true,
      }));
      const made = group(t('surface.remove_leg'), () => store.dispatch({ do: 'remove', part: 'leg', id }), ...fields.map((one) => one.node));
      return {
        node: made.node,
        update: (at) => {
          made.name(t('surface.leg', { n: at + 1 }));
          fields[2].node.hidden = entryOf(store.job, 'leg', id, 'turn')?.text === 'straight';
          for (const one of fields) one.update();
        },
      };
    },
  });
}
