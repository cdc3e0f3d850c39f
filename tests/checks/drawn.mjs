// No drawing disagrees with its numbers: of every surface of every whole job, on its own screen, on the sheet of all
// drawings and on paper, the tinted area is measured from the SVG itself, with the grid as its ruler, and held
// against the net area that the estimate gives. What is drawn but is not the net area has to say so.
//
//   node tests/checks/drawn.mjs SITE

import { readdirSync, readFileSync } from 'node:fs';
import { use } from '../../www/app/calls.js';
import { contact } from '../../www/app/contact.js';
import { outlineOf, toScale } from '../../www/app/toscale.js';
import { give, t } from '../../www/app/words.js';
import { drawnArea } from './measured.mjs';
import { page } from './elements.mjs';
import { core, jobs } from './shipped.mjs';

page();
const shipped = await core(process.argv[2]);
use(shipped);
for (const file of readdirSync('www/words/en')) give(file.replace('.json', ''), JSON.parse(readFileSync(`www/words/en/${file}`, 'utf8')), 'en');

/** Every drawing of a job: whose it is, where, the SVG, what stands under it. */
function drawings(job, estimate) {
  const store = { job, estimate };
  const all = [];
  for (const surface of job.surfaces) {
    const known = outlineOf(store, surface.id);
    if (!known) continue;
    for (const width of [360, 640]) {
      const { svg, said } = toScale(store, surface, known.outline, known.area, { width, press() {}, pressLabel: () => '' });
      all.push({ surface, where: `its screen, ${width} px`, svg, said });
    }
  }
  for (const [where, width, paper] of [['all drawings, 328 px', 328, false], ['paper', 660, true]]) {
    const shown = contact(store, width, paper);
    const cards = shown?.cards.children ?? [];
    job.surfaces.forEach((surface, at) => {
      const svg = cards[at]?.querySelector('svg.d');
      if (svg) all.push({ surface, where, svg, said: cards[at].textContent });
    });
  }
  return all;
}

/** What a drawing says that is not the area to foam: the sentences of the page, up to their first figure. */
const EXEMPT = ['cores_apart', 'tinted_share', 'tinted_rest', 'tinted_many', 'tinted_apart', 'tinted_not', 'part_drawn'].map((key) => t(`surface.${key}`, { net: '#', shown: '#', whole: '#' }).split('#').map((one) => one.trim()).filter(Boolean));

/** What is wrong with a drawing; nothing where all is well. */
function fault({ svg, said }, { area, outline }) {
  const exact = svg.getAttribute('data-tinted') === 'net';
  const says = EXEMPT.some((parts) => parts.every((part) => said.includes(part)));
  if (!exact) return says ? undefined : `is not its net area and does not say so: ${said}`;
  if (!outline.net_drawn) return 'passes for the net area, which the core denies';
  if (says) return `is its net area and denies it: ${said}`;
  const { inches2, k, perimeter } = drawnArea(svg);
  const times = Number(svg.getAttribute('data-times') ?? 1);
  const net = (area.net_ft2.likely / times) * 144;
  // Coordinates are rounded to a hundredth of a pixel: each side of a figure may be off by half of that, and the
  // grid that is the ruler by as much over its whole length.
  const rounding = (perimeter * 0.005) / k ** 2 + net * 1e-4;
  return Math.abs(inches2 - net) <= rounding ? undefined : `shows ${(inches2 / 144).toFixed(3)} ft², its numbers are ${(net / 144).toFixed(3)} ft² (rounding is ${(rounding / 144).toFixed(4)})`;
}

/** Spoils a drawing as an error in the page might. Each of them has to be seen in every drawing that it changes. */
const SPOIL = [
  ['a piece of framing is lost', (svg) => svg.querySelector('.wood')?.remove()],
  ['an opening is lost', (svg) => svg.querySelector('.void')?.remove()],
  ['framing is a tenth wider', (svg) => svg.querySelectorAll('.wood').forEach((one) => wider(one, 1.1))],
  ['the tint is a fiftieth wider', (svg) => wider(svg.querySelector('rect.tint'), 1.02)],
  ['an upper corner is moved', (svg) => {
    // One of the many of a round face is next to nothing.
    for (const one of svg.querySelectorAll('polygon').filter((it) => it.getAttribute('points').split(' ').length < 12)) {
      const corners = one.getAttribute('points').split(' ').map((pair) => pair.split(',').map(Number));
      const top = corners.reduce((best, corner) => (corner[1] < best[1] ? corner : best));
      top[1] += 15;
      one.setAttribute('points', corners.join(' '));
    }
  }],
  ['the grid is of another scale', (svg) => svg.setAttribute('data-square', String(Number(svg.getAttribute('data-square')) * 1.01))],
];
function wider(one, by) {
  if (one) one.setAttribute('width', String(Number(one.getAttribute('width')) * by));
}

const faults = [];
let [measured, exempt, surfaces] = [0, 0, 0];
const without = [];
const spoiled = new Map(SPOIL.map(([name]) => [name, { tried: 0, seen: 0 }]));
for (const { name, job: stored, now } of jobs()) {
  const { job: opened } = shipped.job_open(JSON.stringify(stored));
  for (const units of ['us', 'metric']) {
    const job = { ...opened, units };
    const estimate = shipped.estimate(job, now);
    if (units === 'us') surfaces += estimate.surfaces.filter((one) => one.area).length;
    const all = drawings(job, estimate);
    for (const one of all) {
      const known = outlineOf({ job, estimate }, one.surface.id);
      const wrong = fault(one, known);
      if (wrong) faults.push(`${name}, ${one.surface.name || one.surface.shape}, ${one.where}, ${units}: ${wrong}`);
      if (one.svg.getAttribute('data-tinted') !== 'net') {
        exempt += 1;
        if (units === 'us' && one.where === 'its screen, 360 px') without.push(`${name}: ${one.surface.name || one.surface.shape}: ${one.said}`);
        continue;
      }
      measured += 1;
    }
    if (units === 'metric') continue;
    for (const [spoil, change] of SPOIL) {
      for (const one of drawings(job, estimate).filter((it) => it.where === 'its screen, 640 px' && it.svg.getAttribute('data-tinted') === 'net')) {
        const before = one.svg.outerHTML;
        change(one.svg);
        if (one.svg.outerHTML === before) continue;
        const count = spoiled.get(spoil);
        count.tried += 1;
        if (fault(one, outlineOf({ job, estimate }, one.surface.id))) count.seen += 1;
      }
    }
  }
}
console.log(`${surfaces} surfaces with an area; ${measured} drawings measured, ${exempt} say that they are not the net area`);
for (const one of without) console.log(`  exempt: ${one}`);
for (const [spoil, { tried, seen }] of spoiled) {
  console.log(`  spoiled, ${spoil}: ${seen} of ${tried} seen`);
  if (!tried || seen < tried) faults.push(`spoiled drawings pass: ${spoil}, ${seen} of ${tried} seen`);
}
if (measured < exempt) faults.push('more drawings are exempt than measured');
for (const one of faults) console.error(one);
process.exitCode = faults.length ? 1 : 0;
