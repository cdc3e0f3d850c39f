// @ts-check
/** Says once that this device keeps nothing. */
import { notify } from '../notices.js';
import { t } from '../words.js';

export const tellLost = () => notify('practice', 'watch', t('practice.not_kept'), t('practice.not_kept_do'), { once: true });
