// @ts-check
/** Foam that looks wrong: what to check first, what to cut out, when to stop. Pressing one puts it into the log. */
import { now } from './calls.js';
import { el } from './list.js';
import { note, press } from './parts.js';
import { t } from './words.js';

/** In the order in which they are met. */
export const FAULTS = ['soft', 'brittle', 'dark', 'smell', 'poor_rise', 'shrunk', 'lets_go', 'voids', 'one_side', 'hot'];

/** @param {import('./store.js').Store} store @param {() => boolean} fresh */
export function faultList(store, fresh) {
  const status = el('p', { class: 'note', role: 'status' });
  const node = el('section', 'pad', el('h2', 'bar', t('day.wrong')), note('watch', t('day.first'), t('day.first_do')), status,
    el('ul', 'rows faults', ...FAULTS.map((key) => el('li', 'tall', el('details', 'more', el('summary', '', el('b', '', t(`day.fault.${key}`))),
      key === 'hot' ? note('hold', t('day.fire'), t('day.fire_do')) : undefined,
      el('dl', '', ...['check', 'cut', 'stop'].flatMap((part) => [el('dt', '', t(`day.fault_${part}`)), el('dd', '', t(`day.fault.${key}_${part}`))])),
      el('div', 'dos no-print', press(t('day.log_fault'), `fault-${key}`, () => {
        if (!fresh()) return;
        store.dispatch({ do: 'add_event', what: 'fault', key, now: now() });
        status.textContent = t('day.logged', { what: t(`day.fault.${key}`) });
      })))))));
  return node;
}
