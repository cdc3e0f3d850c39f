// Place to climate zone on the page: what is fetched when, and what a failure leaves behind.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { beforeEach, test } from 'node:test';
import { use } from '../../www/app/calls.js';

/** @type {string[]} */
let asked = [];
let online = true;
let calls = [];

globalThis.fetch = async (address) => {
  const name = new URL(address).pathname.split('/').pop();
  asked.push(name);
  if (!online) throw new TypeError('offline');
  const bytes = readFileSync(`www/app/${name}`);
  return new Response(bytes, { status: 200 });
};

/** The module as on a first visit. */
let visit = 0;
const fresh = () => import(`../../www/app/zones.js?visit=${visit++}`);

beforeEach(() => {
  asked = [];
  calls = [];
  online = true;
  use({ find_place: (...given) => { calls.push(given); return { zones: ['7'], counties: [] }; } });
});

test('a ZIP code fetches the zones, and the names only where they are wanted', async () => {
  const { findPlace } = await fresh();
  assert.deepEqual(await findPlace('81230-1234'), { zones: ['7'], counties: [] });
  assert.deepEqual(asked, ['zones.bin']);
  const [zones, counties, text] = calls[0];
  assert.deepEqual([zones.length, counties.length, text], [readFileSync('www/app/zones.bin').length, 0, '81230-1234']);
  await findPlace('81230', true);
  assert.deepEqual(asked, ['zones.bin', 'counties.bin']);
  assert.equal(calls[1][1].length, readFileSync('www/app/counties.bin').length);
  await findPlace('Gunnison');
  assert.equal(asked.length, 2, 'what was fetched is here');
});

test('a name needs the names, a chosen county is asked for by its code', async () => {
  const { findPlace, findCounty } = await fresh();
  await findPlace(' gunnison, co');
  assert.deepEqual(asked.sort(), ['counties.bin', 'zones.bin']);
  await findCounty(8051);
  assert.equal(calls[1][2], '#08051');
});

test('without a network it says so, and asks again at the next look-up', async () => {
  const { findPlace } = await fresh();
  online = false;
  await assert.rejects(findPlace('81230'));
  assert.equal(calls.length, 0, 'nothing is looked up in a table that is not there');
  online = true;
  assert.deepEqual((await findPlace('81230')).zones, ['7']);
  assert.deepEqual(asked, ['zones.bin', 'zones.bin']);
});

test('two look-ups at once fetch once', async () => {
  const { findPlace } = await fresh();
  await Promise.all([findPlace('81230'), findPlace('81231'), findPlace('Gunnison')]);
  assert.deepEqual(asked.sort(), ['counties.bin', 'zones.bin']);
});

test('a table that the host refuses is not taken for one', async () => {
  const { findPlace } = await fresh();
  const fetched = globalThis.fetch;
  globalThis.fetch = async () => new Response('not found', { status: 404 });
  await assert.rejects(findPlace('81230'), /zones\.bin: 404/);
  globalThis.fetch = fetched;
  assert.equal((await findPlace('81230')).zones.length, 1);
});

test('a core that is gone is no place without a zone', async () => {
  const { findPlace } = await fresh();
  use(undefined);
  await assert.rejects(findPlace('81230'));
});
