/*
 * Every page with a form in which a recipe, a gate, a module or a session is written. It works
 * without any of this; each module here makes one thing quicker or safer, where the form has what it
 * needs.
 *
 * Usage: load as a module on a page with <form data-draft>.
 */

import '../reading/plot-cursor.js';
import { takeUp } from '../frame/parts.js';
import { narrowChannels } from './channels.js';
import { keepDrafts } from './drafts.js';
import { answerLive } from './live.js';
import { previewNotes } from './notes.js';
import { addRowsInPlace } from './rows.js';
import { saveByKey } from './save-key.js';
import { putSliders } from './sliders.js';

const form = document.querySelector('form[data-draft]');

if (form !== null) {
  takeUp(putSliders);
  takeUp(narrowChannels);
  if (form.dataset.live !== undefined) {
    answerLive(form);
    addRowsInPlace(form);
  }
  if (form.querySelector('[data-notes-preview]') !== null) {
    previewNotes(form);
  }
  keepDrafts(form);
  saveByKey(form);
}
