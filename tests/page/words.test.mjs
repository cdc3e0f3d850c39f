import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { choose, finding, give, label, money, span, t } from '../../www/app/words.js';

const load = (lang, page) => JSON.parse(readFileSync(new URL(`../../www/words/${lang}/${page}.json`, import.meta.url), 'utf8'));

test('figures go into their places; a gap is seen', () => {
  give('a', { hi: '{name}: {n}', odd: '{gone}' }, 'en');
  assert.equal(t('a.hi', { name: 'Rim', n: 1234.5 }), 'Rim: 1,234.5');
  assert.equal(t('a.odd'), '{gone}');
  assert.equal(t('a.none'), 'a.none');
});

test('wording follows the number, by the categories of the language', () => {
  const words = { n: { by: 'n', one: '{n} kit', other: '{n} kits' } };
  give('a', words, 'en');
  assert.deepEqual([t('a.n', { n: 1 }), t('a.n', { n: 0 }), t('a.n', { n: 1200 })], ['1 kit', '0 kits', '1,200 kits']);
  // French counts 0 as one, Spanish does not: the rules are the language's, not ours.
  give('a', words, 'es');
  assert.equal(t('a.n', { n: 0 }), '0 kits');
});

test('the first language asked for that we speak', () => {
  assert.equal(choose(['fr-CA', 'es-MX', 'en']), 'es');
  assert.equal(choose(['de']), 'en');
});

test('a finding names its field within the sentence', () => {
  give('findings', { needed: { what: 'Needed: {field}.', do: 'Go on.' }, close: { what: '{name} is {by} inside.', do: '' } }, 'en');
  give('fields', { height: 'Height', 'r_row.r': 'R' }, 'en');
  give('sources', { tape: 'Your tape.' }, 'en');
  const at = (part, field) => ({ part, id: 1, field });
  assert.deepEqual(finding({ code: 'needed', severity: 'stop', at: at('surface', 'height'), figures: [], source: 'tape' }), { what: 'Needed: height.', do: 'Go on.', source: 'Your tape.' });
  assert.equal(finding({ code: 'needed', severity: 'stop', at: at('r_row', 'r'), figures: [], source: '' }).what, 'Needed: R.');
  assert.equal(finding({ code: 'close', severity: 'note', at: at('reading', ''), figures: [{ name: 'name', text: 'Rim' }, { name: 'by', text: '2 °F' }], source: '' }).what, 'Rim is 2 °F inside.');
  assert.equal(label('surface', 'height'), 'Height');
});

test('a first visit has some words of each page, and the rest when it is needed', async (about) => {
  // Words of its own, for those of the tests before are there whole.
  const { finding, lacking, need, said, speak, t } = await import('../../www/app/words.js?first');
  const files = {
    'en/first': { fields: { height: 'Height' }, findings: { close: { what: '{name} is close.', do: '' } }, sources: { tape: 'Your tape.' } },
    'en/fields': { height: 'Height', width: 'Width' },
    'en/findings': { close: { what: '{name} is close.', do: '' }, needed: { what: 'Needed: {field}.', do: '' } },
    'es/first': { fields: { height: 'Altura' } },
    'es/fields': { height: 'Altura', width: 'Ancho' },
  };
  let asked = [];
  about.mock.method(globalThis, 'fetch', async (address) => {
    const name = String(address).match(/words\/(.*)\.json$/)[1];
    asked.push(name);
    return { ok: name in files, status: 404, json: async () => files[name] };
  });
  const found = (code, field, source = '') => ({ code, severity: 'stop', at: { part: 'surface', id: 1, field }, figures: [], source });
  await speak('en');
  const first = asked.filter((name) => name.startsWith('en/first'));
  assert.equal(first.length, 1);
  assert.equal(t('fields.height'), 'Height');
  assert.equal(t('fields.width'), 'fields.width');
  // Whether all of a finding can be said: its own words, its field's name, its source.
  assert.equal(said(found('close', 'height', 'tape')), true);
  assert.equal(said(found('close', '')), true);
  for (const one of [found('needed', 'height'), found('close', 'width'), found('close', 'height', 'ruler')]) assert.equal(said(one), false, one.code);
  assert.equal(finding(found('close', 'height', 'ruler')).source, '');

  // What is there in part is not there whole.
  const some = lacking(['fields', 'findings']);
  assert.deepEqual(some, ['fields', 'findings']);
  asked = [];
  await need('fields', 'findings');
  await need('fields');
  assert.deepEqual(asked.sort(), ['en/fields', 'en/findings']);
  assert.equal(finding(found('needed', 'width')).what, 'Needed: width.');
  assert.deepEqual(lacking(['fields', 'sources']), ['sources']);

  // A page that arrives after the language has changed is fetched in the new one.
  files['en/late'] = { word: 'word' };
  files['es/late'] = { word: 'palabra' };
  files['es/findings'] = {};
  const [late] = [need('late')];
  await speak('es', ['fields']);
  await late;
  assert.equal(t('late.word'), 'palabra');
  assert.equal(t('fields.width'), 'Ancho');
});

test('money and spans as they are said', () => {
  assert.equal(money(159200), '$1,592');
  assert.equal(money(1050), '$10.50');
  assert.deepEqual([span(40), span(60), span(160)], ['40\u00a0min', '1\u00a0h', '2\u00a0h\u00a040']);
});

test('every page has the same keys and figures in both languages', () => {
  const figures = (value) => [...new Set(JSON.stringify(value).match(/\{\w+\}/g) ?? [])].sort();
  for (const file of readdirSync(new URL('../../www/words/en', import.meta.url))) {
    const page = file.replace('.json', '');
    const [en, es] = [load('en', page), load('es', page)];
    assert.deepEqual(Object.keys(es).sort(), Object.keys(en).sort(), page);
    for (const key of Object.keys(en)) assert.deepEqual(figures(es[key]), figures(en[key]), `${page}.${key}`);
  }
});

test('every field and unit of the table has a name', () => {
  const rows = readFileSync(new URL('../../src/job/fields.rs', import.meta.url), 'utf8').matchAll(/row\(P::(\w+), "(\w+)", K::\w+, U::(\w+), U::(\w+)/g);
  const words = load('en', 'fields');
  const snake = (name) => name.replace(/(?<=[a-z0-9])(?=[A-Z])/g, '_').toLowerCase();
  let seen = 0;
  for (const [, part, field, us, metric] of rows) {
    seen += 1;
    assert.ok(words[`${snake(part)}.${field}`] ?? words[field], `${part}.${field}`);
    for (const unit of [us, metric]) assert.ok(`unit.${snake(unit)}` in words, unit);
  }
  assert.ok(seen > 50);
});
