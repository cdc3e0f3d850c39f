import { test } from 'node:test';
import assert from 'node:assert/strict';
import { wishes } from '../../www/app/embed/asked.js';

/** What is asked for, in turn. @param {boolean} follow @param {(wish: ReturnType<typeof wishes>) => void} tell */
function asked(follow, tell) {
  const all = [];
  tell(wishes((one) => all.push(JSON.parse(JSON.stringify(one))), follow));
  return all;
}
const file = { text: '{"company":"A"}' };
const settings = { company: 'B' };

test('settings that come after the wait are taken like any later ones', () => {
  assert.deepEqual(asked(true, ({ waits, heard, found }) => {
    assert.ok(waits());
    found({});
    assert.ok(!waits());
    heard({ settings });
    heard({ settings: { company: 'C' }, language: 'es' });
    found({});
  }), [{}, { settings }, { settings: { company: 'C' }, language: 'es' }]);
});

test('a message without settings ends the wait for a message, and the usual ones stand', () => {
  assert.deepEqual(asked(true, ({ heard, found }) => {
    heard({ language: 'es' });
    found({});
  }), [{ language: 'es' }]);
});

test('a message without settings leaves those that stand, and says the language', () => {
  assert.deepEqual(asked(false, ({ heard, found }) => {
    found(file);
    heard({});
    heard({ language: 'es' });
    heard({});
    heard({ settings });
    heard({ language: 'en' });
  }), [file, { ...file, language: 'es' }, { settings }, { settings, language: 'en' }]);
});

test('a message outruns a file that is on its way; without settings it only says in which language the file is read', () => {
  assert.deepEqual(asked(false, ({ heard, found }) => {
    heard({ settings });
    found(file);
  }), [{ settings }]);
  assert.deepEqual(asked(false, ({ heard, found }) => {
    heard({ language: 'es' });
    found(file);
  }), [{ ...file, language: 'es' }]);
});

test('what is equal to what stands is not taken again, whatever it is made of', () => {
  const ring = {};
  ring.ring = ring;
  let acts = 0;
  const { heard } = wishes(() => { acts += 1; }, true);
  for (const one of [settings, { ...settings }, { company: 'C' }, settings, settings, null, null]) heard({ settings: one });
  assert.equal(acts, 4);
  heard({ settings: ring });
  heard({ settings: 7n });
  assert.equal(acts, 6, 'what has no text is new each time');
});
