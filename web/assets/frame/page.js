/*
 * What every page has: the list of keys, times in the reader's own zone, the focus on what has to be
 * mended, and the end of a draft whose form was saved.
 *
 * Usage: load as a module on every page.
 */

import './keys.js';
import { settle } from './leaving.js';
import { takeUp } from './parts.js';
import { showLocalTimes } from './times.js';

settle();
takeUp(showLocalTimes);
document.querySelector('.fault-summary')?.focus();
