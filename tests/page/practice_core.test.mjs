// The two modules between the screens and the exercises: a trap of either one is heard, and the screens go on with a fresh instance.
import { test } from 'node:test';
import assert from 'node:assert/strict';
import { use } from '../../www/app/calls.js';
import { figures, practice, take } from '../../www/app/practice/core.js';

const counted = { scenes: 0, topics: 0 };
const instance = (name) => ({
  exercise: () => ({ refused: name }),
  solve: (seed, units, lent) => { lent({}, {}, ['a']); return []; },
  mark: () => { throw new WebAssembly.RuntimeError('unreachable'); },
  scenes: () => { counted.scenes += 1; return [name]; },
  topics: () => { counted.topics += 1; return [name]; },
  book: () => [],
});

test('where there is no estimate nothing is figured', () => {
  use(/** @type {any} */ ({ estimate: () => ({ quantity: { area: 81 } }) }));
  assert.deepEqual([...figures(/** @type {any} */ ({}), /** @type {any} */ ({}), ['quantity.area', 'quantity.none'])], [81, NaN]);
  use(/** @type {any} */ ({ estimate: () => undefined }));
  assert.throws(() => figures(/** @type {any} */ ({}), /** @type {any} */ ({}), ['quantity.area']), /no estimate/);
});

test('what screens hold outlasts a trap, and lists are asked for once an instance', async () => {
  take(/** @type {any} */ (instance('first')));
  const held = await practice();
  for (let n = 0; n < 3; n += 1) assert.deepEqual([held.scenes(), held.topics()], [['first'], ['first']]);
  assert.deepEqual(counted, { scenes: 1, topics: 1 });
  assert.throws(() => held.solve('1-1-0001', 'us'), /no estimate/, 'what the estimator could not do goes through');
  assert.equal(held.exercise('1-1-0001', 'us').refused, 'first', 'and is no trap of the exercises');
  assert.throws(() => held.mark('1-1-0001', 'us', new Float64Array(), new Uint8Array()), WebAssembly.RuntimeError);
  assert.throws(() => held.exercise('1-1-0001', 'us'), /fetched/, 'a trapped instance is asked no more');
  take(/** @type {any} */ (instance('second')));
  assert.equal(held.exercise('1-1-0001', 'us').refused, 'second');
  assert.deepEqual(held.scenes(), ['second']);
});
