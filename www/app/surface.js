// @ts-check
/** One surface: its drawing, which is also the way to its fields, its measures, openings and areas. */
import { answerBar } from './answer.js';
import { groundForms, shapeForms } from './calls.js';
import { entryOf } from './changes.js';
import { field, fieldId, line } from './field.js';
import { fills } from './fill.js';
import { bare, figures, isRange, ranged } from './figures.js';
import { el, list, say } from './list.js';
import { letters, nameIn, nameOf, openingName } from './named.js';
import { padWanted } from './prefs.js';
import { breadth, byId, findingNote, framed, head, press, redraw, row, to, way, worked } from './parts.js';
import { shares } from './shares.js';
import { untilThen } from './until.js';
import { added, addSurface, jobName } from './sheet.js';
import { outlineOf, toScale } from './toscale.js';
import { go } from './view.js';
import { has, label, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

export const words = ['takeoff', 'sheet', 'surface', 'ready'];

/** The measures of a room, in the order in which they are said. */
const ROOM = ['length', 'width', 'height'];

/** Fields of an opening that have to do with its place. */
const PLACES = ['from_left', 'sill'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store, route) {
  const id = route.id;
  const get = () => byId(store.job.surfaces, id);
  const top = el('div');
  const tabs = el('div');
  const drawing = el('div');
  const areas = el('div');
  const notes = el('div', 'says');
  const entries = el('div', 'fields');
  const openings = el('div');
  const openingsPart = el('div', '', el('h2', 'bar', t('surface.openings')), openings,
    el('div', 'dos', press(t('surface.add_opening'), 'add-opening', () => {
      const opening = store.job.next_id;
      store.dispatch({ do: 'add_opening', surface: id });
      void store.settled().then(() => focusField(fieldId('opening', opening, 'width')));
    })));
  const legs = el('div');
  const addLeg = () => {
    const leg = store.job.next_id;
    store.dispatch({ do: 'add_leg', surface: id });
    void store.settled().then(() => focusField(fieldId('leg', leg, 'length')));
  };
  const legsPart = el('div', { id: fieldId('surface', id, 'legs'), tabindex: -1 }, el('h2', 'bar', t('surface.legs')), el('p', 'note', t('surface.legs_why')), legs,
    el('div', 'dos', press(t('surface.add_leg'), 'add-leg', addLeg)));
  const ground = field({ store, part: 'surface', id, field: 'ground', quiet: true });
  const grounds = el('div', 'fields');
  const groundPart = el('div', '', el('h2', 'bar', t('surface.ground')), el('div', 'fields one', ground.node), grounds);
  const name = line({ store, part: 'surface', id, field: 'name', label: t('surface.name') });
  const shape = el('select', { id: fieldId('surface', id, 'shape'), change: () => store.dispatch({ do: 'shape', id, shape: /** @type {import('./core.js').Shape} */ (shape.value) }) });
  // A surface that was just added, with the tape pad: each shape is one press away.
  const begun = added.id === id && padWanted();
  let byFinger = false;
  const shapes = shapeForms().map((form) => el('input', { type: 'radio', name: `shape-${id}`, value: form.shape, click: () => {
    store.dispatch({ do: 'shape', id, shape: form.shape });
    if (byFinger) void store.settled().then(begin);
  } }));
  const shapeKeys = el('fieldset', { class: 'choices field wide', hidden: !begun, pointerdown: () => { byFinger = true; }, keydown: () => { byFinger = false; } }, el('legend', '', t('surface.shape')),
    el('div', 'keys-row many', ...shapes.map((one) => el('label', 'key-choice', one, el('span', '', t(`takeoff.shape.${one.value}`))))));
  for (const group of new Set(shapeForms().map((form) => form.group))) {
    shape.append(el('optgroup', { label: t(`surface.group.${group}`) }, ...shapeForms().filter((form) => form.group === group).map((form) => el('option', { value: form.shape }, t(`takeoff.shape.${form.shape}`)))));
  }
  const shapeHint = el('p', 'read');
  const deduct = el('input', { type: 'checkbox', id: fieldId('surface', id, 'deduct_framing'), change: () => store.dispatch({ do: 'deduct', id, on: deduct.checked }) });
  const deductPart = el('label', 'switch', deduct, el('span', '', t('surface.deduct'), el('small', '', t('surface.deduct_why'))));
  const photos = el('div');
  const depths = ['depth', 'target_r'].map((one) => ({ name: one, shown: field({ store, part: 'surface', id, field: one, label: t(`surface.${one}`), quiet: true }) }));
  const taken = el('p', { class: 'read', role: 'status' });
  const depthPart = el('div', 'fields', ...depths.map((one) => one.shown.node), taken);
  const after = el('div');
  const bar = answerBar();
  let active = '';

  root.append(el('main', '', top, tabs, drawing, el('div', 'pad',
    el('div', 'fields top', name.node, shapeKeys, el('div', { class: 'field wide', hidden: begun }, el('label', { for: shape.id }, t('surface.shape')), el('span', 'box pull', shape)), el('div', 'field wide', shapeHint)),
    entries, legsPart, depthPart, deductPart, openingsPart, groundPart, notes, areas, photos, after)), bar.node);

  // The field that has the focus lights its dimension.
  // Not between the two halves of a press: the drawing made anew would lose it.
  let pressing = false;
  drawing.addEventListener('pointerdown', () => {
    pressing = true;
    const over = () => setTimeout(() => {
      pressing = false;
      light();
    });
    for (const end of ['pointerup', 'pointercancel']) window.addEventListener(end, over, { once: true });
  });
  const light = () => {
    if (pressing) return;
    const held = document.activeElement?.id ?? '';
    if (held !== active) {
      active = held;
      draw();
    }
  };
  root.addEventListener('focusin', light);
  root.addEventListener('focusout', () => queueMicrotask(light));

  /** @type {{update: () => void, unmount: () => void} | undefined} */
  let shots;
  let over = false;
  // Nothing here waits for photos, and nothing depends on them.
  void import('./photos.js').then(async ({ photoPart, ready }) => {
    await ready();
    if (over || !get()) return;
    const part = photoPart({ store, place: id, name: () => { const surface = get(); return surface ? nameOf(surface) : ''; } });
    photos.append(el('h2', 'bar', t('photos.title')), part.node, el('p', 'note top', t('photos.note')));
    shots = part;
  }, () => undefined);

  /** With the tape pad a new surface begins at the first measure that it needs. */
  function begin() {
    const first = (store.estimate?.findings ?? []).find((one) => one.code === 'needed' && one.at.part === 'surface' && one.at.id === id);
    if (first && padWanted()) focusField(fieldId('surface', id, first.at.field));
  }
  if (begun) void store.settled().then(() => setTimeout(begin));

  const form = () => shapeForms().find((one) => one.shape === get()?.shape);

  function draw() {
    const surface = get();
    if (!surface) return;
    const known = outlineOf(store, id);
    if (!known) return redraw(drawing, [el('p', 'note pad', [lacking(surface), t('surface.not_yet')].filter(Boolean).join(' ')), untilThen(store, id)]);
    const { svg, said, scale } = toScale(store, surface, known.outline, known.area, {
      width: breadth(root), active,
      press: (at) => focusField(fieldId(at.part, at.id, at.field)),
      pressLabel: (one) => t('surface.press', { what: (one.at.part === 'opening' ? openingName(surface, one.at.id) + ', ' : '') + label(one.at.part, one.at.field), value: one.text }),
    });
    redraw(drawing, [framed(svg, said, scale)]);
  }

  /** Three lengths in one box are a length, a width and a height, as far as this shape has them. @param {string} typed */
  function filling(typed) {
    const asked = (form()?.entries ?? []).map((one) => one.field);
    const lengths = ROOM.filter((one) => asked.includes(one));
    if (!lengths.includes(typed) && typed !== 'times') return undefined;
    return fills(store, 'surface', id, lengths, asked.includes('times') ? 'times' : '', (one) => nameIn(get()?.shape ?? '', one));
  }

  /** What is still needed, by the names that its fields have here. @param {import('./job.js').Surface} surface */
  function lacking(surface) {
    const lacks = (store.estimate?.findings ?? []).filter((one) => one.code === 'needed' && one.at.part === 'surface' && one.at.id === id)
      .map(({ at: { field: one } }) => nameIn(surface.shape, one));
    return lacks.length ? t('surface.lacking', { fields: lacks.join(' · ') }) : '';
  }

  function update() {
    const surface = get();
    bar.update(store);
    if (!surface) {
      redraw(root, [el('main', '', head({ back: [to('sheet'), jobName(store)], title: t('surface.gone') })), bar.node]);
      return;
    }
    const at = store.job.surfaces.indexOf(surface);
    redraw(top, [head({ back: [to('sheet'), t('sheet.sheet')], side: t('sheet.of', { n: at + 1, of: store.job.surfaces.length }), title: nameOf(surface), sub: t(`surface.from.${surface.shape}`) })]);
    redraw(tabs, [el('nav', { class: 'tabs', 'aria-label': t('surface.all') }, ...store.job.surfaces.map((one) =>
      el('a', { href: to('surface', one.id), 'aria-current': one.id === id && 'page' }, el('span', '', nameOf(one)))), el('button', { type: 'button', 'data-key': 'tab-add', click: () => addSurface(store) }, t('takeoff.add')))]);
    name.update();
    if (document.activeElement !== shape) shape.value = surface.shape;
    for (const one of shapes) one.checked = one.value === surface.shape;
    shapeHint.textContent = t(`surface.about.${surface.shape}`);
    const asked = form();
    const filled = (/** @type {string} */ name) => !!entryOf(store.job, 'surface', id, name)?.text.trim();
    const stands = (/** @type {import('./core.js').Asked} */ one) => (!one.framing || surface.deduct_framing) && (!one.with || filled(one.with)) && (!one.without || !filled(one.without));
    list(entries, (asked?.entries ?? []).filter((one) => !one.elsewhere && stands(one)), (one) => `${surface.shape}-${one.field}`, (one) => {
      const key = `surface.${surface.shape}.${one.field}`;
      const shown = field({ store, part: 'surface', id, field: one.field, label: nameIn(surface.shape, one.field), hint: has(`${key}.hint`) ? t(`${key}.hint`) : undefined, quiet: true, fills: filling(one.field) });
      if (one.field === 'framing_share') shown.node.append(shares(store, id));
      return shown;
    });
    for (const one of depths) {
      one.shown.node.hidden = surface.depth_way !== (one.name === 'depth' ? 'typed' : 'target_r');
      one.shown.update();
    }
    const from = added.id === id && byId(store.job.surfaces, added.from ?? 0);
    const kept = from && ['depth', 'target_r'].some((one) => filled(one) && entryOf(store.job, 'surface', from.id, one)?.text === entryOf(store.job, 'surface', id, one)?.text);
    say(taken, kept ? t('surface.depth_taken', { name: nameOf(from) }) : '');
    taken.hidden = !kept;
    // What only seals is not asked what it goes on.
    groundPart.hidden = !!store.estimate && byId(store.estimate.surfaces, id)?.area?.claims_r === false;
    ground.update();
    const on = entryOf(store.job, 'surface', id, 'ground')?.text;
    list(grounds, groundForms().find((one) => one.ground === on)?.entries ?? [], (one) => `${on}-${one.field}`, (one) => {
      const key = `surface.ground.${on}.${one.field}`;
      return field({ store, part: 'surface', id, field: one.field, label: has(key) ? t(key) : undefined, hint: has(`${key}.hint`) ? t(`${key}.hint`) : undefined, quiet: true });
    });
    deduct.checked = surface.deduct_framing;
    deductPart.hidden = !asked?.framing;
    openingsPart.hidden = !asked?.openings;
    legsPart.hidden = !asked?.legs;
    list(legs, (asked?.legs && surface.legs) || [], (one) => one.id, (one) => leg(one.id));
    const known = letters(surface);
    list(openings, surface.openings, (one) => one.id, (one) => opening(store, one.id));
    for (const one of surface.openings) {
      const letter = document.getElementById(`letter-${one.id}`);
      if (letter) letter.textContent = known.get(one.id) ?? '';
    }
    for (const [opened, group] of groups) if (!surface.openings.some((one) => one.id === opened)) groups.delete(opened); else group(asked?.places ?? false);
    draw();
    drawAreas(surface);
    shots?.update();
    redraw(after, [
      el('div', 'dos', way(t('surface.to_depth'), to('depth', id), 'wide')),
      store.job.surfaces.length > 1 && el('div', 'dos two', press(t('surface.up'), 'up', () => store.dispatch({ do: 'move_surface', id, by: -1 })), press(t('surface.down'), 'down', () => store.dispatch({ do: 'move_surface', id, by: 1 }))),
      el('div', 'dos two', press(t('page.undo'), 'undo-here', () => store.undo()), press(t('page.redo'), 'redo-here', () => store.redo())),
      el('div', 'dos', press(t('surface.duplicate'), 'duplicate', () => {
        const copy = store.job.next_id;
        const from = get();
        if (from) store.dispatch({ do: 'duplicate_surface', id, name: t('surface.copy_of', { name: nameOf(from) }) });
        go(to('surface', copy));
      }), press(t('surface.remove'), 'remove', () => {
        store.dispatch({ do: 'remove', part: 'surface', id });
        go(to('sheet'), true);
      })),
    ]);
  }

  /** @param {import('./job.js').Surface} surface */
  function drawAreas(surface) {
    const w = figures(store.job.units);
    const one = store.estimate && byId(store.estimate.surfaces, id);
    const area = one?.area;
    const own = (store.estimate?.findings ?? []).filter((found) => found.at.part === 'surface' && found.at.id === id && ['', 'openings', 'legs', 'foam'].includes(found.at.field)
      || found.at.part === 'opening' && surface.openings?.some((it) => it.id === found.at.id) && ['', 'place'].includes(found.at.field));
    redraw(notes, own.map(findingNote));
    if (!area) return redraw(areas, []);
    const out = (/** @type {import('./figures.js').Band} */ band) => '− ' + ranged(band, w.area);
    redraw(areas, [el('ul', 'rows',
      ...area.parts.flatMap((one) => partOf(area, one)),
      area.many ? row(t('surface.one'), '', worked(ranged(area.one_ft2, w.area), 'surface', id, 'area.one_ft2')) : undefined,
      row(t('surface.gross'), area.many ? t('surface.times', { n: area.measures.find((one) => one.field === 'times')?.value.likely ?? 1 }) : isRange(area.gross_ft2) ? undefined : '', worked(ranged(area.gross_ft2, w.area), 'surface', id, area.many ? 'area.gross_ft2' : 'area.one_ft2')),
      area.openings_ft2.likely > 0 ? row(t('surface.taken_openings'), '', worked(out(area.openings_ft2), 'surface', id, 'area.openings_ft2')) : undefined,
      area.framing_ft2.likely > 0 ? row(t('surface.taken_framing'), t(`surface.framing_${area.framing_by}`, { n: area.members }), worked(out(area.framing_ft2), 'surface', id, 'area.framing_ft2')) : undefined,
      row(el('b', '', t('surface.net')), '', worked(ranged(area.net_ft2, w.area), 'surface', id, 'area.net_ft2'), 'sum'),
      area.wrap_ft2_in.likely ? row(t('surface.wrap'), t('surface.wrap_why'), worked(w.area(area.wrap_ft2_in.likely), 'surface', id, 'area.wrap_ft2_in')) : undefined,
      ...groundRows(one?.ground))]);
  }

  /** What the ground makes more of the foam. @param {import('./core.js').Ground | undefined} on */
  function groundRows(on) {
    const w = figures(store.job.units);
    return !on ? [] : [
      on.more_pct.high > 0 ? row(t('surface.ground.more'), '', worked(ranged(on.more_pct, w.pct), 'surface', id, 'ground.more_pct')) : undefined,
      on.pocket_in > 0 ? row(t('surface.ground.pocket'), '', w.depth(on.pocket_in)) : undefined,
      on.deepest_in > 0 ? row(t('surface.ground.deepest'), '', w.depth(on.deepest_in)) : undefined];
  }

  /** A figure between the measures and the area, where it says more than a measure does. @param {import('./core.js').SurfaceArea} area @param {import('./core.js').Measure} one */
  function partOf(area, one) {
    const w = figures(store.job.units);
    const asks = { bays_along: area.way === 'run', rise_length: area.way === 'pitch' || area.shape === 'hip_roof', slope_length: true, hip_length: true, ridge_length: true, height_length: true, perimeter_length: true, gap_length: one.value.likely > 0, closing_length: one.value.likely > 0, run_length: false, landing_length: false, arc_length: true, around_length: area.way !== 'circumference', ends: false, wide_sides: false, high_sides: false };
    const shows = asks[/** @type {keyof typeof asks} */ (one.field)] ?? (area.parts.some((other) => other.field !== one.field && other.field.endsWith('_ft2')) && one.value.likely > 0);
    if (!shows) return [];
    const write = one.field.endsWith('_ft2') ? w.area : one.field.endsWith('_length') ? w.length : w.count;
    return [row(t(`surface.part.${one.field}`), '', worked(ranged(one.value, write), 'surface', id, `area.parts.${one.field}`))];
  }

  /** The fields of one edge; Enter goes to the next one. @param {number} walked */
  function leg(walked) {
    const fields = ['length', 'turn', 'angle'].map((one) => field({ store, part: 'leg', id: walked, field: one, label: t(`surface.leg.${one}`), hint: one === 'angle' ? t('surface.leg.angle.hint') : '', quiet: true }));
    const title = el('h3');
    const node = el('div', { class: 'group', role: 'group', keydown: (/** @type {KeyboardEvent} */ event) => {
      if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
      event.preventDefault();
      const all = get()?.legs ?? [];
      const next = all[all.findIndex((one) => one.id === walked) + 1];
      if (next) focusField(fieldId('leg', next.id, 'length')); else addLeg();
    } },
    el('div', 'group-head', title, el('button', { type: 'button', class: 'link', click: () => store.dispatch({ do: 'remove', part: 'leg', id: walked }) }, t('surface.remove_leg'))),
    el('div', 'fields', ...fields.map((one) => one.node)));
    return {
      node,
      update(/** @type {{id: number}} */ one, /** @type {number} */ at) {
        title.textContent = t('surface.leg', { n: at + 1 });
        node.setAttribute('aria-label', title.textContent);
        fields[2].node.hidden = entryOf(store.job, 'leg', walked, 'turn')?.text === 'straight';
        for (const shown of fields) shown.update();
      },
    };
  }

  /** What each opening's group does when the form changes. @type {Map<number, (places: boolean) => void>} */
  const groups = new Map();

  /** The fields of one opening. @param {Store} from @param {number} opened */
  function opening(from, opened) {
    const called = line({ store: from, part: 'opening', id: opened, field: 'name', label: t('surface.opening_name') });
    const fields = ['width', 'height', 'count', ...PLACES].map((one) => ({ name: one, shown: field({ store: from, part: 'opening', id: opened, field: one, label: t(`surface.opening.${one}`), hint: t(`surface.opening.${one}.hint`), quiet: true, fills: PLACES.includes(one) ? undefined : fills(from, 'opening', opened, ['width', 'height'], 'count', (name) => t(`surface.opening.${name}`)) }) }));
    const title = el('span');
    const node = el('div', { class: 'group', role: 'group' },
      el('div', 'group-head', el('h3', '', el('span', { class: 'letter', id: `letter-${opened}` }), title),
        el('button', { type: 'button', class: 'link', click: () => from.dispatch({ do: 'remove', part: 'opening', id: opened }) }, t('surface.remove_opening'))),
      el('div', 'fields', called.node, ...fields.map((one) => one.shown.node)));
    groups.set(opened, (places) => {
      for (const one of fields) if (PLACES.includes(one.name)) one.shown.node.hidden = !places;
    });
    return {
      node,
      update() {
        const surface = get();
        title.textContent = surface ? openingName(surface, opened) : '';
        node.setAttribute('aria-label', title.textContent);
        called.update();
        for (const one of fields) one.shown.update();
      },
    };
  }

  return { title: () => { const surface = get(); return surface ? nameOf(surface) : t('surface.gone'); }, update, unmount() { over = true; shots?.unmount(); } };
}

/** Goes to a field and puts it where it can be seen. @param {string} dom */
function focusField(dom) {
  const input = document.getElementById(dom);
  input?.closest('.field')?.scrollIntoView({ block: 'center' });
  input?.focus({ preventScroll: true });
}

export { bare };
