/*
 * Shows moments in the reader's own time zone; without it they stand in UTC.
 *
 * Usage: showLocalTimes(node); times are <time datetime="…" data-local-time>.
 */

export function showLocalTimes(node) {
  const words = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short' });
  for (const time of node.querySelectorAll('time[data-local-time]')) {
    time.textContent = words.format(new Date(time.dateTime));
  }
}
