import { test } from 'node:test';
import assert from 'node:assert/strict';
import { heights, startPost, told } from '../../www/app/embed/post.js';

test('only a message of ours in this version says anything', () => {
  const ours = { foamwright: 1, sized: true, language: 'es', settings: { a: 1 } };
  assert.deepEqual(told(ours), { settings: { a: 1 }, language: 'es', sized: true });
  for (const other of [undefined, null, 0, 1, '1', 'ready', [], [1], { ...ours, foamwright: 2 }, { ...ours, foamwright: '1' }, { foamwright: true },
    { settings: {} }, Object.assign([], ours), Object.create(ours), JSON.parse('{"__proto__":{"foamwright":1}}')]) assert.equal(told(other), undefined, JSON.stringify(other));
});

test('what is not understood in a message is left out, and settings go on unread', () => {
  assert.deepEqual(told({ foamwright: 1 }), { settings: undefined, language: undefined, sized: undefined });
  for (const language of ['fr', 'ES', 'toString', 1, {}, ['es'], null]) assert.equal(told({ foamwright: 1, language }).language, undefined);
  for (const sized of ['true', 1, {}, null]) assert.equal(told({ foamwright: 1, sized }).sized, undefined);
  for (const settings of ['text', 7, [], null]) assert.deepEqual(told({ foamwright: 1, settings }).settings, settings);
});

test('heights are whole, and each is said once', () => {
  const worth = heights();
  assert.deepEqual([500, 500, 499.6, 500.004, 500.4, 501, 0, -1, NaN, 300].map((height, i) => worth(height, i * 100)),
    [500, undefined, undefined, undefined, 501, undefined, undefined, undefined, undefined, 300]);
});

test('two heights that make each other come to rest at the larger one', () => {
  const worth = heights();
  let at = 0;
  const said = [];
  // A page that is narrow where the frame is low: narrow makes it high, and high makes the page wide.
  let high = worth(500, at);
  for (let turn = 0; turn < 100; turn += 1) {
    const next = worth(high > 600 ? 500 : 900, at += 16);
    if (next === undefined) break;
    said.push(high = next);
  }
  assert.ok(said.length <= 6, `it swings: ${said.length}`);
  assert.equal(said.at(-1), 900, 'nothing is cut off');
  // Something else comes: it is said at once, and so is the small one when the page has long been still.
  assert.equal(worth(700, at += 16), 700);
  assert.equal(worth(500, at += 5000), 500);
});

test('folding open and shut at the pace of a hand is no swing', () => {
  const worth = heights();
  for (let at = 0; at < 20_000; at += 1100) assert.equal(worth(at % 2200 ? 900 : 500, at), at % 2200 ? 900 : 500);
});

test('an estimate goes to the origin that sent the settings; to anybody around only where none has, or it has no name', () => {
  const said = [];
  const parent = { postMessage: ({ event }, to) => said.push(`${event} ${to}`) };
  let hear;
  const documentElement = { getBoundingClientRect: () => ({ height: 0 }), classList: { toggle() {} } };
  class Watcher {
    observe() {}
  }
  const before = Object.fromEntries(['window', 'document', 'addEventListener', 'ResizeObserver', 'MutationObserver'].map((name) => [name, globalThis[name]]));
  Object.assign(globalThis, { window: { parent }, document: { documentElement }, addEventListener: (_, fn) => { hear = fn; }, ResizeObserver: Watcher, MutationObserver: Watcher });
  try {
    const post = startPost({ onSettings() {} });
    const after = (origin, data, source = parent) => {
      hear({ data: { foamwright: 1, ...data }, origin, source });
      post.estimate({});
      return said.at(-1);
    };
    assert.deepEqual(said, ['ready *']);
    assert.equal(after('https://a.example', { sized: true }), 'estimate *', 'no settings, no name');
    assert.equal(after('https://a.example', { settings: {} }), 'estimate https://a.example');
    assert.equal(after('https://b.example', { settings: {} }, {}), 'estimate https://a.example', 'a stranger');
    assert.equal(after('https://b.example', { language: 'es' }), 'estimate https://a.example');
    assert.equal(after('null', { settings: {} }), 'estimate *');
  } finally {
    Object.assign(globalThis, before);
  }
});
