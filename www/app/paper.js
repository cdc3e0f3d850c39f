// @ts-check
/** The papers: which ones, how they will print, and the press that prints them. */
import { answerBar } from './answer.js';
import { nameOf } from './drawn.js';
import { el } from './list.js';
import { head, note, press, redraw, to } from './parts.js';
import { daySheet } from './papers/daysheet.js';
import { drawings } from './papers/drawings.js';
import { emergency } from './papers/emergency.js';
import { footLine } from './papers/footline.js';
import { inspector } from './papers/inspector.js';
import { jobSheet } from './papers/jobsheet.js';
import { leaf, section } from './papers/leaf.js';
import { loadOut } from './papers/loadout.js';
import { materials } from './papers/materials.js';
import { jobName } from './sheet.js';
import { t } from './words.js';
import { everyStep } from './working.js';

export { ready } from './working.js';

/** @typedef {import('./store.js').Store} Store */

export const words = ['takeoff', 'sheet', 'surface', 'depth', 'kits', 'ready', 'spraying', 'working', 'settings', 'day', 'stock', 'paper', 'before', 'inspector', 'people', 'emergency'];

/** @param {Store} store */
function workingSheet(store) {
  const rows = everyStep(store);
  return leaf(store, 'working', section(t('sheet.working_title'), rows.length ? el('ol', 'calc', ...rows) : el('p', 'note', t('sheet.working_none')), el('p', 'note', t('sheet.working_note'))));
}

/** Every paper in the order in which they print: a leaf, or one a surface. @type {[string, (store: Store, root: HTMLElement) => HTMLElement | HTMLElement[] | undefined][]} */
const PAPERS = [['sheet', jobSheet], ['drawings', drawings], ['inspector', inspector], ['materials', materials], ['loadout', loadOut], ['day', daySheet], ['emergency', emergency], ['working', workingSheet]];

/** Which papers are chosen; kept while the page is. @type {Set<string>} */
let chosen = new Set(['sheet']);

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store, route) {
  const asked = route.rest.filter((one) => PAPERS.some(([name]) => name === one));
  if (asked.length) chosen = new Set(asked);
  const top = el('div', 'no-print');
  const choices = el('fieldset', 'papers-pick', el('legend', 'vh', t('paper.which')), ...PAPERS.map(([name]) => {
    const box = el('input', { type: 'checkbox', id: `paper-${name}`, change: () => {
      if (box.checked) chosen.add(name);
      else chosen.delete(name);
      draw();
    } });
    box.checked = chosen.has(name);
    return el('label', 'switch', box, el('span', '', t(`paper.name.${name}`), el('small', '', t(`paper.about.${name}`))));
  }));
  const print = press(t('paper.print'), 'print', () => window.print(), 'wide');
  const open = el('div');
  const leaves = el('div', 'leaves');
  const bar = answerBar();
  bar.node.classList.add('no-print');
  const foot = footLine();
  root.append(el('main', 'papers', top, el('div', 'pad no-print', choices, el('div', 'dos', print), open, el('p', 'note', t('paper.how'))), leaves), bar.node);

  function draw() {
    const shown = PAPERS.filter(([name]) => chosen.has(name)).flatMap(([name, make]) => {
      const nodes = [make(store, root) ?? []].flat();
      return nodes.length ? [{ name, nodes }] : [];
    });
    redraw(leaves, shown.flatMap((one) => one.nodes));
    print.disabled = !shown.length;
    foot.say(`${jobName(store)} · ${shown.map(({ name }) => t(`paper.name.${name}`)).join(', ')}`);
    const lacking = (store.estimate?.surfaces ?? []).filter((one) => !one.area || !one.depth).flatMap(({ id }) => store.job.surfaces.filter((one) => one.id === id));
    redraw(open, [lacking.length ? note('none', t('paper.incomplete', { n: lacking.length }), lacking.slice(0, 6).map(nameOf).join(', ') + (lacking.length > 6 ? ' …' : '')) : undefined]);
  }

  return {
    title: t('paper.title'),
    update() {
      redraw(top, [head({ back: [to('sheet'), jobName(store)], title: t('paper.title'), sub: t('paper.sub') })]);
      bar.update(store);
      draw();
    },
    unmount: foot.gone,
  };
}
