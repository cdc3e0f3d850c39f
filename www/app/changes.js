// @ts-check
/**
 * What can be done to a job. Each change is plain data; `apply` is pure and returns a new job that shares
 * everything untouched with the old one. Time and randomness come in with the change, never from here.
 *
 * Ids of listed things come from `job.next_id` and are never used again.
 *
 * @typedef {import('./job.js').Job} Job
 * @typedef {import('./job.js').Surface} Surface
 * @typedef {import('./job.js').Opening} Opening
 * @typedef {import('./job.js').FoamSheet} FoamSheet
 * @typedef {import('./job.js').KitSheet} KitSheet
 * @typedef {import('./job.js').SiteReading} SiteReading
 * @typedef {import('./core.js').Entered} Entered
 * @typedef {import('./core.js').Part} Part
 * @typedef {import('./core.js').Now} Now
 * @typedef {'surfaces' | 'foams' | 'kits' | 'stock' | 'readings' | 'rounds' | 'warming' | 'forecast' | 'events'} ListName
 *
 * @typedef {{do: 'entry', part: Part, id: number, field: string, text: string,
 *   unit?: import('./core.js').Unit, sense?: import('./core.js').Sense, now?: Now}} EntryChange
 *   A measured entry was typed, or one of its meanings pressed. Blank text takes the entry away.
 *   On a reading, `now` stamps it.
 * @typedef {{do: 'entries', part: Part, id: number, entries: Entered[]}} EntriesChange
 *   Several entries of one thing at once: one step of undo.
 * @typedef {{do: 'text', field: 'name' | 'place' | 'note', text: string}} TextChange  The job's own lines.
 * @typedef {{do: 'name', part: Part, id: number, name: string}} NameChange
 * @typedef {{do: 'units', units: import('./core.js').Units,
 *   unitOf?: (part: Part, field: string, units: import('./core.js').Units) => import('./core.js').Unit | undefined}} UnitsChange
 *   Entries that carry no unit are given the one that they had so far, so that no figure changes its meaning.
 * @typedef {{do: 'add_surface', shape: import('./core.js').Shape, name?: string, entries?: Entered[],
 *   depth_way?: import('./core.js').DepthWay}} AddSurface  `entries`: what it takes over from another.
 * @typedef {{do: 'remove', part: Part, id: number}} Remove  Any listed thing, with all that hangs on it.
 * @typedef {{do: 'duplicate_surface', id: number, name?: string}} DuplicateSurface
 * @typedef {{do: 'move_surface', id: number, by: number}} MoveSurface
 * @typedef {{do: 'shape', id: number, shape: import('./core.js').Shape}} ShapeChange
 * @typedef {{do: 'deduct', id: number, on: boolean}} DeductChange
 * @typedef {{do: 'add_opening', surface: number, name?: string}} AddOpening
 * @typedef {{do: 'add_patch', surface: number, name?: string}} AddPatch  A part of a surface at another depth.
 * @typedef {{do: 'add_leg', surface: number}} AddLeg  The next edge of a plane that is walked along its edges.
 * @typedef {{do: 'add_layers', surface: number, layers: {made_of: string, position: string, thickness?: string}[]}} AddLayers  Layers of what a surface is built of, the outermost first.
 * @typedef {{do: 'move_layer', surface: number, id: number, by: number}} MoveLayer
 * @typedef {{do: 'depth_way', id: number, way: import('./core.js').DepthWay, kit?: number}} DepthWayChange
 * @typedef {{do: 'aim', id: number, text: string, run: number}} AimChange  The aim was set on the ruler. All of one `run`, a drag or a key held down, are one step of undo.
 * @typedef {{do: 'foam', id: number, foam: number}} FoamChoice  `id` 0 is the whole job.
 * @typedef {{do: 'add_foam', sheet?: Sheet, name?: string}} AddFoam
 * @typedef {{do: 'add_kit', sheet?: Sheet, name?: string}} AddKit
 * @typedef {{do: 'add_owned', sheet?: Sheet, name?: string}} AddOwned  A kit that is already there.
 * @typedef {{do: 'renew_sheet', part: 'foam' | 'kit' | 'owned', id: number, sheet: Sheet}} RenewSheet
 *   The job's copy takes over what the catalogue says now; its id stays.
 * @typedef {{do: 'sheet_kept', part: 'foam' | 'kit' | 'owned', id: number, sheet: string, version: number}} SheetKept
 *   The job's copy was put into the catalogue under this id and version.
 * @typedef {{do: 'add_r_row', foam: number}} AddRRow
 * @typedef {{do: 'purchase', buy: import('./core.js').KitCount[]}} PurchaseChange
 * @typedef {{do: 'purchase_reason', reason: string}} PurchaseReason
 * @typedef {{do: 'purchase_clear'}} PurchaseClear
 * @typedef {{do: 'add_reading', of: import('./core.js').ReadingOf, name?: string}} AddReading
 * @typedef {{do: 'add_event', what: import('./core.js').EventOf, now: Now, key?: string, surface?: number, lift?: number,
 *   name?: string, entries?: Entered[]}} AddEvent  Something was done on the day.
 * @typedef {{do: 'add_warming', name?: string, entries?: Entered[]}} AddWarming  Kits that are warmed together.
 * @typedef {{do: 'moved', id: number, way: 'in' | 'out', now?: Now}} MovedChange  They came into the warm room or left it; without a time, they did not.
 * @typedef {{do: 'moved_back', id: number, now: Now}} MovedBackChange  They came back in: hours count anew, and how warm they were at first goes.
 * @typedef {{do: 'add_warm_reading', warming: number, now: Now}} AddWarmReading
 * @typedef {{do: 'add_forecast', entries?: Entered[], offset_min?: number}} AddForecast  A day of the forecast.
 * @typedef {{do: 'offset', id: number, offset_min: number}} OffsetChange  The clock of a forecast's day, whose date was just typed.
 * @typedef {{do: 'keep_round'}} KeepRound  What was read so far goes to the earlier rounds as it stands; the present readings are read anew.
 * @typedef {{do: 'take', id: number, now: Now}} TakeReading  The same figure was read again just now.
 *
 * @typedef {{sheet: string, version: number, name: string, entries: Entered[], r_at?: Entered[][]}} Sheet
 *   A foam or kit sheet of the catalogue: as in a job, without the job's ids.
 *
 * @typedef {EntryChange | EntriesChange | TextChange | NameChange | UnitsChange | AddSurface | Remove | DuplicateSurface |
 *   MoveSurface | ShapeChange | DeductChange | AddOpening | DepthWayChange | AimChange | FoamChoice | AddFoam | AddKit |
 *   RenewSheet | SheetKept | AddRRow | PurchaseChange | PurchaseReason | PurchaseClear | AddReading |
 *   TakeReading | AddWarming | MovedChange | MovedBackChange | AddWarmReading | AddForecast | OffsetChange | KeepRound | AddPatch | AddLeg | AddLayers | MoveLayer | AddOwned | AddEvent} Change
 */

