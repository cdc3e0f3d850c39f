// @ts-check
/** The marks of a depth as the ruler draws them: the three figures of the plan, and every rule that stands and names a depth. */
import { t } from './words.js';

/**
 * @typedef {import('./core.js').Depth} Depth
 * @typedef {import('./core.js').Mark} Mark
 * @typedef {import('./drawing/ruler.js').Level} Level
 */

/** More are hard to tell apart on a phone; the rest stand in the list below the drawing. */
export const MOST_DRAWN = 8;
/** Closer than this, in inches, two marks are one line. */
const SAME = 1 / 128;

/** Whether a mark is dashed: its figure warns and decides nothing. @param {Mark} mark */
export const dashed = (mark) => mark.trust === 'memory' || mark.trust === 'derived';

/** Whether a mark is one of the ruler. @param {Mark} mark @returns {mark is Mark & {at_in: number}} */
export const drawn = (mark) => mark.stands === 'applies' && mark.at_in !== undefined && mark.at_in !== null && mark.bound !== 'lift' && mark.bound !== 'condition';

/** U as its tables write it, without its letter; in the job's units. @param {number} u @param {import('./figures.js').Figures} w */
export const uFactor = (u, w) => w.u(u).replace(/^U[-\u00a0]/, '');

/** A row of the code’s table as its edition prints it, with the language’s word between its ways. @param {string} printed */
export const codeRow = (printed) => printed.replaceAll(' or ', ` ${t('fields.row_or')} `);

/** What the words of a mark may name. @param {Mark} mark @param {import('./figures.js').Figures} w @param {number} [r] the target @param {string} [zone] */
export function facts(mark, w, r, zone = '') {
  const asks = mark.asks ?? 0;
  return {
    depth: w.depth(mark.at_in), r: w.r(mark.rule === 'target' ? r : asks), u: uFactor(asks, w), asks: mark.rule === 'code_u' ? uFactor(asks, w) : String(asks),
    share: String(Math.round(asks)), pct: w.pct(asks), printed: codeRow(mark.printed), edition: mark.edition, zone,
  };
}

/** Those that decide come first, then what asks for more foam, then what limits it. @param {Depth} depth @param {Mark} mark */
const rank = ({ window }, mark) => (mark.rule === window.least_by || mark.rule === window.most_by || mark.rule === window.mean_by ? 0
  : mark.bound === 'reach' ? 3 : mark.rule === 'cavity' ? 2 : 1);

/** The line below a mark's name. @param {Mark} mark @param {Record<string, string>} said */
function below(mark, said) {
  const bits = ['code_r', 'fill_floor', 'small_ceiling'].includes(mark.rule) ? [mark.edition && t(said.zone ? 'depth.mark_sub.code' : 'depth.mark_sub.edition', said)]
    : ['rim_exposed', 'code_u', 'unvented_table', 'unvented_share', 'class_three', 'foam_retarder', 'fill_cavity', 'kit_reach'].includes(mark.rule) ? [t(`depth.mark_sub.${mark.rule}`, said)] : [];
  if (dashed(mark) && mark.bound !== 'reach') bits.push(t(`depth.mark_sub.${mark.trust}`));
  return bits.filter(Boolean).join(', ');
}

/**
 * The levels of the ruler. Marks at the height of another share its label.
 * @param {Depth} depth @param {import('./figures.js').Figures} w
 * @param {{passes?: number, zone?: string}} about
 * @returns {{levels: Level[], left: number, shared: number, gap: [number, number] | undefined}} `left`: how many marks only the list below shows; `shared`: how many could have a label of their own at another aim; `gap`: the least and the most, where they cross
 */
export function levels(depth, w, { passes, zone }) {
  const own = /** @type {Level[]} */ ([
    { at: depth.aim_in.likely, what: t('depth.level_aim', { depth: w.depth(depth.aim_in.likely) }), sub: passes ? t('spraying.passes', { n: passes }) : '', kind: 'aim' },
    { at: depth.most_in, what: t('depth.level_most', { depth: w.depth(depth.most_in) }), sub: t(depth.most_in === depth.exposed_most_in ? 'depth.level_exposed_sub' : 'depth.level_most_sub'), kind: 'most' },
    { at: depth.promised_in, what: t('depth.level_promised', { depth: w.depth(depth.promised_in) }), sub: depth.promised_r === undefined ? t('takeoff.no_r') : t('depth.level_r', { r: w.r(depth.promised_r) }), kind: 'ink' },
  ]);
  const marks = depth.marks.filter(drawn).sort((a, b) => rank(depth, a) - rank(depth, b));
  /** @type {Map<Level, Mark[]>} */
  const shared = new Map(own.map((one) => [one, []]));
  let left = 0;
  for (const mark of marks) {
    const kind = mark.bound === 'most' && mark.rule !== 'cavity' ? 'most' : 'ink';
    const there = [...shared.keys()].find((one) => Math.abs(one.at - mark.at_in) < SAME && (one.kind === kind || !own.includes(one)) && one.kind !== 'aim');
    if (there) shared.get(there)?.push(mark);
    else if (shared.size < MOST_DRAWN) {
      const said = facts(mark, w, depth.target_r, zone);
      shared.set({ at: mark.at_in, what: t(`depth.mark.${mark.rule}`, said), sub: below(mark, said), kind, dash: dashed(mark) || mark.bound === 'reach' }, []);
    } else left += 1;
  }
  for (const [one, also] of shared) {
    // What the promise or the most allowed is the same as is said only where it is another thing.
    const more = also.filter((mark) => !(mark.rule === 'rim_exposed' && one.sub === t('depth.level_exposed_sub')));
    if (more.length) one.sub = [one.sub, t('depth.mark_also', { list: more.map((mark) => t(`depth.mark_short.${mark.rule}`)).join(', ') })].filter(Boolean).join('; ');
  }
  const list = [...shared.keys()];
  const { gap_in: gap, least_in: least, most_in: most } = depth.window;
  const ends = gap === undefined || gap === null ? [] : [least, most].map((at) => list.find((one) => Math.abs(one.at - (at ?? -1)) < SAME && one.kind !== 'aim')?.at);
  return { levels: list, left, shared: Math.min(MOST_DRAWN, own.length + marks.length) - list.length, gap: ends[0] !== undefined && ends[1] !== undefined ? [ends[0], ends[1]] : undefined };
}
