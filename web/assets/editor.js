/*
 * The page on which a recipe is written. It works without any of this; each module here makes one
 * thing quicker or safer.
 *
 * Usage: load as a module on the page with <form id="editor">.
 */

import { narrowChannels } from './editor/channels.js';
import { keepDrafts } from './editor/drafts.js';
import { answerLive } from './editor/live.js';
import { showLocalTimes } from './editor/local-times.js';
import { previewNotes } from './editor/notes.js';
import { addRowsInPlace } from './editor/rows.js';
import { saveByKey } from './editor/save-key.js';
import { putSliders } from './editor/sliders.js';

const form = document.getElementById('editor');

if (form !== null) {
  showLocalTimes(document);
  putSliders(form);
  narrowChannels(form);
  const live = answerLive(form);
  addRowsInPlace(form, (part) => {
    putSliders(part);
    narrowChannels(form);
    live.changed();
  });
  previewNotes(form);
  keepDrafts(form);
  saveByKey(form);
}
