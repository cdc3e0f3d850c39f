import { test } from 'node:test';
import assert from 'node:assert/strict';
import { apply, entryOf, find, mergeKey } from '../../www/app/changes.js';

const NOW = { ms: 1760620000000, offset_min: -300 };

/** A job with two surfaces, an opening, two foams, two kits and a reading; frozen, so that a change that writes into it throws. */
function job() {
  return freeze({
    format: 'foamwright-job', version: 4, id: 'j', next_id: 20, units: 'us', name: 'Job', place: '', note: '',
    entries: [], foam: 5,
    surfaces: [
      { id: 1, name: 'Rim', shape: 'rectangle', entries: [{ field: 'length', text: '148' }], deduct_framing: false, openings: [], patches: [], depth_way: 'typed', depth_kit: 0, foam: 6 },
      { id: 2, name: 'Wall', shape: 'framed_wall', entries: [{ field: 'length', text: '5.11', unit: 'ft', sense: 'feet_inches' }], deduct_framing: true,
        openings: [{ id: 3, name: 'A', entries: [{ field: 'width', text: "3'" }] }, { id: 4, name: 'B', entries: [] }], patches: [], depth_way: 'one_kit', depth_kit: 9, foam: 0 },
    ],
    foams: [
      { id: 5, sheet: 'a', version: 1, name: 'A', entries: [], r_at: [{ id: 7, entries: [] }, { id: 8, entries: [] }] },
      { id: 6, sheet: '', version: 0, name: 'B', entries: [], r_at: [] },
    ],
    kits: [
      { id: 9, sheet: 's', version: 1, name: 'Small', entries: [] },
      { id: 10, sheet: 'l', version: 1, name: 'Large', entries: [] },
    ],
    purchase: { buy: [{ kit: 9, count: 2 }, { kit: 10, count: 1 }], reason: 'hatch' },
    readings: [{ id: 11, of: 'air', name: '', entries: [{ field: 'temperature', text: '68' }], taken: { ms: 1, offset_min: 0 } }],
    stock: [], events: [],
  });
}

function freeze(thing) {
  if (thing && typeof thing === 'object') Object.values(Object.freeze(thing)).forEach(freeze);
  return thing;
}

const ids = (things) => things.map((one) => one.id);

test('an entry is added, replaced, and taken away by a blank', () => {
  const typed = apply(job(), { do: 'entry', part: 'surface', id: 1, field: 'height', text: "8'", unit: 'ft' });
  assert.deepEqual(entryOf(typed, 'surface', 1, 'height'), { field: 'height', text: "8'", unit: 'ft' });
  const retyped = apply(typed, { do: 'entry', part: 'surface', id: 1, field: 'height', text: '9', unit: 'ft' });
  assert.equal(retyped.surfaces[0].entries.length, 2);
  assert.equal(entryOf(retyped, 'surface', 1, 'height').text, '9');
  assert.equal(entryOf(apply(retyped, { do: 'entry', part: 'surface', id: 1, field: 'height', text: '  ' }), 'surface', 1, 'height'), undefined);
  assert.equal(entryOf(typed, 'surface', 2, 'length'), entryOf(typed, 'surface', 2, 'length'), 'others are shared');
});

test('an entry reaches every part', () => {
  for (const [part, id] of [['job', 0], ['surface', 2], ['opening', 4], ['foam', 6], ['r_row', 8], ['kit', 10], ['reading', 11]]) {
    const next = apply(job(), { do: 'entry', part, id, field: 'x', text: '1' });
    assert.equal(entryOf(next, part, id, 'x')?.text, '1', part);
  }
});

test('a pressed meaning is kept, and forgotten when the text changes', () => {
  const pressed = apply(job(), { do: 'entry', part: 'surface', id: 1, field: 'height', text: '5.11', sense: 'decimal_feet' });
  assert.equal(entryOf(pressed, 'surface', 1, 'height').sense, 'decimal_feet');
  const typed = apply(job(), { do: 'entry', part: 'surface', id: 2, field: 'length', text: '5.12', unit: 'ft' });
  assert.equal('sense' in entryOf(typed, 'surface', 2, 'length'), false);
});

