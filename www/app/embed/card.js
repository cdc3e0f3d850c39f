// @ts-check
/**
 * One surface: what it is, the measures that its shape asks for, its openings, how deep it is foamed, and its drawing.
 * What is needed stands open; what only makes it more exact is folded away.
 *
 * @typedef {import('../store.js').Store} Store
 * @typedef {import('./settings.js').Settings} Settings
 * @typedef {import('../core.js').Asked} Asked
 */
import { shapeForms } from '../calls.js';
import { entryOf } from '../changes.js';
import { field, fieldId, line } from '../field.js';
import { fills } from '../fill.js';
import { figures, ranged } from '../figures.js';
import { el, list, say } from '../list.js';
import { nameIn, nameOf } from '../named.js';
import { byId, redraw, row, worked } from '../parts.js';
import { has, t } from '../words.js';
import { cutPart } from './cutpart.js';
import { depthPart } from './depthkeys.js';
import { drawingPart } from './drawingpart.js';
import { briefLine } from './inbrief.js';
import { legs, openings } from './listed.js';
import { aside, lacking, noteOf } from './told.js';

/** The measures of a room, in the order in which they are said. */
const ROOM = ['length', 'width', 'height'];

/** Whether a measure stands open: it is needed, or it takes the place of one that is. @param {Asked} one @param {readonly Asked[]} all */
const open = (one, all) => one.needed || all.some((other) => other.needed && other.without === one.field);

/**
 * @param {Store} store @param {Settings} settings @param {number} id
 * @param {{promised: ReturnType<typeof import('./depthkeys.js').promises>, removed: (id: number) => void}} ways
 */
