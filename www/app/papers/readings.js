// @ts-check
/** Readings on paper: each against its window with its time, and the questions that are answered by a press. */
import { checkName } from '../drawn.js';
import { bare, figures } from '../figures.js';
import { el } from '../list.js';
import { byId } from '../parts.js';
import { label, t } from '../words.js';
import { entered, entryText, lines, told, unmeasured, when } from './leaf.js';

/** @typedef {import('../store.js').Store} Store */

/** The fields of a reading that hold what was read. */
const READ = ['temperature', 'humidity', 'moisture', 'wind'];

/** Every reading against its window, with its time. @param {Store} store @param {boolean} [blanks] with room to write more */
export function readings(store, blanks = false) {
  const { job, estimate } = store;
  const w = figures(job.units);
  const is = estimate?.readiness;
  /** @type {[string, ('' | 'r' | 'w')?][]} */
  const columns = [[t('paper.reading')], [t('paper.window'), 'r'], [t('paper.read'), 'r'], [t('paper.time')]];
  if (blanks) columns.push([t('paper.at_start'), 'w'], [t('paper.at_break'), 'w'], [t('paper.at_end'), 'w']);
  else columns.push([t('paper.says')]);
  const rest = blanks ? [undefined, undefined, undefined] : [''];
  const value = (/** @type {import('../job.js').SiteReading | undefined} */ taken) => (taken ? READ.map((one) => entryText(store, 'reading', taken.entries, one)).find(Boolean) ?? '' : '');
  const about = (/** @type {import('../job.js').SiteReading | undefined} */ taken) => (taken ? entered(store, 'reading', taken.entries, READ) : []);
  const rows = (is?.checks ?? []).map((check) => {
    const taken = byId(job.readings, check.id);
    const text = value(taken);
    const percent = check.of === 'wood_moisture';
    const write = percent ? w.pct : w.speed;
    const window = check.least_f !== undefined && check.most_f !== undefined ? t(check.least_is_dew ? 'ready.window_dew' : 'ready.window', { least: bare(w.temp(check.least_f)), most: w.temp(check.most_f) })
      : check.most === undefined ? '' : t(percent ? 'ready.wood_below' : 'ready.wind_at_most', { limit: write(check.most) });
    const by = check.inside_by_f !== undefined ? w.step(Math.abs(check.inside_by_f)) : check.inside_by === undefined ? undefined : write(Math.abs(check.inside_by));
    const says = check.state === 'not_read' ? '' : check.state === 'inside' && by === undefined ? t('paper.state.read') : t(`paper.state.${check.state}`, { by: by ?? '' }).trim();
    const known = Boolean(text) && check.state !== 'not_read';
    return { cells: [told(checkName(check), about(taken)), window, known ? el('b', '', text) : unmeasured(), known && taken?.taken ? when(taken.taken.ms) : '', ...(blanks ? rest : [says])] };
  });
  // What was read and is held against no window is on the paper too.
  const others = job.readings.filter((one) => value(one) && !(is?.checks ?? []).some((check) => check.id === one.id))
    .map((one) => ({ cells: [told(checkName({ of: one.of, name: one.name }), about(one)), '', el('b', '', value(one)), one.taken ? when(one.taken.ms) : '', ...rest] }));
  const dew = is?.dew && !blanks ? [
    { cells: [t('ready.least_surface', { spread: w.step(is.dew.spread_f) }), '', w.temp(is.dew.least_surface_f), '', t('paper.worked_dew', { dew: w.temp(is.dew.point_f.likely) })] },
  ] : [];
  return lines(t('ready.margins'), columns, [...rows, ...others, ...dew], blanks ? 'write' : '');
}

/** The questions of the readiness screen, in its words. */
const QUESTIONS = ['flames_out', 'heater_lit', 'outdoors', 'heat_kept'];

/** What was answered; a blank is said to be one. @param {Store} store @param {boolean} [blanks] with room for the answer of the day */
export function questions(store, blanks = false) {
  return lines(t('ready.questions'), [[t('paper.question')], [t('paper.answer'), 'r'], ...(blanks ? [/** @type {[string, 'w']} */ ([t('paper.at_start'), 'w'])] : [])], QUESTIONS.map((one) => {
    const text = entryText(store, 'job', store.job.entries, one);
    return { cells: [label('job', one), text ? el('b', '', text) : el('i', '', t('paper.not_answered')), ...(blanks ? [undefined] : [])] };
  }), blanks ? 'write' : '');
}
