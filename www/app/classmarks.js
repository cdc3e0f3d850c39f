// @ts-check
/** A teacher's answer files, marked on this device: points, the mistakes that came most, every answer with its mark. */
import { download, MOST_BYTES } from './files.js';
import { el } from './list.js';
import { mark } from './marks.js';
import { notify } from './notices.js';
import { head, note, press, redraw, row, table, to } from './parts.js';
import { readAnswers } from './practice/answerfile.js';
import { practice } from './practice/core.js';
import { columns, marksOf, markWords, meanShare, pointsCsv, slipCounts, stepsCsv, unmarked } from './practice/marking.js';
import { score, slipName, stepName, titleOf, typedText } from './practice/written.js';
import { locale, t } from './words.js';

/** @typedef {import('./practice/marking.js').Student} Student */
/** @typedef {import('./practice/marking.js').Part} Part */

export const words = ['practice', 'exercises'];

/** @type {import('./practice/core.js').Practice} */
let core;

export async function ready() {
  core = await practice();
}

const MOST_FILES = 300;

/** What was opened; nothing of it is kept. @type {{name: string, text: string, student: Student}[]} */
let opened = [];
/** @type {{name: string, why: string, at: string, version: number}[]} */
let bad = [];
/** What is being read. @type {Promise<void>} */
let reading = Promise.resolve();
/** How many drops wait for it. */
let waiting = 0;

/** @type {import('./view.js').Screen['mount']} */
export function mount(root) {
  const input = el('input', {
    type: 'file', id: 'answer-files', accept: '.json,application/json', multiple: true, class: 'vh', 'aria-label': t('practice.open_files'),
    change: () => {
      const files = [...input.files ?? []];
      input.value = '';
      void take(files);
    },
  });
  const said = el('div', { class: 'says', role: 'status' });
  const out = el('div');
  // A file that is dropped here is a student's, and no job.
  const drop = (/** @type {DragEvent} */ event) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.stopPropagation();
    if (event.type === 'drop') void take([...event.dataTransfer.files]);
  };
  root.append(el('main', { class: 'practice marking', dragover: drop, drop },
    head({ back: [to('practice'), t('practice.title')], title: t('practice.marks'), sub: t('practice.marks_lead') }),
    el('div', 'pad tail', el('div', 'dos no-print', el('span', 'file-press', input, el('label', { class: 'do wide', for: 'answer-files' }, t('practice.open_files')))),
      el('p', 'note no-print', t('practice.files_note')), said, out)));
  let gone = false;
  /** @type {Student[] | undefined} */
  let drawn;

  /** Files that come while others are being read wait for those. @param {File[]} files @returns {Promise<void>} */
  function take(files) {
    // What was wrong with those is said together with what is wrong with these.
    if (!waiting) bad = [];
    waiting += 1;
    reading = reading.catch(() => undefined).then(() => read(files)).finally(() => { waiting -= 1; });
    return reading;
  }

  /** @param {File[]} files */
  async function read(files) {
    // Each is judged on its own: a bad one keeps none of the others out.
    for (const file of files.slice(0, MOST_FILES)) await judge(file);
    if (files.length > MOST_FILES) bad.push({ name: files[MOST_FILES].name, why: 'many_files', at: '', version: MOST_FILES });
    opened.sort((a, b) => a.name.localeCompare(b.name, locale(), { numeric: true }));
    if (!gone) update();
  }

  /** @param {File} file */
  async function judge(file) {
    const refuse = (/** @type {string} */ why, at = '', version = 0) => bad.push({ name: file.name, why, at, version });
    if (file.size > MOST_BYTES) return refuse('too_long');
    let text;
    try {
      text = await file.text();
    } catch {
      return refuse('unreadable');
    }
    if (opened.some((one) => one.name === file.name && one.text === text)) return refuse('open_already');
    const judged = readAnswers(text);
    if ('refused' in judged) return refuse(judged.refused, judged.at, judged.version);
    opened.push({ name: file.name, text, student: marksOf(core, file.name, judged.file) });
  }

  function clear() {
    const before = opened;
    opened = [];
    bad = [];
    notify('marks', 'watch', t('practice.cleared'), '', { focus: true, presses: [[t('page.undo'), () => {
      opened = before;
      update();
    }]] });
    update();
  }

  /** @param {boolean} open */
  function unfold(open) {
    for (const one of out.querySelectorAll('details')) one.open = open;
  }

  function update() {
    redraw(said, bad.map(({ name, why, at, version }) => note('watch', t('practice.not_read', { name }), t(`practice.file.${why}`, { at, version }))));
    // What is folded open stays so while nothing else was opened.
    const state = opened.map((one) => one.student);
    if (drawn && state.length === drawn.length && state.every((one, at) => one === drawn?.[at])) return;
    drawn = state;
    const students = state;
    out.replaceChildren(...(students.length ? [
      el('h2', 'bar', t('practice.points_of', { n: students.length })), points(students), legend(students),
      el('h2', 'bar', t('practice.slips')), mistakes(students),
      el('div', 'dos no-print', press(t('practice.points_csv'), 'points', () => download(`${t('practice.file_points')}.csv`, pointsCsv(students), 'text/csv')),
        press(t('practice.steps_csv'), 'steps', () => download(`${t('practice.file_steps')}.csv`, stepsCsv(students), 'text/csv')),
        press(t('practice.print_marks'), 'print', () => window.print()), press(t('practice.clear'), 'clear', clear)),
      el('h2', 'bar', t('practice.each')),
      el('div', 'dos two no-print', press(t('practice.unfold'), 'unfold', () => unfold(true), 'line small'), press(t('practice.fold'), 'fold', () => unfold(false), 'line small')),
      el('div', 'folds', ...students.map(details)),
    ] : []));
  }

  return { title: t('practice.marks'), update, unmount: () => { gone = true; } };
}