export function card(store, settings, id, ways) {
  const get = () => byId(store.job.surfaces, id);
  const form = () => shapeForms().find((one) => one.shape === get()?.shape);
  const title = el('h2', { id: `card-${id}`, tabindex: -1 });
  const remove = el('button', { type: 'button', class: 'link', 'data-key': `remove-${id}`, click: () => ways.removed(id) }, t('embed.remove'));
  const name = line({ store, part: 'surface', id, field: 'name', label: t('surface.name') });
  const shape = shapePart(store, settings, id);
  const measures = el('div', 'fields');
  const folded = el('div', 'fields');
  const deduct = el('input', { type: 'checkbox', change: () => store.dispatch({ do: 'deduct', id, on: deduct.checked }) });
  const deductPart = el('label', 'switch', deduct, el('span', '', t('surface.deduct'), el('small', '', t('surface.deduct_why'))));
  const more = el('details', 'more', el('summary', '', t('embed.more')), folded, deductPart);
  const edges = legs(store, id);
  const holes = openings(store, id, () => form()?.places ?? false);
  const depth = settings.sections.has('depth') ? depthPart(store, settings, id, ways.promised) : undefined;
  const brief = briefLine(store, settings);
  const areas = el('div');
  const notes = el('div', 'says');
  const cut = cutPart(store, id);
  const drawing = drawingPart(store, id);
  const node = el('section', { class: 'card', 'aria-labelledby': title.id }, el('div', 'group-head', title, remove), cut.node,
    el('div', 'fields top', name.node, shape.node), measures, edges.node, holes.node, more, drawing.node, depth?.node, brief.node, areas, notes);

  for (const turned of ['pointerover', 'focusin']) node.addEventListener(turned, cut.fetched, { once: true });
  node.addEventListener('focusin', drawing.light);
  node.addEventListener('focusout', () => queueMicrotask(drawing.light));

  const filled = (/** @type {string} */ one) => !!entryOf(store.job, 'surface', id, one)?.text.trim();

  /** The measures that are asked for now. */
  function asked() {
    const on = get()?.deduct_framing;
    return (form()?.entries ?? []).filter((one) => !one.elsewhere && (!one.framing || on) && (!one.with || filled(one.with)) && (!one.without || !filled(one.without)));
  }

  /** Three lengths in one box are a length, a width and a height, as far as this shape has them. @param {string} typed */
  function filling(typed) {
    const all = (form()?.entries ?? []).map((one) => one.field);
    const lengths = ROOM.filter((one) => all.includes(one));
    if (!lengths.includes(typed) && typed !== 'times') return undefined;
    return fills(store, 'surface', id, lengths, all.includes('times') ? 'times' : '', (one) => nameIn(get()?.shape ?? '', one));
  }

  /** @param {HTMLElement} into @param {Asked[]} some */
  function fieldsOf(into, some) {
    const of = get()?.shape ?? '';
    list(into, some, (one) => `${of}-${one.field}`, (one) => {
      const hint = `surface.${of}.${one.field}.hint`;
      return field({ store, part: 'surface', id, field: one.field, label: nameIn(of, one.field), hint: has(hint) ? t(hint) : undefined, quiet: true, fills: filling(one.field) });
    });
  }

  /** What stands under the measures: what comes of them, and what there is to say. @param {import('../job.js').Surface} surface @param {Set<string>} shown fields that say it themselves */
  function below(surface, shown) {
    const w = figures(store.job.units);
    const one = store.estimate && byId(store.estimate.surfaces, id);
    const r = one?.depth?.promised_r;
    redraw(areas, [one?.area || r ? el('ul', 'rows',
      one?.area && row(t('surface.net'), '', worked(ranged(one.area.net_ft2, w.area), 'surface', id, 'area.net_ft2')),
      r && one?.area?.claims_r !== false ? row(t('embed.promised'), [t('embed.promised_why', { depth: w.depth(one?.depth?.promised_in) }), !settings.foams.length && t('embed.by_example')].filter(Boolean).join(', '), worked(w.r(r), 'surface', id, 'depth.promised_in')) : undefined) : undefined]);
    redraw(notes, aside(store, surface, shown).map(noteOf));
  }

  function update() {
    const surface = get();
    if (!surface) return;
    const alone = store.job.surfaces.length === 1;
    say(title, nameOf(surface));
    remove.hidden = alone;
    remove.setAttribute('aria-label', t('embed.remove_this', { name: nameOf(surface) }));
    name.node.hidden = alone;
    name.update();
    shape.update(surface);
    cut.update();
    const all = form()?.entries ?? [];
    const stands = asked();
    const measured = stands.filter((one) => open(one, all));
    const rest = stands.filter((one) => !open(one, all));
    fieldsOf(measures, measured);
    fieldsOf(folded, rest);
    more.hidden = !rest.length && !form()?.framing;
    // What is folded away and needs a look stands open.
    if (!more.open && store.estimate?.findings.some((one) => one.severity !== 'note' && one.at.part === 'surface' && one.at.id === id && rest.some(({ field: each }) => each === one.at.field))) more.open = true;
    deduct.checked = surface.deduct_framing;
    deductPart.hidden = !form()?.framing;
    edges.node.hidden = !form()?.legs;
    edges.update(form()?.legs ? surface.legs ?? [] : []);
    holes.node.hidden = !form()?.openings;
    holes.update(surface.openings);
    depth?.update();
    brief.update();
    below(surface, new Set([...stands.map((one) => one.field), 'depth']));
    drawing.update(surface, lacking(store, surface));
  }

  return { node, title, update };
}

/** What the surface is measured as. @param {Store} store @param {Settings} settings @param {number} id */
function shapePart(store, settings, id) {
  const dom = fieldId('surface', id, 'shape');
  const select = el('select', { id: dom, 'aria-describedby': `${dom}-about`, change: () => store.dispatch({ do: 'shape', id, shape: /** @type {import('../core.js').Shape} */ (select.value) }) });
  const about = el('p', { class: 'read', id: `${dom}-about` });
  const choice = el('div', '', el('label', { for: dom }, t('surface.shape')), el('span', 'box pull', select));
  const node = el('div', 'field wide', choice, about);
  let options = '';
  return {
    node,
    /** @param {import('../job.js').Surface} surface */
    update(surface) {
      // A shape that the host gave stays on offer for its surface.
      const shapes = [...new Set([...settings.surfaces, surface.shape])];
      choice.hidden = shapes.length < 2;
      if (options !== shapes.join()) {
        options = shapes.join();
        select.replaceChildren(...shapes.map((one) => el('option', { value: one }, t(`takeoff.shape.${one}`))));
      }
      if (document.activeElement !== select) select.value = surface.shape;
      say(about, t(`surface.about.${surface.shape}`));
    },
  };
}
