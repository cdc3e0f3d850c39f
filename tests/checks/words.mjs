// Every word that the page and the program may ask for is there, in every language.
//
//   node tests/checks/words.mjs SITE CORE.D.TS

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { core, here, jobs } from './shipped.mjs';

const [site, types] = process.argv.slice(2);
const faults = [];
let checked = 0;
const want = (good, what) => { checked += 1; if (!good) faults.push(what); };

const languages = readdirSync('www/words').sort();
want(languages.includes('en') && languages.includes('es'), 'English and Spanish are wanted');
const words = Object.fromEntries(languages.map((language) => [language, Object.fromEntries(
  readdirSync(join('www/words', language)).map((file) => {
    const text = readFileSync(join('www/words', language, file), 'utf8');
    // JSON lets a key stand twice and keeps the last one.
    const keys = [...text.matchAll(/^ {2}"([^"]+)":/gm)].map((found) => found[1]);
    want(new Set(keys).size === keys.length, `${language}/${file}: a key stands twice`);
    return [file.replace(/\.json$/, ''), JSON.parse(text)];
  }),
)]));

/** Every text of a tree with its path. A phrase by number is one text a form. */
const texts = (tree, path) => (typeof tree === 'string' ? [[path, tree]]
  : Object.entries(tree).flatMap(([key, value]) => texts(value, `${path}.${key}`)));
const placeholders = (text) => [...text.matchAll(/\{(\w+)\}/g)].map((found) => found[1]);

// The same pages, keys and placeholders in each language; no empty text; the forms that a language needs.
for (const language of languages) {
  const forms = new Intl.PluralRules(language).resolvedOptions().pluralCategories;
  const shape = (tree) => {
    if (typeof tree === 'string') return [...new Set(placeholders(tree))].sort().join();
    if ('by' in tree && 'other' in tree) {
      // A form for millions is never written out here.
      for (const form of forms.filter((form) => form !== 'many')) want(form in tree, `${language}: no form "${form}" in ${JSON.stringify(tree)}`);
      return `by ${tree.by}: ${[...new Set(Object.entries(tree).filter(([key]) => key !== 'by').flatMap(([, text]) => placeholders(text)))].sort()}`;
    }
    return Object.fromEntries(Object.entries(tree).map(([key, value]) => [key, shape(value)]));
  };
  const flat = (tree, path = '') => (typeof tree === 'string' ? [[path, tree]]
    : Object.entries(tree).flatMap(([key, value]) => flat(value, `${path}/${key}`)));
  const mine = new Map(flat(shape(words[language])));
  const english = new Map(flat(shape(words.en)));
  for (const [path, names] of english) {
    want(mine.has(path), `${language}: no words for ${path}`);
    if (mine.has(path)) want(mine.get(path) === names, `${language}${path}: placeholders {${mine.get(path)}}, in English {${names}}`);
  }
  for (const path of mine.keys()) want(english.has(path), `${language}${path} is not in English`);
  // A text may be empty where it is in every language (a unit that is not written).
  const blank = new Map(texts(words.en, '').map(([path, text]) => [path, text === '']));
  for (const [path, text] of texts(words[language], '')) want((text.trim() === '') === blank.get(path), `${language}${path} is empty`);
}

const has = (language, page, ...keys) => keys.some((key) => words[language][page]?.[key] !== undefined);

// Each finding, source, step and field.
const codes = readFileSync(types, 'utf8').match(/export type Code = ([^;]+);/)?.[1].match(/"\w+"/g)?.map((code) => code.slice(1, -1)) ?? [];
want(codes.length > 30, `only ${codes.length} codes found in the types`);
const shipped = await core(site);
const steps = JSON.parse(readFileSync(join(here(site), 'steps.json'), 'utf8'));
const fields = shipped.fields();
want(fields.length > 30, `only ${fields.length} fields`);
for (const language of languages) {
  for (const code of codes) want(has(language, 'findings', code), `${language}: finding ${code} has no words`);
  for (const code of Object.keys(words[language].findings ?? {})) want(codes.includes(code), `${language}: no finding is called ${code}`);
  for (const step of steps) want(has(language, 'working', step.code), `${language}: step ${step.code} has no words`);
  for (const code of Object.keys(words[language].working ?? {})) want(steps.some((step) => step.code === code), `${language}: no step is called ${code}`);
  for (const { field, choices } of fields) {
    for (const choice of choices) want(has(language, 'fields', `choice.${field}.${choice}`, `choice.${choice}`), `${language}: choice ${field}.${choice} has no words`);
  }
  for (const { part, field } of fields) want(has(language, 'fields', `${part}.${field}`, field), `${language}: field ${part}.${field} has no name`);
  for (const { source } of [...steps, ...fields]) want(source === '' || has(language, 'sources', source), `${language}: source ${source} has no words`);
}

