// @ts-check
/** Every date of the job, and a press that writes them for the phone's own calendar. */
import { now } from './calls.js';
import { calendarFile, overdue, said, split, when, withdrawn } from './dates.js';
import { field, fieldId } from './field.js';
import { download, fileName } from './files.js';
import { el, say } from './list.js';
import { mark } from './marks.js';
import { head, more, note, press, pressRow, redraw, to } from './parts.js';
import { jobName } from './sheet.js';
import { wallOf } from './wallclock.js';
import { t } from './words.js';

export const words = ['sheet', 'calendar'];

/** Where a date is made. @type {Record<import('./core.js').DateOf, (one: import('./core.js').Dated) => string>} */
const WAYS = {
  warm_up: () => to('warm'), ready: () => to('warm'), spray: () => to('day'), reentry_workers: () => to('people'), reentry: () => to('people'), cured: () => to('day'),
  purge: (one) => to('owned', one.id), opened_ends: (one) => to('owned', one.id), shelf_life: (one) => to('owned', one.id), certificate: () => to('paper', 'inspector'),
};

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const ahead = el('div');
  const behind = el('ul', 'rows');
  const behindPart = el('details', 'more no-print', el('summary', '', t('calendar.behind')), behind);
  const fields = ['spray_date', 'spray_time', 'certificate_due'].map((one) => field({ store, part: 'job', id: 0, field: one, source: true }));
  for (const one of fields) one.node.classList.add('wide');
  const entries = /** @type {HTMLDetailsElement} */ (more(t('calendar.said'), ...fields.map((one) => one.node)));
  const button = press(t('calendar.write'), 'write-ics', write);
  const missing = el('p', { class: 'tell', role: 'status' });
  root.append(el('main', '', top, el('div', 'pad tail', ahead, behindPart,
    el('div', 'dos', button), missing, el('p', 'note', t('calendar.write_note')),
    entries,
    note('watch', t('calendar.governs'), t('calendar.governs_do')))));

  /** Whether there is nothing for a file. */
  const nothing = () => !split(store.estimate?.calendar ?? [])[0].length && !withdrawn(store, now()).length;

  function write() {
    if (nothing()) {
      say(missing, t('calendar.write_none'));
      entries.open = true;
      document.getElementById(fieldId('job', 0, 'spray_date'))?.focus();
      return;
    }
    download(fileName(store.job, 'ics'), calendarFile(store, now()), 'text/calendar');
  }

  function update() {
    const all = store.estimate?.calendar ?? [];
    const [coming, gone] = split(all);
    const at = wallOf(now());
    redraw(top, [head({ back: [to('ahead'), t('calendar.to_ahead')], title: t('calendar.title'), sub: jobName(store) })]);
    /** @param {import('./core.js').Dated} one */
    const line = (one) => {
      const { what, why } = said(one);
      const late = overdue(one, all, at);
      return pressRow(WAYS[one.of](one), when(one), el('span', '', late && mark('hold'), el('b', '', what), late ? `. ${t('calendar.overdue')} ` : '. ', why), undefined);
    };
    const off = withdrawn(store, now());
    redraw(ahead, [...off.map((one) => note('hold', said(one).what, t('calendar.gone_do'))), coming.length ? el('ul', 'rows dates', ...coming.map(line)) : el('p', 'note top', t(all.length ? 'calendar.none_ahead' : 'calendar.none'))]);
    redraw(behind, gone.map(line));
    behindPart.hidden = !gone.length;
    button.classList.toggle('yet', nothing());
    if (!nothing()) say(missing, '');
    for (const one of fields) one.update();
  }

  return { title: t('calendar.title'), update };
}
