// @ts-check
/**
 * A host's settings, `www/embed-settings-v1.schema.json`, from its file or by message. They are judged before any of
 * them is used: known keys are copied one by one, each value that is not of its form falls back alone to its default,
 * and a sheet or a surface stands whole or not at all. Nothing in here throws, whatever the other side sent.
 * What measured texts mean is the core's to say: `sheetcheck.js`.
 *
 * @typedef {import('../core.js').Shape} Shape
 * @typedef {import('../core.js').Entered} Entered
 * @typedef {import('../words.js').Language} Language
 * @typedef {import('../catalogue.js').Sheet} Sheet
 * @typedef {import('./colors.js').Themes} Themes
 * @typedef {import('./faults.js').Fault} Fault
 * @typedef {keyof typeof SECTIONS} Section  Surfaces and cautions are no sections: they always stand.
 * @typedef {{shape: Shape, name: string, entries: Entered[]}} Start
 * @typedef {{company: string, title: string, language?: Language, units: 'us' | 'metric', foams: Sheet[], kits: Sheet[],
 *   sales_tax: string, delivery: string, sections: ReadonlySet<Section>, surfaces: Shape[], start: Start[],
 *   depths: string[], colors: Themes, contact?: {name: string, link: string}, disclaimer: string, send: boolean}} Settings
 *   Without foams or kits of the host's own, our invented samples stand in, and no price is shown.
 */
import { Fault as FormFault, entriesOf, isPlain, sheetOf, tooDeep } from '../sheetform.js';
import { judged } from './colors.js';
import { Faults, UNSEEN, shown } from './faults.js';
import { SENSES, SHAPES, UNITS } from './lists.js';

export const FORMAT = 'foamwright-embed';
export const VERSION = 1;
/** More than settings ever need. */
export const MOST_BYTES = 200_000;
const DEEPEST = 32;

/** How many characters a text may have, and how many things a list. */
const MOST = {
  company: 80, title: 120, name: 80, link: 300, money: 40, depth: 40, disclaimer: 600,
  foams: 20, kits: 40, sections: 8, surfaces: 24, start: 12, depths: 6,
};
/** What may be shown, and whether it is without settings. How to spray is for whoever sprays: a host has to want it. */
const SECTIONS = { depth: true, foam: true, kits: true, price: true, print: true, take: true, readiness: false, spraying: false };
/** What a house has, in the order in which it is offered. @type {Shape[]} */
const HOUSE = ['rim_run', 'footprint', 'framed_wall', 'framed_floor', 'framed_slope', 'rectangle', 'typed_area'];
export const DEPTHS = { us: ['1 in', '2 in', '3 in'], metric: ['25 mm', '50 mm', '75 mm'] };
const LINK = /^(https|mailto|tel):./;
const SCHEMES = ['https:', 'mailto:', 'tel:'];
const COLOR = /^#[0-9A-Fa-f]{6}$/;

/** What stands without settings. @returns {Settings} */
const defaults = () => ({
  company: '', title: '', units: 'us', foams: [], kits: [], sales_tax: '', delivery: '', sections: sectionsOf(undefined, []),
  surfaces: [...HOUSE], start: [], depths: [...DEPTHS.us], colors: {}, disclaimer: '', send: false,
});

/** @param {string[] | undefined} named @param {Sheet[]} kits @returns {Set<Section>} */
function sectionsOf(named, kits) {
  const all = /** @type {Section[]} */ (Object.keys(SECTIONS)).filter((one) => (named ? named.includes(one) : SECTIONS[one]));
  // The prices of our samples are invented: nobody may take them for the company's.
  return new Set(all.filter((one) => one !== 'price' || kits.length > 0));
}

/** Whether no depth can ever be given to a surface: none stands there, none is on offer, and none can be typed. @param {Settings} settings */
export const shallow = ({ sections, depths, start }) => !sections.has('depth') && !depths.length
  && !(start.length && start.every((one) => one.entries.some(({ field, text }) => field === 'depth' && text.trim())));

