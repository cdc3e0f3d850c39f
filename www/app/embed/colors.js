// @ts-check
/**
 * A host's two colors: the ground and the accent, for light and for dark. What carries a meaning stays as it is on
 * every page: ink, the words and marks of hold, go and watch with their washes, the foam tint, wood, and the paper of
 * drawings and fields on which all of these were measured. So a host may change
 *
 * - `--paper`, the ground, as long as every text that stands on it keeps its contrast;
 * - `--chalk`, what can be pressed and what was chosen, and with it `--on-chalk` and `--chalk-wash`, which follow from it.
 *
 * Contrast is that of WCAG 2.2: its definitions of relative luminance and of contrast ratio, success criteria 1.4.3
 * (4.5:1 for text) and 1.4.11 (3:1 for the edges of fields and for lines of a drawing).
 *
 * @typedef {'light' | 'dark'} Theme
 * @typedef {keyof typeof OURS.light} Name
 * @typedef {{ground?: string, accent?: string}} Colors  Each as `#rrggbb`; an absent one is ours.
 * @typedef {{[theme in Theme]?: Colors}} Themes
 * @typedef {{theme: Theme, which: 'ground' | 'accent', color: string, against: string, ratio: number, least: number}} Pale
 *   A color that was refused, what it is too close to, and by how much.
 */

/** For text, and for what is only drawn. */
const TEXT = 4.5;
const DRAWN = 3;

/** Our own colors, those of `look.css` (a test holds them together). */
export const OURS = {
  light: {
    paper: '#faf6ea', sheet: '#fffdf7', line: '#6d685b', ink: '#1a2024', 'ink-2': '#3a3f41', chalk: '#17479e', foam: '#f3cd76',
    go: '#14573a', 'go-wash': '#e0ede2', hold: '#9c2313', 'hold-wash': '#fae4dc', watch: '#6b4300', 'watch-wash': '#f4ead2',
  },
  dark: {
    paper: '#10161b', sheet: '#161e25', line: '#93a0aa', ink: '#f6f1e4', 'ink-2': '#c6cbcc', chalk: '#93c4ff', foam: '#66480f',
    go: '#8fdcae', 'go-wash': '#14301f', hold: '#ffb09c', 'hold-wash': '#45180f', watch: '#f3cf8a', 'watch-wash': '#37290e',
  },
};
/** What stands on the ground. @type {[Name, number][]} */
const ON_GROUND = [['ink', TEXT], ['ink-2', TEXT], ['hold', TEXT], ['go', TEXT], ['watch', TEXT], ['line', DRAWN]];
/** What the accent stands on, besides the ground. @type {[Name, number][]} */
const UNDER_ACCENT = [['sheet', TEXT], ['hold-wash', TEXT], ['watch-wash', TEXT], ['go-wash', TEXT], ['foam', DRAWN]];
/** How much of the accent its wash holds at the most. */
const WASH = 0.14;

/** A color in its three parts from 0 to 1. @param {string} color */
const parts = (color) => [1, 3, 5].map((at) => parseInt(color.slice(at, at + 2), 16) / 255);

