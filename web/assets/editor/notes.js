/*
 * Shows the notes as the recipe's page will show them, while they are written.
 *
 * Usage: previewNotes(form), with a textarea named notes and a [data-notes-preview] in the form.
 */

const PAUSE = 250;

export function previewNotes(form) {
  const notes = form.elements.namedItem('notes');
  const preview = form.querySelector('[data-notes-preview]');
  let timer = 0;
  let latest = 0;

  async function show() {
    latest += 1;
    const mine = latest;
    try {
      const answer = await fetch('/editor/notes', {
        method: 'POST',
        body: new URLSearchParams({ notes: notes.value }),
      });
      const html = await answer.text();
      if (answer.ok && mine === latest) {
        preview.innerHTML = html;
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
