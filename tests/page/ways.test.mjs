import { test } from 'node:test';
import assert from 'node:assert/strict';
import { parse, to } from '../../www/app/view.js';
import { fileName, textOf } from '../../www/app/files.js';
import { same } from '../../www/app/same.js';
import { reading } from '../../www/app/calls.js';

test('a fragment names a screen; anything else is the job sheet', () => {
  assert.deepEqual(parse('#/surface/3'), { name: 'surface', id: 3, rest: ['3'] });
  assert.deepEqual(parse('#/working/surface/3/net'), { name: 'working', id: 0, rest: ['surface', '3', 'net'] });
  for (const odd of ['', '#', '#/', '#/nowhere/1', '#job=abc', '#/constructor', '#/%E0%A4%A', '#main', '#/surface']) {
    assert.equal(parse(odd).name, odd === '#/surface' ? 'surface' : 'sheet', odd);
  }
  assert.equal(parse('#/surface/-1').id, 0);
  assert.equal(parse('#/surface/1e99').id, 0);
});

test('an address leads back to where it came from', () => {
  assert.deepEqual(parse(to('depth', 12)), { name: 'depth', id: 12, rest: ['12'] });
  assert.equal(to('sheet'), '#/sheet');
});

test('a file name holds letters and digits only', () => {
  assert.equal(fileName({ name: ' 12 Larkspur Lane / rear\u202e.exe ' }), '12-Larkspur-Lane-rear-exe.foamwright.json');
  assert.equal(fileName({ name: 'Señora Ñuñez' }), 'Señora-Ñuñez.foamwright.json');
  assert.equal(fileName({ name: '///' }), 'job.foamwright.json');
});

test('a job file is the job document, unchanged', () => {
  const job = { format: 'foamwright-job', version: 1, id: 'x', next_id: 1, note: 'a "b" \n' };
  assert.deepEqual(JSON.parse(textOf(job)), job);
});

test('two jobs are the same whatever the order of their keys', () => {
  assert.equal(same({ a: 1, b: [{ c: 2 }] }, { b: [{ c: 2 }], a: 1 }), true);
  assert.equal(same({ a: 1 }, { a: 1, b: null }), true, 'a blank and an absent entry say the same');
  assert.equal(same({ a: [1, 2] }, { a: [2, 1] }), false);
  assert.equal(same({ a: [] }, { a: {} }), false);
});

test('without a core nothing is read, and nothing breaks', () => {
  assert.equal(reading({ kind: 'length' }, '12', 'ft', undefined, 'us'), undefined);
});
