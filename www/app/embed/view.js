// @ts-check
/**
 * The estimate in brief, as a homeowner reads it: surfaces with their depth, the foam, the answer, ways to take it
 * along, cautions. Whether a house may be sprayed and how it is done stands only where the host wants it.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 * @typedef {{node: HTMLElement, update: () => void}} Part
 * @typedef {{send?: Part, take?: Part, print?: Part}} Ways  what can be done with the estimate
 */
import { entryOf } from '../changes.js';
import { fieldId } from '../field.js';
import { el, list } from '../list.js';
import { press } from '../parts.js';
import { lacking, need, said, t } from '../words.js';
import { card } from './card.js';
import { cautionPart } from './cautions.js';
import { promises } from './depthkeys.js';
import { foamPart } from './foampart.js';
import { footPart } from './foot.js';
import { amiss, sayable } from './told.js';
import { totalPart } from './total.js';

/** What the findings of the core are said with. */
const FINDINGS = ['findings', 'sources', 'fields'];

/**
 * @param {HTMLElement} root @param {Store} store @param {Settings} settings @param {Ways} ways
 * @returns {{update: () => void}}
 */
export function mount(root, store, settings, ways) {
  const cards = el('div', 'cards');
  const promised = promises(store);
  const add = press(t('embed.add'), 'add', addOne);
  const undo = press(t('page.undo'), 'undo', () => {
    store.undo();
    if (!store.canUndo) add.focus();
  });
  const foam = settings.sections.has('foam') && store.job.foams.length ? foamPart(store) : undefined;
  const total = totalPart(store, settings);
  const told = cautionPart(store);
  const rest = el('div', 'pad');
  root.append(el('main', '', el('header', 'head', el('h1', { tabindex: -1 }, settings.title || t('embed.title')), el('p', 'sub', t('embed.lead'))),
    el('div', 'sides',
      el('div', 'pad entries', cards, el('div', 'dos', add, undo), foam?.node),
      el('div', 'answers', total.node, rest, el('div', 'pad', ways.send?.node, ways.print?.node, ways.take?.node))),
    told.node, footPart(settings)));

  /** Another surface: what it is is asked first. Only one of the same shape takes the depth of the last one. */
  function addOne() {
    const last = store.job.surfaces.at(-1);
    const id = store.job.next_id;
    const [shape] = settings.surfaces;
    const depth = last?.shape === shape ? entryOf(store.job, 'surface', last.id, 'depth') : undefined;
    const text = settings.depths[0];
    store.dispatch({ do: 'add_surface', shape, entries: depth ? [depth] : text ? [{ field: 'depth', text }] : [] });
    const asked = settings.surfaces.length > 1 ? fieldId('surface', id, 'shape') : `card-${id}`;
    void store.settled().then(() => document.getElementById(asked)?.focus());
  }

  /** @param {number} id */
  function removed(id) {
    store.dispatch({ do: 'remove', part: 'surface', id });
    void store.settled().then(() => add.focus());
  }

  /** @type {Part | undefined} */
  let more;
  if (settings.sections.has('readiness') || settings.sections.has('spraying')) {
    void import('./sprayers.js').then(async (module) => {
      await need(...module.words);
      more = module.sprayersPart(store, settings);
      rest.append(more.node);
      more.update();
    }, () => undefined);
  }

  function draw() {
    list(cards, store.job.surfaces, (one) => one.id, (one) => card(store, settings, one.id, { promised, removed }));
    undo.hidden = !store.canUndo;
    for (const one of [foam, total, told, more, ways.send, ways.take, ways.print]) one?.update();
  }

  return {
    update() {
      // What the core has to say is said with words: they come before what stands there changes, or when they can be had.
      const pages = lacking([...(sayable(store).every(said) ? [] : FINDINGS), ...(amiss(store).length ? ['embed_ways'] : [])]);
      if (pages.length) void need(...pages).then(draw, draw);
      else draw();
    },
  };
}
