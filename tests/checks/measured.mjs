// The area that an SVG drawing shows tinted, measured from its own geometry: what is tinted, less framing and
// openings, all cut to the clip path; the grid is the ruler.

/** The area in square inches, pixels to an inch, and how many pixels of sides were measured. */
export function drawnArea(svg) {
  const body = svg.querySelector('.body');
  const tint = body.querySelectorAll('.tint').map(corners);
  const over = [...body.querySelectorAll('.wood'), ...body.querySelectorAll('.void')].map(corners);
  const clipped = /#(\w+)/.exec(body.getAttribute('clip-path') ?? '')?.[1];
  const clip = clipped ? svg.querySelector(`#${clipped}`).querySelectorAll('polygon').map(corners) : [tint.flatMap(box)];
  const k = ruler(svg);
  const pixels = swept([tint, clip], over);
  return { inches2: pixels / k ** 2, k, perimeter: [...tint, ...over].reduce((sum, one) => sum + around(one), 0) };
}

/** Pixels to an inch: from the first line of the grid to the last, over as many squares as the drawing says. */
function ruler(svg) {
  const xs = [...svg.querySelector('.grid').getAttribute('d').matchAll(/M([\d.]+) 0V/g)].map((one) => Number(one[1]));
  if (xs.length < 2) throw new Error('a grid of less than a square');
  return (xs[xs.length - 1] - xs[0]) / (xs.length - 1) / Number(svg.getAttribute('data-square'));
}

/** The corners of a rectangle or polygon. */
function corners(one) {
  const at = (name) => Number(one.getAttribute(name));
  if (one.tag === 'polygon') return one.getAttribute('points').split(' ').map((pair) => pair.split(',').map(Number));
  const [x, y, w, h] = [at('x'), at('y'), at('width'), at('height')];
  return [[x, y], [x + w, y], [x + w, y + h], [x, y + h]];
}

/** The box around a figure, as a figure. */
const box = (figure) => {
  const [xs, ys] = [0, 1].map((at) => figure.map((one) => one[at]));
  return [[Math.min(...xs), Math.min(...ys)], [Math.max(...xs), Math.min(...ys)], [Math.max(...xs), Math.max(...ys)], [Math.min(...xs), Math.max(...ys)]];
};

const around = (figure) => figure.reduce((sum, [x, y], at) => sum + Math.hypot(figure[(at + 1) % figure.length][0] - x, figure[(at + 1) % figure.length][1] - y), 0);

/**
 * The area that lies in every one of some unions and not in another one, swept from left to right. Between two
 * neighboring corners or crossings the covered length is linear in x: its middle gives the area exactly.
 */
function swept(unions, without) {
  const sides = [...unions.flat(), ...without].flatMap((figure) => figure.map((from, at) => [from, figure[(at + 1) % figure.length]]));
  const xs = new Set(sides.flat().map(([x]) => x));
  const slanted = sides.filter(([a, b]) => a[0] !== b[0] && a[1] !== b[1]);
  for (const one of slanted) for (const other of sides) if (one !== other) for (const x of crossing(one, other)) xs.add(x);
  const stops = [...xs].sort((a, b) => a - b);
  let area = 0;
  for (let at = 0; at + 1 < stops.length; at += 1) {
    const broad = stops[at + 1] - stops[at];
    if (broad < 1e-9) continue;
    const x = (stops[at] + stops[at + 1]) / 2;
    const held = unions.map((figures) => covered(figures, x)).reduce(both);
    area += broad * (length(held) - length(both(held, covered(without, x))));
  }
  return area;
}

function crossing([a, b], [c, d]) {
  const [rx, ry, sx, sy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const det = rx * sy - ry * sx;
  if (Math.abs(det) < 1e-12) return [];
  const u = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / det;
  const v = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / det;
  return u > 0 && u < 1 && v > -1e-9 && v < 1 + 1e-9 ? [a[0] + u * rx] : [];
}

/** What figures cover of the upright line at x: sorted pieces that do not touch. */
function covered(figures, x) {
  const pieces = figures.flatMap((figure) => {
    const ys = figure.flatMap(([ax, ay], at) => {
      const [bx, by] = figure[(at + 1) % figure.length];
      return (ax > x) === (bx > x) ? [] : [ay + ((x - ax) / (bx - ax)) * (by - ay)];
    }).sort((p, q) => p - q);
    return ys.flatMap((y, at) => (at % 2 ? [] : [[y, ys[at + 1]]]));
  }).sort((p, q) => p[0] - q[0]);
  const joined = [];
  for (const [from, to] of pieces) {
    const last = joined[joined.length - 1];
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

const both = (some, other) => some.flatMap(([from, to]) => other.map(([start, end]) => [Math.max(from, start), Math.min(to, end)]).filter(([start, end]) => start < end));

const length = (pieces) => pieces.reduce((sum, [from, to]) => sum + to - from, 0);
