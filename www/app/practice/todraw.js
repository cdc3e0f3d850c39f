// @ts-check
/**
 * A surface of an exercise to scale. Only what was measured is written on it: no figure that follows from others, no area.
 * What a slip counted too much is hatched, where the slip's name makes it plain what that is.
 */
import { call } from '../calls.js';
import { entryOf } from '../changes.js';
import { elevation } from '../drawing/elevation.js';
import { figures } from '../figures.js';
import { el } from '../list.js';
import { letters, nameIn, nameOf, openingName, squareWords } from '../named.js';
import { byId, framed, more } from '../parts.js';
import { barred, d, s } from '../svg.js';
import { has, t } from '../words.js';
import { entriesOf } from './plain.js';

/** @typedef {import('../store.js').Store} Store @typedef {import('../core.js').Outline} Outline */
/** @typedef {'corners' | 'openings' | 'framing'} Extra  what was counted too much */
/** @typedef {{extra: Extra, n: number}} Hatch  and in which step */

/** What each slip counts too much; of the others the drawing could not show it. @type {Record<string, Extra>} */
const EXTRA = { whole_rectangle: 'corners', openings_forgotten: 'openings', gross_for_net: 'openings', framing_forgotten: 'framing' };

/** What is hatched after a marking: the first slip that can be shown. @param {readonly ({slip: string} | undefined)[]} marks @returns {Hatch | undefined} */
export function hatchOf(marks) {
  const at = marks.findIndex((one) => one && EXTRA[one.slip]);
  const extra = EXTRA[marks[at]?.slip ?? ''];
  return extra && { extra, n: at + 1 };
}

/** An outline with the dimensions that stand in the job as entries, less those that a step asks for, and no others. @param {import('../job.js').Job} job @param {Outline} outline @param {readonly string[]} [asked] @returns {Outline} */
export function measured(job, outline, asked = []) {
  const entered = (/** @type {{at: import('../core.js').At}} */ { at }) => at.field !== '' && !asked.includes(at.field) && Boolean(entryOf(job, at.part, at.id, at.field)?.text.trim());
  return { ...outline, dimensions: outline.dimensions.filter(entered), edges: outline.edges.filter(entered) };
}

/**
 * A surface's drawing with its caption and its readings as a list.
 * @param {Store} store @param {number} id
 * @param {{width: number, framing: boolean, several: boolean, asked: readonly string[], hatch?: Hatch}} how
 *   `framing`: whether its members may be seen, which a step may ask to be counted; `asked`: the measures that steps ask for, which stand neither on the drawing nor in the list
 */
export function drawingCard(store, id, { width, framing, several, asked, hatch }) {
  const { job } = store;
  const surface = byId(job.surfaces, id);
  const whole = call('outline', job, id);
  if (!surface || !whole) return undefined;
  const w = figures(job.units);
  const shown = measured(job, framing ? whole : { ...whole, members: [] }, asked);
  const name = nameOf(surface);
  const said = [...shown.dimensions, ...shown.edges].map((one) => one.text);
  const { svg, square } = elevation(shown, {
    width, metric: w.metric, letters: letters(surface), notFoamed: t('surface.not_foamed'),
    faceName: (face) => (face && has(`surface.face.${face}`) ? t(`surface.face.${face}`) : ''),
    label: [t('practice.ex_drawing_label', { name, openings: shown.openings.length }), said.length > 0 && t('practice.ex_drawing_sizes', { list: said.join(', ') })].filter(Boolean).join(' '),
  });
  const hatched = hatch && overlay(svg, hatch.extra) ? t('practice.ex_hatched', { n: hatch.n }) : '';
  if (hatched) svg.setAttribute('aria-label', `${svg.getAttribute('aria-label')} ${t(`practice.ex_hatched_${hatch?.extra}`)}`);
  const readings = readingsOf(job, surface, asked);
  return el('div', 'ex-drawn', framed(svg, ...[several ? name : '', hatched, squareWords(w.metric, square)].filter(Boolean)),
    readings.length ? el('div', 'pad', more(t('practice.ex_readings_list'), el('ul', 'rows wide', ...readings.map(([what, text]) => el('li', '', el('span', 'k', what), el('span', 'v', text)))))) : undefined);
}

/** What was measured on a surface, in words, less what a step asks for. @param {import('../job.js').Job} job @param {import('../job.js').Surface} surface @param {readonly string[]} [asked] @returns {[string, string][]} */
export function readingsOf(job, surface, asked = []) {
  const legs = (surface.legs ?? []).flatMap((leg, at) => entriesOf('leg', leg.entries, job.units).map(({ name, text }) => /** @type {[string, string]} */ ([`${t('surface.leg', { n: at + 1 })}, ${name}`, text])));
  const openings = surface.openings.flatMap((one) => entriesOf('opening', one.entries, job.units).map(({ field, text }) => /** @type {[string, string]} */ ([`${openingName(surface, one.id)}, ${t(`surface.opening.${field}`)}`, text])));
  return [...entriesOf('surface', surface.entries, job.units, ['exposure', 'component', 'target_r', ...asked]).map(({ field, text }) => /** @type {[string, string]} */ ([nameIn(surface.shape, field), text])), ...legs, ...openings];
}

/** Hatches what was counted too much; false where the drawing does not hold it. @param {SVGElement} svg @param {Extra} extra */
function overlay(svg, extra) {
  const area = extra === 'corners' ? corners(svg) : boxes(svg, extra === 'openings' ? 'rect.void' : 'rect.wood');
  if (!area) return false;
  const { defs, fill } = barred();
  const over = s('g', { class: 'ex-extra' }, defs, s('path', { d: area.d, fill, 'fill-rule': 'evenodd', opacity: '.55' }), s('path', { class: 'holdln dash', d: area.edge }));
  const body = svg.querySelector('g.body');
  // Above the tint and below the figures; outside of what cuts the tint to its shape.
  if (body) body.after(over);
  else svg.append(over);
  return true;
}

/** The rectangle around the one shape that is tinted, less the shape. @param {SVGElement} svg */
function corners(svg) {
  const shapes = [...svg.querySelectorAll('polygon.tint')];
  const points = (shapes[0]?.getAttribute('points') ?? '').split(' ').map((one) => one.split(',').map(Number));
  if (shapes.length !== 1 || points.length < 3) return undefined;
  const [xs, ys] = [0, 1].map((axis) => points.map((one) => one[axis] ?? 0));
  const [left, right, top, floor] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const edge = d('M', left, floor, 'V', top, 'H', right, 'V', floor);
  return { d: `${edge}Z M${points.map((one) => one.join(' ')).join('L')}Z`, edge };
}

/** @param {SVGElement} svg @param {string} of */
function boxes(svg, of) {
  const all = [...svg.querySelectorAll(of)].map((one) => {
    const [x, y, w, h] = ['x', 'y', 'width', 'height'].map((name) => Number(one.getAttribute(name)));
    return d('M', x, y, 'h', w, 'v', h, 'h', -w, 'Z');
  });
  return all.length ? { d: all.join(''), edge: all.join('') } : undefined;
}
