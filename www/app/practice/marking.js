// @ts-check
/**
 * Answer files of a class, marked: what each student has of each exercise, and which mistakes came most. Every exercise is read in
 * its own units, by the estimator's own reader, and marked by the same core as a student's own page.
 *
 * @typedef {import('./answerfile.js').AnswerFile} AnswerFile
 * @typedef {import('./core.js').Practice} Practice
 * @typedef {import('./core.js').Exercise} Exercise
 * @typedef {import('./core.js').Marked} Marked
 *
 * @typedef {object} Part  one exercise of one file
 * @property {string} seed
 * @property {Exercise} [exercise]  none where this version does not know the seed
 * @property {string} refused  why not
 * @property {import('../core.js').Units} units  in which it was answered
 * @property {boolean} seen  whether answers or help had been seen before
 * @property {import('./progressdoc.js').Answer[]} answers
 * @property {Marked} [marked]
 *
 * @typedef {{name: string, file: AnswerFile, parts: Part[], points: number, of: number}} Student
 */
import { csv } from '../csv.js';
import { t } from '../words.js';
import { judged, unread } from './answers.js';
import { slipName, stepName, titleOf, typedText } from './written.js';

/** @param {Practice} core @param {string} name @param {AnswerFile} file @returns {Student} */
export function marksOf(core, name, file) {
  const parts = file.seeds.map((seed) => {
    const { units, seen, steps: answers } = file.answers.find((one) => one.seed === seed) ?? { units: file.units, seen: false, steps: [] };
    const { exercise, refused } = core.exercise(seed, units);
    // One way to write a seed: `01-1-004d` and `1-1-004d` are one exercise, and one column.
    return { seed: exercise?.seed ?? seed, units, seen, exercise, refused, answers, marked: exercise && judged(core, exercise, answers, units) };
  }).filter(({ seed }, at, all) => all.findIndex((one) => one.seed === seed) === at);
  const add = (/** @type {'points' | 'of'} */ what) => parts.reduce((sum, one) => sum + (one.marked?.[what] ?? 0), 0);
  return { name, file, parts, points: add('points'), of: add('of') };
}

/** How many exercises of a sheet could not be marked here, and so are in neither of the two figures of a score. @param {Pick<Student, 'parts'>} student */
export const unmarked = ({ parts }) => parts.filter((one) => !one.marked).length;

/** The mean of what each got of what could be had: totals of different sheets are no points to be added. @param {readonly Pick<Student, 'points' | 'of'>[]} students */
export function meanShare(students) {
  const shares = students.filter((one) => one.of > 0).map((one) => one.points / one.of);
  return shares.length ? shares.reduce((sum, one) => sum + one, 0) / shares.length : undefined;
}

/** Every exercise of the files, in the order in which they come. @param {readonly Student[]} students */
export function columns(students) {
  /** @type {Map<string, Exercise | undefined>} */
  const all = new Map();
  for (const { parts } of students) for (const { seed, exercise } of parts) all.set(seed, all.get(seed) ?? exercise);
  return [...all].map(([seed, exercise]) => ({ seed, exercise }));
}

/**
 * Which mistakes came, by how many students, the most first. Each counts once a student, and of so many who had a step
 * where it is known.
 * @param {readonly Student[]} students
 */
export function slipCounts(students) {
  /** @type {Map<string, {slip: string, students: Set<Student>, seeds: Set<string>}>} */
  const all = new Map();
  for (const student of students) {
    for (const { seed, marked } of student.parts) {
      for (const { slip } of marked?.steps ?? []) {
        if (!slip) continue;
        const one = all.get(slip) ?? { slip, students: new Set(), seeds: new Set() };
        one.students.add(student);
        one.seeds.add(seed);
        all.set(slip, one);
      }
    }
  }
  return [...all.values()].map(({ slip, students: made, seeds }) => ({
    slip, n: made.size, seeds: [...seeds],
    of: students.filter(({ parts }) => parts.some((one) => seeds.has(one.seed))).length,
  })).sort((a, b) => b.n - a.n || (a.slip < b.slip ? -1 : 1));
}

/** How a step was marked, in words. @param {Part} part @param {number} at */
export function markWords({ exercise, answers, marked, units }, at) {
  const step = marked?.steps[at];
  const form = exercise?.steps[at];
  if (!step || !form || !exercise) return '';
  const hints = answers[at]?.hints ?? 0;
  const what = step.verdict === 'slip' ? slipName(step.slip)
    : step.verdict === 'blank' && unread(form, answers[at], units) ? t('practice.verdict.unread') : t(`practice.verdict.${step.verdict}`);
  return hints && step.verdict !== 'shown' ? t('practice.with_hints', { what, n: hints }) : what;
}

/** A table of points: a line a file, a column an exercise. @param {readonly Student[]} students */
export function pointsCsv(students) {
  const all = columns(students);
  return csv([
    [t('practice.col_file'), ...all.map(({ seed, exercise }) => (exercise ? t('practice.col_exercise', { title: titleOf(exercise), seed, of: exercise.steps.length }) : seed)), t('practice.col_points'), t('practice.col_of'), t('practice.col_unmarked')],
    ...students.map(({ name, parts, points, of }) => [name, ...all.map(({ seed }) => parts.find((one) => one.seed === seed)?.marked?.points), points, of, unmarked({ parts })]),
  ]);
}

/** Every answer with its mark: a line a step. @param {readonly Student[]} students */
export function stepsCsv(students) {
  return csv([
    ['file', 'title', 'seed', 'step', 'answer', 'mark', 'hints', 'points'].map((one) => t(`practice.col_${one}`)),
    ...students.flatMap(({ name, parts }) => parts.flatMap((part) => (part.exercise?.steps ?? []).map((step, at) => [
      name, part.exercise && titleOf(part.exercise), part.seed, stepName(step), typedText(step, part.answers[at]), markWords(part, at), part.answers[at]?.hints ?? 0, part.marked?.steps[at]?.points,
    ]))),
  ]);
}