/** Reads the text of a settings file. @param {string} text @param {Language} language @returns {{settings: Settings, faults: Fault[]}} */
export function readText(text, language) {
  const refuse = (/** @type {string} */ why) => refused(why, { most: MOST_BYTES });
  if (new TextEncoder().encode(text).length > MOST_BYTES) return refuse('large');
  if (tooDeep(text)) return refuse('deep');
  try {
    return read(JSON.parse(text.replace(/^\uFEFF/, '')), language);
  } catch {
    return refuse('damaged');
  }
}

/**
 * Reads settings that are already a value. `language`: the one in which a text of several is taken, unless the
 * settings name one themselves.
 * @param {unknown} value @param {Language} language @returns {{settings: Settings, faults: Fault[]}}
 */
export function read(value, language) {
  try {
    const size = sizeOf(value);
    if (size) return refused(size, { most: MOST_BYTES });
    if (!isPlain(value) || own(value, 'format') !== FORMAT) return refused('foreign');
    const version = own(value, 'version');
    if (Number.isSafeInteger(version) && Number(version) > VERSION) return refused('newer', { version: String(version), known: String(VERSION) });
    if (version !== VERSION) return version === undefined ? refused('no_version') : refused('version', { given: shown(version) });
    return new Reader(value, language).all();
  } catch {
    // A value that answers with an error is no data.
    return refused('damaged');
  }
}

/** @param {string} why @param {import('./faults.js').Figures} [figures] */
function refused(why, figures) {
  const faults = new Faults();
  faults.add('', why, 'file', 'defaults', figures);
  return { settings: defaults(), faults: faults.told() };
}

/** @param {Record<string, unknown>} from @param {string} key */
const own = (from, key) => (Object.hasOwn(from, key) ? from[key] : undefined);

/** @param {unknown} value */
const isNone = (value) => Array.isArray(value) && value.length === 0;

/** Whether a value is larger or deeper than settings ever are; told without following it further than that. @param {unknown} value */
function sizeOf(value) {
  let left = MOST_BYTES;
  /** @type {[unknown, number][]} */
  const open = [[value, 0]];
  for (let next = open.pop(); next; next = open.pop()) {
    const [one, depth] = next;
    left -= typeof one === 'string' ? one.length + 3 : 2;
    if (typeof one === 'object' && one !== null) {
      if (depth >= DEEPEST) return 'deep';
      if (Array.isArray(one) && one.length > left) return 'large';
      for (const key of Object.keys(one)) {
        left -= key.length + 1;
        if (left < 0) return 'large';
        open.push([/** @type {any} */ (one)[key], depth + 1]);
      }
    }
    if (left < 0) return 'large';
  }
  return '';
}

/** Settings as they are read, key by key, with what is wrong on the way. */
class Reader {
  /** @param {Record<string, unknown>} file @param {Language} language */
  constructor(file, language) {
    this.file = file;
    this.faults = new Faults();
    const named = this.word('language', { en: true, es: true, visitor: true }, 'language', 'visitor');
    /** @type {Language | undefined} */
    this.named = named === 'en' || named === 'es' ? named : undefined;
    this.language = this.named ?? language;
  }

