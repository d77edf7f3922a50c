/*
 * Favourites without a new page: the button is pressed where it stands. Without this the form of
 * the button is sent and leads back to the row.
 *
 * Usage: favour(); buttons are .favourite with a formaction, in a form.
 */

export function favour() {
  document.addEventListener('click', async (event) => {
    const button = event.target.closest('button.favourite');
    if (button === null) {
      return;
    }
    event.preventDefault();
    const favourite = button.value === 'yes';
    const body = new URLSearchParams({ favourite: button.value });
    try {
      const answer = await fetch(button.formAction, { method: 'POST', body, redirect: 'manual' });
      if (answer.type !== 'opaqueredirect') {
        throw new Error(String(answer.status));
      }
      button.value = favourite ? 'no' : 'yes';
      button.setAttribute('aria-pressed', String(favourite));
    } catch {
      // The form knows how to say what is wrong.
      button.form.requestSubmit(button);
    }
  });
}
