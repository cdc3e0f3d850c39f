// @ts-check
/**
 * The document of what a student has answered: what stands in it, how it is read, and how two states of it are put together.
 *
 * Several tabs write it. Each keeps what it has seen as well, and what it writes is both put together: of one step in one
 * system of units the later answer, of an exercise the later marking, of the sums those that go further. So a write that
 * crosses another one loses nothing.
 *
 * @typedef {import('../core.js').Units} Units
 * @typedef {{text: string, unit: string, sense?: string, hints: number, shown: boolean}} Answer
 *   as typed, with the unit of its box and the meaning pressed; `hints` taken, and whether the step was shown
 * @typedef {Answer & {at: number}} Step  with when it was given; 0 for one that was not touched
 * @typedef {{done: number, points: number, of: number}} Sum
 * @typedef {Record<string, Sum>} Sums
 *
 * @typedef {object} Sheet  the answers of an exercise in one system of units: a figure without a unit is read in it
 * @property {Step[]} steps
 * @property {number} opened  when the worked solution was looked at; 0 for never
 * @property {number} afresh  when it was started over; 0 for never
 *
 * @typedef {object} Kept  one exercise
 * @property {string} seed
 * @property {number} at  when it was last touched
 * @property {Units} units  in which it was answered last
 * @property {Partial<Record<Units, Sheet>>} sheets
 * @property {number} seen  when it was started over after help or answers had been seen; 0 for never
 * @property {{at: number, points: number, of: number, topics: Record<string, [number, number]>}} [score]  as it was marked last: points, of so many, and both by topic
 *
 * @typedef {object} Doc
 * @property {'foamwright-practice'} format
 * @property {number} version
 * @property {{n: number, at: number}} reset  the how-manieth reset, and when; nothing older counts
 * @property {{until: number, topics: Sums}} past  what the exercises gave that are no longer kept, up to which one
 * @property {{at: number, seeds: string[]}} sheet  the class sheet that was opened last
 * @property {Kept[]} exercises  the last touched first
 */

const FORMAT = 'foamwright-practice';
const VERSION = 1;

/** So many exercises are kept with their answers. */
export const MOST_KEPT = 200;
export const MOST_STEPS = 60;
const MOST_SEEDS = 20;
const SYSTEMS = /** @type {const} */ (['us', 'metric']);

/** @returns {Doc} */
export const blank = () => ({ format: FORMAT, version: VERSION, reset: { n: 0, at: 0 }, past: { until: 0, topics: {} }, sheet: { at: 0, seeds: [] }, exercises: [] });

/** @returns {Sheet} */
export const blankSheet = () => ({ steps: [], opened: 0, afresh: 0 });

/** A step that nobody has touched. @returns {Step} */
export const blankStep = () => ({ text: '', unit: '', hints: 0, shown: false, at: 0 });

/** @param {Answer} answer */
export const begun = ({ text, hints, shown }) => text.trim() !== '' || hints > 0 || shown;

/** @param {Answer} answer @returns {Answer} */
export const tidied = ({ text, unit, sense, hints, shown }) => ({ text: text.slice(0, 300), unit, ...(sense ? { sense } : {}), hints, shown });

/** Whether a sheet gave something away: a hint, a step, or the worked solution since it was started over. @param {Sheet | undefined} sheet */
export const helped = (sheet) => sheet !== undefined && (sheet.opened > sheet.afresh || sheet.steps.some(({ hints, shown }) => hints > 0 || shown));

/** @param {Sums} sums @param {Kept} one @returns {Sums} */
export function added(sums, { score }) {
  const all = { ...sums };
  for (const [topic, [points, of]] of Object.entries(score?.topics ?? {})) {
    const { done, points: before, of: all_of } = all[topic] ?? { done: 0, points: 0, of: 0 };
    all[topic] = { done: done + 1, points: before + points, of: all_of + of };
  }
  return all;
}

/** Both sums, of what went before a reset and of what fell out since. @param {Doc['past']} one @param {Doc['past']} other @returns {Doc['past']} */
export function sum(one, other) {
  const topics = { ...one.topics };
  for (const [topic, { done, points, of }] of Object.entries(other.topics)) {
    const before = topics[topic] ?? { done: 0, points: 0, of: 0 };
    topics[topic] = { done: before.done + done, points: before.points + points, of: before.of + of };
  }
  return { until: Math.max(one.until, other.until), topics };
}

/** Two states of the same thing put together. @param {Doc} one @param {Doc} other @returns {Doc} */
export function joined(one, other) {
  const [late, early] = other.reset.n > one.reset.n ? [other, one] : [one, other];
  // A later reset settles the sums; without one, those that go further hold the others.
  const past = late.reset.n > early.reset.n || late.past.until >= early.past.until ? late.past : early.past;
  const whole = past === late.past ? late : early;
  const sheet = one.sheet.at >= other.sheet.at ? one.sheet : other.sheet;
  /** @type {Map<string, Kept>} */
  const all = new Map();
  for (const doc of [one, other]) {
    for (const it of doc.exercises) {
      if (it.at <= late.reset.at) continue;
      // It fell out there, and is in the sums.
      if (it.at <= past.until && doc !== whole && !whole.exercises.some((known) => known.seed === it.seed)) continue;
      const known = all.get(it.seed);
      all.set(it.seed, known ? both(known, it) : it);
    }
  }
  const { at } = late.reset;
  const exercises = [...all.values()].map((it) => (at ? since(it, at) : it)).sort((a, b) => b.at - a.at || (a.seed < b.seed ? -1 : 1));
  return { format: FORMAT, version: VERSION, reset: late.reset, past, sheet: sheet.at > late.reset.at ? sheet : blank().sheet, exercises };
}