  /** @returns {{settings: Settings, faults: Fault[]}} */
  all() {
    const { file } = this;
    this.only(file, '', ['$schema', 'format', 'version', 'language', ...Object.keys(defaults()), 'contact']);
    this.line(own(file, '$schema'), '$schema', MOST.link, 'ignored');
    const units = this.word('units', { us: true, metric: true }, 'units', 'us') ?? 'us';
    const kits = this.sheets('kit', 'kits');
    const surfaces = this.words('surfaces', SHAPES, 'shape');
    const depths = this.list('depths', 'depths', 'depths', 'depths', (one, at) => this.filled(one, at, MOST.depth, 'depth', 'left_out'));
    if (surfaces && !/** @type {unknown[]} */ (own(file, 'surfaces')).length) this.faults.add('surfaces', 'empty', 'surfaces', 'surfaces', { most: MOST.surfaces });
    /** @type {Settings} */
    const settings = {
      company: this.line(own(file, 'company'), 'company', MOST.company) ?? '',
      title: this.texts(own(file, 'title'), 'title', MOST.title, 'title'),
      ...(this.named ? { language: this.named } : {}),
      units, foams: this.sheets('foam', 'foams'), kits,
      sales_tax: this.line(own(file, 'sales_tax'), 'sales_tax', MOST.money, 'sales_tax', 'sales_tax') ?? '',
      delivery: this.line(own(file, 'delivery'), 'delivery', MOST.money, 'delivery', 'delivery') ?? '',
      sections: sectionsOf(this.words('sections', SECTIONS, 'section'), kits),
      surfaces: surfaces?.length ? /** @type {Shape[]} */ (surfaces) : [...HOUSE],
      start: this.list('start', 'start', 'start', 'start', (one, at) => this.start(one, at)) ?? [],
      // A host that offers none says so with an empty list; one whose depths are all wrong wants some.
      depths: depths?.length || isNone(own(file, 'depths')) ? depths ?? [] : [...DEPTHS[units]],
      colors: this.colors(),
      ...this.contact(),
      disclaimer: this.texts(own(file, 'disclaimer'), 'disclaimer', MOST.disclaimer, 'disclaimer'),
      send: this.send(),
    };
    if (shallow(settings)) {
      this.faults.add('sections', 'shallow', 'depth_somewhere', 'depth_on');
      settings.sections = new Set([...settings.sections, 'depth']);
    }
    return { settings, faults: this.faults.told() };
  }

  /** Says which keys are not known. @param {Record<string, unknown>} from @param {string} at @param {string[]} known */
  only(from, at, known) {
    for (const key of Object.keys(from)) {
      if (!known.includes(key)) this.faults.add(`${at}${at && '.'}${key}`, 'unknown', '', 'ignored', { known: known.join(', ') });
    }
  }

  /**
   * A text of one line; nothing where it is not given or not of that form.
   * @param {unknown} value @param {string} at @param {number} most @param {string} [now] @param {string} [want]
   * @returns {string | undefined}
   */
  line(value, at, most, now = 'blank', want = 'line') {
    if (value === undefined) return undefined;
    const why = typeof value !== 'string' ? 'type' : [...value].length > most ? 'long' : UNSEEN.test(value) ? 'unseen' : '';
    if (why) this.faults.add(at, why, want, now, { given: shown(value), most, n: typeof value === 'string' ? [...value].length : 0 });
    return why ? undefined : String(value).trim();
  }

  /** A line that may not be blank. @param {unknown} value @param {string} at @param {number} most @param {string} want @param {string} now */
  filled(value, at, most, want, now) {
    if (value === undefined) this.faults.add(at, 'missing', want, now, { most });
    const text = this.line(value, at, most, now, want);
    if (text === '') this.faults.add(at, 'empty', want, now, { most });
    return text || undefined;
  }

  /**
   * A text, or one for each language: a language without one takes the other's.
   * @param {unknown} value @param {string} at @param {number} most @param {string} now @param {boolean} [must]  none may be blank
   */
  texts(value, at, most, now, must) {
    const one = (/** @type {unknown} */ text, /** @type {string} */ here, /** @type {string} */ want, /** @type {string} */ then) =>
      (must ? this.filled(text, here, most, want, then) : this.line(text, here, most, then, want));
    if (!isPlain(value)) return one(value, at, 'texts', now) ?? '';
    this.only(value, at, ['en', 'es']);
    if (!Object.hasOwn(value, 'en') && !Object.hasOwn(value, 'es')) this.faults.add(at, 'missing', 'texts', now, { most });
    const [en, es] = ['en', 'es'].map((key) => (Object.hasOwn(value, key) ? one(value[key], `${at}.${key}`, 'line', 'one_language') : ''));
    return (this.language === 'es' ? es || en : en || es) ?? '';
  }

