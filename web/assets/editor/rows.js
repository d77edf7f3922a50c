/*
 * Adds and removes rows and stages without leaving the place: the server makes the same page as it
 * does without scripts, and the part that the button belongs to is taken from it.
 *
 * Usage: addRowsInPlace(form, taken). A button that carries data-part="connections" stands in
 * #part-connections; its name and value go along. taken(part) is called with the new part.
 */

import { fieldsOf } from './fields.js';

export function addRowsInPlace(form, taken) {
  form.addEventListener('submit', async (event) => {
    const button = event.submitter;
    const name = button?.dataset.part;
    if (name === undefined) {
      return;
    }
    event.preventDefault();
    const fields = fieldsOf(form);
    fields.set(button.name, button.value);
    const answer = await fetch(button.formAction, { method: 'POST', body: fields });
    if (!answer.ok) {
      return;
    }
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    const id = `part-${name}`;
    const part = document.importNode(page.getElementById(id), true);
    form.querySelector(`#${id}`).replaceWith(part);
    taken(part);
    focus(part, button.name === 'form.add');
  });
}

/** To the start of the row that is new, or to what is left. */
function focus(part, added) {
  const rows = part.querySelectorAll('tbody tr, [data-stage]');
  const row = added ? rows[rows.length - 1] : null;
  const target = row?.querySelector('input:not([type="hidden"]), select') ?? part.querySelector('summary');
  target.focus();
}
