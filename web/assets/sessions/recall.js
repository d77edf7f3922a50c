/*
 * A recall sheet at the rack: every tick and every knob that was set otherwise is kept on the
 * device at once and sent to the notebook; while the connection is lost it waits here. The screen
 * stays awake where the browser can do that. Without this the sheet is a plain form.
 *
 * Usage: load as a module. The form has data-recall (the id of this recall), data-recipe,
 * data-revision and data-session, fields "tick" and "set.…", a hidden "step" and a .recall-status.
 */

import { keep, kept } from '../frame/device.js';

/** Milliseconds until a failed sending is tried again. */
const AGAIN = 4000;

function marksOf(form) {
  const ticked = [...form.querySelectorAll('input[name="tick"]:checked')].map((box) => box.value);
  const asSet = {};
  for (const field of form.querySelectorAll('input[name^="set."]')) {
    if (field.value.trim() !== '') {
      asSet[field.name.slice('set.'.length)] = field.value.trim();
    }
  }
  return { ticked, asSet };
}

function mark(form, marks) {
  const ticked = new Set(marks.ticked);
  for (const box of form.querySelectorAll('input[name="tick"]')) {
    box.checked = ticked.has(box.value);
  }
  for (const field of form.querySelectorAll('input[name^="set."]')) {
    field.value = marks.asSet[field.name.slice('set.'.length)] ?? '';
  }
}

/** What the device kept; nothing if it keeps nothing, or not for this page. */
function before(name) {
  try {
    return JSON.parse(kept(name));
  } catch {
    return null;
  }
}

function checkOff(form) {
  const name = `recall:${form.dataset.recall}`;
  const step = form.elements.namedItem('step');
  const status = form.querySelector('.recall-status');
  let sent = Number(step.value);
  let sending = false;
  let timer = 0;

  function say(words, waits) {
    if (status.textContent !== words) {
      status.textContent = words;
    }
    form.toggleAttribute('data-waits', waits);
  }

  async function send() {
    clearTimeout(timer);
    const now = Number(step.value);
    if (sending || now === sent) {
      return;
    }
    sending = true;
    try {
      const answer = await fetch(`/recalls/${form.dataset.recall}`, {
        method: 'PUT',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({
          recipe: form.dataset.recipe,
          revision: Number(form.dataset.revision),
          session: form.dataset.session,
          step: now,
          marks: marksOf(form),
        }),
      });
      if (!answer.ok) {
        throw new Error(String(answer.status));
      }
      sent = now;
      say('All ticks are in the notebook.', false);
    } catch {
      say('No connection: ticks are kept on this device and sent when it is back.', true);
      timer = setTimeout(send, AGAIN);
    } finally {
      sending = false;
    }
    if (Number(step.value) !== sent && !form.hasAttribute('data-waits')) {
      send();
    }
  }

  function changed() {
    step.value = String(Number(step.value) + 1);
    // Where nothing is kept the page itself still holds it.
    keep(name, JSON.stringify({ step: Number(step.value), marks: marksOf(form) }));
    send();
  }

  const waiting = before(name);
  if (waiting !== null && waiting.step > sent) {
    mark(form, waiting.marks);
    step.value = String(waiting.step);
    send();
  }
  form.addEventListener('change', (event) => {
    if (event.target.name === 'tick' || event.target.name.startsWith('set.')) {
      changed();
    }
  });
  // Enter in a knob's field goes on to the next row; it must not finish the recall.
  form.addEventListener('keydown', (event) => {
    if (event.key === 'Enter' && event.target.matches('input[name^="set."]')) {
      event.preventDefault();
      event.target.blur();
    }
  });
  addEventListener('online', send);
  form.addEventListener('submit', (event) => {
    if (!navigator.onLine) {
      event.preventDefault();
      say('No connection: finish when it is back. Nothing is lost meanwhile.', true);
    }
  });
}

/** Keeps the screen on while the page is looked at; a browser may refuse, which is no fault. */
async function stayAwake() {
  if (document.visibilityState === 'visible' && 'wakeLock' in navigator) {
    try {
      await navigator.wakeLock.request('screen');
      document.documentElement.toggleAttribute('data-awake', true);
    } catch {
      document.documentElement.toggleAttribute('data-awake', false);
    }
  }
}

for (const form of document.querySelectorAll('form[data-recall]')) {
  checkOff(form);
  stayAwake();
  document.addEventListener('visibilitychange', stayAwake);
}
document.querySelector('.notice[tabindex]')?.focus();
