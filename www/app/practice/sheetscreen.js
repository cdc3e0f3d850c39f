// @ts-check
/** A class sheet as students get it: its exercises with what was answered, their answers to save as a file, and a teacher's ways. */
import { download } from '../files.js';
import { el, say } from '../list.js';
import { hush, notify } from '../notices.js';
import { head, note, press, pressRow, redraw, to, way } from '../parts.js';
import { canShare, copy, share } from '../share.js';
import { currentLanguage, t } from '../words.js';
import { answersName, answersText } from './answerfile.js';
import { draft } from './draft.js';
import { entry, onProgress, openSheet, recent } from './kept.js';
import { begun } from './progressdoc.js';
import { linkOf, sorted } from './seeds.js';
import { levelName, score, titleOf, unitsHere } from './written.js';

/** @param {HTMLElement} root @param {import('./core.js').Practice} core @param {string[]} asked @returns {import('../view.js').View} */
export function mountSheet(root, core, asked) {
  const top = el('div');
  const list = el('ol', 'rows');
  const files = el('div', 'dos');
  const about = el('p', 'note');
  const link = el('textarea', { id: 'class-link', rows: 3, readonly: true, spellcheck: 'false', 'aria-label': t('practice.link') });
  const teachers = el('div', 'dos');
  root.append(el('main', 'practice', top, el('div', 'pad tail', list, files, about,
    el('details', 'more', el('summary', '', t('practice.for_teacher')), el('div', 'inside', el('p', 'note', t('practice.link_note')), el('div', 'field full', el('label', { for: 'class-link' }, t('practice.link')), el('span', 'box long', link)), teachers, el('p', 'note', t('practice.key_note')))))));
  const own = () => sorted(core, asked, unitsHere());
  const answers = (/** @type {string} */ seed) => entry(seed)?.steps ?? [];
  // Once, and not on every drawing: two tabs with two sheets would never come to rest.
  openSheet(own().exercises.map((one) => one.seed));

  /** The answer file of this sheet, as it stands now. */
  function fileText() {
    const seeds = own().exercises.map((one) => one.seed);
    return answersText({ units: unitsHere(), language: currentLanguage(), seeds, answers: seeds.flatMap((seed) => entry(seed) ?? []).filter((one) => one.steps.length), saved: Date.now() });
  }

  const nameNow = () => answersName(own().exercises.map((one) => one.seed));

  function save() {
    download(nameNow(), fileText());
    notify('answers', 'go', t('practice.saved', { name: nameNow() }), t('practice.saved_do'));
  }

  async function hand() {
    const file = new File([fileText()], nameNow(), { type: 'application/json' });
    // A device that does not pass such files on gets one to keep.
    if (await share({ title: t('practice.class'), file }) === 'refused') save();
  }

  async function copyLink() {
    hush('link');
    if (await copy(link.value)) return notify('link', 'go', t('practice.link_copied'), t('practice.link_holds'));
    notify('link', 'watch', t('practice.link_not_copied'), t('practice.link_by_hand'));
    link.focus();
    link.select();
  }

  function change() {
    draft.seeds = own().exercises.map((one) => one.seed);
    draft.levels = new Set(own().exercises.map((one) => one.level).filter((level) => level > 0));
  }

  /** @param {import('./core.js').Exercise} exercise @param {number} at */
  function row(exercise, at) {
    const { seed } = exercise;
    const given = answers(seed);
    const n = exercise.steps.filter((_, step) => given[step] && begun(given[step])).length;
    const marks = recent().find((one) => one.seed === seed)?.score;
    const state = n ? t('practice.answered', { n, of: exercise.steps.length }) : t('practice.not_begun');
    return pressRow(to('exercise', seed), t('practice.numbered', { n: at + 1, title: titleOf(exercise) }), t('practice.sheet_line', { level: levelName(exercise.level), state }), marks ? score(marks.points, marks.of) : '');
  }

  function update() {
    const { exercises, refused } = own();
    const seeds = exercises.map((one) => one.seed);
    const sheet = seeds.join(',');
    const steps = exercises.reduce((sum, one) => sum + one.steps.length, 0);
    const done = exercises.reduce((sum, one) => sum + answers(one.seed).filter((given, at) => at < one.steps.length && begun(given)).length, 0);
    redraw(top, [
      head({ back: [to('practice'), t('practice.title')], title: t('practice.class'), sub: exercises.length ? t('practice.class_sub', { n: exercises.length, steps }) : t('practice.class_none') }),
      refused.length ? el('div', 'pad says', ...refused.map(({ seed, why }) => note('watch', t('practice.left_out', { seed }), t(`practice.refused.${why}`)))) : undefined,
    ]);
    redraw(list, exercises.map(row));
    files.hidden = !exercises.length;
    redraw(files, [press(t('practice.save_answers'), 'save', save, 'wide'), canShare() && press(t('practice.share_answers'), 'share', () => void hand())]);
    say(about, exercises.length ? `${t('practice.answered_all', { n: done, of: steps })} ${t('practice.file_note')}` : '');
    link.value = linkOf(seeds, location.href);
    redraw(teachers, [press(t('practice.copy_link'), 'copy', () => void copyLink()), way(t('practice.print_sheet'), to('class', sheet, 'print')), way(t('practice.print_key'), to('class', sheet, 'key')),
      el('a', { class: 'do line wide', href: to('class'), click: change }, t('practice.change_class')), way(t('practice.mark_files'), to('marks'))]);
  }

  return { title: t('practice.class'), update, unmount: onProgress(() => update()) };
}
