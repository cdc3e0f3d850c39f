// @ts-check
/**
 * Times by the clock on the wall at the site: minutes since 1970-01-01 00:00 as that clock shows it, or minutes after
 * midnight. They are written as they are, whatever time zone this device is in.
 */
import { locale } from './words.js';

/** @param {number} minutes @param {Intl.DateTimeFormatOptions} how */
const written = (minutes, how) => new Date(minutes * 60_000).toLocaleString(locale(), { timeZone: 'UTC', ...how });

/** A time of day: `6:05 pm`. @param {number} minutes after midnight or since 1970 */
export const timeOf = (minutes) => written(minutes, { hour: 'numeric', minute: '2-digit' });

/** A day: `Tue, Nov 3`. @param {number} minutes since 1970 */
export const dayOf = (minutes) => written(minutes, { weekday: 'short', month: 'short', day: 'numeric' });

/** Day and time: `Tue, Nov 3, 6:05 pm`. @param {number} minutes since 1970 */
export const wall = (minutes) => written(minutes, { weekday: 'short', month: 'short', day: 'numeric', hour: 'numeric', minute: '2-digit' });

/** What the clock on the wall shows at an instant. @param {import('./core.js').Now} now */
export const wallOf = ({ ms, offset_min }) => ms / 60_000 + offset_min;
