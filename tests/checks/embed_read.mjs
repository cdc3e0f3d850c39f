// What the page's own reader finds wrong with settings of an embed: JSON texts in, one a line; places with reasons out.
//
//   node tests/checks/embed_read.mjs < LINES

import { createInterface } from 'node:readline';
import { readText } from '../../www/app/embed/settings.js';

for await (const line of createInterface({ input: process.stdin })) {
  console.log(JSON.stringify(readText(line, 'en').faults.map((one) => [one.at, one.why])));
}