test('a typed reading is stamped, a blanked one loses its time, and take stamps it anew', () => {
  const typed = apply(job(), { do: 'entry', part: 'reading', id: 11, field: 'temperature', text: '70', now: NOW });
  assert.deepEqual(typed.readings[0].taken, NOW);
  const blank = apply(typed, { do: 'entry', part: 'reading', id: 11, field: 'temperature', text: '', now: NOW });
  assert.equal('taken' in blank.readings[0], false);
  assert.deepEqual(apply(job(), { do: 'take', id: 11, now: NOW }).readings[0].taken, NOW);
});

test('the job’s own lines', () => {
  assert.equal(apply(job(), { do: 'text', field: 'place', text: '12 Larkspur Lane' }).place, '12 Larkspur Lane');
  assert.equal(apply(job(), { do: 'text', field: 'name', text: 'New' }).name, 'New');
});

test('names of listed things', () => {
  for (const [part, id] of [['surface', 1], ['opening', 3], ['foam', 5], ['kit', 9], ['reading', 11]]) {
    assert.equal(find(apply(job(), { do: 'name', part, id, name: 'N' }), part, id).name, 'N', part);
  }
});

test('changing the units fixes the unit of every entry that had none', () => {
  const next = apply(job(), { do: 'units', units: 'metric', unitOf: (part, field, units) => (units === 'us' ? (part === 'reading' ? 'f' : 'ft') : 'm') });
  assert.equal(next.units, 'metric');
  assert.equal(entryOf(next, 'surface', 1, 'length').unit, 'ft');
  assert.equal(entryOf(next, 'opening', 3, 'width').unit, 'ft');
  assert.equal(entryOf(next, 'reading', 11, 'temperature').unit, 'f');
  assert.equal(entryOf(next, 'surface', 2, 'length').sense, 'feet_inches');
});

test('a surface is added with a fresh id, framing out where it is framed', () => {
  const next = apply(job(), { do: 'add_surface', shape: 'framed_floor', name: 'Ceiling' });
  assert.equal(next.next_id, 21);
  assert.deepEqual([next.surfaces[2].id, next.surfaces[2].name, next.surfaces[2].deduct_framing], [20, 'Ceiling', true]);
  assert.equal(apply(job(), { do: 'add_surface', shape: 'typed_area' }).surfaces[2].deduct_framing, false);
  const line = apply(job(), { do: 'add_surface', shape: 'strip', entries: [{ field: 'seals', text: 'holes' }] }).surfaces[2];
  assert.deepEqual([line.shape, line.entries, line.deduct_framing], ['strip', [{ field: 'seals', text: 'holes' }], false]);
});

test('a surface is duplicated beside itself with fresh ids all through', () => {
  const next = apply(job(), { do: 'duplicate_surface', id: 2, name: 'Wall 2' });
  assert.deepEqual(ids(next.surfaces), [1, 2, 20]);
  assert.deepEqual(ids(next.surfaces[2].openings), [21, 22]);
  assert.equal(next.next_id, 23);
  assert.equal(next.surfaces[2].name, 'Wall 2');
});

test('a surface is moved, not past the ends', () => {
  assert.deepEqual(ids(apply(job(), { do: 'move_surface', id: 2, by: -1 }).surfaces), [2, 1]);
  const same = job();
  assert.equal(apply(same, { do: 'move_surface', id: 2, by: 1 }), same);
  assert.deepEqual(ids(apply(job(), { do: 'move_surface', id: 1, by: 99 }).surfaces), [2, 1]);
});

test('changing the shape keeps every entry', () => {
  const next = apply(job(), { do: 'shape', id: 2, shape: 'typed_area' });
  assert.equal(next.surfaces[1].shape, 'typed_area');
  assert.deepEqual(next.surfaces[1].entries, job().surfaces[1].entries);
  assert.deepEqual(apply(next, { do: 'shape', id: 2, shape: 'framed_wall' }).surfaces[1], job().surfaces[1]);
});