  /**
   * One of a few words.
   * @template {string} W @param {string} at @param {Record<W, unknown>} known @param {string} want @param {string} now
   * @returns {W | undefined}
   */
  word(at, known, want, now) {
    const value = own(this.file, at);
    if (value === undefined) return undefined;
    if (typeof value === 'string' && Object.hasOwn(known, value)) return /** @type {W} */ (value);
    this.faults.add(at, typeof value === 'string' ? 'word' : 'type', want, now, { given: shown(value) });
    return undefined;
  }

  /**
   * A list of which each bad member is left out alone; what is beyond the most is left out.
   * @template T @param {string} at @param {keyof typeof MOST} limit @param {string} want @param {string} now
   * @param {(one: unknown, at: string) => T | undefined} make @returns {T[] | undefined} nothing where there is no list
   */
  list(at, limit, want, now, make) {
    const value = own(this.file, at);
    if (value === undefined) return undefined;
    const most = MOST[limit];
    if (!Array.isArray(value)) {
      this.faults.add(at, 'type', want, now, { given: shown(value), most });
      return undefined;
    }
    if (value.length > most) this.faults.add(at, 'many', want, 'first', { n: value.length, most });
    // By index, for a list with holes.
    return Array.from({ length: Math.min(value.length, most) }, (_, i) => make(value[i], `${at}[${i}]`)).filter((one) => one !== undefined);
  }

  /** A list of known words. @param {'sections' | 'surfaces'} at @param {Record<string, unknown>} known @param {string} want of one of them */
  words(at, known, want) {
    const found = this.list(at, at, at, at, (one, here) => {
      if (typeof one === 'string' && Object.hasOwn(known, one)) return one;
      this.faults.add(here, typeof one === 'string' ? 'word' : 'type', want, 'left_out', { given: shown(one) });
      return undefined;
    });
    return found && [...new Set(found)];
  }

  /** The sheets of foams or kits. @param {'foam' | 'kit'} part @param {'foams' | 'kits'} at */
  sheets(part, at) {
    const seen = new Set();
    return this.list(at, at, 'sheets', part === 'kit' ? 'sample_kits' : 'samples', (one, here) => this.formed(here, () => {
      const sheet = sheetOf(part, one, here);
      if (UNSEEN.test(sheet.name)) throw new FormFault('unseen', `${here}.name`);
      if (seen.has(sheet.sheet)) throw new FormFault('twice', `${here}.sheet`);
      units(sheet.entries, `${here}.entries`);
      (sheet.r_at ?? []).forEach((row, i) => units(row, `${here}.r_at[${i}]`));
      seen.add(sheet.sheet);
      return sheet;
    })) ?? [];
  }

  /** What the form of sheets and entries lets pass; its faults are told as ours. @template T @param {string} at @param {() => T} make */
  formed(at, make) {
    try {
      return make();
    } catch (error) {
      if (!(error instanceof FormFault)) throw error;
      const key = /\.(sheet|version|name|field|text|unit|sense)$/.exec(error.at)?.[1];
      const want = key === 'sheet' ? 'sheet_id' : key ?? (at.startsWith('start') ? 'surface' : 'sheet');
      this.faults.add(error.at, error.message, want, 'left_out_whole', { whole: at, most: 200, n: '' });
      return undefined;
    }
  }

  /** A surface that stands there from the start. @param {unknown} one @param {string} at @returns {Start | undefined} */
  start(one, at) {
    if (!isPlain(one)) {
      this.faults.add(at, 'type', 'surface', 'left_out', { given: shown(one) });
      return undefined;
    }
    this.only(one, at, ['shape', 'name', 'entries']);
    const shape = own(one, 'shape');
    if (typeof shape !== 'string' || !Object.hasOwn(SHAPES, shape)) {
      this.faults.add(`${at}.shape`, shape === undefined ? 'missing' : typeof shape === 'string' ? 'word' : 'type', 'shape', 'left_out', { given: shown(shape) });
      return undefined;
    }
    const name = this.texts(own(one, 'name'), `${at}.name`, MOST.name, 'blank');
    const entries = this.formed(at, () => units(entriesOf(Object.hasOwn(one, 'entries') ? one.entries : [], `${at}.entries`), `${at}.entries`));
    return entries && { shape: /** @type {Shape} */ (shape), name, entries };
  }