/** Relative luminance, WCAG 2.2. @param {string} color */
export function luminance(color) {
  const [red, green, blue] = parts(color).map((one) => (one <= 0.04045 ? one / 12.92 : ((one + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio, WCAG 2.2: from 1 to 21. @param {string} one @param {string} other */
export function contrast(one, other) {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

/** Black or white, whichever stands out more: at least 4.58:1 on any color. @param {string} color */
export const textOn = (color) => (contrast(color, '#000000') > contrast(color, '#ffffff') ? '#000000' : '#ffffff');

/** Some of one color in another, by its share. @param {string} some @param {string} into @param {number} share */
export function mixed(some, into, share) {
  const [a, b] = [parts(some), parts(into)];
  return `#${a.map((one, i) => Math.round((one * share + b[i] * (1 - share)) * 255).toString(16).padStart(2, '0')).join('')}`;
}

/** The ground of what was chosen: as much of the accent in the sheet as leaves every text on it readable. @param {Theme} theme @param {string} accent */
export function washOf(theme, accent) {
  const { sheet, ink, 'ink-2': note } = OURS[theme];
  for (let share = WASH; share > 0; share -= 0.01) {
    const wash = mixed(accent, sheet, share);
    if ([ink, note, accent].every((text) => contrast(text, wash) >= TEXT)) return wash;
  }
  return sheet;
}

/**
 * Judges the colors of one theme: each that is too pale is refused alone, and ours stands in its place.
 * @param {Theme} theme @param {Colors} asked @returns {{colors: Colors, pale: Pale[]}}
 */
export function judged(theme, asked) {
  const ours = OURS[theme];
  /** @type {Pale[]} */
  const pale = [];
  /** @param {'ground' | 'accent'} which @param {string} color @param {[string, string, number][]} others name, color, least */
  const holds = (which, color, others) => {
    const [worst] = others.map(([against, other, least]) => ({ against, ratio: contrast(color, other), least }))
      .filter((one) => one.ratio < one.least).sort((a, b) => a.ratio / a.least - b.ratio / b.least);
    if (worst) pale.push({ theme, which, color, ...worst });
    return !worst;
  };
  /** @param {[Name, number][]} list @returns {[string, string, number][]} */
  const named = (list) => list.map(([name, least]) => [name, ours[name], least]);

  let { ground, accent } = asked;
  if (ground && !holds('ground', ground, named(ON_GROUND))) ground = undefined;
  if (accent && !holds('accent', accent, [['paper', ground ?? ours.paper, TEXT], ...named(UNDER_ACCENT)])) accent = undefined;
  // Our own accent has to be read on their ground as well.
  if (ground && !accent && !holds('ground', ground, [['chalk', ours.chalk, TEXT]])) ground = undefined;
  return { colors: { ...(ground ? { ground } : {}), ...(accent ? { accent } : {}) }, pale };
}

/** What a theme's colors set. @param {Theme} theme @param {Colors} colors */
function rules(theme, { ground, accent }) {
  return [
    ground && `--paper: ${ground};`,
    accent && `--chalk: ${accent}; --on-chalk: ${textOn(accent)}; --chalk-wash: ${washOf(theme, accent)};`,
  ].filter(Boolean).join(' ');
}

/** The style of these colors, for the screen alone: paper is black on white. @param {Themes} themes */
export function styleOf(themes) {
  // Stronger than the tokens of `look.css`, whose dark ones name an attribute.
  const root = ':root:root:root';
  const on = (/** @type {Theme} */ theme, /** @type {string} */ named, /** @type {string} */ other) => {
    const set = rules(theme, themes[theme] ?? {});
    if (!set) return '';
    // On foam our texts are ink, since an accent only has to be seen there, not read.
    const all = (/** @type {string} */ at) => `${at} { ${set} }${themes[theme]?.accent ? ` ${at} .d text.on.onfoam { fill: var(--ink); }` : ''}`;
    return `@media (prefers-color-scheme: ${theme}) { ${all(`${root}:not([data-theme="${other}"])`)} } ${all(`${root}[data-theme="${named}"]`)}`;
  };
  const inside = [on('light', 'paper', 'crawl'), on('dark', 'crawl', 'paper')].filter(Boolean).join('\n');
  return inside && `@media screen { ${inside} }`;
}

/** @type {WeakMap<Document, CSSStyleSheet>} */
const painted = new WeakMap();

/**
 * Paints a document in these colors, which `judged` has let pass; without any, in ours again. No element gets a style
 * of its own, so the strictest policy allows it. A browser that knows no such sheets keeps our colors.
 * @param {Document} root @param {Themes} themes
 */
export function paint(root, themes) {
  if (!('adoptedStyleSheets' in root)) return;
  let sheet = painted.get(root);
  if (!sheet) {
    sheet = new CSSStyleSheet();
    painted.set(root, sheet);
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet];
  }
  sheet.replaceSync(styleOf(themes));
}