/** Two states of one exercise: of each step the later answer, and the later marking. @param {Kept} one @param {Kept} other @returns {Kept} */
function both(one, other) {
  if (one === other) return one;
  const late = one.at >= other.at ? one : other;
  /** @type {Kept['sheets']} */
  const sheets = {};
  for (const units of SYSTEMS) {
    const [a, b] = [one.sheets[units], other.sheets[units]];
    if (a && b) {
      const [long, short] = a.steps.length >= b.steps.length ? [a, b] : [b, a];
      sheets[units] = {
        steps: long.steps.map((step, at) => { const there = short.steps[at]; return there && there.at > step.at ? there : step; }),
        opened: Math.max(a.opened, b.opened), afresh: Math.max(a.afresh, b.afresh),
      };
    } else if (a ?? b) sheets[units] = a ?? b;
  }
  const score = (one.score?.at ?? -1) >= (other.score?.at ?? -1) ? one.score : other.score;
  return { seed: one.seed, at: late.at, units: late.units, sheets, seen: Math.max(one.seen, other.seen), ...(score ? { score } : {}) };
}

/** What of an exercise came after a reset: a tab that had not heard of it may have written older answers along. @param {Kept} kept @param {number} reset @returns {Kept} */
function since({ score, ...kept }, reset) {
  const sheets = Object.fromEntries(Object.entries(kept.sheets).map(([units, sheet]) => [units, { ...sheet, steps: sheet.steps.map((step) => (step.at && step.at <= reset ? blankStep() : step)) }]));
  return { ...kept, sheets, seen: kept.seen > reset ? kept.seen : 0, ...(score && score.at > reset ? { score } : {}) };
}

/** The document with no more exercises than are kept; of the others their sums. @param {Doc} doc @returns {Doc} */
export function trimmed(doc) {
  const gone = doc.exercises.slice(MOST_KEPT);
  if (!gone.length) return doc;
  const topics = gone.reduce((sums, one) => added(sums, one), doc.past.topics);
  return { ...doc, past: { until: Math.max(doc.past.until, gone[0].at), topics }, exercises: doc.exercises.slice(0, MOST_KEPT) };
}

/** Whether a newer version of this page wrote it. @param {any} value */
export const newer = (value) => value?.format === FORMAT && Number.isSafeInteger(value.version) && value.version > VERSION;

/** @param {unknown} value @returns {value is number} */
const isNumber = (value) => typeof value === 'number' && Number.isFinite(value) && value >= 0;

/** @param {unknown} value */
const count = (value) => (isNumber(value) ? value : 0);

/** What lies there, as far as it can be understood. @param {any} value @returns {Doc} */
export function read(value) {
  const doc = blank();
  if (value?.format !== FORMAT || value.version !== VERSION) return doc;
  if (isNumber(value.reset?.n) && isNumber(value.reset.at)) doc.reset = { n: value.reset.n, at: value.reset.at };
  if (isNumber(value.past?.until)) doc.past = { until: value.past.until, topics: sumsOf(value.past.topics) };
  if (isNumber(value.sheet?.at) && Array.isArray(value.sheet.seeds)) doc.sheet = { at: value.sheet.at, seeds: value.sheet.seeds.filter((/** @type {unknown} */ one) => typeof one === 'string').slice(0, MOST_SEEDS) };
  if (Array.isArray(value.exercises)) doc.exercises = value.exercises.flatMap(keptOf).slice(0, MOST_KEPT);
  return doc;
}

/** @param {any} value @returns {Sums} */
function sumsOf(value) {
  const sound = Object.entries(value && typeof value === 'object' ? value : {}).filter(([, one]) => one && isNumber(one.done) && isNumber(one.points) && isNumber(one.of));
  return Object.fromEntries(sound.map(([topic, { done, points, of }]) => [topic, { done, points, of }]));
}

/** @param {any} one @returns {Kept[]} */
function keptOf(one) {
  if (!one || typeof one.seed !== 'string' || !isNumber(one.at)) return [];
  /** @type {Kept['sheets']} */
  const sheets = {};
  for (const units of SYSTEMS) {
    const sheet = one.sheets?.[units];
    if (Array.isArray(sheet?.steps)) sheets[units] = { steps: sheet.steps.slice(0, MOST_STEPS).map(stepOf), opened: count(sheet.opened), afresh: count(sheet.afresh) };
  }
  const { score } = one;
  const sound = score && isNumber(score.points) && isNumber(score.of);
  const topics = Object.entries(sound && score.topics && typeof score.topics === 'object' ? score.topics : {}).filter(([, two]) => Array.isArray(two) && isNumber(two[0]) && isNumber(two[1]));
  return [{
    seed: one.seed, at: one.at, units: one.units === 'metric' ? 'metric' : 'us', sheets, seen: count(one.seen),
    ...(sound ? { score: { at: count(score.at), points: score.points, of: score.of, topics: Object.fromEntries(topics) } } : {}),
  }];
}

/** @param {any} it @returns {Step} */
const stepOf = (it) => ({
  ...tidied({ text: String(it?.text ?? ''), unit: String(it?.unit ?? ''), sense: typeof it?.sense === 'string' ? it.sense : undefined, hints: count(it?.hints), shown: it?.shown === true }),
  at: count(it?.at),
});
