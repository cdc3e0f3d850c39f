// @ts-check
/**
 * What only stands where the host wants it, for visitors who spray themselves: whether it may be sprayed now, and
 * passes with their waits. Both in short: readings are taken and the day is led in the full tool.
 *
 * @typedef {import('../store.js').Store} Store
 */
import { VERDICT } from '../answer.js';
import { checkName } from '../drawn.js';
import { figures } from '../figures.js';
import { el } from '../list.js';
import { mark } from '../marks.js';
import { nameOf } from '../named.js';
import { byId, caution, press, redraw, row, worked } from '../parts.js';
import { span, t } from '../words.js';

/** The pages of words that this needs. */
export const words = ['ready', 'spraying', 'sheet'];

/** The full tool: this module lies in a folder of the hashed folder, and that one in the site's root. */
const TOOL = new URL('../../index.html', import.meta.url).href;
/** What is told before anything else. */
const SAFE = ['protect', 'air', 'burn', 'out', 'cylinder'];

/** Opens what takes the estimate into the full tool. */
function openTake() {
  const fold = /** @type {HTMLDetailsElement | null} */ (document.querySelector('details.take'));
  if (!fold) return;
  fold.open = true;
  fold.querySelector('summary')?.focus();
}

/** @param {Store} store @param {import('./settings.js').Settings} settings */
export function sprayersPart(store, settings) {
  const ready = el('div');
  const spray = el('div');
  const node = el('section', 'sprayers', el('div', 'says top', ...SAFE.map((one) => caution(`spraying.${one}`))), ready, spray);

  function verdict() {
    const found = store.estimate?.readiness;
    if (!found) return [];
    const word = VERDICT[found.verdict];
    const lacks = found.checks.filter((one) => one.state === 'not_read' || one.state === 'old').map(checkName);
    return [el('h2', 'bar', t('sheet.ready')),
      el('p', `verdict-word long w-${word}`, mark(word), el('b', '', t(`ready.verdict_${found.verdict}`))),
      lacks.length ? el('p', 'note', t('embed.ready_lacks', { list: lacks.join(' · ') })) : undefined,
      el('div', 'dos no-print', settings.sections.has('take') ? press(t('embed.ready_full'), 'readings', openTake)
        : el('a', { class: 'do line wide', href: TOOL, target: '_blank', rel: 'noopener' }, t('embed.ready_full'), el('span', 'vh', ` (${t('embed.new_tab')})`)))];
  }

  function passes() {
    const w = figures(store.job.units);
    const rows = (store.estimate?.surfaces ?? []).flatMap(({ id, lifts }) => {
      const surface = byId(store.job.surfaces, id);
      if (!surface || !lifts) return [];
      const wait = lifts.count > 1 && lifts.wait_min !== undefined ? t('spraying.bar_wait', { wait: span(lifts.wait_min) }) : '';
      return [row(nameOf(surface), t('spraying.bar', { n: lifts.count, each: w.depth(lifts.each_in) }) + wait, worked(w.count(lifts.count), 'surface', id, 'lifts.count'))];
    });
    return [el('h2', 'bar', t('spraying.title')), rows.length ? el('ul', 'rows', ...rows) : el('p', 'note', t('sheet.spray_none'))];
  }

  return {
    node,
    update() {
      redraw(ready, settings.sections.has('readiness') ? verdict() : []);
      redraw(spray, settings.sections.has('spraying') ? passes() : []);
    },
  };
}
