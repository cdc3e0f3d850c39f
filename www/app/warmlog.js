// @ts-check
/** What was read while a group warmed, and what it taught. */
import { now } from './calls.js';
import { field, fieldId } from './field.js';
import { el, list, say } from './list.js';
import { byId, press, redraw, row } from './parts.js';
import { wall, wallOf } from './wallclock.js';
import { number, span, t } from './words.js';

/** How much a liquid stirs itself before anybody read anything: the model's own range (`src/conditioning/`). */
const MODEL = { low: 1, high: 8 };

/** @param {import('./store.js').Store} store @param {number} id */
export function warmLog(store, id) {
  const list_ = el('ul', 'rows');
  const taught = el('ul', 'rows');
  const none = el('p', 'note', t('warm.log_none'));
  const hint = el('p', 'note');
  const presses = el('div', 'dos no-print');
  const node = el('div', 'group', el('h3', '', t('warm.log')), hint, list_, none, presses, taught);

  function add() {
    const reading = store.job.next_id;
    store.dispatch({ do: 'add_warm_reading', warming: id, now: now() });
    void store.settled().then(() => document.getElementById(fieldId('warm_reading', reading, 'skin'))?.focus());
  }

  /** @param {import('./job.js').WarmReading} reading */
  function entry(reading) {
    const fields = ['skin', 'liquid'].map((name) => field({ store, part: 'warm_reading', id: reading.id, field: name, quiet: true }));
    const when = el('p', 'note');
    const gone = el('button', { type: 'button', class: 'link no-print', click: () => store.dispatch({ do: 'remove', part: 'warm_reading', id: reading.id }) }, t('warm.log_remove'));
    return {
      node: el('li', 'tall', el('div', 'group-head', when, gone), el('div', 'fields', ...fields.map((one) => one.node))),
      update() {
        const group = byId(store.job.warming ?? [], id);
        const taken = byId(group?.log ?? [], reading.id)?.taken;
        const time = taken ? wall(wallOf(taken)) : '';
        const since = taken && group?.moved_in ? (taken.ms - group.moved_in.ms) / 60_000 : undefined;
        say(when, since === undefined || since < 0 ? time : t('warm.log_at', { time, span: span(since) }));
        gone.setAttribute('aria-label', `${t('warm.log_remove')}: ${t('warm.log_of', { time })}`);
        for (const one of fields) one.update();
      },
    };
  }

  return {
    node,
    update() {
      const group = byId(store.job.warming ?? [], id);
      const found = byId(store.estimate?.conditioning ?? [], id);
      if (!group) return;
      const log = group.log ?? [];
      none.hidden = log.length > 0;
      say(hint, t(group.moved_in ? 'warm.log_how' : 'warm.log_not_in'));
      list(list_, log, (one) => one.id, entry);
      redraw(presses, [group.moved_in && !group.moved_out ? press(t('warm.log_add'), `log-${id}`, add) : undefined]);
      const m = found?.circulation.m;
      const n = found?.circulation.readings ?? 0;
      const written = m && { low: number(m.low, 1), likely: number(m.likely, 1), high: number(m.high, 1) };
      redraw(taught, written ? [row(t('warm.m'), n ? t('warm.m_read', { n, low: written.low, high: written.high, was_low: MODEL.low, was_high: MODEL.high }) : t('warm.m_none', written), written.likely)] : []);
    },
  };
}
