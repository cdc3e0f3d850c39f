// @ts-check
/** What a surface is in its building, what it is built of from the outside in, and how much heat the whole lets through. */
import { fieldRow } from './calls.js';
import { entryOf, find } from './changes.js';
import { layerStrip } from './drawing/layerstrip.js';
import { field, fieldId } from './field.js';
import { figures } from './figures.js';
import { asked, needs, starters } from './layers.js';
import { el, list, say } from './list.js';
import { byId, press, redraw, row, src, worked } from './parts.js';
import { shares } from './shares.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */

/** Every question, in the order in which they stand. */
const QUESTIONS = ['component', 'cavity_opened', 'runs', 'framing', 'framing_share', 'over_edges', 'whole_r', 'inner_retarder', 'tile_roof'];

/** @param {Store} store @param {number} id */
export function part(store, id) {
  const questions = QUESTIONS.map((name) => field({ store, part: 'surface', id, field: name, source: true, hint: name === 'component' ? '' : t(`built.why.${name}`) }));
  questions[QUESTIONS.indexOf('framing_share')]?.node.append(shares(store, id));
  const rows = el('div');
  const begin = el('div');
  const sum = el('div');
  const add = press(t('built.add'), 'add-layer', () => {
    const layer = store.job.next_id;
    store.dispatch({ do: 'add_layers', surface: id, layers: [{ made_of: 'typed', position: 'inside' }] });
    void store.settled().then(() => document.getElementById(fieldId('layer', layer, 'made_of'))?.focus());
  });
  const node = el('div', 'built', el('div', 'fields one', ...questions.map((one) => one.node)),
    el('h2', '', t('built.layers')), el('p', 'note', t('built.layers_why')), begin, rows, el('div', 'dos', add), sum);

  function update() {
    const surface = byId(store.job.surfaces, id);
    if (!surface) return;
    const { job, estimate } = store;
    const one = estimate && byId(estimate.surfaces, id);
    const said = (/** @type {string} */ name) => entryOf(job, 'surface', id, name)?.text;
    const component = /** @type {import('./core.js').Component | undefined} */ (said('component') ?? (surface.shape === 'rim_run' ? 'rim' : undefined));
    const shown = new Set(asked({
      component, runs: said('runs'), counted: (one?.area?.framing_by ?? 'nothing') !== 'nothing',
      work: /** @type {import('./core.js').Work | undefined} */ (entryOf(job, 'job', 0, 'work')?.text), zone: entryOf(job, 'job', 0, 'zone')?.text,
    }));
    // What the whole is worth is known once its layers are.
    if (surface.layers?.length) shown.add('whole_r');
    questions.forEach((question, at) => {
      const name = QUESTIONS[at] ?? '';
      // What was answered once stays in sight: an answer that nobody sees would still count.
      question.node.hidden = !shown.has(name) && !said(name);
      question.update();
    });
    const layers = surface.layers ?? [];
    list(rows, layers, (one) => one.id, (one) => layerPart(store, id, one.id));
    redraw(begin, layers.length ? [] : [el('ul', 'rows', ...starters(component).map(({ name, layers: fresh }) => el('li', 'press', el('button', {
      type: 'button', class: 'press', 'data-key': `start-${name}`,
      click: () => {
        const first = store.job.next_id;
        store.dispatch({ do: 'add_layers', surface: id, layers: fresh });
        void store.settled().then(() => document.getElementById(fieldId('layer', first, 'made_of'))?.focus());
      },
    }, el('span', 'k', el('b', '', t(`built.start.${name}`)), el('small', '', fresh.map((one) => t(`fields.choice.made_of.${one.made_of}`)).join(' · '))), el('span', 'v act', t('built.fill'))))))]);
    redraw(sum, result(store, id, one?.depth));
  }

  return { node, update };
}

/** A press that takes little room. @param {string} text @param {string} key @param {() => void} act */
const link = (text, key, act) => el('button', { type: 'button', class: 'link', 'data-key': key, click: act }, text);

