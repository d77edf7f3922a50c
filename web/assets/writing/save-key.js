/*
 * Ctrl+S and Cmd+S save the form, also while somebody is typing.
 *
 * Usage: saveByKey(form), with a button.main in it.
 */

export function saveByKey(form) {
  document.addEventListener('keydown', (event) => {
    const chord = (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey;
    if (chord && event.key.toLowerCase() === 's') {
      event.preventDefault();
      form.requestSubmit(form.querySelector('button.main'));
    }
  });
}
