/*
 * Says how many rows are selected and keeps what can be done with them in view.
 *
 * Usage: followSelection(form) gives {renew, toggle(row), clear}. Rows are selected by check boxes
 * of the form named recipe; #all means all that the search finds.
 */

export function followSelection(form) {
  const words = document.getElementById('bulk-count');
  const none = words.textContent;
  const boxes = () => [...document.querySelectorAll('.row-select')];
  const all = () => form.querySelector('#all');

  function renew() {
    const count = boxes().filter((box) => box.checked).length;
    const whole = all()?.checked ?? false;
    form.toggleAttribute('data-selected', count > 0 || whole);
    let said = none;
    if (whole) {
      said = 'All that match, on every page.';
    } else if (count > 0) {
      said = count === 1 ? '1 recipe is selected.' : `${count} recipes are selected.`;
    }
    if (words.textContent !== said) {
      words.textContent = said;
    }
  }

  function toggle(row) {
    const box = row.querySelector('.row-select');
    box.checked = !box.checked;
    renew();
  }

  /** Whether there was anything to clear. */
  function clear() {
    const checked = [...boxes(), all()].filter((box) => box?.checked);
    checked.forEach((box) => {
      box.checked = false;
    });
    renew();
    return checked.length > 0;
  }

  document.addEventListener('change', (event) => {
    if (event.target.matches('.row-select, #all')) {
      renew();
    }
  });
  addEventListener('pageshow', renew);
  return { renew, toggle, clear };
}
