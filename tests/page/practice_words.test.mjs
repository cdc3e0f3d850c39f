// Every topic, level, mistake, verdict and reason of practice has words, and none is left over.
import { test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';

const text = (path) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const snake = (name) => name.replace(/(?<=[a-z0-9])(?=[A-Z])/g, '_').toLowerCase();
const list = (source, from) => [...source.slice(source.indexOf(from)).split('];')[0].matchAll(/Topic::(\w+)|^\s*"(\w+)",/gm)].map(([, topic, word]) => (topic ? snake(topic) : word));
const verdicts = text('src/practice/marking.rs').match(/pub enum Verdict \{([^}]*)\}/)[1].match(/^ {4}\w+/gm).map((one) => snake(one.trim()));
const all = {
  topic: list(text('src/practice/mod.rs'), 'pub const TOPICS'),
  slip: list(text('src/practice/slips.rs'), 'pub const SLIPS'),
  level: ['0', '1', '2', '3', '4'],
  level_why: ['1', '2', '3', '4'],
  // A slip says which; what could not be read is a blank to the core.
  verdict: [...verdicts.filter((one) => one !== 'slip'), 'unread'],
  refused: ['form', 'newer', 'none', 'twice', 'many'],
  refused_do: ['form', 'newer', 'none', 'twice', 'many'],
  file: ['too_long', 'too_deep', 'unreadable', 'damaged', 'foreign', 'newer', 'wrong', 'twice', 'too_many', 'open_already', 'many_files'],
  how: ['up', 'down', 'larger', 'smaller', 'and', 'liters'],
};

test('the lists are found at all', () => {
  assert.equal(all.topic.length, 14);
  assert.ok(all.slip.length >= 25 && all.verdict.length === 6);
});

for (const [kind, names] of Object.entries(all)) {
  test(`words for each ${kind}`, () => {
    for (const language of ['en', 'es']) {
      const words = JSON.parse(text(`www/words/${language}/practice.json`));
      const there = Object.keys(words).filter((key) => key.startsWith(`${kind}.`)).map((key) => key.slice(kind.length + 1));
      for (const name of names) assert.ok(there.includes(name), `${language}: no words for ${kind}.${name}`);
      assert.deepEqual(there.sort(), [...names].sort(), language);
    }
  });
}
