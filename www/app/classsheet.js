// @ts-check
/**
 * Class sheets. `#/class` puts one together; `#/class/<seeds>` is the sheet as students get it, with their answers to save
 * as a file; `#/class/<seeds>/print` and `/key` are the worksheet and its key on paper. A sheet is its seeds and no more.
 */
import { mountForm } from './practice/classform.js';
import { mountPaper } from './practice/classpaper.js';
import { practice } from './practice/core.js';
import { seedsOf } from './practice/seeds.js';
import { mountSheet } from './practice/sheetscreen.js';
import { style } from './styles.js';

export const words = ['practice', 'exercises', 'slips', 'paper', 'surface', 'takeoff', 'depth', 'kits', 'ready', 'settings', 'sheet', 'hours', 'inspector'];

/** @type {import('./practice/core.js').Practice} */
let core;

export async function ready() {
  [core] = await Promise.all([practice(), style('papers')]);
}

/** @type {import('./view.js').Screen['mount']} */
export function mount(root, store, route) {
  const [seeds = '', what = ''] = route.rest;
  if (!seeds) return mountForm(root, core);
  if (what === 'print' || what === 'key') return mountPaper(root, core, seedsOf(seeds), what);
  return mountSheet(root, core, seedsOf(seeds));
}