/** Shapes with framing, which is taken out unless somebody says otherwise. @type {Set<import('./core.js').Shape>} */
const FRAMED = new Set(['framed_wall', 'framed_floor', 'framed_slope', 'rim_run', 'pitched_plane', 'gable', 'hip_roof']);

/**
 * The job after a change. A change that finds nothing to change returns the same job.
 * @param {Job} job
 * @param {Change} change
 * @returns {Job}
 */
export function apply(job, change) {
  switch (change.do) {
    case 'entry': return entry(job, change);
    case 'entries': return change.entries.reduce((all, one) => entry(all, { ...one, do: 'entry', part: change.part, id: change.id }), job);
    case 'text': return { ...job, [change.field]: change.text };
    case 'name': return at(job, change.part, change.id, (thing) => ({ ...thing, name: change.name }));
    case 'units': return units(job, change);
    case 'add_surface': return add(job, 'surfaces', (id) => ({
      id, name: change.name ?? '', shape: change.shape, entries: change.entries ?? [], openings: [], patches: [], legs: [], depth_way: change.depth_way ?? 'typed',
      deduct_framing: FRAMED.has(change.shape), depth_kit: 0, foam: 0,
    }));
    case 'remove': return remove(job, change.part, change.id);
    case 'duplicate_surface': return duplicate(job, change);
    case 'move_surface': {
      const surfaces = moved(job.surfaces, change.id, change.by);
      return surfaces === job.surfaces ? job : { ...job, surfaces };
    }
    case 'move_layer': {
      const before = find(job, 'surface', change.surface)?.layers ?? [];
      const layers = moved(before, change.id, change.by);
      return layers === before ? job : at(job, 'surface', change.surface, (surface) => ({ ...surface, layers }));
    }
    case 'shape': return at(job, 'surface', change.id, (surface) => ({
      ...surface, shape: change.shape, deduct_framing: surface.deduct_framing || FRAMED.has(change.shape),
    }));
    case 'deduct': return at(job, 'surface', change.id, (surface) => ({ ...surface, deduct_framing: change.on }));
    case 'add_opening': return within(job, 'surface', change.surface, (surface, id) => ({
      ...surface, openings: [...surface.openings, { id, name: change.name ?? '', entries: [] }],
    }), 1);
    case 'add_patch': return within(job, 'surface', change.surface, (surface, id) => ({
      ...surface, patches: [...surface.patches, { id, name: change.name ?? '', entries: [] }],
    }), 1);
    case 'add_leg': return within(job, 'surface', change.surface, (surface, id) => ({
      ...surface, legs: [...(surface.legs ?? []), { id, entries: [] }],
    }), 1);
    case 'add_layers': return within(job, 'surface', change.surface, (surface, id) => ({
      ...surface, layers: [...(surface.layers ?? []), ...change.layers.map((one, more) => ({
        id: id + more, name: '', entries: Object.entries(one).map(([field, text]) => ({ field, text })),
      }))],
    }), change.layers.length);
    case 'depth_way': return at(job, 'surface', change.id, (surface) => ({
      ...surface, depth_way: change.way, depth_kit: change.kit ?? (surface.depth_kit || job.kits[0]?.id || 0),
    }));
    case 'aim': return entry(at(job, 'surface', change.id, (surface) => ({ ...surface, depth_way: 'typed' })), { do: 'entry', part: 'surface', id: change.id, field: 'depth', text: change.text });
    case 'foam': return change.id === 0 ? { ...job, foam: change.foam }
      : at(job, 'surface', change.id, (surface) => ({ ...surface, foam: change.foam }));
    case 'add_foam': {
      const foam = job.next_id;
      const next = add(job, 'foams', (id) => foamSheet(id, change.sheet, change.name), 1 + (change.sheet?.r_at?.length ?? 0));
      return job.foams.some((one) => one.id === job.foam) ? next : { ...next, foam };
    }
    case 'add_kit': return add(job, 'kits', (id) => kitSheet(id, change.sheet, change.name));
    case 'add_owned': return add(job, 'stock', (id) => kitSheet(id, change.sheet, change.name));
    case 'renew_sheet': return renew(job, change);
    case 'sheet_kept': return at(job, change.part, change.id, (thing) => ({
      ...thing, sheet: change.sheet, version: change.version,
    }));
    case 'add_r_row': return within(job, 'foam', change.foam, (foam, id) => ({
      ...foam, r_at: [...foam.r_at, { id, entries: [] }],
    }), 1);
    case 'purchase': return { ...job, purchase: { buy: change.buy.filter((one) => one.count > 0), reason: job.purchase?.reason ?? '' } };
    case 'purchase_reason': return job.purchase ? { ...job, purchase: { ...job.purchase, reason: change.reason } } : job;
    case 'purchase_clear': return without(job, 'purchase');
    case 'add_reading': return add(job, 'readings', (id) => ({ id, of: change.of, name: change.name ?? '', entries: [] }));
    case 'add_event': return add(job, 'events', (id) => ({
      id, what: change.what, at: change.now, key: change.key ?? '', surface: change.surface ?? 0, lift: change.lift ?? 0,
      name: change.name ?? '', entries: change.entries ?? [],
    }));
    case 'add_warming': return add(job, 'warming', (id) => ({ id, name: change.name ?? '', entries: change.entries ?? [], log: [] }));
    case 'moved': return at(job, 'warming', change.id, (group) => {
      const key = change.way === 'in' ? 'moved_in' : 'moved_out';
      return change.now ? { ...group, [key]: change.now } : without(group, key);
    });
    case 'moved_back': return at(job, 'warming', change.id, (group) => ({ ...without(group, 'moved_out'), moved_in: change.now, entries: group.entries.filter((/** @type {Entered} */ one) => one.field !== 'start') }));
    case 'add_warm_reading': return within(job, 'warming', change.warming, (group, id) => ({
      ...group, log: [...group.log, { id, entries: [], taken: change.now }],
    }), 1);
    case 'add_forecast': return add(job, 'forecast', (id) => ({ id, entries: change.entries ?? [], ...change.offset_min !== undefined && { offset_min: change.offset_min } }));
    case 'offset': return at(job, 'forecast', change.id, (day) => ({ ...day, offset_min: change.offset_min }));
    case 'keep_round': return keepRound(job);
    case 'take': return at(job, 'reading', change.id, (reading) => ({ ...reading, taken: change.now }));
    default: return job;
  }
}

