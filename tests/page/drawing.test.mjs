import assert from 'node:assert/strict';
import { test } from 'node:test';
import { elevation } from '../../www/app/drawing/elevation.js';
import { drawnArea } from '../checks/measured.mjs';
import { page } from '../checks/elements.mjs';

page();

const at = (field) => ({ part: 'surface', id: 1, field });
const outline = (width_in, height_in, more) => ({ width_in, height_in, view: 'elevation', faces: [], polygon: [], strips: [], bays: [], members: [], openings: [], not_placed: 0, dimensions: [], edges: [], true_shape: true, net_drawn: true, ...more });
const how = { width: 360, metric: false, label: '', letters: new Map(), press() {}, pressLabel: (one) => one.text, faceName: (name) => name, notFoamed: 'not foamed' };
const around = (corners) => corners.map((from, index) => ({ at: at(`side_${index}`), from, to: corners[(index + 1) % corners.length], text: `${index + 1} ft` }));
const texts = (svg) => svg.querySelectorAll('text').map((one) => one.textContent);

/** Seven corners, counterclockwise, with a notch. */
const NOTCHED = [[0, 0], [240, 0], [240, 96], [150, 96], [150, 180], [60, 240], [0, 180]];

const measured = (whole, more) => {
  const { svg, inches } = elevation(whole, { ...how, ...more });
  svg.setAttribute('data-square', String(inches));
  return { svg, ...drawnArea(svg) };
};

test('what is no rectangle shows its own area, with framing and openings cut to it', () => {
  // By the shoelace formula: 240 × 96 + 150 × 84 + 150 × 60 / 2.
  const whole = outline(240, 240, { faces: [{ name: 'plan', corners: NOTCHED, foamed: true }] });
  assert.ok(Math.abs(measured(whole).inches2 - 40_140) < 40);
  // A board over the whole height leaves out the 6 in that it covers: 240 at the left of the notch, less the slope.
  const board = measured({ ...whole, members: [{ piece: 'stud', rect: { x_in: 57, y_in: 0, w_in: 3, h_in: 400 } }] });
  assert.ok(Math.abs(board.inches2 - (40_140 - 3 * 238.5)) < 60, String(board.inches2));
});

test('a face that is switched off is not tinted, and says so where there is room', () => {
  const square = (x) => [[x, 0], [x + 100, 0], [x + 100, 100], [x, 100]];
  const faces = [{ name: 'near', corners: square(0), foamed: true }, { name: 'far', corners: square(110), foamed: false }];
  const { svg, inches2 } = measured(outline(210, 100, { faces }));
  assert.ok(Math.abs(inches2 - 10_000) < 20, String(inches2));
  assert.equal(svg.querySelectorAll('.bare').length, 1);
  assert.ok(['near', 'far', 'not foamed'].every((one) => texts(svg).includes(one)), texts(svg).join());
  const small = measured(outline(2100, 100, { faces: [{ name: 'a long name', corners: square(0), foamed: true }] }));
  assert.equal(texts(small.svg).includes('a long name'), false);
  const all = measured(outline(210, 100, { faces: faces.map((one) => ({ ...one, foamed: false })) }), {});
  assert.equal(all.inches2, 0);
});

test('lines along edges run outside, parallel to their edge, and are never upside down', () => {
  for (const corners of [NOTCHED, [[0, 0], [300, 0], [120, 160]], [[0, 80], [150, 0], [300, 80], [150, 160]]]) {
    const [w, h] = [0, 1].map((axis) => Math.max(...corners.map((one) => one[axis])));
    const { svg } = elevation(outline(w, h, { faces: [{ name: '', corners, foamed: true }], edges: around(corners) }), how);
    const figure = svg.querySelector('.tint').getAttribute('points').split(' ').map((one) => one.split(',').map(Number));
    const [, , width, height] = svg.getAttribute('viewBox').split(' ').map(Number);
    const groups = svg.querySelectorAll('g').filter((one) => one.getAttribute('role') === 'button');
    assert.equal(groups.length, corners.length);
    for (const group of groups) {
      const index = Number(group.getAttribute('data-at').split('_')[1]);
      const [a, b] = [figure[index], figure[(index + 1) % figure.length]];
      const [x1, y1, x2, y2] = group.querySelector('.dim').getAttribute('d').match(/-?[\d.]+/g).map(Number);
      const cross = (b[0] - a[0]) * (y2 - y1) - (b[1] - a[1]) * (x2 - x1);
      assert.ok(Math.abs(cross) < 0.02 * Math.hypot(b[0] - a[0], b[1] - a[1]) * Math.hypot(x2 - x1, y2 - y1), 'parallel');
      // The figure lies on the left hand; in pixels, whose y runs down, that is where the cross product is below zero.
      const side = (b[0] - a[0]) * (y1 - a[1]) - (b[1] - a[1]) * (x1 - a[0]);
      assert.ok(side > 0, 'outside');
      const text = group.querySelector('text');
      const turned = Number(/rotate\((-?[\d.]+)\)/.exec(text.getAttribute('transform'))?.[1] ?? 0);
      assert.ok(turned >= -90.01 && turned < 90, `upright: ${turned}`);
      const [x, y] = text.getAttribute('transform').match(/-?[\d.]+/g).map(Number);
      assert.ok(x > 0 && x < width && y > 0 && y < height, `on the drawing: ${x}, ${y} of ${width}, ${height}`);
      const press = group.querySelector('.clear');
      assert.ok(Number(press.getAttribute('width')) >= 48 && Number(press.getAttribute('height')) >= 48, 'large enough for a thumb');
    }
  }
});

test('the edge whose field is being entered is the blue one', () => {
  const { svg } = elevation(outline(240, 240, { faces: [{ name: '', corners: NOTCHED, foamed: true }], edges: around(NOTCHED) }), { ...how, active: 'surface-1-side_2' });
  assert.deepEqual(svg.querySelectorAll('g').filter((one) => one.getAttribute('role') === 'button' && one.querySelector('.on')).map((one) => one.getAttribute('data-at')), ['surface-1-side_2']);
});

test('figures of edges do not lie on one another', () => {
  const corners = [[0, 0], [240, 0], [240, 12], [228, 12], [228, 24], [216, 24], [216, 120], [0, 120]];
  const { svg } = elevation(outline(240, 120, { faces: [{ name: '', corners, foamed: true }], edges: around(corners) }), how);
  const places = svg.querySelectorAll('text').map((one) => one.getAttribute('transform')?.match(/-?[\d.]+/g).map(Number)).filter(Boolean);
  for (const [index, [x, y]] of places.entries()) for (const [p, q] of places.slice(index + 1)) assert.ok(Math.hypot(x - p, y - q) > 12, `${x},${y} and ${p},${q}`);
});