/** One layer. @param {Store} store @param {number} surface @param {number} id */
function layerPart(store, surface, id) {
  const material = el('select', { id: fieldId('layer', id, 'made_of'), change: () => store.dispatch({ do: 'entry', part: 'layer', id, field: 'made_of', text: material.value }) },
    ...(fieldRow('layer', 'made_of')?.choices ?? []).map((word) => el('option', { value: word }, t(`fields.choice.made_of.${word}`))));
  const position = field({ store, part: 'layer', id, field: 'position' });
  const thickness = field({ store, part: 'layer', id, field: 'thickness', quiet: true });
  const r = field({ store, part: 'layer', id, field: 'layer_r', quiet: true, hint: t('built.why.layer_r') });
  let overruling = false;
  const overrule = link(t('built.overrule'), `overrule-${id}`, () => {
    overruling = true;
    fit();
    document.getElementById(fieldId('layer', id, 'layer_r'))?.focus();
  });
  const title = el('h3');
  const own = el('span', 'note');
  const up = move(t('built.up'), -1);
  const down = move(t('built.down'), 1);
  const node = el('section', { class: 'patch layer', id: `layer-${id}` },
    el('div', 'group-head', title, own),
    el('div', 'fields one', el('div', 'field full', el('label', { for: material.id }, t('fields.made_of')), el('span', 'box pull', material)), position.node, thickness.node, r.node),
    el('div', 'moves', overrule, up, down, link(t('built.remove'), `remove-layer-${id}`, () => {
      const layers = byId(store.job.surfaces, surface)?.layers ?? [];
      const next = layers[layers.findIndex((one) => one.id === id) + 1] ?? layers[layers.length - 2];
      store.dispatch({ do: 'remove', part: 'layer', id });
      void store.settled().then(() => (document.getElementById(next ? fieldId('layer', next.id, 'made_of') : '') ?? document.querySelector('[data-key="add-layer"]'))?.focus());
    })));

  /** @param {string} text @param {number} by */
  function move(text, by) {
    return link(text, `move-${id}-${by}`, () => {
      const held = document.activeElement;
      store.dispatch({ do: 'move_layer', surface, id, by });
      if (held instanceof HTMLElement) held.focus();
    });
  }

  /** Shows what this material asks for. */
  function fit() {
    const layer = find(store.job, 'layer', id);
    if (!layer) return;
    const has = (/** @type {string} */ name) => Boolean(entryOf(store.job, 'layer', id, name)?.text.trim());
    const made = entryOf(store.job, 'layer', id, 'made_of')?.text ?? '';
    const lacks = new Set((store.estimate?.findings ?? []).filter((one) => one.at.part === 'layer' && one.at.id === id).map((one) => one.at.field));
    const asks = needs(made);
    // What lies in front of the foam takes room in the cavity.
    const inCavity = entryOf(store.job, 'layer', id, 'position')?.text === 'cavity';
    thickness.node.hidden = !(asks === 'thickness' || inCavity || has('thickness') || lacks.has('thickness'));
    r.node.hidden = !(asks === 'layer_r' || has('layer_r') || lacks.has('layer_r') || overruling);
    overrule.hidden = !r.node.hidden;
  }

  return {
    node,
    update: (/** @type {unknown} */ _layer, /** @type {number} */ at) => {
      const made = entryOf(store.job, 'layer', id, 'made_of')?.text ?? '';
      const layers = byId(store.job.surfaces, surface)?.layers ?? [];
      say(title, t('built.nth', { n: at + 1, what: t(`fields.choice.made_of.${made}`) }));
      if (document.activeElement !== material) material.value = made;
      up.toggleAttribute('disabled', at === 0);
      down.toggleAttribute('disabled', at === layers.length - 1);
      const w = figures(store.job.units);
      const depth = store.estimate && byId(store.estimate.surfaces, surface)?.depth;
      const laid = depth?.assembly?.layers.find((one) => one.id === id);
      say(own, laid ? w.r(laid.r) : '');
      fit();
      for (const shown of [position, thickness, r]) shown.update();
    },
  };
}

/** What the whole lets through. @param {Store} store @param {number} id @param {import('./core.js').Depth | null | undefined} depth */
function result(store, id, depth) {
  const w = figures(store.job.units);
  const { u } = w;
  const whole = depth?.assembly;
  if (!whole) {
    const steel = entryOf(store.job, 'surface', id, 'framing')?.text === 'steel';
    const layers = byId(store.job.surfaces, id)?.layers?.length;
    return [layers ? el('p', 'note top', t(steel ? 'built.steel' : depth ? 'built.not_yet' : 'built.no_depth')) : undefined];
  }
  const figure = (/** @type {string} */ text, /** @type {string} */ path) => worked(text, 'surface', id, `depth.assembly.${path}`);
  return [
    el('h2', '', t('built.whole')),
    layerStrip(whole, { foam: t('built.foam'), of: (word) => t(`fields.choice.made_of.${word}`), nth: (layer) => (byId(store.job.surfaces, id)?.layers ?? []).findIndex((one) => one.id === layer) + 1, out: t('built.out'), in: t('built.in'), label: t('built.strip_label', { foam: w.depth(whole.foam_in) }) }),
    el('ul', 'rows',
      row(t('built.through_foam', { depth: w.depth(whole.foam_in) }), t('built.through_foam_why'), figure(w.r(whole.foam_path_r), 'foam_path_r')),
      whole.member_path_r === undefined || whole.member_path_r === null ? undefined : row(t('built.through_member'), t('built.through_member_why', { pct: w.pct(whole.framing_pct) }), figure(w.r(whole.member_path_r), 'member_path_r')),
      row(t('built.u'), t('built.u_why'), figure(u(whole.u), 'u')),
      whole.u === whole.u_isothermal ? undefined : row(t('built.u_upper'), t('built.u_upper_why'), figure(u(whole.u_isothermal), 'u_isothermal')),
      row(t('built.effective'), t('built.effective_why'), figure(w.r(whole.effective_r), 'effective_r'))),
    src(t('built.from'))];
}
