import { test } from 'node:test';
import assert from 'node:assert/strict';
import { once, passed, secondsLeft, shown, spoken } from '../../www/app/timers.js';

test('a started second counts whole, and nothing is left after the end', () => {
  assert.equal(secondsLeft(30_000, 0), 30);
  assert.equal(secondsLeft(30_000, 1), 30);
  assert.equal(secondsLeft(30_000, 1000), 29);
  assert.equal(secondsLeft(30_000, 29_999), 1);
  assert.equal(secondsLeft(30_000, 30_000), 0);
  assert.equal(secondsLeft(30_000, 9e12), 0);
});

test('a span reads like a clock', () => {
  for (const [seconds, text] of [[0, '0:00'], [27, '0:27'], [60, '1:00'], [843, '14:03'], [3599, '59:59'], [3600, '1:00:00'], [90_061, '25:01:01']]) {
    assert.equal(shown(seconds), text);
  }
});

test('thirty seconds are said three times', () => {
  let before;
  const said = [];
  for (let left = 30; left >= 0; left -= 1) {
    const word = spoken(before, left);
    if (word) said.push(`${word} ${left}`);
    before = left;
  }
  assert.deepEqual(said, ['start 30', 'soon 10', 'end 0']);
});

test('after a locked phone only the end is said, and only once', () => {
  assert.equal(spoken(25, 0), 'end');
  assert.equal(spoken(0, 0), undefined);
  assert.equal(spoken(undefined, 0), 'end', 'a page that was reloaded too late');
  assert.equal(spoken(0, 30), 'start', 'the trigger was let go again');
});

test('an instant passes once', () => {
  assert.equal(passed([5, 50], 4, 5), true);
  assert.equal(passed([5, 50], 5, 49), false);
  assert.equal(passed([5, 50], 6, 60), true);
  assert.equal(passed([], 0, 9), false);
});

test('a glove that presses twice pressed once', () => {
  let now = 0;
  const fresh = once(() => now, 700);
  assert.equal(fresh(), true);
  now = 300;
  assert.equal(fresh(), false);
  now = 700;
  assert.equal(fresh(), true);
  now = 100;
  assert.equal(fresh(), true, 'a clock that was set back does not lock the press');
});
