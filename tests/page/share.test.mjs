import { test } from 'node:test';
import assert from 'node:assert/strict';
import { canShare, share } from '../../www/app/share.js';

const what = { title: 'T', file: new File(['{}'], 'a.json'), url: 'https://a/#/open/x', text: 'words' };
const keysOf = (data) => Object.keys(data).filter((key) => key !== 'title').join();

/** A device that can share what `can` says, and answers each try by `answer`. */
async function device({ can, answer = () => undefined }, given = what) {
  const tried = [];
  const refuse = (name) => Object.assign(new Error(name), { name });
  Object.defineProperty(globalThis, 'navigator', {
    configurable: true,
    value: {
      ...(can && { canShare: (data) => can(keysOf(data)) }),
      share: async (data) => {
        tried.push(keysOf(data));
        const error = answer(keysOf(data));
        if (error) throw refuse(error);
      },
    },
  });
  assert.equal(canShare(), true);
  return [await share(given), tried.join(' ')];
}

test('the file first, then the link, then the text', async () => {
  assert.deepEqual(await device({ can: () => true }), ['file', 'files']);
  assert.deepEqual(await device({ can: (keys) => keys !== 'files' }), ['url', 'url']);
  assert.deepEqual(await device({ can: (keys) => keys === 'text' }), ['text', 'text']);
  assert.deepEqual(await device({ can: () => false }), ['refused', '']);
  assert.deepEqual(await device({}), ['url', 'url'], 'a device of the first kind takes no files');
  assert.deepEqual(await device({ can: () => true }, { title: 'T', text: 'words' }), ['text', 'text']);
});

test('a device that promised the file and refuses it is given the link', async () => {
  assert.deepEqual(await device({ can: () => true, answer: (keys) => keys === 'files' && 'NotAllowedError' }), ['url', 'files url']);
  assert.deepEqual(await device({ can: () => true, answer: () => 'NotAllowedError' }), ['refused', 'files url text']);
});

test('putting the choice away is an answer', async () => {
  assert.deepEqual(await device({ can: () => true, answer: () => 'AbortError' }), ['put away', 'files']);
});
