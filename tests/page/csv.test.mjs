import { test } from 'node:test';
import assert from 'node:assert/strict';
import { csv, shown } from '../../www/app/csv.js';

// RFC 4180, section 2: lines end in CRLF, quotes within a quoted field are doubled.
test('rows, quotes and line ends', () => {
  assert.equal(csv([['a', 'b "c", d\ne'], [1, undefined]]), '\uFEFF"a","b ""c"", d\ne"\r\n1,\r\n');
});

// OWASP, CSV Injection: the characters that a cell must not begin with.
test('a text is never a formula, a number never a text', () => {
  for (const lead of ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠']) assert.equal(csv([[`${lead}1+1`]]), `\uFEFF"'${lead}1+1"\r\n`);
  assert.equal(csv([['a=1', ' =1', "'x"]]), `\uFEFF"a=1"," =1","'x"\r\n`);
  assert.equal(csv([[-1.5, 0, 1e-7, 1e21, Infinity, NaN]]), '\uFEFF-1.5,0,0.0000001,1000000000000000000000,,\r\n');
});

// What a control would hide at the front is looked at first.
test('controls are blanked out', () => assert.equal(csv([['a\0b\x07c\x7f', '\0=1']]), '\uFEFF"a b c "," =1"\r\n'));

test('a written figure as a number', () => {
  const cases = {
    '1,234.5\u00a0ft²': 1234.5, '3¼\u00a0in': 3.25, '½\u00a0in': 0.5, '3\u00a03/16\u00a0in': 3.1875, '3/16\u00a0in': 0.1875, '11\u00a015/16\u00a0in': 11.9375, '2.37\u00a0in': 2.37,
    '1\u202f234.56\u00a0m²': 1234.56, '82.6\u00a0mm': 82.6, '3.823\u00a0m': 3823, 'R-15.2': 15.2, 'RSI\u00a02.64': 2.64, 'U-0.060': 0.06, 'U\u00a00.32\u00a0W/m²·K': 0.32, '$1,784': 1784, '$12.50': 12.5, '−$3': -3, '−2½\u00a0in': -2.5,
    '0\u00a0bd\u00a0ft': 0, '–': undefined, '': undefined, 'about 3': undefined,
  };
  for (const [written, value] of Object.entries(cases)) assert.equal(shown(written), value, written);
});
