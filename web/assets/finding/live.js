/*
 * Searches while somebody types: after a short pause the list, its count and the filters are
 * fetched and put in place, and the address follows. Sending the form makes a new entry in the
 * history; back and forward lead to what was there, at the same place.
 *
 * Usage: listen(form, {found, asked}); found() runs when the list was replaced, asked() when the
 * form was sent.
 */

import { newest, pageOf, putParts } from '../frame/parts.js';

/** Milliseconds without a key before the notebook is asked. */
const PAUSE = 120;

/** Empty fields ask nothing. */
function query(form) {
  const asked = new URLSearchParams();
  for (const [name, value] of new FormData(form)) {
    if (value.trim() !== '') {
      asked.append(name, value);
    }
  }
  return asked.toString();
}

const address = (asked) => (asked === '' ? '/' : `/?${asked}`);

export function listen(form, { found, asked: sent }) {
  let timer = 0;
  let shown = query(form);
  // What the present entry of the history was made for.
  let entry = location.pathname + location.search;
  const next = newest();
  const status = document.querySelector('[data-part="count"]');

  /** Fetches a list and shows it; a newer question overtakes an older one. */
  async function show(asked, keep) {
    const signal = next();
    try {
      const page = await pageOf(`/found?${asked}`, { signal });
      if (signal.aborted) {
        return false;
      }
      putParts(page, { keep, otherwise: '.row h2 a' });
      found();
      return true;
    } catch (error) {
      if (error.name !== 'AbortError') {
        status.textContent = 'The notebook does not answer. Try again.';
      }
      return false;
    }
  }

  function ask(push) {
    clearTimeout(timer);
    const asked = query(form);
    if (push && address(asked) !== entry) {
      history.replaceState({}, '', entry);
      entry = address(asked);
      history.pushState({}, '', entry);
    } else {
      history.replaceState({}, '', address(asked));
    }
    if (asked !== shown) {
      shown = asked;
      show(asked, true);
    }
  }

  // Fields of the form also stand outside of it.
  const ofForm = (event) => event.target.form === form;
  document.addEventListener('input', (event) => {
    if (ofForm(event)) {
      if (event.target.checked && event.target.id.startsWith('f-tag-')) {
        // A tag can't be wanted and unwanted at once.
        const id = event.target.id;
        const other = id.endsWith('-not') ? id.slice(0, -4) : `${id}-not`;
        document.getElementById(other).checked = false;
      }
      clearTimeout(timer);
      timer = setTimeout(
        () => ask(false),
        event.target.matches('[type="checkbox"], select') ? 0 : PAUSE,
      );
    }
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    sent();
    // A place to come back to: the entry before keeps the list that it was made for.
    ask(true);
  });

  function setTyped(asked) {
    form.elements.q.value = asked.get('q') ?? '';
    document.getElementById('order').value = asked.get('order') ?? '';
  }

  /** Links that only change what is asked. */
  document.addEventListener('click', (event) => {
    const link = event.target.closest('a[data-find]');
    if (link === null || event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) {
      return;
    }
    event.preventDefault();
    history.replaceState({ y: window.scrollY }, '');
    history.pushState({}, '', link.href);
    entry = link.pathname + link.search;
    const asked = new URLSearchParams(link.search);
    setTyped(asked);
    shown = asked.toString();
    show(shown, false);
    form.elements.q.focus();
  });

  addEventListener('popstate', async (event) => {
    entry = location.pathname + location.search;
    const asked = new URLSearchParams(location.search);
    setTyped(asked);
    shown = asked.toString();
    if (await show(shown, false)) {
      scrollTo(0, event.state?.y ?? 0);
    }
  });

  // A browser that comes back may fill the fields with what they held then.
  addEventListener('pageshow', () => {
    if (query(form) !== shown) {
      setTyped(new URLSearchParams(location.search));
    }
  });
}
