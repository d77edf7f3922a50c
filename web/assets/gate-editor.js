/*
 * The page on which a gate is written. It works without any of this; the modules are those of the
 * recipe's editor.
 *
 * Usage: load as a module on the page with <form id="editor">.
 */

import { keepDrafts } from './editor/drafts.js';
import { answerLive } from './editor/live.js';
import { previewNotes } from './editor/notes.js';
import { addRowsInPlace } from './editor/rows.js';
import { saveByKey } from './editor/save-key.js';
import { putSliders } from './editor/sliders.js';

const form = document.getElementById('editor');

if (form !== null) {
  putSliders(form);
  const live = answerLive(form);
  addRowsInPlace(form, (part) => {
    putSliders(part);
    live.changed();
  });
  previewNotes(form);
  keepDrafts(form);
  saveByKey(form);
}
