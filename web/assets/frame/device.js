/*
 * What this browser keeps, also when the tab is closed. A browser may forbid it or be full: then
 * there is nothing to read, and keep says so.
 *
 * Usage: keep(name, text) → whether it is kept; kept(name) → the text or null; drop(name, text)
 * drops it, with a text only if nothing else was kept since; namesOf(prefix) → names.
 */

export function keep(name, text) {
  try {
    localStorage.setItem(name, text);
    return true;
  } catch {
    return false;
  }
}

export function kept(name) {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

export function drop(name, text) {
  try {
    if (text === undefined || localStorage.getItem(name) === text) {
      localStorage.removeItem(name);
    }
  } catch {
    // What can't be kept need not be dropped.
  }
}

export function namesOf(prefix) {
  try {
    return Object.keys(localStorage).filter((name) => name.startsWith(prefix));
  } catch {
    return [];
  }
}
