/*
 * Shows what every change makes of the sound, while it is typed or turned.
 *
 * Usage: answerLive(form) → {changed()}, with #answer and #status in the form. The form is posted
 * to the address in its data-live at most once in a pause; the answer holds the plot, the numbers, and what is
 * wrong with which field.
 *
 * One question is under way at a time. When its answer takes long and the form has changed, it is
 * given up and the next one is sent. Answers carry the number of their question, and one that is
 * older than what is shown is thrown away, whichever way it came.
 */

import { pageOf, put } from '../frame/parts.js';
import { fieldsOf } from './fields.js';

/** Milliseconds of a pause in the typing. */
const PAUSE = 60;

/** Milliseconds after which a question may be given up for a newer one. */
const PATIENCE = 250;

/** Milliseconds without a change until what is wrong with the field in hand is said aloud. */
const CALM = 900;

/** Which of the drawings the style sheet shows. */
const WIDE = window.matchMedia('(min-width: 44rem)');

/** What is wrong with which field. What is only missing is said when the form is saved. */
function read(items) {
  const wrong = [...items].filter((item) => item.dataset.missing !== 'true');
  return new Map(wrong.map((item) => [item.dataset.field, item.textContent]));
}

export function answerLive(form) {
  const section = form.querySelector('.answer');
  const place = form.querySelector('#answer');
  const status = form.querySelector('#status');
  let timer = 0;
  let calm = 0;
  let asked = 0;
  let shown = 0;
  let open = false;
  let current = null;
  let since = -PAUSE;
  let faults = new Map();
  let pressed = false;
  const late = [];

  /**
   * Does something that may move the page, but never under a finger: a button that moves between
   * press and release is not clicked.
   */
  function whenFree(act) {
    if (pressed) {
      late.push(act);
    } else {
      act();
    }
  }

  function released() {
    pressed = false;
    // After the click that follows the release.
    setTimeout(() => late.splice(0).forEach((act) => act()), 0);
  }

  function changed() {
    open = true;
    clearTimeout(calm);
    calm = setTimeout(settle, CALM);
    if (timer === 0) {
      // After a rest at once; while something is turned, once in a pause.
      timer = setTimeout(ask, Math.max(0, since + PAUSE - performance.now()));
    }
  }

  async function ask() {
    timer = 0;
    if (current !== null) {
      const left = current.since + PATIENCE - performance.now();
      if (left > 0) {
        timer = setTimeout(ask, Math.min(left, PAUSE));
        return;
      }
      current.given.abort();
    }
    open = false;
    asked += 1;
    since = performance.now();
    const mine = { number: asked, since, given: new AbortController() };
    current = mine;
    const body = fieldsOf(form);
    // One drawing is enough; when the other is wanted it is asked for.
    body.set('form.width', WIDE.matches ? 'wide' : 'narrow');
    try {
      const page = await pageOf(form.dataset.live, { body, signal: mine.given.signal });
      whenFree(() => show(mine.number, page.body));
    } catch {
      // Given up, or the server is away: what is shown stays, and drafts say if it lasts.
    } finally {
      if (current === mine) {
        current = null;
      }
      if (open && timer === 0) {
        timer = setTimeout(ask, PAUSE);
      }
    }
  }

  /** Puts an answer in place, unless a newer one is there. */
  function show(number, fresh) {
    if (number <= shown) {
      return;
    }
    shown = number;
    const { dataset } = fresh.querySelector('.answer-body');
    const kept = dataset.kept === 'true' && place.querySelector('figure') !== null;
    section.classList.toggle('waiting', kept);
    faults = read(fresh.querySelectorAll('.answer-faults li'));
    mark(calm !== 0);
    place.dataset.answered = String(number);
    if (!kept) {
      put(place, fresh);
    }
  }

  /**
   * Writes what is wrong beside the fields; the one in hand is left alone while somebody types.
   */
  function mark(typing) {
    for (const text of form.querySelectorAll('[data-fault-of]')) {
      const name = text.dataset.faultOf;
      const field = form.querySelector(`[id="f-${name}"]`);
      const fault = faults.get(name) ?? '';
      if (fault !== '' && typing && field === document.activeElement) {
        continue;
      }
      text.textContent = fault;
      field?.toggleAttribute('aria-invalid', false);
      if (fault !== '') {
        field?.setAttribute('aria-invalid', 'true');
      }
    }
  }

  /** When nothing has moved for a while: the field in hand is judged, the numbers are read out. */
  function settle() {
    if (current !== null || open) {
      calm = setTimeout(settle, CALM);
      return;
    }
    calm = 0;
    whenFree(() => mark(false));
    const wrong = faults.size === 1 ? 'One field' : `${faults.size} fields`;
    status.textContent =
      faults.size > 0
        ? `${wrong} to be mended.`
        : (place.querySelector('.answer-body')?.dataset.status ?? '');
  }

  form.addEventListener('input', changed);
  WIDE.addEventListener('change', changed);
  document.addEventListener('pointerdown', (event) => {
    pressed = event.target.closest('button, a, summary, label, select') !== null;
  });
  document.addEventListener('pointerup', released);
  document.addEventListener('pointercancel', released);
  form.addEventListener('focusout', () => whenFree(() => mark(false)));
  return { changed };
}