/**
 * Changes with the same key, one after the other, are one step of undo: a field while it is typed into.
 * @param {Change} change
 * @returns {string} empty where each change is a step of its own
 */
export function mergeKey(change) {
  switch (change.do) {
    case 'entry': return change.sense ? '' : `${change.part}-${change.id}-${change.field}`;
    case 'offset': return `forecast-${change.id}-date`;
    case 'text': return `job-${change.field}`;
    case 'name': return `${change.part}-${change.id}-name`;
    case 'aim': return `aim-${change.id}-${change.run}`;
    case 'purchase_reason': return 'purchase-0-reason';
    default: return '';
  }
}

/**
 * The entry of a field of a listed thing, if there is one.
 * @param {Job} job
 * @param {Part} part
 * @param {number} id
 * @param {string} field
 * @returns {Entered | undefined}
 */
export function entryOf(job, part, id, field) {
  return find(job, part, id)?.entries.find((/** @type {Entered} */ one) => one.field === field);
}

const LISTS = /** @type {const} */ ({ surface: 'surfaces', foam: 'foams', kit: 'kits', owned: 'stock', reading: 'readings', warming: 'warming', forecast: 'forecast', event: 'events' });
const INNER = /** @type {const} */ ({ opening: ['surfaces', 'openings'], patch: ['surfaces', 'patches'], leg: ['surfaces', 'legs'], layer: ['surfaces', 'layers'], r_row: ['foams', 'r_at'], warm_reading: ['warming', 'log'] });

