// @ts-check
/**
 * The job document as it stands within the page. A job file may leave out what has a default, and the types
 * of the core say so; the core fills that in when it opens a document, so here everything is there but what
 * is absent by nature.
 *
 * @typedef {'purchase' | 'unit' | 'sense' | 'taken' | 'moved_in' | 'moved_out'} Absent
 */

/**
 * @template T
 * @typedef {T extends (infer U)[] ? Whole<U>[] : T extends object
 *   ? {[K in Exclude<keyof T, Absent>]-?: Whole<NonNullable<T[K]>>} & {[K in Extract<keyof T, Absent>]?: Whole<NonNullable<T[K]>>}
 *   : T} Whole
 */

/**
 * @typedef {Whole<import('./core.js').Job>} Job
 * @typedef {Whole<import('./core.js').Surface>} Surface
 * @typedef {Whole<import('./core.js').Opening>} Opening
 * @typedef {Whole<import('./core.js').Patch>} Patch
 * @typedef {Whole<import('./core.js').Event>} Event
 * @typedef {Whole<import('./core.js').FoamSheet>} FoamSheet
 * @typedef {Whole<import('./core.js').RAtThickness>} RAtThickness
 * @typedef {Whole<import('./core.js').KitSheet>} KitSheet
 * @typedef {Whole<import('./core.js').SiteReading>} SiteReading
 * @typedef {Whole<import('./core.js').Warming>} Warming
 * @typedef {Whole<import('./core.js').WarmReading>} WarmReading
 * @typedef {Whole<import('./core.js').ChosenPurchase>} ChosenPurchase
 */

export {};
