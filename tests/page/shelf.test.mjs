import { test } from 'node:test';
import assert from 'node:assert/strict';
import { createShelf } from '../../www/app/shelf.js';

const job = (id, name = '') => ({ format: 'foamwright-job', version: 1, id, next_id: 1, units: 'us', name, place: '', note: '', entries: [], foam: 0, surfaces: [], foams: [], kits: [], readings: [] });

/** A drawer over a map that two tabs may share; `fault` is what storage answers to a write. */
function drawer(map = new Map(), state = {}) {
  return {
    map, state,
    available: () => state.fault !== 'blocked',
    keys: () => [...map.keys()].sort(),
    get: (key) => map.get(key),
    put: (key, text) => {
      if (state.fault) return state.fault;
      map.set(key, text);
      return undefined;
    },
    remove: (key) => map.delete(key),
  };
}

const tab = (name, store, locks) => createShelf(store, { tab: name, clock: () => 5, locks });

test('a record carries id, revision, tab and time, and the revision grows', () => {
  const store = drawer();
  const shelf = tab('t', store);
  assert.equal(shelf.keepNow(job('a')), 'kept');
  assert.equal(shelf.keepNow(job('a', 'N')), 'kept');
  assert.deepEqual(JSON.parse(store.map.get('a')), { id: 'a', revision: 2, tab: 't', saved_at: 5, job: job('a', 'N') });
});

test('a tab writes only over the revision that it read', () => {
  const store = drawer();
  const one = tab('1', store);
  const two = tab('2', store);
  one.keepNow(job('a', 'one'));
  assert.equal(two.keepNow(job('a', 'two')), 'conflict', 'never read');
  two.take('a');
  assert.equal(two.keepNow(job('a', 'two')), 'kept');
  assert.equal(one.moved('a'), true);
  assert.equal(one.keepNow(job('a', 'one again')), 'conflict');
  assert.equal(two.look('a').job.name, 'two');
});

test('a job deleted in the other tab is written anew, not lost', () => {
  const store = drawer();
  const one = tab('1', store);
  one.keepNow(job('a'));
  store.map.delete('a');
  assert.equal(one.keepNow(job('a', 'still here')), 'kept');
});

test('what cannot be understood is listed and never written over', () => {
  const store = drawer(new Map([['a', '{"torn'], ['b', '{"id":"other","revision":1,"job":{"id":"other"}}']]));
  const shelf = tab('t', store);
  assert.deepEqual(shelf.list().map((one) => [one.id, one.damaged]), [['a', '{"torn'], ['b', store.map.get('b')]]);
  assert.equal(shelf.keepNow(job('a')), 'conflict');
  assert.equal(store.map.get('a'), '{"torn');
});

test('blocked and full storage fall back to memory, and say which', () => {
  for (const [fault, said] of [['blocked', 'memory'], ['full', 'full']]) {
    const store = drawer(new Map(), { fault });
    const shelf = tab('t', store);
    assert.equal(shelf.keepNow(job('a', 'x')), said);
    assert.equal(shelf.take('a').job.name, 'x');
    assert.equal(shelf.list().length, 1);
    assert.equal(shelf.keepNow(job('a', 'y')), said);
    delete store.state.fault;
    assert.equal(shelf.keepNow(job('a', 'z')), 'kept', 'room again');
    assert.equal(shelf.list().length, 1);
  }
});

test('a removed job comes back as it was', () => {
  const store = drawer();
  const shelf = tab('t', store);
  shelf.keepNow(job('a', 'x'));
  const text = shelf.remove('a');
  assert.equal(shelf.look('a'), undefined);
  shelf.restore('a', text);
  assert.equal(shelf.take('a').job.name, 'x');
  assert.equal(shelf.keepNow(job('a', 'y')), 'kept');
});

test('the newest job is written when the lock comes free', async () => {
  const store = drawer();
  let free;
  const locks = { request: async (_name, _how, act) => { await new Promise((done) => { free = done; }); return act(); } };
  const shelf = tab('t', store, locks);
  let latest = job('a', 'old');
  const kept = shelf.keep(() => latest);
  latest = job('a', 'new');
  await null;
  free();
  assert.equal(await kept, 'kept');
  assert.equal(shelf.look('a').job.name, 'new');
});

test('a lock that never comes free does not hold up the writing', async () => {
  const store = drawer();
  const locks = { request: (_name, how) => new Promise((_, refuse) => how.signal.addEventListener('abort', () => refuse(new Error('aborted')))) };
  assert.equal(await tab('t', store, locks).keep(() => job('a', 'x')), 'kept');
});
