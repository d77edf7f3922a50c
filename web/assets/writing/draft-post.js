/*
 * The way of a draft to the server, and of those that this browser kept while the server was away or
 * a tab was closed.
 *
 * Usage: post(key, fields, options) hands one over and fails if the server did not take it;
 * postOthers(name) hands over, as long as the page is open, all that nobody writes on any more but
 * the one of this name, and shows them in #drafts.
 */

import { drop, kept, namesOf } from '../frame/device.js';
import { pageOf, put } from '../frame/parts.js';

/** What the drafts of this browser are called, before their own name. */
export const PREFIX = 'thudbook-draft-';

/** Milliseconds until a server that could not be reached is tried again. */
export const RETRY = 1500;

/** Milliseconds after which a server that does not answer is away. */
const PATIENCE = 10000;

/** Milliseconds without a change after which a form hands its draft over by itself no more. */
const ABANDONED = 2500;

/** Names of drafts that the server keeps too. */
const KEY = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

export async function post(key, fields, options = {}) {
  const answer = await fetch(`/editor/drafts/${key}`, {
    method: 'POST',
    body: fields,
    signal: AbortSignal.timeout(PATIENCE),
    ...options,
  });
  if (!answer.ok) {
    throw Object.assign(new Error(`draft: ${answer.status}`), { status: answer.status });
  }
}

const refused = new Set();

/** The drafts that nobody writes on any more, but one, as [name, text, fields]. */
function abandoned(mine) {
  return namesOf(PREFIX)
    .filter((name) => name !== mine && KEY.test(name.slice(PREFIX.length)) && !refused.has(name))
    .map((name) => [name, kept(name), new URLSearchParams(kept(name) ?? '')])
    .filter(([, , fields]) => Date.now() - Number(fields.get('kept.at') ?? 0) > ABANDONED);
}

/** Whether any was handed over. */
async function postAbandoned(mine) {
  let handed = false;
  for (const [name, text, fields] of abandoned(mine)) {
    fields.delete('kept.at');
    try {
      await post(name.slice(PREFIX.length), fields);
      // Somebody may have gone on writing meanwhile.
      drop(name, text);
      handed = true;
    } catch (error) {
      if (error.status === undefined) {
        throw error;
      }
      // Not taken, now or ever: it stays here.
      refused.add(name);
    }
  }
  return handed;
}

/** Shows what can be gone on with as it is now; the form, in which somebody may type, stays. */
async function renewOffers() {
  const fresh = (await pageOf(location.href)).getElementById('drafts');
  if (fresh !== null) {
    put(document.getElementById('drafts'), fresh);
  }
}

export async function postOthers(mine) {
  try {
    if (!document.hidden && (await postAbandoned(mine))) {
      await renewOffers();
    }
  } catch {
    // Away: the next time tells.
  }
  setTimeout(() => postOthers(mine), RETRY);
}
