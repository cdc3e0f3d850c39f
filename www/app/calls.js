// @ts-check
/**
 * Every call into the core goes through here. A trap (a `RuntimeError` of the wasm) leaves its instance in a
 * state that cannot be trusted: it is dropped, said once, and a fresh instance is loaded under a new query.
 * The job itself was kept before the call, so nothing is lost.
 *
 * @typedef {typeof import('./core.js')} Core
 */

/** @type {Core | undefined} */
let core;
let loads = 0;
/** @type {Promise<void> | undefined} */
let loading;
/** @type {Set<(message: string) => void>} */
const trapped = new Set();
/** @type {Set<() => void>} */
const restored = new Set();

/** Loads the core; again, as a new instance, after a trap. @returns {Promise<void>} */
export function load() {
  loading ??= (async () => {
    const again = loads++;
    // A second `init()` of one module returns the old instance, so a new instance needs a new module.
    const fresh = again ? await import(`./core.js?again=${again}`) : await import('./core.js');
    await fresh.default({ module_or_path: new URL('./core_bg.wasm', import.meta.url) });
    use(fresh);
  })().finally(() => { loading = undefined; });
  return loading;
}

/** Takes a loaded core into use. @param {Core} loaded */
export function use(loaded) {
  core = loaded;
}

/** Whether a core stands ready. */
export function ready() {
  return core !== undefined;
}

/**
 * Calls a function of the core. After a trap, or while no core stands ready, there is no result.
 * @template {keyof Core} K
 * @param {K} name
 * @param {Parameters<Extract<Core[K], (...args: any[]) => any>>} args
 * @returns {ReturnType<Extract<Core[K], (...args: any[]) => any>> | undefined}
 */
export function call(name, ...args) {
  if (!core) return undefined;
  try {
    return /** @type {any} */ (core)[name](...args);
  } catch (error) {
    if (!(error instanceof WebAssembly.RuntimeError || error instanceof RangeError)) throw error;
    const message = String(/** @type {any} */ (globalThis).foamwright_trap ?? error);
    core = undefined;
    for (const tell of trapped) tell(message);
    load().then(() => { for (const tell of restored) tell(); }, () => {
      /** @type {any} */ (globalThis).foamwrightRescue?.('trap');
    });
    return undefined;
  }
}

/**
 * Tells when the core has trapped, and when a fresh one stands ready.
 * @param {(message: string) => void} onTrap
 * @param {() => void} onRestored
 */
export function watch(onTrap, onRestored) {
  trapped.add(onTrap);
  restored.add(onRestored);
}

/** @type {Map<string, import('./core.js').Field>} */
const table = new Map();

/** The row of the table of fields. @param {import('./core.js').Part} part @param {string} field */
export function fieldRow(part, field) {
  if (!table.size) for (const row of call('fields') ?? []) table.set(`${row.part}-${row.field}`, row);
  return table.get(`${part}-${field}`);
}

/** @type {import('./core.js').ShapeForm[]} */
let shapes = [];

/** What each shape asks for. */
export function shapeForms() {
  if (!shapes.length) shapes = call('forms') ?? [];
  return shapes;
}

/** @type {import('./core.js').GroundForm[]} */
let grounds = [];

/** What each ground asks for. */
export function groundForms() {
  if (!grounds.length) grounds = call('grounds') ?? [];
  return grounds;
}

/** Now, as the core takes it. @returns {import('./core.js').Now} */
export function now() {
  const date = new Date();
  return { ms: date.getTime(), offset_min: -date.getTimezoneOffset() };
}

/**
 * A text as read, for the line beside its field: in the job's own form, then in the others.
 * @param {import('./core.js').Field} row
 * @param {string} text
 * @param {import('./core.js').Unit | undefined} unit  of the box
 * @param {import('./core.js').Sense | undefined} sense
 * @param {import('./core.js').Units} units
 * @returns {{as: string, also: string[], several: import('./core.js').EchoPart[][], courses: boolean, meanings: {sense: import('./core.js').Sense, as: string}[]} | undefined}
 */
export function reading(row, text, unit, sense, units) {
  if (!unit) return undefined;
  const echo = call('read', text, row.kind, unit, sense, units);
  if (!echo) return undefined;
  // Once a meaning is pressed the others stay on offer.
  const asked = sense ? call('read', text, row.kind, unit, undefined, units) : echo;
  return {
    as: echo.state === 'read' ? echo.text : '', also: echo.other, several: echo.several, courses: echo.courses,
    meanings: (asked?.meanings ?? []).map((one) => ({ sense: one.sense, as: one.text })),
  };
}

/** Every field of a part, in the order of the table. @param {import('./core.js').Part} part */
export function fieldsOf(part) {
  fieldRow(part, '');
  return [...table.values()].filter((row) => row.part === part);
}

/** The unit of a bare number in a field, for a job in these units. @param {import('./core.js').Part} part @param {string} field @param {import('./core.js').Units} units */
export function unitOf(part, field, units) {
  const row = fieldRow(part, field);
  return row && (units === 'metric' ? row.metric : row.us);
}
