// What a visitor is told of a host's list: in the frame's own words, never how to fill in a sheet.
import assert from 'node:assert/strict';
import test from 'node:test';
import { amiss, overall, sayable, unreadCharge } from '../../www/app/embed/told.js';

const finding = (part, field, code, severity = 'stop') => ({ at: { part, id: 3, field }, code, severity, figures: [], source: '' });
const store = (...findings) => ({ job: {}, estimate: { findings } });

test('what only the host can mend is told as that, once', () => {
  for (const one of [finding('kit', 'label_yield', 'not_a_number'), finding('kit', 'price', 'kit_unusable', 'warn'), finding('kit', 'net_weight', 'mass_short', 'warn'),
    finding('r_row', 'r', 'not_a_number'), finding('foam', 'density', 'two_meanings'), finding('job', 'sales_tax', 'not_a_number'), finding('job', 'delivery', 'negative')]) {
    assert.deepEqual(amiss(store(one, one)), ['unread'], JSON.stringify(one.at));
    assert.deepEqual([overall(store(one)), sayable(store(one))], [[], []], 'not in the words of a sheet');
  }
  for (const code of ['no_kits', 'not_enough_kits']) {
    assert.deepEqual(amiss(store(finding('purchase', '', code))), ['no_kits']);
    assert.deepEqual(sayable(store(finding('purchase', '', code))), []);
  }
});

test('what is no fault of the list is not told as one', () => {
  for (const one of [finding('foam', 'r_at', 'no_listed_r', 'warn'), finding('job', 'sales_tax', 'unlikely', 'warn'), finding('job', 'flames_out', 'unanswered'),
    finding('surface', 'depth', 'needed'), finding('purchase', '', 'too_big'), finding('foam', 'flame', 'burns_too_fast', 'warn')]) assert.deepEqual(amiss(store(one)), [], one.code);
  assert.deepEqual(overall(store(finding('purchase', '', 'too_big'), finding('foam', 'flame', 'burns_too_fast', 'warn'))).length, 2, 'what matters to a visitor stays');
  assert.deepEqual(amiss({ job: {}, estimate: undefined }), []);
});

test('tax or delivery that cannot be read is no kit without a price', () => {
  assert.equal(unreadCharge(store(finding('job', 'sales_tax', 'above_limit'))), true);
  assert.equal(unreadCharge(store(finding('kit', 'price', 'not_a_number'), finding('job', 'sales_tax', 'unlikely', 'warn'))), false);
});
