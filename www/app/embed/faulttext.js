// @ts-check
/**
 * The sentence for a fault in the console. With the nearest thing that would be taken, where there is one near: a key
 * that is misspelt, a color that is too pale.
 *
 * @typedef {import('./faults.js').Fault} Fault
 * @typedef {import('../words.js').Figures} Figures
 * @typedef {import('./colors.js').Theme} Theme
 */
import { t } from '../words.js';
import { judged, mixed } from './colors.js';

/** The words `embed_faults` have to be there. @param {Fault} fault */
export function faultText({ at, why, want, now, figures }) {
  const words = why === 'pale' ? { ...figures, against: t(`embed_faults.color.${figures.against}`) } : figures;
  const near = why === 'unknown' ? nearKey(at, figures) : why === 'pale' ? nearColor(at, figures) : '';
  return [
    t('embed_faults.head', { at: at || t('embed_faults.whole') }),
    t(`embed_faults.why.${why}`, words),
    want && t('embed_faults.wanted', { want: t(`embed_faults.want.${want}`, words) }),
    near && t(`embed_faults.near.${why}`, { near }),
    now && t(`embed_faults.now.${now}`, words),
  ].filter(Boolean).join(' ');
}

/** The key that was meant: at most two edits away, and no more than half of its letters. @param {string} at @param {Figures} figures */
function nearKey(at, { known }) {
  const given = at.slice(at.lastIndexOf('.') + 1);
  const [best] = String(known).split(', ').map((key) => ({ key, off: edits(given, key) }))
    .filter(({ key, off }) => off <= 2 && 2 * off <= key.length).sort((a, b) => a.off - b.off);
  return best?.key ?? '';
}

/** How many letters are put in, left out or changed between two words. @param {string} one @param {string} other */
function edits(one, other) {
  let row = Array.from({ length: other.length + 1 }, (_, i) => i);
  for (let i = 1; i <= one.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= other.length; j += 1) {
      next.push(Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + Number(one[i - 1] !== other[j - 1])));
    }
    row = next;
  }
  return row[other.length];
}

/** The same color with as little white or black in it as lets it pass beside the other one. @param {string} at @param {Figures} figures */
function nearColor(at, { given, ground, accent }) {
  const [, theme, which] = /** @type {[string, Theme, 'ground' | 'accent']} */ (at.split('.'));
  const beside = which === 'ground' ? { accent } : { ground };
  for (let percent = 1; percent <= 100; percent += 1) {
    for (const into of ['#ffffff', '#000000']) {
      const tried = mixed(into, String(given), percent / 100);
      const asked = /** @type {import('./colors.js').Colors} */ ({ ...beside, [which]: tried });
      if (!judged(theme, asked).pale.length) return tried;
    }
  }
  return '';
}
