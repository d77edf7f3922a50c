/*
 * Moves between rows by keys: / to the box, arrows between rows, Enter opens (as on any link),
 * space selects, Escape clears.
 *
 * Usage: moveByKeys({box, completions, selection}), each of which may be missing. Rows are .row in
 * #rows; the link in their heading has the focus.
 */

const links = () => [...document.querySelectorAll('#rows .row h2 a')];

const isTyping = (target) =>
  target instanceof Element &&
  target.closest('input:not([type="checkbox"]), textarea, select, [contenteditable]') !== null;

export function moveByKeys({ box, completions, selection }) {
  /** The row that has the focus, or is nearest below the top of the window. */
  function move(step) {
    const all = links();
    const row = document.activeElement.closest('.row');
    const at = row === null ? -1 : all.findIndex((link) => row.contains(link));
    const next = row === null ? (step > 0 ? 0 : -1) : at + step;
    if (next >= 0 && next < all.length) {
      all[next].focus();
      all[next].closest('.row').scrollIntoView({ block: 'nearest' });
      return true;
    }
    if (next < 0 && box !== undefined) {
      box.focus();
      return true;
    }
    return false;
  }

  function inBox(event) {
    if (completions.key(event)) {
      return;
    }
    if (event.key === 'ArrowDown') {
      completions.close();
      event.preventDefault();
      move(1);
    } else if (event.key === 'Escape') {
      event.preventDefault();
      if (!selection.clear() && box.value !== '') {
        box.value = '';
        box.dispatchEvent(new Event('input', { bubbles: true }));
      }
    }
  }

  document.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) {
      return;
    }
    if (document.querySelector('dialog[open]') !== null) {
      return;
    }
    if (event.target === box) {
      inBox(event);
      return;
    }
    if (isTyping(event.target)) {
      return;
    }
    if (event.key === '/' && box !== undefined) {
      event.preventDefault();
      box.focus();
      box.select();
    } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      const { target } = event;
      const inList = target === document.body || target.id === 'content' || target.closest('#rows');
      if (inList && !event.shiftKey && move(event.key === 'ArrowDown' ? 1 : -1)) {
        event.preventDefault();
      }
    } else if (event.key === ' ' && event.target.matches('.row h2 a') && selection !== undefined) {
      event.preventDefault();
      selection.toggle(event.target.closest('.row'));
    } else if (event.key === 'Escape' && selection !== undefined) {
      if (selection.clear()) {
        event.preventDefault();
      }
    }
  });
}
