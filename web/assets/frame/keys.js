/*
 * Shows the list of keys: on "?", and on links that carry data-opens-keys.
 *
 * Usage: load as a module on a page with <dialog id="keys-dialog">. Without this module the links
 * lead to the page of keys. No key does anything while somebody is typing.
 */

const dialog = document.getElementById('keys-dialog');

const isTyping = (target) =>
  target instanceof Element &&
  target.closest('input, textarea, select, [contenteditable]:not([contenteditable="false"])') !==
    null;

function show(event) {
  if (!dialog.open) {
    event.preventDefault();
    dialog.showModal();
  }
}

document.addEventListener('keydown', (event) => {
  if (event.key === '?' && !event.ctrlKey && !event.metaKey && !isTyping(event.target)) {
    show(event);
  }
});

document.addEventListener('click', (event) => {
  const plain = !event.ctrlKey && !event.metaKey && !event.shiftKey && event.button === 0;
  if (plain && event.target.closest('[data-opens-keys]')) {
    show(event);
  }
});