  /** @returns {Themes} */
  colors() {
    /** @type {Themes} */
    const all = {};
    const themes = this.record(own(this.file, 'colors'), 'colors', ['light', 'dark'], 'colors');
    for (const theme of /** @type {const} */ (['light', 'dark'])) {
      const at = `colors.${theme}`;
      const given = this.record(themes && own(themes, theme), at, ['ground', 'accent'], 'colors');
      if (!given) continue;
      const { colors, pale } = judged(theme, {
        ...this.color(own(given, 'ground'), at, 'ground'), ...this.color(own(given, 'accent'), at, 'accent'),
      });
      for (const one of pale) {
        this.faults.add(`${at}.${one.which}`, 'pale', 'contrast', 'color', {
          given: one.color, against: one.against, ratio: (Math.floor(one.ratio * 100) / 100).toFixed(2), least: String(one.least),
          ground: colors.ground ?? '', accent: colors.accent ?? '',
        });
      }
      all[theme] = colors;
    }
    return all;
  }

  /** @param {unknown} value @param {string} at @param {'ground' | 'accent'} which */
  color(value, at, which) {
    if (value === undefined) return {};
    if (typeof value === 'string' && COLOR.test(value)) return { [which]: value.toLowerCase() };
    this.faults.add(`${at}.${which}`, typeof value === 'string' ? 'form' : 'type', 'color', 'color', { given: shown(value) });
    return {};
  }

  /** @param {unknown} value @param {string} at @param {string[]} known @param {string} now @returns {Record<string, unknown> | undefined} */
  record(value, at, known, now) {
    if (value === undefined) return undefined;
    if (!isPlain(value)) {
      this.faults.add(at, 'type', 'record', now, { given: shown(value), known: known.join(', ') });
      return undefined;
    }
    this.only(value, at, known);
    return value;
  }

  /** Whom to ask; without a link that can be followed safely, nobody is named. @returns {{contact?: {name: string, link: string}}} */
  contact() {
    const given = this.record(own(this.file, 'contact'), 'contact', ['name', 'link'], 'contact');
    if (!given) return {};
    const name = this.texts(own(given, 'name'), 'contact.name', MOST.name, 'contact', true);
    const link = this.filled(own(given, 'link'), 'contact.link', MOST.link, 'link', 'contact');
    const url = link && safe(link);
    if (link && !url) this.faults.add('contact.link', LINK.test(link) ? 'link' : 'form', 'link', 'contact', { given: shown(link), most: MOST.link });
    return name && url ? { contact: { name, link: url } } : {};
  }

  send() {
    const value = own(this.file, 'send');
    if (value === undefined || typeof value === 'boolean') return value ?? false;
    this.faults.add('send', 'type', 'send', 'send', { given: shown(value) });
    return false;
  }
}

/** Entries whose units and meanings are known; a job with others could not be read at all. @param {Sheet['entries']} entries @param {string} at */
function units(entries, at) {
  entries.forEach((one, i) => {
    if (one.unit !== undefined && !Object.hasOwn(UNITS, one.unit)) throw new FormFault('word', `${at}[${i}].unit`);
    if (one.sense !== undefined && !Object.hasOwn(SENSES, one.sense)) throw new FormFault('word', `${at}[${i}].sense`);
  });
  return entries;
}

/** A link that leads to a page, a letter or a telephone, as the browser reads it. @param {string} link */
function safe(link) {
  if (!LINK.test(link)) return '';
  try {
    const url = new URL(link);
    return SCHEMES.includes(url.protocol) && url.username === '' && url.password === '' ? url.href : '';
  } catch {
    return '';
  }
}
