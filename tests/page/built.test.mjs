import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { apply, find } from '../../www/app/changes.js';
import { bands } from '../../www/app/drawing/layerstrip.js';
import { asked, needs, starters } from '../../www/app/layers.js';

/** The words of a list of the table of fields. */
const table = ['fields.rs', 'fields/words.rs'].map((file) => readFileSync(new URL(`../../src/job/${file}`, import.meta.url), 'utf8')).join('\n');
const listed = (name) => [...new RegExp(`const ${name}: &\\[&str\\] =\\s*&\\[([^\\]]*)\\]`).exec(table)[1].matchAll(/"(\w+)"/g)].map((one) => one[1]);
const MATERIALS = listed('MATERIALS');
const COMPONENTS = listed('COMPONENTS');

test('nothing is asked before somebody says what it is', () => {
  assert.deepEqual(asked({}), ['component']);
  assert.deepEqual(asked({ component: null, work: 'alteration', zone: '3b' }), ['component']);
});

test('a question stands only where its answer counts', () => {
  const of = (component, more = {}) => asked({ component, ...more });
  // An opened cavity matters only on a building that stands, and only where there is a cavity.
  for (const work of ['new', 'addition', undefined]) assert.ok(!of('wall', { work }).includes('cavity_opened'), String(work));
  for (const work of ['alteration', 'insulation_only']) assert.ok(of('wall', { work }).includes('cavity_opened'), work);
  assert.ok(!of('cold_room', { work: 'alteration' }).includes('cavity_opened'));
  // Foam in a rim always lies between the joists.
  assert.ok(!of('rim').includes('runs') && !of('rim').includes('over_edges') && of('rim').includes('framing'));
  // Unbroken over masonry there are no members; unbroken over a framed wall there are.
  assert.ok(!of('basement_wall', { runs: 'across' }).includes('framing'));
  assert.ok(of('wall', { runs: 'across' }).includes('framing') && !of('wall', { runs: 'across' }).includes('over_edges'));
  assert.ok(of('basement_wall', { runs: 'between' }).includes('framing_share'));
  assert.ok(!of('wall', { counted: true }).includes('framing_share') && of('wall', { counted: true }).includes('framing'));
  // Tile is asked about where the rule has an exception for it.
  assert.deepEqual(COMPONENTS.filter((component) => of(component, { zone: '2b' }).includes('tile_roof')), ['roof_deck']);
  assert.deepEqual(listed('ZONES').filter((zone) => of('roof_deck', { zone }).includes('tile_roof')), ['2b', '3b']);
});

test('every question is a field of the table', () => {
  for (const component of COMPONENTS) {
    for (const name of asked({ component, work: 'alteration', zone: '3b' })) assert.match(table, new RegExp(`P::Surface,\\s*"${name}"`), name);
  }
});

test('what a material must be told is what the core has no figure for', () => {
  const published = readFileSync(new URL('../../src/assembly/materials.rs', import.meta.url), 'utf8');
  const known = Object.fromEntries([...published.matchAll(/\b(board|piece|by_inch)\("(\w+)"/g)].map((one) => [one[2], one[1]]));
  assert.ok(Object.keys(known).length > 10);
  for (const material of MATERIALS) assert.equal(needs(material), { by_inch: 'thickness', board: undefined, piece: undefined }[known[material]] ?? (known[material] ? undefined : 'layer_r'), material);
});

test('starters hold known materials, and say all that these need', () => {
  const all = [...COMPONENTS, undefined].flatMap((component) => starters(component));
  assert.ok(all.length > COMPONENTS.length);
  for (const component of [...COMPONENTS, undefined]) assert.ok(starters(component).length, `nothing to start with for ${component}`);
  const page = { en: {}, es: {} };
  for (const lang of ['en', 'es']) page[lang] = JSON.parse(readFileSync(new URL(`../../www/words/${lang}/built.json`, import.meta.url), 'utf8'));
  for (const { name, layers } of all) {
    assert.ok(page.en[`start.${name}`] && page.es[`start.${name}`], name);
    for (const layer of layers) {
      assert.ok(MATERIALS.includes(layer.made_of), layer.made_of);
      // A thickness is written with its unit: a job in metric units would read a bare number as millimeters.
      if (needs(layer.made_of) === 'thickness') assert.match(layer.thickness ?? '', / in$/, `${name}: ${layer.made_of}`);
    }
    // From the outside in: what lies outside comes first, the room side last.
    const order = layers.map((one) => ['outside', 'cavity', 'inside'].indexOf(one.position));
    assert.deepEqual(order, order.toSorted(), name);
  }
});

const job = () => ({ next_id: 7, surfaces: [{ id: 1, entries: [], openings: [], patches: [] }], foams: [], kits: [], stock: [], readings: [], events: [], entries: [] });

test('a starter is one step, and each layer can be moved and taken away', () => {
  const rim = starters('rim')[0];
  const built = apply(job(), { do: 'add_layers', surface: 1, layers: rim.layers });
  assert.deepEqual(built.surfaces[0].layers.map((one) => one.id), [7, 8]);
  assert.equal(built.next_id, 9);
  assert.deepEqual(find(built, 'layer', 8).entries, [{ field: 'made_of', text: 'softwood' }, { field: 'position', text: 'outside' }, { field: 'thickness', text: '1 1/2 in' }]);
  const turned = apply(built, { do: 'move_layer', surface: 1, id: 8, by: -1 });
  assert.deepEqual(turned.surfaces[0].layers.map((one) => one.id), [8, 7]);
  assert.equal(apply(turned, { do: 'move_layer', surface: 1, id: 8, by: -1 }), turned, 'the outermost cannot go further out');
  assert.equal(apply(turned, { do: 'move_layer', surface: 2, id: 8, by: 1 }), turned);
  const bare = job();
  assert.equal(apply(bare, { do: 'move_layer', surface: 1, id: 8, by: 1 }), bare);
  assert.deepEqual(apply(built, { do: 'remove', part: 'layer', id: 7 }).surfaces[0].layers.map((one) => one.id), [8]);
});

test('the cut fills its width, keeps the order, and gives every band room for its number', () => {
  const layer = (id, position, thickness_in, airy = false) => ({ id, material: 'gypsum_1_2', position, thickness_in, airy, r: 1, insulation: false });
  const whole = { foam_in: 3, layers: [layer(1, 'inside', 0.5), layer(2, 'outside', 8), layer(3, 'cavity', undefined, true), layer(4, 'outside', 0.01)] };
  const cut = bands(whole, 326);
  assert.deepEqual(cut.map((one) => [one.kind, one.id]), [['layer', 2], ['layer', 4], ['foam', 0], ['layer', 3], ['layer', 1]]);
  assert.ok(cut.every((one) => one.w >= 24));
  const last = cut.at(-1);
  assert.ok(Math.abs(last.x + last.w - 326) < 1e-9);
  const many = bands({ foam_in: 1, layers: Array.from({ length: 40 }, (_, i) => layer(i, 'outside', 1)) }, 326);
  assert.ok(Math.abs(many.at(-1).x + many.at(-1).w - 326) < 1e-9);
});
