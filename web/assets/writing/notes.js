/*
 * Shows the notes as the recipe's page will show them, while they are written.
 *
 * Usage: previewNotes(form), with a textarea named notes and a [data-notes-preview] in the form.
 */

import { newest, pageOf, put } from '../frame/parts.js';

/** Milliseconds of a pause in the typing. */
const PAUSE = 250;

export function previewNotes(form) {
  const notes = form.elements.namedItem('notes');
  const preview = form.querySelector('[data-notes-preview]');
  const next = newest();
  let timer = 0;

  async function show() {
    const signal = next();
    try {
      const body = new URLSearchParams({ notes: notes.value });
      const page = await pageOf('/editor/notes', { body, signal });
      if (!signal.aborted) {
        put(preview, page.body);
      }
    } catch {
      // The next pause asks again.
    }
  }

  notes.addEventListener('input', () => {
    clearTimeout(timer);
    timer = setTimeout(show, PAUSE);
  });
}
