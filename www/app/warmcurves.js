// @ts-check
/**
 * The curves of one group, made while nothing is typed. They are worked out in the browser's idle time, once for each
 * set of inputs; what was made for other inputs is never handed out.
 */
import { call, now, ready } from './calls.js';

/** @typedef {import('./core.js').WarmCurves} WarmCurves */
/** @typedef {import('./store.js').Store} Store */

/** When the browser has nothing else to do; soon, where it cannot say. @type {(run: () => void) => number} */
const idle = typeof requestIdleCallback === 'function' ? (run) => requestIdleCallback(run, { timeout: 400 }) : (run) => Number(setTimeout(run, 50));
/** @type {(handle: number) => void} */
const drop = typeof cancelIdleCallback === 'function' ? (handle) => cancelIdleCallback(handle) : (handle) => clearTimeout(handle);

/** What the curves of a group follow from. @param {import('./job.js').Job} job @param {number} id */
export const inputs = (job, id) => JSON.stringify([job.warming?.find((one) => one.id === id), job.entries, job.foams, job.kits, job.foam, job.surfaces.map((one) => one.foam)]);

/**
 * @param {Store} store @param {number} id @param {() => void} made called when there is something new to draw
 * @param {{idle: (run: () => void) => number, drop: (handle: number) => void, make: () => WarmCurves | undefined, ready: () => boolean}} [by]
 */
export function warmCurves(store, id, made, by = { idle, drop, make: () => call('warm_curves', store.job, now(), id), ready }) {
  let key = '';
  /** @type {WarmCurves | null} */
  let curves = null;
  let waiting = 0;
  let trapped = '';

  return {
    /** The curves of the job as it stands; `null` where there are none to draw, nothing where they are yet to be made: then they are asked for. @returns {WarmCurves | null | undefined} */
    latest() {
      if (key === inputs(store.job, id)) return curves;
      if (!waiting) {
        waiting = by.idle(() => {
          waiting = 0;
          key = inputs(store.job, id);
          curves = by.make() ?? null;
          // After a trap they are asked for once more, when the page is brought up to date by a fresh core.
          if (!curves && !by.ready() && trapped !== key) [trapped, key] = [key, ''];
          else made();
        });
      }
      return undefined;
    },
    stop() {
      if (waiting) by.drop(waiting);
      waiting = 0;
    },
  };
}