/**
 * The listed thing with this id; the job itself for the part `job`.
 * @param {Job} job
 * @param {Part} part
 * @param {number} id
 * @returns {any}
 */
export function find(job, part, id) {
  if (part === 'job') return job;
  if (part in LISTS) return list(job, LISTS[/** @type {keyof typeof LISTS} */ (part)]).find((one) => one.id === id);
  if (part in INNER) {
    const [outer, inner] = INNER[/** @type {keyof typeof INNER} */ (part)];
    for (const one of list(job, outer)) {
      const found = one[inner]?.find((/** @type {{id: number}} */ thing) => thing.id === id);
      if (found) return found;
    }
  }
  return undefined;
}

/** @param {Job} job @param {ListName} name @returns {any[]} */
function list(job, name) {
  return job[name] ?? [];
}

/** @param {Job} job @param {ListName} name @param {(id: number) => any} make @param {number} [ids] @returns {Job} */
function add(job, name, make, ids = 1) {
  return { ...job, next_id: job.next_id + ids, [name]: [...list(job, name), make(job.next_id)] };
}

/** Replaces one listed thing. @param {Job} job @param {Part} part @param {number} id @param {(thing: any) => any} make @returns {Job} */
function at(job, part, id, make) {
  if (part === 'job') return make(job);
  if (part in LISTS) {
    const name = LISTS[/** @type {keyof typeof LISTS} */ (part)];
    const next = swap(list(job, name), id, make);
    return next === list(job, name) ? job : { ...job, [name]: next };
  }
  if (part in INNER) {
    const [outer, inner] = INNER[/** @type {keyof typeof INNER} */ (part)];
    for (const one of list(job, outer)) {
      const next = swap(one[inner] ?? [], id, make);
      if (one[inner] && next !== one[inner]) return { ...job, [outer]: swap(list(job, outer), one.id, (thing) => ({ ...thing, [inner]: next })) };
    }
  }
  return job;
}

/** Like `at`, for what is given new ids inside. @param {Job} job @param {Part} part @param {number} id @param {(thing: any, next: number) => any} make @param {number} ids @returns {Job} */
function within(job, part, id, make, ids) {
  const next = at(job, part, id, (thing) => make(thing, job.next_id));
  return next === job ? job : { ...next, next_id: job.next_id + ids };
}

