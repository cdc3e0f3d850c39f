// @ts-check
/** The four marks: a shape each, so that they survive grayscale and a sunlit screen. */

const SVG = 'http://www.w3.org/2000/svg';

/** @typedef {'go' | 'hold' | 'watch' | 'none'} Mark */

/** @type {Record<Mark, [string, Record<string, string>][]>} */
const SHAPES = {
  go: [['circle', { class: 's', cx: '12', cy: '12', r: '11' }], ['path', { class: 'i', d: 'M7 12.5L10.7 16L17 8.5' }]],
  hold: [['polygon', { class: 's', points: '7.5,1 16.5,1 23,7.5 23,16.5 16.5,23 7.5,23 1,16.5 1,7.5' }], ['path', { class: 'i', d: 'M7 12H17' }]],
  watch: [['path', { class: 's', d: 'M12 1.5L23.5 22H.5Z' }], ['path', { class: 'i', d: 'M12 9V14.2M12 18.4V18.5' }]],
  none: [['circle', { class: 's', cx: '12', cy: '12', r: '10' }]],
};

/** A mark; the words beside it say the same. @param {Mark} kind @returns {SVGElement} */
export function mark(kind) {
  return draw(`mk ${kind}`, '0 0 24 24', SHAPES[kind]);
}

/** The arrow of a way back. @returns {SVGElement} */
export function chevron() {
  return draw('chev', '0 0 11 18', [['path', { d: 'M9.5 1.5L2 9l7.5 7.5', fill: 'none', stroke: 'currentColor', 'stroke-width': '2.6' }]]);
}

/** @param {string} kind @param {string} box @param {[string, Record<string, string>][]} shapes @returns {SVGElement} */
function draw(kind, box, shapes) {
  const svg = document.createElementNS(SVG, 'svg');
  for (const [name, value] of Object.entries({ class: kind, viewBox: box, 'aria-hidden': 'true' })) svg.setAttribute(name, value);
  for (const [tag, about] of shapes) {
    const node = document.createElementNS(SVG, tag);
    for (const [name, value] of Object.entries(about)) node.setAttribute(name, value);
    svg.append(node);
  }
  return svg;
}

/** Which mark a finding wears. @param {import('./core.js').Finding} found @returns {Mark} */
export function markOf(found) {
  if (found.code === 'needed' || found.code.endsWith('not_read')) return 'none';
  if (found.code === 'two_meanings') return 'watch';
  return found.severity === 'stop' ? 'hold' : 'watch';
}
