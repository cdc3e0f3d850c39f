// @ts-check
/** What goes into the van: kits by weight, what is worn by people and entries, nozzles, masking, and the rest by name. */
import { figures } from './figures.js';
import { byId } from './parts.js';
import { entryText } from './papers/leaf.js';
import { t } from './words.js';

/** @typedef {import('./store.js').Store} Store */
/** @typedef {{key: string, what: string, why: string, count?: string, path?: string, kit?: number}} Item `path`: its working; `kit`: the sheet that lacks its weight */

/** What every job takes along, counted by nobody but the crew. */
export const REST = ['respirators', 'goggles', 'water', 'film', 'tape', 'fan', 'signs', 'waste', 'meters', 'probe', 'knife', 'scrap', 'extinguisher', 'sheets'];

/** A cylinder may weigh so many pounds: 49 CFR 173.6, from memory. Of a kit only the whole is known: what is lighter holds none that is heavier. */
const CYLINDER_LB = 220;

/** The kits of the van. @param {Store} store @returns {Item[]} */
export function vanKits(store) {
  const { job, estimate } = store;
  const w = figures(job.units);
  return (estimate?.people.load.kits ?? []).map(({ kit, owned, count, gross_lb: gross }) => {
    const name = byId(owned ? job.stock : job.kits, kit)?.name.trim() || t('kits.unnamed');
    const known = gross !== undefined && gross !== null;
    return {
      key: `kit-${owned ? 'own-' : ''}${kit}`, what: name, count: String(count), kit: known || owned ? undefined : kit,
      why: known ? t('people.load.gross_each', { weight: w.weight(gross), all: w.weight(gross * count) }) + (gross > CYLINDER_LB ? `. ${t('people.load.gross_heavy', { most: w.weight(CYLINDER_LB) })}` : '') : t('people.load.gross_none'),
    };
  });
}

/** What is worn and used up, with its count where people and entries give one. @param {Store} store @returns {Item[]} */
export function vanCounts(store) {
  const load = store.estimate?.people.load;
  const one = (/** @type {'suits' | 'gloves' | 'cartridges' | 'nozzles'} */ key) => {
    const count = load?.[key] ?? undefined;
    return { key, what: t(`people.load.${key}`), why: t(`people.load.${key}_why`), count: count === undefined ? undefined : String(count), path: key === 'nozzles' ? 'spraying.nozzles' : undefined };
  };
  return [one('suits'), one('gloves'), one('cartridges'), one('nozzles'),
    { key: 'mask_run', what: t('people.load.mask'), why: t('people.load.mask_why'), count: entryText(store, 'job', store.job.entries, 'mask_run') || undefined }];
}
