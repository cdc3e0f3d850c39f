// @ts-check
/**
 * The words. One file a page and language, `words/<language>/<page>.json`; a key is `page.name`. What the sheet of
 * the sample says of all of them is in `first.json`, which the build takes out of the pages: it is there from the
 * start, and the pages come whole when they are needed. The frame on a company's page begins with a file of its own.
 *
 * A value is a text with `{name}` placeholders, or, where the wording follows a number, an object that names
 * the figure it goes by and holds one text for each plural category of the language that it needs:
 *
 *     "surfaces": {"by": "n", "one": "{n} surface", "other": "{n} surfaces"}
 *
 * A figure given as a number is written in the language's way; a text stands as it is.
 *
 * @typedef {string | {by: string, other: string} & Record<string, string>} Phrase
 * @typedef {Record<string, string | number>} Figures
 * @typedef {'en' | 'es'} Language
 */

export const LANGUAGES = /** @type {const} */ ({ en: 'English', es: 'Español' });
/** Figures are written as on a US site in both languages: 1,234.5. */
const LOCALE = { en: 'en-US', es: 'es-US' };

/** @type {Language} */
let language = 'en';
/** @type {Map<string, any>} */
const pages = new Map();
/** The pages that are there whole. @type {Set<string>} */
const whole = new Set();
let plurals = new Intl.PluralRules(LOCALE.en);
let numbers = new Intl.NumberFormat(LOCALE.en);

/** The file that the page begins with. */
let begins = 'first';

/** Names another file of words to begin with, before the first language is spoken. @param {string} file */
export function beginWith(file) {
  begins = file;
}

/** The language of the page now. */
export function currentLanguage() {
  return language;
}

/** The language's own way of writing dates and numbers. */
export function locale() {
  return LOCALE[language];
}

/**
 * The first of the person's languages that we speak.
 * @param {readonly string[]} asked
 * @returns {Language}
 */
export function choose(asked) {
  for (const one of asked) {
    const short = one.slice(0, 2).toLowerCase();
    if (short in LANGUAGES) return /** @type {Language} */ (short);
  }
  return 'en';
}

/**
 * Changes the language: all pages in use, and these, are fetched before any word changes.
 * @param {Language} to
 * @param {readonly string[]} [names]
 * @returns {Promise<void>}
 */
export async function speak(to, names = []) {
  const all = [...new Set([...whole, ...names])];
  const [first, ...words] = await Promise.all([begins, ...all].map((page) => fetchPage(to, page)));
  // A page that came meanwhile is in the old language.
  if ([...whole].some((page) => !all.includes(page))) return speak(to, names);
  pages.clear();
  whole.clear();
  for (const [page, some] of Object.entries(first)) pages.set(page, some);
  all.forEach((page, i) => keep(page, words[i]));
  language = to;
  plurals = new Intl.PluralRules(LOCALE[to]);
  numbers = new Intl.NumberFormat(LOCALE[to]);
  if (typeof document !== 'undefined') document.documentElement.lang = to;
}

/** @param {string} page @param {Record<string, any>} words */
function keep(page, words) {
  whole.add(page);
  pages.set(page, words);
}

/** Which of these pages are not there whole. @param {readonly string[]} names */
export const lacking = (names) => names.filter((name) => !whole.has(name));

/** Fetches the words of these pages, where they are not there yet. @param {...string} names */
export async function need(...names) {
  const missing = lacking(names);
  const asked = language;
  const all = await Promise.all(missing.map((name) => fetchPage(asked, name)));
  if (asked !== language) await need(...names);
  else missing.forEach((name, i) => keep(name, all[i]));
}

/** @param {string} lang @param {string} page */
async function fetchPage(lang, page) {
  const answer = await fetch(new URL(`./words/${lang}/${page}.json`, import.meta.url));
  if (!answer.ok) throw new Error(`words/${lang}/${page}.json: ${answer.status}`);
  return answer.json();
}

/** Takes words as they are, for tests and for a page without a network. @param {string} page @param {Record<string, any>} words @param {Language} [lang] */
export function give(page, words, lang = language) {
  language = lang;
  plurals = new Intl.PluralRules(LOCALE[lang]);
  numbers = new Intl.NumberFormat(LOCALE[lang]);
  keep(page, words);
}

/** Whether there are words for a key. @param {string} key */
export function has(key) {
  return phrase(key) !== undefined;
}

/**
 * The words for a key, with the figures in their places. Without words the key itself stands, so that a gap
 * is seen and not silent.
 * @param {string} key
 * @param {Figures} [figures]
 * @returns {string}
 */
export function t(key, figures = {}) {
  const found = phrase(key);
  return found === undefined ? key : fill(found, figures);
}

/**
 * One of the texts of a key that holds several by name: what a step is, its formula, why. Empty where there is none.
 * @param {string} key
 * @param {string} name
 * @param {Figures} [figures]
 * @returns {string}
 */
export function part(key, name, figures = {}) {
  const found = /** @type {any} */ (phrase(key))?.[name];
  return found === undefined ? '' : fill(found, figures);
}