/** @param {any[]} things @param {number} id @param {(thing: any) => any} make */
function swap(things, id, make) {
  const index = things.findIndex((one) => one.id === id);
  return index < 0 ? things : things.map((one, i) => (i === index ? make(one) : one));
}

/** @param {Job} job @param {EntryChange} change @returns {Job} */
function entry(job, change) {
  return at(job, change.part, change.id, (thing) => {
    /** @type {Entered[]} */
    const before = thing.entries;
    /** @type {Entered} */
    const typed = { field: change.field, text: change.text };
    if (change.unit) typed.unit = change.unit;
    if (change.sense) typed.sense = change.sense;
    const blank = change.text.trim() === '';
    const known = before.some((one) => one.field === change.field);
    const entries = blank ? before.filter((one) => one.field !== change.field)
      : known ? before.map((one) => (one.field === change.field ? typed : one))
        : [...before, typed];
    const next = { ...thing, entries };
    if (change.part !== 'reading' || !change.now) return next;
    return blank ? without(next, 'taken') : { ...next, taken: change.now };
  });
}

/** @param {Job} job @param {UnitsChange} change @returns {Job} */
function units(job, { units: to, unitOf }) {
  if (to === job.units) return job;
  /** @param {Part} part @param {any} thing */
  const fix = (part, thing) => ({
    ...thing,
    entries: thing.entries.map((/** @type {Entered} */ one) => {
      const unit = one.unit ?? unitOf?.(part, one.field, job.units);
      return unit ? { ...one, unit } : one;
    }),
  });
  return {
    ...fix('job', job), units: to,
    surfaces: job.surfaces.map((one) => ({ ...fix('surface', one), openings: one.openings.map((hole) => fix('opening', hole)), patches: one.patches.map((patch) => fix('patch', patch)), ...one.legs && { legs: one.legs.map((leg) => fix('leg', leg)) }, ...one.layers && { layers: one.layers.map((layer) => fix('layer', layer)) } })),
    foams: job.foams.map((one) => ({ ...fix('foam', one), r_at: one.r_at.map((row) => fix('r_row', row)) })),
    kits: job.kits.map((one) => fix('kit', one)),
    stock: job.stock.map((one) => fix('owned', one)),
    readings: job.readings.map((one) => fix('reading', one)),
    ...job.rounds && { rounds: job.rounds.map((one) => fix('reading', one)) },
    ...job.warming && { warming: job.warming.map((one) => ({ ...fix('warming', one), log: (one.log ?? []).map((read) => fix('warm_reading', read)) })) },
    ...job.forecast && { forecast: job.forecast.map((one) => fix('forecast', one)) },
    events: job.events.map((one) => fix('event', one)),
  };
}

/** @param {Job} job @param {Part} part @param {number} id @returns {Job} */
function remove(job, part, id) {
  const gone = (/** @type {any[]} */ things) => things.filter((one) => one.id !== id);
  switch (part) {
    case 'surface': return { ...job, surfaces: gone(job.surfaces) };
    case 'reading': return { ...job, readings: gone(job.readings), ...job.rounds && { rounds: gone(job.rounds) } };
    case 'warming': return { ...job, warming: gone(job.warming ?? []) };
    case 'warm_reading': return { ...job, warming: (job.warming ?? []).map((one) => ({ ...one, log: gone(one.log ?? []) })) };
    case 'forecast': return { ...job, forecast: gone(job.forecast ?? []) };
    case 'owned': return { ...job, stock: gone(job.stock) };
    case 'event': return { ...job, events: gone(job.events) };
    case 'opening': return { ...job, surfaces: job.surfaces.map((one) => ({ ...one, openings: gone(one.openings) })) };
    case 'patch': return { ...job, surfaces: job.surfaces.map((one) => ({ ...one, patches: gone(one.patches) })) };
    case 'leg': return { ...job, surfaces: job.surfaces.map((one) => ({ ...one, legs: gone(one.legs ?? []) })) };
    case 'layer': return { ...job, surfaces: job.surfaces.map((one) => ({ ...one, layers: gone(one.layers ?? []) })) };
    case 'r_row': return { ...job, foams: job.foams.map((one) => ({ ...one, r_at: gone(one.r_at) })) };
    case 'foam': {
      const foams = gone(job.foams);
      return {
        ...job, foams, foam: job.foam === id ? foams[0]?.id ?? 0 : job.foam,
        surfaces: job.surfaces.map((one) => (one.foam === id ? { ...one, foam: 0 } : one)),
      };
    }
    case 'kit': {
      const kits = gone(job.kits);
      const next = {
        ...job, kits,
        surfaces: job.surfaces.map((one) => (one.depth_kit === id ? { ...one, depth_kit: kits[0]?.id ?? 0 } : one)),
      };
      if (!next.purchase) return next;
      const buy = next.purchase.buy.filter((one) => one.kit !== id);
      return buy.length ? { ...next, purchase: { ...next.purchase, buy } } : without(next, 'purchase');
    }
    default: return job;
  }
}

