/*
 * Keeps what is typed: on the server after every pause, and in this browser while the server can't
 * be reached. What this browser kept is handed over as soon as an editor is opened again.
 *
 * Usage: keepDrafts(form). The form has hidden fields form.key, the name of its draft, and
 * form.step, which rises with every change; #kept tells where the draft is.
 */

import { fieldsOf } from './fields.js';
import { showLocalTimes } from './local-times.js';

/** Milliseconds of a pause in the typing. */
const PAUSE = 250;

/** Milliseconds until a server that could not be reached is tried again. */
const RETRY = 1500;

const PREFIX = 'thudbook-draft-';

const addressOf = (key) => `/editor/drafts/${key}`;

/** Hands over what this browser kept, and gives the keys of the drafts that were handed over. */
async function handOver() {
  const handed = [];
  for (const name of Object.keys(localStorage).filter((k) => k.startsWith(PREFIX))) {
    const body = new URLSearchParams(localStorage.getItem(name));
    const key = name.slice(PREFIX.length);
    try {
      const answer = await fetch(addressOf(key), { method: 'POST', body });
      if (answer.ok) {
        localStorage.removeItem(name);
        handed.push(key);
      }
    } catch {
      // Still away: it stays here.
    }
  }
  return handed;
}

/** Shows what can be gone on with as it is now; the form, in which somebody may type, stays. */
async function renewOffers() {
  const answer = await fetch(location.href);
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  const fresh = page.getElementById('drafts');
  if (answer.ok && fresh !== null) {
    showLocalTimes(fresh);
    document.getElementById('drafts').replaceChildren(...document.importNode(fresh, true).childNodes);
  }
}

export function keepDrafts(form) {
  const key = form.elements.namedItem('form.key').value;
  const counter = form.elements.namedItem('form.step');
  const word = form.querySelector('#kept');
  let step = Number(counter.value);
  let safe = step;
  let timer = 0;
  let sending = null;
  let leaving = false;

  function mirror() {
    try {
      localStorage.setItem(PREFIX + key, fieldsOf(form).toString());
      return true;
    } catch {
      return false;
    }
  }

  /** Whether anything that was typed is nowhere but on this page. */
  let exposed = false;

  function later(milliseconds) {
    if (timer === 0 && !leaving) {
      timer = setTimeout(send, milliseconds);
    }
  }

  function send() {
    timer = 0;
    if (sending === null) {
      sending = keep().finally(() => {
        sending = null;
        if (safe < step) {
          later(word.dataset.away === 'true' ? RETRY : PAUSE);
        }
      });
    }
    return sending;
  }

  async function keep() {
    const sent = step;
    try {
      const answer = await fetch(addressOf(key), { method: 'POST', body: fieldsOf(form) });
      if (!answer.ok) {
        throw new Error(String(answer.status));
      }
      safe = Math.max(safe, sent);
      if (safe === step) {
        exposed = false;
        localStorage.removeItem(PREFIX + key);
      }
      // Loading the page again goes on with the draft.
      history.replaceState(null, '', `${form.getAttribute('action')}?draft=${key}`);
      say('Your draft is kept.', false);
    } catch {
      exposed = !mirror();
      say(
        exposed
          ? 'The notebook can’t be reached, and this browser keeps nothing: don’t leave the page.'
          : 'The notebook can’t be reached. What you write is kept in this browser.',
        true,
      );
    }
  }

  function say(words, away) {
    word.textContent = words;
    word.dataset.away = String(away);
  }

  form.addEventListener('input', () => {
    step += 1;
    counter.value = String(step);
    exposed = word.dataset.away === 'true' ? !mirror() : true;
    later(PAUSE);
  });

  form.addEventListener('submit', (event) => {
    if (event.defaultPrevented) {
      return;
    }
    // A draft that comes after its recipe was saved would be offered again.
    clearTimeout(timer);
    timer = 0;
    if (leaving) {
      event.preventDefault();
      return;
    }
    leaving = true;
    if (sending !== null) {
      event.preventDefault();
      sending.then(() => {
        leaving = false;
        form.requestSubmit(event.submitter);
      });
    }
  });

  window.addEventListener('pageshow', () => {
    leaving = false;
  });

  window.addEventListener('pagehide', () => {
    if (!leaving && safe < step) {
      mirror();
      fetch(addressOf(key), { method: 'POST', body: fieldsOf(form), keepalive: true }).catch(() => {});
    }
  });

  window.addEventListener('beforeunload', (event) => {
    if (!leaving && exposed && safe < step && !mirror()) {
      event.preventDefault();
    }
  });

  handOver().then((handed) => {
    if (handed.includes(key)) {
      // This very draft: the form has to show it.
      location.reload();
    } else if (handed.length > 0) {
      renewOffers().catch(() => {});
    }
  });
}