test('framing in or out', () => {
  assert.equal(apply(job(), { do: 'deduct', id: 2, on: false }).surfaces[1].deduct_framing, false);
});

test('an opening is added and removed', () => {
  const next = apply(job(), { do: 'add_opening', surface: 1, name: 'Door' });
  assert.deepEqual(next.surfaces[0].openings, [{ id: 20, name: 'Door', entries: [] }]);
  assert.equal(next.next_id, 21);
  assert.deepEqual(ids(apply(next, { do: 'remove', part: 'opening', id: 3 }).surfaces[1].openings), [4]);
});

test('the way to a depth, with a kit where one is needed', () => {
  const next = apply(job(), { do: 'depth_way', id: 1, way: 'one_kit' });
  assert.deepEqual([next.surfaces[0].depth_way, next.surfaces[0].depth_kit], ['one_kit', 9]);
  assert.equal(apply(job(), { do: 'depth_way', id: 1, way: 'one_kit', kit: 10 }).surfaces[0].depth_kit, 10);
});

test('the foam of a surface and of the job', () => {
  assert.equal(apply(job(), { do: 'foam', id: 1, foam: 5 }).surfaces[0].foam, 5);
  assert.equal(apply(job(), { do: 'foam', id: 0, foam: 6 }).foam, 6);
});

test('a surface is removed and nothing else', () => {
  const next = apply(job(), { do: 'remove', part: 'surface', id: 1 });
  assert.deepEqual(ids(next.surfaces), [2]);
  assert.equal(next.next_id, 20);
});

test('a removed foam leaves no surface naming it', () => {
  const own = apply(job(), { do: 'remove', part: 'foam', id: 6 });
  assert.equal(own.surfaces[0].foam, 0);
  assert.equal(apply(job(), { do: 'remove', part: 'foam', id: 5 }).foam, 6);
});

test('a removed kit leaves the purchase and the depths', () => {
  const next = apply(job(), { do: 'remove', part: 'kit', id: 9 });
  assert.deepEqual(next.purchase.buy, [{ kit: 10, count: 1 }]);
  assert.equal(next.surfaces[1].depth_kit, 10);
  const none = apply(next, { do: 'remove', part: 'kit', id: 10 });
  assert.equal('purchase' in none, false);
  assert.equal(none.surfaces[1].depth_kit, 0);
});

test('sheets come out of the catalogue as copies with ids of the job', () => {
  const sheet = { sheet: 'c', version: 3, name: 'C', entries: [{ field: 'density', text: '1.9' }], r_at: [[{ field: 'r', text: '6' }], [{ field: 'r', text: '9' }]] };
  const foam = apply(job(), { do: 'add_foam', sheet });
  assert.deepEqual([foam.foams[2].id, ids(foam.foams[2].r_at), foam.next_id, foam.foam], [20, [21, 22], 23, 5]);
  const kit = apply(job(), { do: 'add_kit', name: 'Own' });
  assert.deepEqual([kit.kits[2].id, kit.kits[2].name, kit.kits[2].version], [20, 'Own', 0]);
});

test('a first foam becomes the job’s foam', () => {
  const bare = { ...job(), foams: [], foam: 0 };
  assert.equal(apply(bare, { do: 'add_foam', name: 'F' }).foam, 20);
});

test('a renewed sheet keeps its id', () => {
  const sheet = { sheet: 'a', version: 2, name: 'A2', entries: [], r_at: [[], []] };
  const next = apply(job(), { do: 'renew_sheet', part: 'foam', id: 5, sheet });
  assert.deepEqual([next.foams[0].id, next.foams[0].version, ids(next.foams[0].r_at), next.next_id], [5, 2, [20, 21], 22]);
  const kit = apply(job(), { do: 'renew_sheet', part: 'kit', id: 9, sheet: { sheet: 's', version: 2, name: 'S', entries: [{ field: 'price', text: '99' }] } });
  assert.deepEqual([kit.kits[0].id, kit.kits[0].version, kit.kits[0].entries[0].text], [9, 2, '99']);
});