/** What was read goes to the earlier rounds with ids of its own; the readings stay listed, blank. @param {Job} job @returns {Job} */
function keepRound(job) {
  const read = job.readings.filter((one) => one.taken && one.entries.length);
  if (!read.length) return job;
  const blank = new Set(['temperature', 'humidity', 'moisture', 'wind']);
  return {
    ...job, next_id: job.next_id + read.length,
    rounds: [...(job.rounds ?? []), ...read.map((one, more) => ({ ...one, id: job.next_id + more }))],
    readings: job.readings.map((one) => (read.includes(one) ? without({ ...one, entries: one.entries.filter((each) => !blank.has(each.field)) }, 'taken') : one)),
  };
}

/** @param {Job} job @param {DuplicateSurface} change @returns {Job} */
function duplicate(job, change) {
  const index = job.surfaces.findIndex((one) => one.id === change.id);
  const from = job.surfaces[index];
  if (!from) return job;
  let next_id = job.next_id;
  const copy = { ...from, id: next_id++, name: change.name ?? from.name, openings: from.openings.map((one) => ({ ...one, id: next_id++ })), patches: from.patches.map((one) => ({ ...one, id: next_id++ })), ...from.legs && { legs: from.legs.map((one) => ({ ...one, id: next_id++ })) }, ...from.layers && { layers: from.layers.map((one) => ({ ...one, id: next_id++ })) } };
  return { ...job, next_id, surfaces: [...job.surfaces.slice(0, index + 1), copy, ...job.surfaces.slice(index + 1)] };
}

/** @template {{id: number}} T @param {T[]} things @param {number} id @param {number} by @returns {T[]} the same list where nothing moves */
function moved(things, id, by) {
  const from = things.findIndex((one) => one.id === id);
  const to = Math.max(0, Math.min(things.length - 1, from + by));
  if (from < 0 || from === to) return things;
  const next = things.slice();
  next.splice(to, 0, ...next.splice(from, 1));
  return next;
}

/** @param {number} id @param {Sheet} [sheet] @param {string} [name] @returns {FoamSheet} */
function foamSheet(id, sheet, name) {
  return {
    id, sheet: sheet?.sheet ?? '', version: sheet?.version ?? 0, name: sheet?.name ?? name ?? '',
    entries: sheet?.entries ?? [], r_at: (sheet?.r_at ?? []).map((entries, i) => ({ id: id + 1 + i, entries })),
  };
}

/** @param {number} id @param {Sheet} [sheet] @param {string} [name] @returns {KitSheet} */
function kitSheet(id, sheet, name) {
  return {
    id, sheet: sheet?.sheet ?? '', version: sheet?.version ?? 0, name: sheet?.name ?? name ?? '',
    entries: sheet?.entries ?? [],
  };
}

/** @param {Job} job @param {RenewSheet} change @returns {Job} */
function renew(job, { part, id, sheet }) {
  if (part === 'foam') {
    return within(job, 'foam', id, (_, next) => ({ ...foamSheet(next - 1, sheet), id }), sheet.r_at?.length ?? 0);
  }
  return at(job, part, id, (kit) => ({
    ...kit, sheet: sheet.sheet, version: sheet.version, name: sheet.name, entries: sheet.entries,
  }));
}

/** @template {object} T @param {T} thing @param {keyof T} key @returns {T} */
function without(thing, key) {
  const next = { ...thing };
  delete next[key];
  return next;
}
