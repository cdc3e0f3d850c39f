// @ts-check
/** Whether two documents say the same, in whatever order their keys stand; what is absent and null is the same nothing. @param {unknown} a @param {unknown} b @returns {boolean} */
export function same(a, b) {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b || Array.isArray(a) !== Array.isArray(b)) return false;
  const [one, two] = [/** @type {Record<string, unknown>} */ (a), /** @type {Record<string, unknown>} */ (b)];
  const keys = new Set([...Object.keys(one), ...Object.keys(two)]);
  return [...keys].every((key) => same(one[key] ?? null, two[key] ?? null));
}