test('a sheet put into the catalogue carries its name and version there', () => {
  assert.deepEqual(apply(job(), { do: 'sheet_kept', part: 'kit', id: 10, sheet: 'own-1', version: 4 }).kits[1], { id: 10, sheet: 'own-1', version: 4, name: 'Large', entries: [] });
});

test('a row of the R table is added and removed', () => {
  const next = apply(job(), { do: 'add_r_row', foam: 6 });
  assert.deepEqual(next.foams[1].r_at, [{ id: 20, entries: [] }]);
  assert.deepEqual(ids(apply(next, { do: 'remove', part: 'r_row', id: 7 }).foams[0].r_at), [8]);
});

test('a purchase is chosen, given a reason and cleared', () => {
  const bare = apply(job(), { do: 'purchase_clear' });
  assert.equal('purchase' in bare, false);
  assert.equal(apply(bare, { do: 'purchase_reason', reason: 'x' }), bare);
  const chosen = apply(bare, { do: 'purchase', buy: [{ kit: 9, count: 0 }, { kit: 10, count: 2 }] });
  assert.deepEqual(chosen.purchase, { buy: [{ kit: 10, count: 2 }], reason: '' });
  assert.equal(apply(chosen, { do: 'purchase_reason', reason: 'stairs' }).purchase.reason, 'stairs');
});

test('a reading is added without a time, and removed', () => {
  const next = apply(job(), { do: 'add_reading', of: 'surface', name: 'Rim, north' });
  assert.deepEqual(next.readings[1], { id: 20, of: 'surface', name: 'Rim, north', entries: [] });
  assert.deepEqual(ids(apply(next, { do: 'remove', part: 'reading', id: 11 }).readings), [20]);
});

test('what finds nothing changes nothing', () => {
  const same = job();
  for (const change of [
    { do: 'entry', part: 'surface', id: 99, field: 'x', text: '1' }, { do: 'name', part: 'opening', id: 99, name: '' },
    { do: 'duplicate_surface', id: 99 }, { do: 'add_opening', surface: 99 }, { do: 'add_r_row', foam: 99 }, { do: 'nonsense' },
  ]) assert.equal(apply(same, change), same, JSON.stringify(change));
});

test('typing in one field is one step, a press is a step of its own', () => {
  const typed = { do: 'entry', part: 'surface', id: 1, field: 'length', text: '1' };
  assert.equal(mergeKey(typed), mergeKey({ ...typed, text: '12' }));
  assert.notEqual(mergeKey(typed), mergeKey({ ...typed, id: 2 }));
  assert.equal(mergeKey({ ...typed, sense: 'sum' }), '');
  assert.equal(mergeKey({ do: 'add_surface', shape: 'rectangle' }), '');
});

test('several measures fill several boxes in one step', () => {
  const change = { do: 'entries', part: 'surface', id: 1, entries: [
    { field: 'length', text: "10'", unit: 'ft' }, { field: 'width', text: '4-6', unit: 'ft', sense: 'feet_inches' }, { field: 'times', text: '6' },
  ] };
  const next = apply(job(), change);
  const entries = Object.fromEntries(next.surfaces.find((one) => one.id === 1).entries.map((one) => [one.field, one]));
  assert.deepEqual(entries.length, { field: 'length', text: "10'", unit: 'ft' });
  assert.deepEqual(entries.width, { field: 'width', text: '4-6', unit: 'ft', sense: 'feet_inches' });
  assert.deepEqual(entries.times, { field: 'times', text: '6' });
  assert.equal(mergeKey(change), '');
  const same = job();
  assert.equal(apply(same, { ...change, id: 99 }), same);
});
