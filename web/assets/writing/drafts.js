/*
 * Keeps what is typed, whatever is written: in this browser at every change, until the form was
 * saved; and on the server after every pause, for forms whose drafts the notebook keeps as well.
 *
 *   typed ──→ this browser ──→ server (forms with form.key)
 *                  │              │
 *   opened again ←─┴── offered ←──┘
 *
 * Usage: keepDrafts(form). The form has data-draft, the name of its draft; one that the server keeps
 * has hidden fields form.key and form.step, which rises with every change, and what was begun is
 * offered in #drafts. [data-draft-status] in the form tells where the draft is.
 */

import { drop, keep, kept } from '../frame/device.js';
import { answers, leaveWith, stay } from '../frame/leaving.js';
import { pageOf, put } from '../frame/parts.js';
import { PREFIX, post, postOthers, RETRY } from './draft-post.js';
import { fieldsOf } from './fields.js';

/** Milliseconds of a pause in the typing. */
const PAUSE = 250;

const AWAY = 'The notebook can’t be reached. What you write is kept in this browser.';
const NOWHERE =
  'The notebook can’t be reached, and this browser keeps nothing: don’t leave the page.';
const HERE_AGAIN = 'What was typed here before and not saved is back.';

const wait = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));

/** The draft of one form; its step rises with every change, and never falls behind another tab's. */
class Draft {
  constructor(form) {
    this.form = form;
    this.name = PREFIX + form.dataset.draft;
    this.counter = form.elements.namedItem('form.step');
    this.step = Number(this.counter?.value ?? 0);
    this.safe = this.step;
    this.status = form.querySelector('[data-draft-status]');
    this.leaving = false;
    this.mirrored = true;
    this.timer = 0;
    this.sending = null;
  }

  get served() {
    return this.counter !== null;
  }

  get unsafe() {
    return this.safe < this.step;
  }

  say(words, away) {
    this.status.textContent = words;
    this.status.dataset.away = String(away);
    this.status.dataset.safe = String(!this.unsafe);
  }

  mirror() {
    const fields = fieldsOf(this.form);
    fields.set('kept.at', String(Date.now()));
    this.mirrored = keep(this.name, fields.toString());
  }

  changed() {
    this.step = Math.max(this.step + 1, Date.now());
    this.status.dataset.safe = 'false';
    if (this.served) {
      this.counter.value = String(this.step);
      this.later(PAUSE);
    }
    this.mirror();
  }

  later(milliseconds) {
    if (this.timer === 0 && !this.leaving) {
      this.timer = setTimeout(() => this.send(), milliseconds);
    }
  }

  send() {
    this.timer = 0;
    if (this.sending === null) {
      this.sending = this.hand().finally(() => {
        this.sending = null;
        if (this.unsafe) {
          this.later(this.status.dataset.away === 'true' ? RETRY : PAUSE);
        }
      });
    }
    return this.sending;
  }

  async hand() {
    const sent = this.step;
    try {
      await post(this.form.dataset.draft, fieldsOf(this.form));
      this.safe = Math.max(this.safe, sent);
      if (!this.unsafe) {
        drop(this.name);
      }
      // Loading the page again goes on with the draft.
      const address = `${this.form.getAttribute('action')}?draft=${this.form.dataset.draft}`;
      history.replaceState(null, '', address);
      this.say('Your draft is kept.', false);
    } catch {
      this.mirror();
      this.say(this.mirrored ? AWAY : NOWHERE, true);
    }
  }

  /** The form is sent: nothing may come after it, and it may never arrive. */
  submit(event) {
    if (event.defaultPrevented) {
      return;
    }
    clearTimeout(this.timer);
    this.timer = 0;
    if (this.leaving) {
      event.preventDefault();
      return;
    }
    this.leaving = true;
    if (this.sending !== null) {
      // A draft that comes after its recipe was saved would be offered again.
      event.preventDefault();
      this.sending.then(() => {
        this.leaving = false;
        this.form.requestSubmit(event.submitter);
      });
      return;
    }
    this.mirror();
    const elsewhere = event.submitter?.getAttribute('formaction');
    leaveWith(this.name, elsewhere ?? this.form.getAttribute('action'));
  }

  /** The page goes, or is put aside, unsent. */
  hide() {
    if (!this.leaving && this.unsafe && this.served) {
      const body = fieldsOf(this.form);
      post(this.form.dataset.draft, body, { keepalive: true }).catch(() => {});
    }
  }

  /** The page is seen again: what was sent did not lead anywhere. */
  seen(event) {
    this.leaving = false;
    if (event.persisted) {
      stay();
    }
  }

  question(event) {
    if (!this.leaving && this.unsafe && !this.mirrored) {
      event.preventDefault();
    }
  }

  /**
   * What this browser kept of this very draft is newer than the form. Until it is there nobody may
   * type, or one of the two would overwrite the other.
   */
  async bringBack(text) {
    const focused = document.activeElement;
    this.form.inert = true;
    for (;;) {
      try {
        await this.show(new URLSearchParams(text));
        break;
      } catch (error) {
        if (error.status !== undefined) {
          break;
        }
        this.say('The notebook can’t be reached. What you wrote before is kept.', true);
        await wait(RETRY);
      }
    }
    this.form.inert = false;
    focused?.focus();
  }

  async show(body) {
    body.delete('kept.at');
    if (this.served) {
      await post(this.form.dataset.draft, body);
      drop(this.name);
      location.replace(`${this.form.getAttribute('action')}?draft=${this.form.dataset.draft}`);
      await new Promise(() => {});
    }
    const page = await pageOf(this.form.action, { body });
    put(this.form, page.querySelector('form[data-draft]'), { keep: false });
    this.status = this.form.querySelector('[data-draft-status]');
    this.say(HERE_AGAIN, false);
  }

  begin() {
    const text = kept(this.name);
    if (answers(this.name)) {
      // The page came back with all that was typed.
      this.mirror();
      if (this.served) {
        this.safe = this.step - 1;
        this.later(PAUSE);
      }
    } else if (text !== null) {
      const newer = Number(new URLSearchParams(text).get('form.step') ?? 0) > this.step;
      if (!this.served || newer) {
        this.bringBack(text);
      } else {
        drop(this.name, text);
      }
    }
  }
}

export function keepDrafts(form) {
  const draft = new Draft(form);
  form.addEventListener('input', () => draft.changed());
  form.addEventListener('submit', (event) => draft.submit(event));
  window.addEventListener('pageshow', (event) => draft.seen(event));
  window.addEventListener('pagehide', () => draft.hide());
  window.addEventListener('beforeunload', (event) => draft.question(event));
  draft.begin();
  if (draft.served) {
    postOthers(draft.name);
  }
}