/** @param {number[]} all */
const mean = (all) => all.reduce((sum, one) => sum + one, 0) / all.length;

/** @param {number | undefined} share */
const shareText = (share) => (share === undefined ? '–' : `${Math.round(100 * share)}\u00a0%`);

/** Points of so many, and how many exercises are in neither. @param {Pick<Student, 'points' | 'of' | 'parts'>} student */
function total(student) {
  const left = unmarked(student);
  return el('span', '', el('b', '', score(student.points, student.of)), ' ', left ? el('small', '', t('practice.unmarked', { n: left })) : undefined);
}

/** A line a file, a column an exercise. @param {Student[]} students */
function points(students) {
  const all = columns(students);
  return table(t('practice.points'), [t('practice.col_file'), t('practice.col_total'), ...all.map((_, at) => String(at + 1))], [
    ...students.map(({ name, parts, points: sum, of }) => ({ cells: [name, total({ points: sum, of, parts }), ...all.map(({ seed }) => {
      const one = parts.find((part) => part.seed === seed);
      return one?.marked ? score(one.marked.points) : '–';
    })] })),
    ...(students.length > 1 ? [{ kind: 'sum', cells: [t('practice.mean'), el('b', '', shareText(meanShare(students))), ...all.map(({ seed }) => {
      const marked = students.flatMap(({ parts }) => parts.find((part) => part.seed === seed)?.marked?.points ?? []);
      return marked.length ? score(mean(marked)) : '–';
    })] }] : []),
  ]);
}

/** Which exercise each column is. @param {Student[]} students */
const legend = (students) => el('ol', 'legend note', ...columns(students).map(({ seed, exercise }) => el('li', '', exercise ? t('practice.legend', { title: titleOf(exercise), seed, of: exercise.steps.length }) : t('practice.left_out', { seed }))));

/** @param {Student[]} students */
function mistakes(students) {
  const numbers = new Map(columns(students).map(({ seed }, at) => [seed, at + 1]));
  const counts = slipCounts(students);
  return counts.length ? el('ul', 'rows', ...counts.map(({ slip, n, of, seeds }) => row(slipName(slip), t('practice.in_exercises', { numbers: seeds.map((seed) => numbers.get(seed) ?? 0).sort((a, b) => a - b).join(', ') }), t('practice.n_of', { n, of }))))
    : el('p', 'note', t('practice.no_slips'));
}

/** Everything of one student, folded away. @param {Student} student */
function details({ name, file, parts, points: sum, of }) {
  return el('details', 'more', el('summary', '', el('span', 'k', name, el('small', '', t('practice.file_line', { units: [...new Set(parts.filter((one) => one.answers.length).map((one) => one.units))].map((one) => t(`page.units_${one}`)).join(', ') || t(`page.units_${file.units}`), day: new Date(file.saved).toLocaleDateString(locale(), { year: 'numeric', month: 'short', day: 'numeric' }) }))), el('span', 'v', total({ points: sum, of, parts }))),
    el('div', 'inside', ...parts.flatMap((part, at) => [
      el('h3', '', t('practice.numbered', { n: at + 1, title: part.exercise ? titleOf(part.exercise) : part.seed })),
      part.seen && el('p', 'note', t('practice.seen_before')),
      part.exercise ? steps(part, t('practice.region_of', { what: t('practice.numbered', { n: at + 1, title: titleOf(part.exercise) }), of: name })) : el('p', 'note', t(`practice.refused.${part.refused || 'none'}`)),
    ])));
}

const MARKS = /** @type {Record<string, 'go' | 'hold' | 'none'>} */ ({ right: 'go', carried: 'go', slip: 'hold', wrong: 'hold', blank: 'none', shown: 'none' });

/** @param {Part} part @param {string} name  of the table, which no other on the page has */
function steps(part, name) {
  const { exercise, marked, answers } = part;
  if (!exercise) return el('p');
  return table(name, [t('practice.col_step'), t('practice.col_answer'), t('practice.col_mark'), t('practice.col_points')], exercise.steps.map((step, at) => {
    const verdict = marked?.steps[at]?.verdict ?? 'blank';
    return { cells: [stepName(step), typedText(step, answers[at]) || '–',
      el('span', 'marked', mark(MARKS[verdict] ?? 'none'), ' ', markWords(part, at)), score(marked?.steps[at]?.points ?? 0)] };
  }), 3);
}
