/*
 * Suggests how a search may go on, in a line below the box: a combobox with a list box. Arrow down
 * goes into the suggestions, Enter takes one, Escape leaves them; typing on ignores them.
 *
 * Usage: offerCompletions(input, list) gives {close, isOpen, key(event)}; key is asked first about
 * keys in the box and says whether it used one.
 */

import { newest, pageOf, put } from '../frame/parts.js';

const PAUSE = 100;

const NOTHING = document.createDocumentFragment();

export function offerCompletions(input, list) {
  let timer = 0;
  let active = -1;
  const next = newest();

  input.setAttribute('role', 'combobox');
  input.setAttribute('aria-autocomplete', 'list');
  input.setAttribute('aria-controls', list.id);
  input.setAttribute('aria-expanded', 'false');

  const options = () => [...list.children];

  function mark(index) {
    active = index;
    options().forEach((option, at) => option.setAttribute('aria-selected', String(at === index)));
    if (index >= 0) {
      input.setAttribute('aria-activedescendant', options()[index].id);
      options()[index].scrollIntoView({ block: 'nearest', inline: 'nearest' });
    } else {
      input.removeAttribute('aria-activedescendant');
    }
  }

  function show(answer) {
    put(list, answer);
    input.setAttribute('aria-expanded', String(options().length > 0));
    mark(-1);
  }

  function close() {
    clearTimeout(timer);
    next();
    show(NOTHING);
  }

  function take(option) {
    input.value = option.dataset.text;
    input.setSelectionRange(input.value.length, input.value.length);
    input.focus();
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }

  async function ask() {
    const signal = next();
    // Only what stands before the cursor is completed, and only at the end of the text.
    if (input.selectionStart !== input.value.length || input.value.trim() === '') {
      show(NOTHING);
      return;
    }
    try {
      const text = encodeURIComponent(input.value);
      const page = await pageOf(`/completions?text=${text}`, { signal });
      if (!signal.aborted && document.activeElement === input) {
        show(page.body);
      }
    } catch {
      // Overtaken, or away: there is nothing to suggest.
    }
  }

  input.addEventListener('input', () => {
    clearTimeout(timer);
    timer = setTimeout(ask, PAUSE);
  });
  input.addEventListener('blur', () => setTimeout(close, 150));
  list.addEventListener('mousedown', (event) => event.preventDefault());
  list.addEventListener('click', (event) => {
    const option = event.target.closest('[role="option"]');
    if (option !== null) {
      take(option);
    }
  });

  function key(event) {
    const last = options().length - 1;
    if (event.key === 'ArrowDown' && active < last) {
      mark(active + 1);
    } else if (event.key === 'ArrowUp' && active >= 0) {
      mark(active - 1);
    } else if (event.key === 'Enter' && active >= 0) {
      take(options()[active]);
    } else if (event.key === 'Escape' && last >= 0) {
      close();
    } else {
      return false;
    }
    event.preventDefault();
    return true;
  }

  return { close, key };
}
