/*
 * Two comforts that nothing depends on: files dropped onto a form with data-drop are its chosen
 * files, and a button with data-copies="ID" copies the text of that field.
 *
 * Usage: load as a module.
 */

for (const form of document.querySelectorAll('[data-drop]')) {
  const files = form.querySelector('input[type="file"]:not([webkitdirectory])');
  const over = (event, on) => {
    if (event.dataTransfer?.types.includes('Files')) {
      event.preventDefault();
      form.toggleAttribute('data-over', on);
    }
  };
  form.addEventListener('dragover', (event) => over(event, true));
  form.addEventListener('dragleave', (event) => over(event, false));
  form.addEventListener('drop', (event) => {
    over(event, false);
    if (event.dataTransfer?.files.length > 0) {
      files.files = event.dataTransfer.files;
    }
  });
}

for (const button of document.querySelectorAll('[data-copies]')) {
  const field = document.getElementById(button.dataset.copies);
  button.hidden = false;
  button.addEventListener('click', async () => {
    field.select();
    try {
      await navigator.clipboard.writeText(field.value);
      button.textContent = 'Copied';
    } catch {
      // The text is selected: the reader's own key copies it.
      button.textContent = 'Selected, copy it with your keys';
    }
  });
}
