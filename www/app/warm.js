// @ts-check
/** Warm-up: when kits have to be indoors, when they are ready, and how long they stay so outside. */
import { answerBar } from './answer.js';
import { field, fieldId } from './field.js';
import { el, list, say } from './list.js';
import { caution, head, note, press, redraw, src, to } from './parts.js';
import { jobName } from './sheet.js';
import { passed, secondsLeft, shown } from './timers.js';
import { wall } from './wallclock.js';
import { groupName, warmGroup } from './warmgroup.js';
import { instants } from './warmout.js';
import { before, dayTime, leftEarly, sprayAt } from './warmwords.js';
import { t } from './words.js';

export const words = ['sheet', 'ready', 'warm'];

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store) {
  const top = el('div');
  const when = ['spray_date', 'spray_time'].map((name) => field({ store, part: 'job', id: 0, field: name, quiet: true }));
  const counts = el('p', 'note');
  const spray = el('div', '', el('h2', 'bar', t('warm.spray')), el('div', 'fields warm-spray', ...when.map((one) => one.node)), counts);
  const groups = el('div');
  const first = el('div', 'pad');
  const begin = el('div', 'pad');
  const live = el('p', { class: 'vh', role: 'status' });
  const bar = answerBar();
  root.append(el('main', 'warm', top, groups, begin, first,
    el('div', 'pad tail', el('h2', 'bar', t('ready.before')), el('div', 'says', caution('ready.hot_kits'), caution('ready.flames')), src(t('sources.conditioning')), src(t('sources.warm_estimate')), el('p', 'note', t('warm.caption_plan'))), live), bar.node);

  function add() {
    const id = store.job.next_id;
    store.dispatch({ do: 'add_warming' });
    void store.settled().then(() => document.getElementById(fieldId('warming', id, 'start'))?.focus());
  }

  function update() {
    bar.update(store);
    redraw(top, [head({ back: [to('sheet', 'ready'), jobName(store)], title: t('warm.title'), sub: t('warm.lead') })]);
    for (const one of when) one.update();
    const at = sprayAt(store);
    say(counts, at === undefined ? t('warm.counts_none') : t('warm.counts', { time: wall(at) }));
    const all = store.job.warming ?? [];
    list(groups, all, (one) => one.id, (one) => warmGroup(store, one.id, root));
    // The answer comes first: what it counts back from stands below the first group's figures.
    const place = groups.querySelector('.warm-slot') ?? first;
    if (spray.parentNode !== place) place.append(spray);
    redraw(begin, [all.length ? undefined : note('none', t('warm.empty'), t('warm.empty_do')),
      el('div', 'dos no-print', press(t(all.length ? 'warm.add' : 'warm.begin'), 'begin', add, all.length ? 'line wide' : 'wide big'))]);
  }

  let ticked = Date.now();
  function tick() {
    if (document.hidden || !store.estimate) return;
    const at = Date.now();
    for (const node of root.querySelectorAll('[data-until]')) say(node, shown(secondsLeft(Number(node.getAttribute('data-until')), at)));
    for (const group of store.job.warming ?? []) {
      const { id, moved_in, moved_out } = group;
      const name = groupName(store, id);
      const { starts, spent, use_by } = instants(store, id);
      const up = store.estimate.conditioning.find((one) => one.id === id)?.warm_up;
      const ready = up?.ready_at;
      const early = leftEarly(up, group);
      const readyAt = ready === undefined || !moved_in || moved_out ? undefined : (ready - moved_in.offset_min) * 60_000;
      const over = (/** @type {number | undefined} */ one) => one !== undefined && passed([one], ticked, at);
      if (early) continue;
      if (over(spent)) say(live, t('warm.say.past', { name }));
      else if (over(starts)) say(live, t('warm.say.cooling', { name, time: use_by === undefined ? '' : dayTime(before(use_by)) }));
      else if (over(readyAt)) say(live, t('warm.say.ready', { name }));
      else continue;
      store.refresh();
    }
    ticked = at;
  }
  const clockwork = setInterval(tick, 1000);

  return {
    title: t('warm.title'),
    update,
    unmount() {
      clearInterval(clockwork);
      list(groups, [], () => 0, () => ({ node: groups }));
    },
  };
}
