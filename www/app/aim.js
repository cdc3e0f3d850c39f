// @ts-check
/**
 * The aim on the ruler: a grip that is dragged with a finger or a mouse, and is a slider for the keyboard and for
 * whoever hears the page; and the stepper below the drawing. Each sets the same typed depth.
 */
import { call } from './calls.js';
import { depthAt, snapped } from './drawing/ruler.js';
import { figures } from './figures.js';
import { el } from './list.js';
import { byId, redraw, worked } from './parts.js';
import { line, s } from './svg.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store @typedef {import('./drawing/ruler.js').Scale} Scale */

/** One press of the stepper, a wide step, and the finest line of the ruler, in inches. */
const STEP = { us: { one: 1 / 8, wide: 1 / 2, fine: 1 / 16 }, metric: { one: 5 / 25.4, wide: 25 / 25.4, fine: 1 / 25.4 } };

/** Runs of changes, so that each is undone on its own. */
let runs = 0;

/**
 * @param {Store} store @param {number} id @param {() => void} settled  draws again when the grip is let go
 */
export function aimGrip(store, id, settled) {
  /** @type {{scale: Scale, height: number} | undefined} */
  let laid;
  /** Where the pointer took hold of the grip, off its middle. */
  let off = 0;
  let dragging = false;
  let run = 0;
  const step = () => STEP[store.job.units];
  const aim = () => (store.estimate && byId(store.estimate.surfaces, id)?.depth?.aim_in.likely) ?? 0;

  const grip = el('div', {
    class: 'grip no-print', role: 'slider', tabindex: 0, 'aria-orientation': 'vertical', 'data-key': 'grip',
    pointerdown: (/** @type {PointerEvent} */ event) => {
      if (event.button || !laid) return;
      event.preventDefault();
      grip.focus({ preventScroll: true });
      grip.setPointerCapture(event.pointerId);
      dragging = true;
      run = runs += 1;
      const box = grip.getBoundingClientRect();
      off = event.clientY - (box.top + box.bottom) / 2;
    },
    pointermove: (/** @type {PointerEvent} */ event) => {
      if (!dragging || !laid) return;
      const box = frame.getBoundingClientRect();
      const y = ((event.clientY - off - box.top) * laid.height) / (box.height || 1);
      const { one, fine } = step();
      set(depthAt(laid.scale, y), event.ctrlKey || event.altKey ? fine : one);
    },
    pointerup: () => letGo(),
    pointercancel: () => letGo(),
    lostpointercapture: () => letGo(),
    keydown: (/** @type {KeyboardEvent} */ event) => {
      const { one, wide, fine } = step();
      const by = event.ctrlKey || event.altKey ? fine : one;
      const most = Math.floor((laid?.scale.reach ?? 0) / one) * one;
      // A step leads to the next line of the ruler, from wherever the aim stands between two.
      const to = { ArrowUp: near(by, 1), ArrowRight: near(by, 1), ArrowDown: near(by, -1), ArrowLeft: near(by, -1), PageUp: aim() + wide, PageDown: aim() - wide, Home: one, End: most }[event.key];
      if (to === undefined) return;
      event.preventDefault();
      if (!event.repeat || !run) run = runs += 1;
      set(Math.min(to, Math.max(most, aim())), by);
    },
  }, s('svg', { viewBox: '0 0 32 32', 'aria-hidden': 'true' }, s('circle', { cx: 16, cy: 16, r: 15 }), line('', 'M10 11.5L16 5.5L22 11.5M10 20.5L16 26.5L22 20.5M9 16H23')));
  const frame = el('div', 'ruled');

  /** @param {number} by @param {1 | -1} sign */
  const near = (by, sign) => nextLine(aim(), by, sign);

  function letGo() {
    if (!dragging) return;
    dragging = false;
    settled();
  }

  /** @param {number} inches @param {number} by */
  function set(inches, by) {
    const text = call('write', 'length', snapped(inches, by), store.job.units === 'metric' ? 'metric' : 'inches');
    const now = byId(store.job.surfaces, id);
    if (!text || !now || (now.depth_way === 'typed' && now.entries.find((one) => one.field === 'depth')?.text === text)) return;
    store.dispatch({ do: 'aim', id, text, run });
  }

  return {
    node: frame,
    /** The scale that holds while the grip is dragged. */
    held: () => (dragging ? laid?.scale : undefined),
    /** @param {ReturnType<typeof import('./drawing/ruler.js').section>} drawn */
    update: (drawn) => {
      laid = drawn;
      const w = figures(store.job.units);
      const { one } = step();
      const at = aim();
      grip.setAttribute('aria-label', t('depth.stepper'));
      grip.setAttribute('aria-valuemin', String(round(one)));
      grip.setAttribute('aria-valuemax', String(round(Math.max(at, Math.floor(drawn.scale.reach / one) * one))));
      grip.setAttribute('aria-valuenow', String(round(at)));
      grip.setAttribute('aria-valuetext', w.depth(at));
      const [x, y] = drawn.grip;
      grip.style.left = `${round(x * 100)}%`;
      grip.style.top = `${round(y * 100)}%`;
      frame.firstElementChild === grip || !frame.firstElementChild ? frame.prepend(drawn.svg) : frame.replaceChild(drawn.svg, frame.firstElementChild);
      if (!grip.parentNode) frame.append(grip);
    },
  };
}

/** The next line of the ruler, upward or downward. @param {number} inches @param {number} by @param {1 | -1} sign */
export function nextLine(inches, by, sign) {
  const at = inches / by;
  const near = Math.round(at);
  return (Math.abs(at - near) < 0.02 ? near + sign : sign > 0 ? Math.ceil(at) : Math.floor(at)) * by;
}

/** @param {number} value */
const round = (value) => Math.round(value * 1000) / 1000;

/** The stepper. @param {Store} store @param {number} id */
export function aimStepper(store, id) {
  const node = el('div');
  /** @param {1 | -1} sign */
  function stepBy(sign) {
    const now = (store.estimate && byId(store.estimate.surfaces, id)?.depth?.aim_in.likely) ?? 0;
    const { one } = STEP[store.job.units];
    const text = call('write', 'length', snapped(nextLine(now, one, sign), one), store.job.units === 'metric' ? 'metric' : 'inches');
    if (text) store.dispatch({ do: 'aim', id, text, run: runs += 1 });
  }
  return {
    node,
    update: () => {
      const w = figures(store.job.units);
      const one = store.estimate && byId(store.estimate.surfaces, id);
      const step = w.metric ? '5' : '⅛';
      redraw(node, [el('div', { class: 'steps3', role: 'group', 'aria-label': t('depth.stepper') },
        el('button', { type: 'button', 'data-key': 'less', 'aria-label': t(w.metric ? 'depth.less_mm' : 'depth.less'), click: () => stepBy(-1) }, '−' + step),
        el('div', '', el('span', { role: 'status' }, one?.depth ? worked(w.depth(one.depth.aim_in.likely), 'surface', id, 'depth.aim_in') : '–'), el('small', '', one?.lifts ? t('depth.aim_in_passes', { n: one.lifts.count }) : t('depth.aim'))),
        el('button', { type: 'button', 'data-key': 'more', 'aria-label': t(w.metric ? 'depth.more_mm' : 'depth.more'), click: () => stepBy(1) }, '+' + step))]);
    },
  };
}
