// @ts-check
/**
 * The emergency sheet: numbers and places to fill in, and the first steps in the words of public first aid. It leads to
 * the safety data sheet and to those who are called; it replaces neither.
 */
import { el } from '../list.js';
import { t } from '../words.js';
import { fitted } from './inspector.js';
import { leaf, lines, section } from './leaf.js';

/** @typedef {import('../store.js').Store} Store */

/** What happened to people, and what at the place; each with its steps in order. @type {readonly (readonly [string, readonly string[]])[]} */
export const PEOPLE = [['breathing', ['air', 'sit', 'call', 'later']], ['eyes', ['rinse', 'lenses', 'doctor']], ['skin', ['clothes', 'wash', 'cured', 'frost', 'doctor']], ['swallowed', ['rinse', 'vomit', 'call']]];
/** @type {readonly (readonly [string, readonly string[]])[]} */
export const PLACE = [['leak', ['out', 'flames', 'valve', 'call', 'never']], ['fire', ['out', 'call', 'tell', 'never']]];

/** Who is called, and where one goes. */
export const CALLS = ['number', 'poison', 'hospital', 'supplier', 'lead'];

/** @param {readonly [string, readonly string[]]} what */
const happened = ([what, steps]) => section(t(`emergency.${what}`), el('ol', 'steps', ...steps.map((one) => el('li', '', t(`emergency.${what}.${one}`)))), el('p', 'note', t(`emergency.${what}.sds`)));

/** One page, in the largest type at which it stands on it; both columns about as long. @param {Store} store @param {HTMLElement} root */
export function emergency(store, root) {
  const { job } = store;
  const blank = (/** @type {string} */ key, /** @type {string} */ text = '') => ({ cells: [el('span', '', t(`emergency.${key}`), el('small', '', t(`emergency.${key}_why`))), text ? el('b', '', text) : undefined] });
  const foams = [...new Set(job.foams.map((one) => one.name.trim()).filter(Boolean))].join(', ');
  const columns = /** @type {[string, ('' | 'r' | 'w')?][]} */ ([[t('paper.what')], ['', 'w']]);
  return fitted(root, leaf(store, 'emergency',
    el('p', 'lead', el('b', '', t('emergency.first')), ' ', t('emergency.first_do')),
    section(t('emergency.calls'), lines(t('emergency.calls'), columns, [...CALLS.map((one) => blank(one)), blank('site', job.place.trim()), blank('product', foams), blank('sds')], 'write facts')),
    el('div', 'halves', el('div', '', ...PEOPLE.slice(0, -1).map(happened)), el('div', '', ...PEOPLE.slice(-1).map(happened), ...PLACE.map(happened))),
    el('p', 'note', t('emergency.governs'))));
}
