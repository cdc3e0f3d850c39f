// @ts-check
/** What the cards of an exercise are made of. */
import { el } from '../list.js';
import { row } from '../parts.js';

/** A card: its name and what is on it. @param {string} name @param {...(Node | undefined)} inside */
export const card = (name, ...inside) => el('section', 'ex-card', el('h2', 'bar', name), ...inside);

/** Rows of what there is to read: what it is, the figure, a line below the name. @param {(readonly [string, string, string?])[]} rows */
export const facts = (rows) => el('ul', 'rows', ...rows.map(([what, value, below]) => row(what, below ?? '', value)));
