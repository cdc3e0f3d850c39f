import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { jobFrom } from '../../www/app/embed/first.js';
import { read } from '../../www/app/embed/settings.js';
import { use } from '../../www/app/calls.js';
import { apply } from '../../www/app/changes.js';

const sheets = (name) => JSON.parse(readFileSync(new URL(`../../www/sample/${name}.json`, import.meta.url), 'utf8'));
const own = (list) => list.map((one, at) => ({ ...one, sheet: `own-${at}` }));
const value = {
  format: 'foamwright-embed', version: 1, company: 'Juniper Fork Foam', foams: own(sheets('foams')), kits: own(sheets('kits')),
  sales_tax: '7.25', delivery: '45', surfaces: ['rim_run', 'framed_wall'], depths: ['2 in', '3 in'],
  start: [{ shape: 'rim_run', name: 'Rim joist', entries: [{ field: 'perimeter', text: '148' }, { field: 'band', text: '9 1/4' }] },
    { shape: 'framed_wall', name: '', entries: [{ field: 'depth', text: '3 in' }] }],
};
const settingsOf = (more = {}) => {
  const { settings, faults } = read({ ...value, ...more }, 'en');
  assert.deepEqual(faults, []);
  return settings;
};
let ids = 0;
const newId = () => `job-${ids += 1}`;
const depthOf = (surface) => surface.entries.filter((one) => one.field === 'depth').map((one) => one.text);

test('the job holds the host’s sheets, what is added to the price, and the surfaces to begin with', () => {
  const job = jobFrom(settingsOf(), newId);
  assert.deepEqual([job.format, job.version, job.id, job.units], ['foamwright-job', 4, 'job-1', 'us']);
  assert.deepEqual(job.foams.map((one) => one.name), value.foams.map((one) => one.name));
  assert.equal(job.foam, job.foams[0].id);
  assert.deepEqual(job.foams[0].r_at.map((row) => row.entries), value.foams[0].r_at);
  assert.deepEqual(job.kits.map((one) => [one.sheet, one.entries]), value.kits.map((one) => [one.sheet, one.entries]));
  assert.deepEqual(job.entries, [{ field: 'sales_tax', text: '7.25' }, { field: 'delivery', text: '45' }]);
  assert.deepEqual(job.surfaces.map((one) => [one.shape, one.name, one.deduct_framing]), [['rim_run', 'Rim joist', true], ['framed_wall', '', true]]);
});

test('every thing has an id of its own, below the next one', () => {
  const job = jobFrom(settingsOf(), newId);
  const all = [...job.surfaces, ...job.foams, ...job.foams.flatMap((one) => one.r_at), ...job.kits].map((one) => one.id);
  assert.equal(new Set(all).size, all.length);
  assert.ok(all.every((id) => id > 0 && id < job.next_id));
});

test('a surface begins with its own depth, or with the first on offer; a blank adds nothing', () => {
  const job = jobFrom(settingsOf(), newId);
  assert.deepEqual(job.surfaces.map(depthOf), [['2 in'], ['3 in']]);
  const bare = jobFrom(settingsOf({ depths: [], sales_tax: '', delivery: '' }), newId);
  assert.deepEqual(bare.surfaces.map(depthOf), [[], ['3 in']]);
  assert.deepEqual(bare.entries, []);
});

test('without surfaces to begin with there is one, of the first shape on offer', () => {
  const job = jobFrom(settingsOf({ start: [] }), newId);
  assert.deepEqual(job.surfaces.map((one) => [one.shape, one.name, depthOf(one)]), [['rim_run', '', ['2 in']]]);
});

test('settings that come later leave what was entered as it is, under ids that nothing else has', () => {
  let job = jobFrom(settingsOf(), newId);
  job = apply(job, { do: 'entry', part: 'surface', id: job.surfaces[0].id, field: 'perimeter', text: '160' });
  job = apply(job, { do: 'foam', id: job.surfaces[0].id, foam: job.foams[1].id });
  const later = jobFrom(settingsOf({ kits: value.kits.slice(0, 1) }), newId, job);
  const chosen = later.foams[1];
  assert.equal(chosen.sheet, job.foams[1].sheet);
  assert.deepEqual(later.surfaces, job.surfaces.map((one, at) => ({ ...one, foam: at === 0 ? chosen.id : 0 })));
  assert.equal(later.kits.length, 1);
  assert.ok([...later.kits, ...later.foams].every((one) => one.id >= job.next_id));
});

test('a foam that was chosen stays chosen wherever the later settings put it, and gives way where they lack it', () => {
  let job = jobFrom(settingsOf(), newId);
  job = apply(job, { do: 'foam', id: 0, foam: job.foams[1].id });
  const sheet = job.foams[1].sheet;
  const turned = jobFrom(settingsOf({ foams: value.foams.toReversed() }), newId, job);
  assert.equal(turned.foams.find((one) => one.id === turned.foam)?.sheet, sheet);
  const less = jobFrom(settingsOf({ foams: value.foams.slice(0, 1) }), newId, job);
  assert.equal(less.foam, less.foams[0].id);
});

test('later settings in other units change no measure: what had no unit gets the one that it had', () => {
  use({ fields: () => [['surface', 'perimeter', 'ft', 'm'], ['surface', 'depth', 'in', 'mm'], ['opening', 'width', 'in', 'mm']].map(([part, field, us, metric]) => ({ part, field, us, metric })) });
  let job = jobFrom(settingsOf({ start: [{ shape: 'rim_run', name: '', entries: [{ field: 'perimeter', text: '10' }, { field: 'depth', text: '5', unit: 'cm' }] }] }), newId);
  const { id } = job.surfaces[0];
  job = apply(job, { do: 'add_opening', surface: id });
  job = apply(job, { do: 'entry', part: 'opening', id: job.surfaces[0].openings[0].id, field: 'width', text: '36' });
  const metric = jobFrom(settingsOf({ units: 'metric' }), newId, job);
  assert.equal(metric.units, 'metric');
  assert.deepEqual(metric.surfaces[0].entries, [{ field: 'perimeter', text: '10', unit: 'ft' }, { field: 'depth', text: '5', unit: 'cm' }]);
  assert.deepEqual(metric.surfaces[0].openings[0].entries, [{ field: 'width', text: '36', unit: 'in' }]);
  const same = jobFrom(settingsOf({ delivery: '60' }), newId, job);
  assert.deepEqual(same.surfaces, job.surfaces);
  // The host's own sheets and charges are in the units of the settings that bring them.
  assert.deepEqual(metric.kits.map((one) => one.entries), value.kits.map((one) => one.entries));
  assert.deepEqual(metric.entries, job.entries);
});
