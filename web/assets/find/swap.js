/*
 * Puts new content into parts of the page so that a reader notices nothing but the content: focus,
 * what is being typed, what is unfolded and how far a box was scrolled stay.
 *
 * Usage: swap(document of the answer, keep). Parts are elements with data-part, of the same name in
 * both. With keep = false fields take the values of the answer.
 */

function remember(part) {
  const active = part.contains(document.activeElement) ? document.activeElement : null;
  return {
    active,
    id: active?.id,
    value: active?.matches('input:not([type="checkbox"])') ? active.value : undefined,
    range: active?.selectionStart === undefined ? null : [active.selectionStart, active.selectionEnd],
    open: new Map([...part.querySelectorAll('details[id]')].map((each) => [each.id, each.open])),
    scrolled: new Map(
      [...part.querySelectorAll('[id]')]
        .filter((each) => each.scrollTop > 0)
        .map((each) => [each.id, each.scrollTop]),
    ),
  };
}

/** What has the focus instead of an element that is gone: the same again, or the first row. */
function successor(part, was) {
  const href = was.active.getAttribute('href');
  return (
    (was.id ? part.querySelector(`#${CSS.escape(was.id)}`) : null) ??
    (href === null ? null : part.querySelector(`a[href=${JSON.stringify(href)}]`)) ??
    part.querySelector('.row h2 a')
  );
}

function restore(part, was, keep) {
  for (const [id, open] of was.open) {
    const details = part.querySelector(`#${CSS.escape(id)}`);
    if (details !== null) {
      details.open = open;
    }
  }
  for (const [id, top] of was.scrolled) {
    part.querySelector(`#${CSS.escape(id)}`)?.scrollTo(0, top);
  }
  const active = was.active === null ? null : successor(part, was);
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

export function swap(answer, keep) {
  for (const part of document.querySelectorAll('[data-part]')) {
    const fresh = answer.querySelector(`[data-part="${part.dataset.part}"]`);
    if (fresh === null || (keep && fresh.innerHTML.trim() === part.innerHTML.trim())) {
      continue;
    }
    const was = remember(part);
    part.replaceChildren(...document.importNode(fresh, true).childNodes);
    restore(part, was, keep);
  }
}
