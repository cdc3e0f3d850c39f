// @ts-check
/** A random id for a job or a tab. */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((one) => one.toString(16).padStart(2, '0')).join('');
}
