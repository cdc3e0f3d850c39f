// @ts-check
/** The class sheet that a teacher is putting together; held while the page is open. */

export const draft = {
  levels: /** @type {Set<number>} */ (new Set([1])),
  topics: /** @type {Set<string>} */ (new Set()),
  count: '6',
  seeds: /** @type {string[]} */ ([]),
};
