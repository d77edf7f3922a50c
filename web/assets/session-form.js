/*
 * The form of a session: what is typed is kept on the device until it is saved, so that a reload or
 * a closed tab loses nothing; an error summary takes the focus; Ctrl+S and Cmd+S save.
 *
 * Usage: load as a module. The form has data-kept, the name under which it is kept, and a
 * .recall-status for what it has to say.
 */

function fieldsOf(form) {
  return [...form.elements].filter((field) => field.name !== '' && field.matches('input:not([type="hidden"]), textarea'));
}

function valuesOf(form) {
  const values = {};
  for (const field of fieldsOf(form)) {
    values[field.name] = field.type === 'checkbox' ? field.checked : field.value;
  }
  return values;
}

function keepTyped(form) {
  const key = `session-form:${form.dataset.kept}`;
  const version = form.elements.namedItem('version').value;
  const status = form.querySelector('.recall-status');

  function drop() {
    localStorage.removeItem(key);
  }

  try {
    const kept = JSON.parse(localStorage.getItem(key));
    const rows = kept === null ? 0 : Object.keys(kept.values).filter((name) => name.endsWith('.recipe')).length;
    const fits = rows === form.querySelectorAll('input[name$=".recipe"]').length;
    // Only a page that was opened anew: one that came back with faults holds what was typed.
    if (kept !== null && kept.version === version && fits && location.search === '' && document.querySelector('.fault-summary') === null) {
      for (const field of fieldsOf(form)) {
        const value = kept.values[field.name];
        if (typeof value === 'boolean') {
          field.checked = value;
        } else if (typeof value === 'string') {
          field.value = value;
        }
      }
      status.textContent = 'What was typed here before and not saved is back.';
    }
    form.addEventListener('input', () => {
      localStorage.setItem(key, JSON.stringify({ version, values: valuesOf(form) }));
    });
    form.addEventListener('submit', drop);
  } catch {
    // No store on this device: the form works without it.
  }
}

for (const form of document.querySelectorAll('form[data-kept]')) {
  keepTyped(form);
  document.addEventListener('keydown', (event) => {
    if ((event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey && event.key.toLowerCase() === 's') {
      event.preventDefault();
      form.requestSubmit(form.querySelector('button.main'));
    }
  });
}
document.querySelector('.fault-summary')?.focus();
