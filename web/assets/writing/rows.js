/*
 * Adds and removes rows and stages without leaving the place: the server makes the same page as it
 * does without scripts, and the part that the button belongs to is taken from it.
 *
 * Usage: addRowsInPlace(form). A button that carries data-part="connections" stands in
 * #part-connections; its name and value go along.
 */

import { pageOf, put } from '../frame/parts.js';
import { fieldsOf } from './fields.js';

/** The part as the server makes it of the form, as the form is when the answer comes. */
async function partOf(form, button, id) {
  const typed = fieldsOf(form).toString();
  const body = new URLSearchParams(typed);
  body.set(button.name, button.value);
  const page = await pageOf(button.formAction, { body });
  // What was typed meanwhile must not be overwritten by what was there before.
  return fieldsOf(form).toString() === typed ? page.getElementById(id) : partOf(form, button, id);
}

/** To the start of the row that is new, or to what is left. */
function focus(part, added) {
  const rows = part.querySelectorAll('tbody tr, [data-stage]');
  const row = added ? rows[rows.length - 1] : null;
  const target =
    row?.querySelector('input:not([type="hidden"]), select') ?? part.querySelector('summary');
  target?.focus();
}

export function addRowsInPlace(form) {
  let asking = false;

  async function ask(button) {
    const part = form.querySelector(`#part-${button.dataset.part}`);
    asking = true;
    try {
      put(part, await partOf(form, button, part.id));
      form.dispatchEvent(new Event('input'));
      focus(part, button.name === 'form.add');
    } catch {
      // The notebook is away, which drafts say: the button can be pressed again.
    } finally {
      asking = false;
    }
  }

  form.addEventListener('submit', (event) => {
    if (event.submitter?.dataset.part !== undefined) {
      event.preventDefault();
      if (!asking) {
        ask(event.submitter);
      }
    }
  });
}
