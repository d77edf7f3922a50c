/*
 * The progress of predictions that a change of a gate has marked. All of it is whole without this; a
 * reload shows the same.
 *
 * Usage: load as a module. A #progress with data-address is asked again until it is finished; then
 * the numbers of the table beside it are put in their places, in which nothing moves.
 */

import { pageOf, put } from '../frame/parts.js';

/** Milliseconds between two questions. */
const PAUSE = 1000;

/** Rows keep their order, so the table stays where it is. */
async function renewTable() {
  const page = await pageOf(location.href);
  const fresh = page.querySelector('#moved tbody');
  const shown = document.querySelector('#moved tbody');
  if (fresh !== null && shown !== null) {
    put(shown, fresh);
  }
}

function follow(place) {
  async function ask() {
    if (document.hidden) {
      document.addEventListener('visibilitychange', ask, { once: true });
      return;
    }
    try {
      const fresh = (await pageOf(place.dataset.address)).querySelector('[data-progress]');
      const bar = place.querySelector('progress');
      const words = place.querySelector('[data-progress-words]');
      bar.value = fresh.querySelector('progress').value;
      // A live region speaks whenever its words change, so they change only now and then.
      const text = fresh.querySelector('[data-progress-words]').textContent;
      if (text !== words.textContent) {
        words.textContent = text;
      }
      if (fresh.dataset.finished === 'true') {
        place.querySelector('[data-progress]').dataset.finished = 'true';
        await renewTable();
        return;
      }
    } catch {
      // Away for a moment: the next question tells.
    }
    setTimeout(ask, PAUSE);
  }

  if (place.querySelector('[data-finished]') === null) {
    setTimeout(ask, PAUSE);
  }
}

const progress = document.getElementById('progress');
if (progress !== null) {
  follow(progress);
}
