/*
 * The end of a draft. A form that is sent may never arrive, so its draft stays in this browser until
 * the page that follows proves that it was saved: the notebook shows another address than the one
 * that the form was sent to. A page of that address means that something has to be mended.
 *
 * Usage: leaveWith(name, action) when a form is sent; stay() when its page is seen again; settle()
 * once on every page, which drops the draft if it was saved; answers(name) says whether this page
 * came back in answer to the form of that draft, and so holds all that was typed.
 */

import { drop } from './device.js';

const SENT = 'thudbook-sent';

let answered = null;

const plain = (address) => address.split('#', 1)[0];

export function leaveWith(name, action) {
  try {
    const { pathname } = new URL(action, location.href);
    sessionStorage.setItem(SENT, JSON.stringify({ name, pathname, from: plain(location.href) }));
  } catch {
    // Then the draft stays, and is offered again.
  }
}

export function stay() {
  try {
    sessionStorage.removeItem(SENT);
  } catch {
    // Nothing was noted either.
  }
}

function takeSent() {
  try {
    const sent = JSON.parse(sessionStorage.getItem(SENT));
    stay();
    return sent;
  } catch {
    return null;
  }
}

export function settle() {
  const sent = takeSent();
  const [entry] = performance.getEntriesByType('navigation');
  // Whoever typed an address after an error, or went back, has not seen an answer.
  if (sent === null || entry?.type === 'back_forward' || document.referrer !== sent.from) {
    return;
  }
  if (location.pathname === sent.pathname) {
    answered = sent.name;
  } else {
    drop(sent.name);
  }
}

export const answers = (name) => answered === name;
