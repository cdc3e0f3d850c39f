// @ts-check
/** What is worn, by what is done; the limits of the air; what the law asks of a respirator. Each row says where it is from. */
import { el } from './list.js';
import { note, src } from './parts.js';
import { number, t } from './words.js';

/**
 * By the work: each row is what it is for, and where the advice was read.
 *
 * `trade`: the chart and statement of the trade's association for low-pressure kits. `epa`: the agency's public
 * guidance. `practice`: common practice, no source. `memory`: from memory.
 * @type {readonly (readonly [string, readonly (readonly [string, string])[]])[]}
 */
export const WORK = [
  ['kit', [['breath', 'trade'], ['hands', 'trade'], ['eyes', 'trade'], ['body', 'trade'], ['fresh', 'practice'], ['others', 'epa']]],
  ['tight', [['breath', 'practice'], ['eyes', 'practice'], ['body', 'practice'], ['air', 'epa'], ['watch', 'memory']]],
  ['cut', [['breath', 'practice'], ['eyes', 'practice'], ['hands', 'practice'], ['heat', 'practice'], ['others', 'practice']]],
  ['empty', [['breath', 'practice'], ['eyes', 'practice'], ['place', 'practice'], ['never', 'practice']]],
];

/**
 * Limits of MDI in the air, in ppm and mg/m³: as public agencies print them. `read` was read where it is published,
 * `older` in an edition of 1993-94 that is still cited.
 * @type {readonly {key: string, ppm?: number, mg: number, sure: 'read' | 'older'}[]}
 */
export const LIMITS = [
  { key: 'pel', ppm: 0.02, mg: 0.2, sure: 'read' },
  { key: 'rel', ppm: 0.005, mg: 0.05, sure: 'read' },
  { key: 'rel_ceiling', ppm: 0.02, mg: 0.2, sure: 'read' },
  { key: 'tlv', ppm: 0.005, mg: 0.051, sure: 'older' },
  { key: 'idlh', mg: 75, sure: 'read' },
];

/** What a respirator asks for by law. */
export const LAW = ['medical', 'fit', 'change', 'hazcom', 'eyes'];

/** A fold with a name. @param {string} key @param {...Node} inside */
const fold = (key, ...inside) => el('details', 'more', el('summary', '', t(key)), el('div', 'inside', ...inside));

/** A line: what it is, what to do, where that is from. @param {string} what @param {string} text @param {string} from */
const told = (what, text, from) => el('li', 'tall', el('b', '', what), el('p', '', text), el('p', 'src', from));

/** Both readings of the advice on respirators, and who decides. */
const readings = () => el('div', 'says',
  note('watch', t('people.two_readings'), t('people.two_readings_trade'), ' ', t('people.two_readings_niosh')),
  note('watch', t('people.sds_decides'), t('people.sds_decides_do')));

/** The lists of what is worn. */
export function protection() {
  return el('div', 'folds',
    ...WORK.map(([work, rows]) => fold(`people.work.${work}`,
      el('ul', 'rows', ...rows.map(([what, from]) => told(t(`people.worn.${what}`), t(`people.wear.${work}.${what}`), t(`people.from.${from}`)))),
      ...(work === 'kit' || work === 'tight' ? [readings()] : []))),
    fold('people.law', el('p', 'note', t('people.law_lead')), el('ul', 'rows', ...LAW.map((one) => told(t(`people.law.${one}`), t(`people.law.${one}_do`), t(`people.law.${one}_from`))))),
    fold('people.limits', el('p', 'note', t('people.limits_lead')),
      el('ul', 'rows', ...LIMITS.map(({ key, ppm, mg, sure }) => el('li', '',
        el('span', 'k', el('b', '', t(`people.limit.${key}`)), el('small', '', t(`people.limit.${key}_is`)), el('small', '', `${t(`people.limit.${key}_from`)} ${t(`people.sure.${sure}`)}`)),
        el('span', 'v', ppm === undefined ? `${number(mg, 3)} mg/m³` : `${number(ppm, 3)} ppm`, ppm === undefined ? undefined : el('small', '', `${number(mg, 3)} mg/m³`))))),
      src(t('people.limits_polymeric')), note('watch', t('people.no_smell'), t('people.no_smell_do'))));
}