// Each finding that a job raises fills every placeholder of its words.
const raised = new Set();
for (const { name, job, now } of jobs()) {
  for (const found of shipped.estimate(job, now).findings) {
    raised.add(found.code);
    const given = new Set([...found.figures.map((figure) => figure.name), 'field']);
    for (const part of ['what', 'do']) {
      for (const wanted of placeholders(words.en.findings?.[found.code]?.[part] ?? '')) {
        want(given.has(wanted), `${name}: ${found.code} gives no {${wanted}}`);
      }
    }
    want(found.source === '' || has('en', 'sources', found.source), `${name}: source ${found.source} has no words`);
  }
}

// Each rule of a depth, whether it applies and how far it is to be trusted; on the ruler each that bounds a depth.
const kinds = (name) => readFileSync(types, 'utf8').match(new RegExp(`export type ${name} = ([^;]+);`))?.[1].match(/"\w+"/g)?.map((one) => one.slice(1, -1)) ?? [];
const [ruled, stands, trusts] = ['Rule', 'Stands', 'Trust'].map(kinds);
want(ruled.length > 20 && stands.length > 8 && trusts.length > 5, `only ${ruled.length} rules, ${stands.length} states, ${trusts.length} kinds of trust`);
const FACTS = ['depth', 'r', 'u', 'asks', 'share', 'pct', 'printed', 'edition', 'zone'];
for (const language of languages) {
  for (const [kind, all] of [['rule', ruled], ['stands', stands], ['trust', trusts]]) {
    for (const one of all) want(has(language, 'depth', `${kind}.${one}`), `${language}: depth.${kind}.${one} has no words`);
    for (const key of Object.keys(words[language].depth ?? {}).filter((key) => key.startsWith(`${kind}.`))) want(all.includes(key.slice(kind.length + 1)), `${language}: nothing is called ${key}`);
  }
  for (const [key, text] of Object.entries(words[language].depth ?? {}).filter(([key]) => /^(rule|mark|mark_sub)\./.test(key))) {
    for (const wanted of placeholders(text)) want(FACTS.includes(wanted), `${language}: depth.${key} is given no {${wanted}}`);
  }
}
const marks = jobs().flatMap(({ job, now }) => shipped.estimate(job, now).surfaces.flatMap((one) => one.depth?.marks ?? []));
const bounding = new Set(marks.filter((mark) => !['lift', 'condition'].includes(mark.bound)).map((mark) => mark.rule));
want(bounding.size > 8, `only ${bounding.size} rules name a depth in the jobs`);
for (const rule of bounding) {
  for (const language of languages) want(has(language, 'depth', `mark.${rule}`) && has(language, 'depth', `mark_short.${rule}`), `${language}: ${rule} has no name on the ruler`);
}

// Each question before foam, and whatever follows from any of its answers.
const [{ job: plain, now: then }] = jobs();
const { questions } = shipped.estimate(plain, then).before;
want(questions.length > 10, `only ${questions.length} questions before foam`);
const follows = questions.flatMap((question) => fields.find((one) => one.part === 'job' && one.field === question).choices
  .flatMap((text) => shipped.estimate({ ...plain, entries: [...plain.entries, { field: question, text }] }, then).before.follows));
for (const language of languages) {
  const page = words[language].before ?? {};
  for (const question of questions) want(`ask.${question}` in page, `${language}: question ${question} is not asked in words`);
  for (const { consequence, key, memory } of follows) {
    const { what, do: then, src } = page[`${consequence}.${key}`] ?? {};
    want(what && then && src, `${language}: before.${consequence}.${key} has no words or no source`);
    // What stands on memory alone says so beside it.
    if (memory) want(/from memory|de memoria/.test(src), `${language}: before.${consequence}.${key} is from memory and does not say so`);
  }
  for (const key of Object.keys(page).filter((one) => /^(not_this_kit|not_yet|preparation|sentence)\./.test(one))) {
    want(follows.some((one) => `${one.consequence}.${one.key}` === key), `${language}: no answer leads to before.${key}`);
  }
}

// Each key that a page or module names outright.
const known = (key) => {
  const [page, ...rest] = key.split('.');
  return has('en', page, rest.join('.'));
};
const sources = (folder) => readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
  const path = join(folder, entry.name);
  if (entry.isDirectory()) return entry.name === 'words' || entry.name === 'sample' ? [] : sources(path);
  return /\.(js|html)$/.test(entry.name) ? [path] : [];
});
let named = 0;
for (const file of sources('www')) {
  const text = readFileSync(file, 'utf8');
  const keys = [
    ...text.matchAll(/data-words(?:-label)?="([^"$]+)"/g),
    ...text.matchAll(/\bt\(\s*'([\w.]+)'/g),
    ...text.matchAll(/'data-words(?:-label)?',\s*'([\w.]+)'/g),
  ].map((found) => found[1]);
  named += keys.length;
  for (const key of keys) want(known(key), `${file}: no words for ${key}`);
}
want(named > 0, 'no page names any words');

for (const fault of [...new Set(faults)]) console.log(fault);
console.log(`${checked} checks in ${languages.join(' and ')}, ${codes.length} findings (${raised.size} raised by the jobs), ${new Set(faults).size} faults`);
process.exit(faults.length ? 1 : 0);
