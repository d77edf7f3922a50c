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

const isInList = (target) =>
  target === document.body || target.id === 'content' || target.closest('#rows') !== null;

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

  /** What a key does outside of fields; whether it did anything. */
  function inPage({ key, target, shiftKey }) {
    switch (key) {
      case '/':
        box?.focus();
        box?.select();
        return box !== undefined;
      case 'ArrowDown':
      case 'ArrowUp':
        return !shiftKey && isInList(target) && move(key === 'ArrowDown' ? 1 : -1);
      case ' ':
        if (selection === undefined || !target.matches('.row h2 a')) {
          return false;
        }
        selection.toggle(target.closest('.row'));
        return true;
      case 'Escape':
        return selection?.clear() ?? false;
      default:
        return false;
    }
  }

  document.addEventListener('keydown', (event) => {
    const chord = event.ctrlKey || event.metaKey || event.altKey || event.isComposing;
    if (chord || document.querySelector('dialog[open]') !== null) {
      return;
    }
    if (event.target === box) {
      inBox(event);
    } else if (!isTyping(event.target) && inPage(event)) {
      event.preventDefault();
    }
  });
}
