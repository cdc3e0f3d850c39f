// A host's colors: contrast against published examples, and what a host may not change.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { contrast, judged, luminance, OURS, paint, styleOf, textOn, washOf } from '../../www/app/embed/colors.js';

const THEMES = /** @type {const} */ (['light', 'dark']);
const rounded = (value) => Math.round(value * 100) / 100;

test('contrast is that of WCAG 2.2', () => {
  // Understanding success criterion 1.4.3 (W3C): #777777 on white is 4.48:1 and falls short, #767676 is 4.54:1 and does
  // not; black on white is 21:1, its definition's upper end, and a color on itself 1:1.
  assert.equal(rounded(contrast('#777777', '#ffffff')), 4.48);
  assert.equal(rounded(contrast('#767676', '#ffffff')), 4.54);
  assert.equal(contrast('#000000', '#ffffff'), 21);
  assert.equal(contrast('#ffffff', '#000000'), 21);
  assert.equal(contrast('#8b5d05', '#8b5d05'), 1);
  // The definition's own weights of the three parts, and its linear stretch near black.
  assert.deepEqual(['#ff0000', '#00ff00', '#0000ff'].map(luminance), [0.2126, 0.7152, 0.0722]);
  assert.ok(Math.abs(luminance('#0a0a0a') - 10 / 255 / 12.92) < 1e-12);
});

test('our colors are those of the style sheet', () => {
  const look = readFileSync(new URL('../../www/app/look.css', import.meta.url), 'utf8');
  const dark = look.slice(look.indexOf('prefers-color-scheme: dark'));
  for (const [theme, text] of [['light', look], ['dark', dark]]) {
    for (const [name, color] of Object.entries(OURS[theme])) {
      assert.equal(new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(text)?.[1], color, `${theme} --${name}`);
    }
  }
});

test('our own colors pass what is asked of others', () => {
  for (const theme of THEMES) {
    const { paper, chalk } = OURS[theme];
    assert.deepEqual(judged(theme, { ground: paper, accent: chalk }), { colors: { ground: paper, accent: chalk }, pale: [] });
  }
});

test('white and black go wherever they can be read on', () => {
  assert.deepEqual(judged('light', { ground: '#ffffff', accent: '#000000' }).pale, []);
  assert.deepEqual(judged('dark', { ground: '#000000', accent: '#ffffff' }).pale, []);
  assert.deepEqual(judged('light', { ground: '#000000' }).pale.map((one) => one.which), ['ground']);
  assert.deepEqual(judged('dark', { accent: '#000000' }).pale.map((one) => one.which), ['accent']);
});

test('at the limit a color goes, and a step beyond it does not', () => {
  /** The first gray, from the safe end on, that is refused, and the last that is not. */
  const edge = (theme, which, grays) => {
    const refused = (gray) => judged(theme, { [which]: gray }).pale.length > 0;
    const at = grays.findIndex(refused);
    assert.ok(at > 0 && grays.slice(at).every(refused), `${theme} ${which}`);
    return [grays[at - 1], grays[at]];
  };
  const up = Array.from({ length: 256 }, (_, i) => `#${i.toString(16).padStart(2, '0').repeat(3)}`);
  const down = [...up].reverse();
  for (const [theme, which, grays] of [['light', 'ground', down], ['light', 'accent', up], ['dark', 'ground', up], ['dark', 'accent', down]]) {
    const [last, first] = edge(theme, which, grays);
    const [pale] = judged(theme, { [which]: first }).pale;
    assert.ok(pale.ratio < pale.least);
    // Asked again of the pair itself, without the judge.
    const other = pale.against === 'paper' ? OURS[theme].paper : OURS[theme][pale.against];
    assert.ok(contrast(first, other) < pale.least && contrast(last, other) >= pale.least, `${theme} ${which} against ${pale.against}`);
  }
});

/** Whole numbers from 0 up to a limit, the same in every run. */
function dice(seed) {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor(state / 2 ** 32 * below);
  };
}

test('whatever a host asks for, every text that stands can be read', () => {
  const roll = dice(7);
  let [taken, refused] = [0, 0];
  for (let i = 0; i < 20_000; i += 1) {
    const theme = THEMES[roll(2)];
    // Half of them near the end at which they have a chance.
    const part = () => (roll(2) ? roll(256) : (theme === 'light') === (i % 3 > 0) ? 255 - roll(60) : roll(90));
    const color = () => `#${[part(), part(), part()].map((one) => one.toString(16).padStart(2, '0')).join('')}`;
    const asked = { ...(roll(4) ? { ground: color() } : {}), ...(roll(4) ? { accent: color() } : {}) };
    const { colors, pale } = judged(theme, asked);
    taken += Object.keys(colors).length;
    refused += pale.length;
    assert.equal(Object.keys(asked).length, Object.keys(colors).length + pale.length);
    const ours = OURS[theme];
    const ground = colors.ground ?? ours.paper;
    const accent = colors.accent ?? ours.chalk;
    for (const text of [ours.ink, ours['ink-2'], ours.hold, ours.go, ours.watch, accent]) assert.ok(contrast(text, ground) >= 4.5, `${text} on ${ground}`);
    assert.ok(contrast(ours.line, ground) >= 3 && contrast(accent, ours.foam) >= 3);
    for (const under of ['sheet', 'hold-wash', 'watch-wash', 'go-wash']) assert.ok(contrast(accent, ours[under]) >= 4.5, `${accent} on --${under}`);
    assert.ok(contrast(textOn(accent), accent) >= 4.5);
    for (const text of [ours.ink, ours['ink-2'], accent]) assert.ok(contrast(text, washOf(theme, accent)) >= 4.5);
  }
  assert.ok(taken > 2000 && refused > 2000, `${taken} taken, ${refused} refused`);
});

test('what is painted changes the ground and the accent and nothing else', () => {
  assert.equal(styleOf({}), '');
  assert.equal(styleOf({ light: {}, dark: {} }), '');
  const style = styleOf({ light: { ground: '#ffffff', accent: '#0b5c6b' }, dark: { accent: '#7fd6e3' } });
  assert.deepEqual([...new Set([...style.matchAll(/(--[\w-]+):/g)].map((one) => one[1]))].sort(), ['--chalk', '--chalk-wash', '--on-chalk', '--paper']);
  assert.match(style, /^@media screen \{/);
  // A light color never stands on a dark page, nor the other way round.
  const [light, dark] = style.split('\n');
  assert.ok(light.includes('(prefers-color-scheme: light)') && light.includes('#0b5c6b') && !light.includes('#7fd6e3'));
  assert.ok(dark.includes('(prefers-color-scheme: dark)') && dark.includes('#7fd6e3') && !dark.includes('#0b5c6b'));
  assert.equal(style.split('{').length, style.split('}').length);
});

test('a document is painted once, and again in place of the time before', () => {
  const said = [];
  globalThis.CSSStyleSheet ??= class { replaceSync(text) { said.push(text); } };
  const page = { adoptedStyleSheets: [] };
  paint(page, { light: { accent: '#0b5c6b' } });
  paint(page, {});
  assert.equal(page.adoptedStyleSheets.length, 1);
  assert.ok(said[0].includes('#0b5c6b') && said[1] === '');
  paint(/** @type {any} */ ({}), { light: { accent: '#0b5c6b' } });
});
