// @ts-check
/** Kind of work first: what the rule asks of a surface there, in one line, and the way to change it. */
import { entryOf } from './changes.js';
import { el } from './list.js';
import { pressRow, to } from './parts.js';
import { has, t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {import('./job.js').Job} Job */

/** The page of words that the line needs. */
export const words = ['work'];

/** A word that was pressed; empty while nobody has. @param {Job} job @param {import('./core.js').Part} part @param {number} id @param {string} field */
export const answerTo = (job, part, id, field) => entryOf(job, part, id, field)?.text ?? '';

/** A climate zone as it is said: "zone 5A". @param {string} zone */
export const zoneName = (zone) => t('work.zone', { zone: zone.toUpperCase() });

/** Edition and zone as far as they are said. @param {Job} job */
export function placeWords(job) {
  const edition = answerTo(job, 'job', 0, 'edition');
  const zone = answerTo(job, 'job', 0, 'zone');
  return t('work.place', {
    edition: edition ? t('work.edition', { edition: t(`fields.choice.edition.${edition}`) }) : t('work.no_edition'),
    zone: zone ? zoneName(zone) : t('work.no_zone'),
  });
}

/**
 * What the rule asks for a kind of work, and how sure that is. Without a surface: for the job.
 * @param {Job} job @param {number} [id] a surface
 */
export function asks(job, id = 0) {
  const work = answerTo(job, 'job', 0, 'work');
  if (!work) return t('work.none_why');
  const component = answerTo(job, 'surface', id, 'component');
  // No house table is for these, whatever the work is.
  if (component === 'cold_room' || component === 'other') return t('work.no_table');
  if (work === 'new' || work === 'addition') return `${t('work.table')} ${placeWords(job)}`;
  const opened = answerTo(job, 'surface', id, 'cavity_opened');
  const key = `work.${work}${opened && `_${opened}`}`;
  return t(has(key) ? key : `work.${work}`);
}

/** The target that a person set for a surface, where one holds. @param {Store} store @param {number} id @param {(r: number) => string} write */
function target(store, id, write) {
  const r = store.estimate?.surfaces.find((one) => one.id === id)?.depth?.target_r;
  return r === undefined ? '' : t('work.target', { r: write(r) });
}

/**
 * The first line of a depth.
 * @param {Store} store @param {number} id a surface @param {(r: number) => string} write how an R is written
 */
export function workLine(store, id, write) {
  const work = answerTo(store.job, 'job', 0, 'work');
  return el('ul', 'rows work-line', pressRow(to('place', id), work ? t(`fields.choice.work.${work}`) : t('work.none'),
    [asks(store.job, id), target(store, id, write)].filter(Boolean).join(' '), el('span', 'act', t(work ? 'work.change' : 'work.say'))));
}
