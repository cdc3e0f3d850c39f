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

/** @type {Promise<Practice> | undefined} */
let loading;
let loads = 0;

/** The module, ready. It is fetched once; where that fails, the next call tries again. @returns {Promise<Practice>} */
export function practice() {
  loading ??= load();
  loading.catch(() => { loading = undefined; });
  return loading;
}

/** @returns {Promise<Practice>} */
async function load() {
  const again = loads++;
  // A second `init()` of one module returns the old instance, so a new instance needs a new module.
  /** @type {Module} */
  const module = again ? await import(`../exercises.js?again=${again}`) : await import('../exercises.js');
  await module.default({ module_or_path: new URL('../exercises_bg.wasm', import.meta.url) });
  return {
    exercise: kept(module.exercise),
    mark: kept((seed, units, values, hints) => module.mark(seed, units, values, hints, figures)),
    solve: kept((seed, units) => module.solve(seed, units, figures)),
    slips: kept((seed, units) => module.slips(seed, units, figures)),
    find: kept(module.find),
    topics: module.topics,
    scenes: module.scenes,
    book: module.book,
  };
}

/** A call after whose trap the next `practice()` gives a fresh instance. @template {any[]} A @template R @param {(...args: A) => R} call @returns {(...args: A) => R} */
function kept(call) {
  return (...args) => {
    try {
      return call(...args);
    } catch (error) {
      if (error instanceof WebAssembly.RuntimeError || error instanceof RangeError) loading = undefined;
      throw error;
    }
  };
}

/**
 * The figures of a job at these paths, NaN where nothing stands. A path goes down by names joined with dots: a whole number
 * picks from a list, any other name picks the thing with that `field` and takes its value; a band gives what is likely;
 * `path=word` gives 1 where that word stands there, else 0.
 * @param {import('../core.js').Job} job @param {import('../core.js').Now} now @param {string[]} paths
 */
export function figures(job, now, paths) {
  const estimate = call('estimate', job, now);
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
