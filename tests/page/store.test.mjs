import { test } from 'node:test';
import assert from 'node:assert/strict';
import { createStore } from '../../www/app/store.js';

const blank = (id = 'a') => ({
  format: 'foamwright-job', version: 1, id, next_id: 1, units: 'us', name: '', place: '', note: '',
  entries: [], foam: 0, surfaces: [], foams: [], kits: [], readings: [],
});

/** A store over a shelf of one map; `log` holds the order of what happened. */
function bench({ answer = undefined } = {}) {
  const log = [];
  const kept = new Map();
  const read = new Map();
  let made = 0;
  const write = (job) => {
    log.push(`keep ${job.surfaces.length}`);
    if (answer) return answer(job);
    if ((kept.get(job.id)?.revision ?? 0) !== (read.get(job.id) ?? 0)) return 'conflict';
    const revision = (read.get(job.id) ?? 0) + 1;
    kept.set(job.id, { job, revision });
    read.set(job.id, revision);
    return 'kept';
  };
  const store = createStore({
    estimate: (job) => {
      log.push(`estimate ${job.surfaces.length}`);
      return { of: job };
    },
    shelf: { keep: async (latest) => { await null; return write(latest()); }, keepNow: write },
    newId: () => `new-${++made}`,
    copyName: (job) => `${job.name} (copy)`,
  });
  return { store, kept, log };
}

const add = { do: 'add_surface', shape: 'rectangle' };
const type = (text) => ({ do: 'text', field: 'name', text });

test('the draft is kept before the estimate runs', async () => {
  const { store, log, kept } = bench();
  await store.open(blank());
  log.length = 0;
  store.dispatch(add);
  await store.settled();
  assert.deepEqual(log, ['keep 1', 'estimate 1']);
  assert.equal(kept.get('a').job, store.job);
  assert.equal(store.estimate.of, store.job);
  assert.equal(store.keeping, 'kept');
});

test('what hangs on a job makes it the person\'s own, and keeps it', async () => {
  const { store, kept } = bench();
  await store.open(blank('sample-a'), 'sample');
  store.adopt();
  assert.equal(store.job.id, 'new-1', 'at once: the id is what it hangs on');
  await store.settled();
  assert.deepEqual([...kept.keys()], ['new-1']);
  assert.equal(store.canUndo, false);
  store.adopt();
  await store.settled();
  assert.equal(kept.get('new-1').revision, 1, 'kept already');
});

test('undo and redo go over whole jobs; typing in one field is one step', async () => {
  const { store } = bench();
  await store.open(blank());
  for (const text of ['L', 'La', 'Lar']) store.dispatch(type(text));
  store.dispatch(add);
  assert.equal(store.undo(), true);
  assert.equal(store.job.surfaces.length, 0);
  assert.equal(store.job.name, 'Lar');
  store.undo();
  assert.equal(store.job.name, '');
  assert.equal(store.undo(), false);
  store.redo();
  store.redo();
  assert.equal(store.job.surfaces.length, 1);
  assert.equal(store.redo(), false);
});

test('an id that was given out is never given out again, not even after undo', async () => {
  const { store } = bench();
  await store.open(blank());
  store.dispatch(add);
  store.undo();
  store.dispatch(add);
  assert.equal(store.job.surfaces[0].id, 2);
});

test('a change after undo forgets what could be redone', async () => {
  const { store } = bench();
  await store.open(blank());
  store.dispatch(add);
  store.undo();
  store.dispatch(type('x'));
  assert.equal(store.canRedo, false);
});

test('the sample is never stored; editing it makes a copy that is', async () => {
  const { store, kept } = bench();
  const events = [];
  store.subscribe((event) => events.push(event.kind));
  await store.open(blank('sample'), 'sample');
  store.keepNow();
  assert.equal(kept.size, 0);
  store.dispatch(add);
  await store.settled();
  assert.deepEqual([...kept.keys()], ['new-1']);
  assert.equal(store.job.id, 'new-1');
  assert.ok(events.includes('copied'));
  store.undo();
  await store.settled();
  assert.equal(store.job.id, 'new-1', 'undo does not turn the copy back into the sample');
});

test('a job that another tab wrote over is kept twice', async () => {
  const { store, kept } = bench();
  const events = [];
  store.subscribe((event) => events.push(event.kind));
  await store.open({ ...blank(), name: 'Lane' });
  kept.set('a', { job: { ...blank(), name: 'theirs' }, revision: 9 });
  store.dispatch(add);
  await store.settled();
  assert.equal(kept.get('a').job.name, 'theirs');
  assert.equal(kept.get('new-1').job.surfaces.length, 1);
  assert.equal(store.job.name, 'Lane (copy)');
  assert.ok(events.includes('split'));
  store.dispatch(add);
  await store.settled();
  assert.equal(kept.get('new-1').job.surfaces.length, 2, 'and the copy goes on');
});

test('a refused or full shelf is said, and work goes on', async () => {
  for (const why of ['memory', 'full']) {
    const { store } = bench({ answer: () => why });
    await store.open(blank());
    store.dispatch(add);
    await store.settled();
    assert.equal(store.keeping, why);
    assert.equal(store.estimate.of.surfaces.length, 1);
  }
});

test('after a trap the last estimate stands until a new one is there', async () => {
  let trap = false;
  const store = createStore({
    estimate: (job) => (trap ? undefined : { of: job }),
    shelf: { keep: async () => 'kept', keepNow: () => 'kept' },
    newId: () => 'n',
  });
  await store.open(blank());
  const last = store.estimate;
  trap = true;
  store.dispatch(add);
  await store.settled();
  assert.equal(store.estimate, last);
  trap = false;
  store.refresh();
  assert.equal(store.estimate.of, store.job);
});

test('a page that goes away writes what is not yet written, once', async () => {
  const { store, log } = bench();
  await store.open(blank());
  store.dispatch(add);
  store.keepNow();
  assert.equal(log.at(-1), 'keep 1', 'at once, not when a lock comes free');
  await store.settled();
  assert.equal(store.job.id, 'a', 'this tab does not quarrel with itself');
  const before = log.length;
  store.keepNow();
  assert.equal(log.length, before);
});

test('opening another job forgets the undo stack of the first', async () => {
  const { store } = bench();
  await store.open(blank());
  store.dispatch(add);
  await store.open(blank('b'));
  assert.equal(store.canUndo, false);
  assert.equal(store.job.id, 'b');
});

test('a job that is opened made anew keeps what can be undone and done again, each state made anew', async () => {
  const { store } = bench();
  await store.open(blank(), 'memory');
  for (const text of ['one', 'two']) store.dispatch({ do: 'add_surface', shape: 'rectangle', name: text });
  await store.settled();
  store.undo();
  const anew = (job) => ({ ...job, id: 'other', units: 'metric' });
  await store.open(anew(store.job), 'memory', anew);
  const seen = () => [store.job.id, store.job.units, store.job.surfaces.map((one) => one.name).join()];
  assert.deepEqual(seen(), ['other', 'metric', 'one']);
  assert.ok(store.redo());
  assert.deepEqual(seen(), ['other', 'metric', 'one,two']);
  assert.ok(store.undo() && store.undo() && !store.undo());
  assert.deepEqual(seen(), ['other', 'metric', '']);
});
