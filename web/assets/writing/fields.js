/*
 * What the form holds, as it is sent.
 *
 * Usage: fieldsOf(form) gives URLSearchParams for the body of a request; buttons are not in it.
 */

export function fieldsOf(form) {
  return new URLSearchParams(new FormData(form));
}
