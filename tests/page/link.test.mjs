import { test } from 'node:test';
import assert from 'node:assert/strict';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { readdirSync, readFileSync } from 'node:fs';
import { canLink, linkOf, unpack } from '../../www/app/link.js';
import { LINK, parse } from '../../www/app/view.js';

const base64url = (bytes) => Buffer.from(bytes).toString('base64url');
const carried = (link) => link.slice(link.indexOf(LINK) + LINK.length);
const folder = new URL('../jobs/', import.meta.url);
const jobs = readdirSync(folder, { recursive: true }).filter((name) => /(^|\/)job\.json$/.test(name))
  .map((name) => [name, JSON.parse(readFileSync(new URL(name, folder), 'utf8'))]);

test('every job goes into a link and comes out of it as it was', async () => {
  assert.ok(jobs.length >= 20 && jobs.some(([name]) => name.startsWith('old/')));
  for (const [name, job] of jobs) {
    const link = await linkOf(job, 'https://example.org/sub/path/?x=1#/jobs');
    assert.ok(link.startsWith(`https://example.org/sub/path/${LINK}`), 'at a sub-path');
    assert.match(carried(link), /^[A-Za-z0-9_-]+$/, 'nothing that a message would cut at');
    // zlib is the independent reader here.
    assert.deepEqual(JSON.parse(inflateRawSync(Buffer.from(carried(link), 'base64url')).toString()), job, name);
    const { text } = await unpack(carried(link));
    assert.deepEqual(JSON.parse(text), job, name);
  }
});

test('what zlib packs is opened as well', async () => {
  for (const level of [0, 1, 9]) assert.deepEqual(await unpack(base64url(deflateRawSync('{"a":"ñ 𝒳"}', { level }))), { text: '{"a":"ñ 𝒳"}' });
});

test('odd texts come through', async () => {
  for (const name of ['\0', '\ud800', 'a\u2028b', '<script>alert(1)</script>', '=1+1', '🏠'.repeat(500)]) {
    assert.equal(JSON.parse((await unpack(carried(await linkOf({ name }, 'https://a/')))).text).name, name);
  }
});

test('a bomb is left as soon as it is too large', async () => {
  const bomb = deflateRawSync(Buffer.alloc(400_000_000, 32), { level: 9 });
  const before = process.memoryUsage().rss;
  assert.deepEqual(await unpack(base64url(bomb)), { refused: 'too_long' });
  assert.ok(process.memoryUsage().rss - before < 100_000_000, 'it was not all unpacked');
  // At the limit itself, and one byte beyond.
  assert.equal((await unpack(base64url(deflateRawSync(Buffer.alloc(2_000_000, 32))))).text?.length, 2_000_000);
  assert.deepEqual(await unpack(base64url(deflateRawSync(Buffer.alloc(2_000_001, 32)))), { refused: 'too_long' });
  assert.deepEqual(await unpack('A'.repeat(3_000_000)), { refused: 'too_long' });
});

test('a cut, damaged or foreign link is refused', async () => {
  const whole = carried(await linkOf(jobs[0][1], 'https://a/'));
  for (let at = 0; at < whole.length; at += 97) assert.deepEqual(await unpack(whole.slice(0, at)), { refused: 'cut' }, `cut at ${at}`);
  assert.deepEqual(await unpack(whole.slice(0, -1)), { refused: 'cut' }, 'the last letter is missing');
  assert.equal((await unpack(`${whole}.`)).text, (await unpack(whole)).text, 'a period after it');
  for (const odd of ['', 'A', '!!!', '%2e', 'a b', 'Zm9v', base64url([0xff, 0xff, 0xff]), base64url(deflateRawSync(Buffer.from([0xff, 0xfe, 0x80])))]) {
    assert.deepEqual(await unpack(odd), { refused: 'cut' }, odd);
  }
});

test('without the browser’s own compression links are off, and said so', async () => {
  const { DecompressionStream } = globalThis;
  try {
    delete globalThis.DecompressionStream;
    assert.equal(canLink(), false);
    assert.deepEqual(await unpack('AAAA'), { refused: 'no_links' });
  } finally {
    globalThis.DecompressionStream = DecompressionStream;
  }
  assert.equal(canLink(), true);
});

test('a link is no screen', () => assert.equal(parse('#/open/abc').name, 'sheet'));