/** @param {string} key @returns {Phrase | undefined} */
function phrase(key) {
  const dot = key.indexOf('.');
  return pages.get(key.slice(0, dot))?.[key.slice(dot + 1)];
}

/** @param {Phrase} words @param {Figures} figures */
function fill(words, figures) {
  const text = typeof words === 'string' ? words
    : words[plurals.select(Number(figures[words.by]))] ?? words.other;
  return text.replace(/\{(\w+)\}/g, (whole, name) => {
    const figure = figures[name];
    return typeof figure === 'number' ? numbers.format(figure) : figure ?? whole;
  });
}

/** A number in the language's way. @param {number} value @param {number} [places] at most so many */
export function number(value, places = 0) {
  return new Intl.NumberFormat(LOCALE[language], { maximumFractionDigits: places }).format(value);
}

/** Cents as dollars; whole dollars without cents. @param {number} cents */
export function money(cents) {
  const digits = cents % 100 ? 2 : 0;
  return new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD', minimumFractionDigits: digits, maximumFractionDigits: digits }).format(cents / 100);
}

/** A clock time of today, with the weekday where it is another day. @param {number} ms @param {number} [from] now */
export function clock(ms, from = Date.now()) {
  const date = new Date(ms);
  const time = date.toLocaleTimeString(LOCALE[language], { hour: 'numeric', minute: '2-digit' });
  if (date.toDateString() === new Date(from).toDateString()) return time;
  return `${date.toLocaleDateString(LOCALE[language], { weekday: 'short' })} ${time}`;
}

/** A span of minutes: `40 min`, `2 h 40`, days from the second one on. @param {number} minutes */
export function span(minutes) {
  const whole = Math.round(minutes);
  if (whole >= 2880) return t('page.days', { n: Math.floor(whole / 1440) });
  if (whole < 60) return `${whole}\u00a0min`;
  return whole % 60 ? `${Math.floor(whole / 60)}\u00a0h\u00a0${whole % 60}` : `${whole / 60}\u00a0h`;
}

/**
 * The words of a finding: what is so, and what to do. A figure `field` is the name of a field; one that begins
 * with `@` is a word of the readings, for a thing to which the person gave no name.
 * @param {import('./core.js').Finding} found
 * @returns {{what: string, do: string, source: string}}
 */
export function finding(found) {
  const words = pages.get('findings')?.[found.code];
  /** @type {Figures} */
  const figures = {};
  for (const { name, text } of found.figures) figures[name] = text.startsWith('@') && has(`ready.${text.slice(1)}`) ? t(`ready.${text.slice(1)}`) : plain(text);
  const { part, field } = found.at;
  figures.field ??= lower(label(part, field));
  return {
    what: words ? fill(words.what, figures) : t('page.unsaid'),
    do: words ? fill(words.do, figures) : '',
    source: has(`sources.${found.source}`) ? t(`sources.${found.source}`) : '',
  };
}

/** Whether the words of a finding are there. @param {import('./core.js').Finding} found */
export const said = ({ code, source, at: { part, field } }) => has(`findings.${code}`) && (!source || has(`sources.${source}`))
  && (!field || has(`fields.${part}.${field}`) || has(`fields.${field}`));

/** A figure as it is read in a sentence: a date by the month's name, a long span in days. @param {string} text */
function plain(text) {
  if (/^\d{4}-\d\d-\d\d$/.test(text)) return day(text);
  if (/^\d{4,}$/.test(text)) return numbers.format(Number(text));
  const hours = /^(\d{2,})\sh(\s\d+\smin)?$/.exec(text);
  return hours && Number(hours[1]) >= 48 ? span(Number(hours[1]) * 60) : text;
}

/** A date `2026-10-16` the way it is written here; anything else as it is. @param {string} text */
export function day(text) {
  const date = /^\d{4}-\d\d-\d\d$/.test(text) ? new Date(`${text}T00:00Z`) : undefined;
  return date && !Number.isNaN(date.getTime()) ? date.toLocaleDateString(LOCALE[language], { timeZone: 'UTC', month: 'short', day: 'numeric', year: 'numeric' }) : text;
}

/** A label within a sentence: `Height` becomes `height`, `R` stays. @param {string} text */
function lower(text) {
  return /^\p{Lu}\p{Ll}/u.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** The name of a field, as its label has it. @param {string} part @param {string} field */
export function label(part, field) {
  return has(`fields.${part}.${field}`) ? t(`fields.${part}.${field}`) : t(`fields.${field}`);
}

/** Fills in every element under a root that carries a key: `data-words` for its text, `data-words-label` for its name. @param {ParentNode} root */
export function dress(root) {
  for (const node of root.querySelectorAll('[data-words]')) node.textContent = t(node.getAttribute('data-words') ?? '');
  for (const node of root.querySelectorAll('[data-words-label]')) node.setAttribute('aria-label', t(node.getAttribute('data-words-label') ?? ''));
}
