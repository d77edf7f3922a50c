/*
 * The one way to fetch a page and to put a part of it in place, so that a reader notices nothing but
 * the content: focus, what is being typed, what is unfolded and how far a box was scrolled stay.
 *
 * Usage:
 *   await pageOf(address, {body, signal})   the page as a document; with a body it is posted. Fails
 *                                           where the notebook is away or refuses (error.status).
 *   put(place, fresh, options)              gives a place the content of another node
 *   putParts(page, options)                 does so for all [data-part] of the same name
 *   newest()                                gives a function that ends its last question and
 *                                           returns the signal of the next one
 *   takeUp(act)                             calls act(node) for the page, and for each place that
 *                                           gets new content
 * Options: keep = false takes the values of fields from the answer; otherwise is a selector of what
 * gets the focus when its element is gone.
 */

export async function pageOf(address, { body, signal } = {}) {
  const method = body === undefined ? 'GET' : 'POST';
  const answer = await fetch(address, { method, body, signal, headers: { Accept: 'text/html' } });
  if (!answer.ok) {
    throw Object.assign(new Error(`${address}: ${answer.status}`), { status: answer.status });
  }
  return new DOMParser().parseFromString(await answer.text(), 'text/html');
}

export function newest() {
  let running = new AbortController();
  return () => {
    running.abort();
    running = new AbortController();
    return running.signal;
  };
}

const acts = [];

export function takeUp(act) {
  acts.push(act);
  act(document);
}

function remember(place) {
  const active = place.contains(document.activeElement) ? document.activeElement : null;
  return {
    active,
    id: active?.id,
    value: active?.matches('input:not([type="checkbox"])') ? active.value : undefined,
    range:
      active?.selectionStart === undefined ? null : [active.selectionStart, active.selectionEnd],
    open: new Map([...place.querySelectorAll('details[id]')].map((each) => [each.id, each.open])),
    scrolled: new Map(
      [...place.querySelectorAll('[id]')]
        .filter((each) => each.scrollTop > 0)
        .map((each) => [each.id, each.scrollTop]),
    ),
  };
}

/** What has the focus instead of an element that is gone: the same again, or what stands for it. */
function successor(place, was, otherwise) {
  const href = was.active.getAttribute('href');
  return (
    (was.id ? place.querySelector(`#${CSS.escape(was.id)}`) : null) ??
    (href === null ? null : place.querySelector(`a[href=${JSON.stringify(href)}]`)) ??
    (otherwise === undefined ? null : place.querySelector(otherwise))
  );
}

function restore(place, was, keep, otherwise) {
  for (const [id, open] of was.open) {
    const details = place.querySelector(`#${CSS.escape(id)}`);
    if (details !== null) {
      details.open = open;
    }
  }
  for (const [id, top] of was.scrolled) {
    place.querySelector(`#${CSS.escape(id)}`)?.scrollTo(0, top);
  }
  const active = was.active === null ? null : successor(place, was, otherwise);
  if (active === null) {
    return;
  }
  if (keep && was.value !== undefined) {
    active.value = was.value;
  }
  active.focus({ preventScroll: true });
  if (was.range?.[0] != null) {
    active.setSelectionRange(...was.range);
  }
}

export function put(place, fresh, { keep = true, otherwise } = {}) {
  const was = remember(place);
  place.replaceChildren(...document.importNode(fresh, true).childNodes);
  restore(place, was, keep, otherwise);
  acts.forEach((act) => act(place));
}

export function putParts(page, options) {
  for (const part of document.querySelectorAll('[data-part]')) {
    const fresh = page.querySelector(`[data-part="${part.dataset.part}"]`);
    const same = options.keep && fresh?.innerHTML.trim() === part.innerHTML.trim();
    if (fresh !== null && !same) {
      put(part, fresh, options);
    }
  }
}
