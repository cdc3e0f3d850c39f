// @ts-check
/**
 * The module of the exercises, fetched when practice is first opened, with the estimator's core lent to it: every figure
 * that an exercise is marked by is worked out by the same `estimate` as a job's.
 *
 * @typedef {typeof import('../exercises.js')} Module
 * @typedef {import('../exercises.js').Exercise} Exercise
 * @typedef {import('../exercises.js').StepForm} StepForm
 * @typedef {import('../exercises.js').Marked} Marked
 * @typedef {import('../exercises.js').StepMark} StepMark
 * @typedef {import('../exercises.js').Solved} Solved
 * @typedef {import('../exercises.js').Piece} Piece
 * @typedef {import('../exercises.js').Topic} Topic
 * @typedef {import('../exercises.js').ToldSlip} ToldSlip
 * @typedef {import('../exercises.js').Drawn} Drawn
 * @typedef {import('../core.js').Units} Units
 */
import { call } from '../calls.js';

/**
 * What the pages of practice ask of it.
 * @typedef {object} Practice
 * @property {(seed: string, units: Units) => Drawn} exercise
 * @property {(seed: string, units: Units, values: Float64Array, hints: Uint8Array) => Marked | undefined} mark  NaN for a blank; hints 255 where the step was shown
 * @property {(seed: string, units: Units) => Solved[]} solve
 * @property {(seed: string, units: Units) => ToldSlip[]} slips
 * @property {(level: number, topics: number, from: number) => string} find  topics as bits in the order of `topics()`, 0 for any; '' where the level has none of them
 * @property {() => Topic[]} topics
 * @property {() => import('../exercises.js').SceneForm[]} scenes
 * @property {() => string[]} book
 */

/** The instance that is asked; none while it is fetched. @type {Module | undefined} */
let module;
/** @type {Promise<void> | undefined} */
let loading;
let loads = 0;

/** The module, ready. It is fetched once; where that fails, the next call tries again. @returns {Promise<Practice>} */
export async function practice() {
  if (!module) await (loading ??= load().finally(() => { loading = undefined; }));
  return shared;
}

async function load() {
  const again = loads++;
  // A second `init()` of one module returns the old instance, so a new instance needs a new module.
  /** @type {Module} */
  const fresh = again ? await import(`../exercises.js?again=${again}`) : await import('../exercises.js');
  await fresh.default({ module_or_path: new URL('../exercises_bg.wasm', import.meta.url) });
  take(fresh);
}

/** Takes an instance into use. @param {Module} fresh */
export function take(fresh) {
  module = fresh;
  lists.clear();
}

/** What an instance lists, which never changes. @type {Map<string, any>} */
const lists = new Map();

/** What the screens hold: the same after a trap, when another instance stands behind it. @type {Practice} */
const shared = {
  exercise: (seed, units) => ask((it) => it.exercise(seed, units)),
  mark: (seed, units, values, hints) => ask((it) => it.mark(seed, units, values, hints, figures)),
  solve: (seed, units) => ask((it) => it.solve(seed, units, figures)),
  slips: (seed, units) => ask((it) => it.slips(seed, units, figures)),
  find: (level, topics, from) => ask((it) => it.find(level, topics, from)),
  topics: () => listed('topics'),
  scenes: () => listed('scenes'),
  book: () => listed('book'),
};

/** Asked once: these are read for every row of a screen. @template {'topics' | 'scenes' | 'book'} K @param {K} name @returns {ReturnType<Practice[K]>} */
function listed(name) {
  if (!lists.has(name)) lists.set(name, ask((it) => it[name]()));
  return lists.get(name);
}

/** Asks the instance. After a trap it is not asked again: a fresh one is fetched at once. @template R @param {(it: Module) => R} call @returns {R} */
function ask(call) {
  if (!module) throw new Error('the exercises are being fetched');
  try {
    return call(module);
  } catch (error) {
    if (error instanceof WebAssembly.RuntimeError || error instanceof RangeError) {
      module = undefined;
      // Where it cannot be had now, the next screen asks again.
      practice().catch(() => undefined);
    }
    throw error;
  }
}

/**
 * The figures of a job at these paths, NaN where nothing stands. A path goes down by names joined with dots: a whole number
 * picks from a list, any other name picks the thing with that `field` and takes its value; a band gives what is likely;
 * `path=word` gives 1 where that word stands there, else 0. Where the estimator gives no estimate it throws: nothing may be
 * marked by figures that are not there.
 * @param {import('../core.js').Job} job @param {import('../core.js').Now} now @param {string[]} paths
 */
export function figures(job, now, paths) {
  const estimate = call('estimate', job, now);
  if (!estimate) throw new Error('no estimate of the exercise');
  return Float64Array.from(paths, (path) => figure(estimate, path));
}

/** @param {unknown} estimate @param {string} path */
function figure(estimate, path) {
  const [way = '', word] = path.split('=');
  const found = walk(estimate, way);
  if (word !== undefined) return typeof found === 'string' ? Number(found === word) : NaN;
  const value = typeof found === 'object' && found !== null && 'likely' in found ? found.likely : found;
  return typeof value === 'number' ? value : NaN;
}

/** @param {any} from @param {string} path @returns {unknown} */
function walk(from, path) {
  let here = from;
  for (const name of path.split('.')) {
    if (here === undefined || here === null) return undefined;
    if (Array.isArray(here)) here = /^\d+$/.test(name) ? here[Number(name)] : here.find((one) => one?.field === name)?.value;
    else here = here[name];
  }
  return here;
}
