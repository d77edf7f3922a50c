/*
 * Offers only the channels of the gate that is chosen.
 *
 * Usage: narrowChannels(form), again after stages were added. A stage is a [data-stage] with a
 * select whose name ends in .gate and one whose name ends in .channel; the channels of a gate stand
 * in an optgroup that has the gate's slug as its label.
 */

const narrowed = new WeakSet();

function narrow(gate, channel, choose) {
  let first = null;
  for (const group of channel.querySelectorAll('optgroup')) {
    const own = group.label === gate.value;
    group.hidden = !own;
    group.disabled = !own;
    if (own) {
      first = group.querySelector('option');
    }
  }
  const chosen = channel.selectedOptions[0];
  if (choose && (chosen === undefined || chosen.value === '' || chosen.parentElement.hidden)) {
    (first ?? channel.options[0]).selected = true;
  }
}

export function narrowChannels(form) {
  for (const stage of form.querySelectorAll('[data-stage]')) {
    const gate = stage.querySelector('select[name$=".gate"]');
    const channel = stage.querySelector('select[name$=".channel"]');
    if (gate !== null && channel !== null && !narrowed.has(stage)) {
      narrowed.add(stage);
      narrow(gate, channel, false);
      // Before others hear of the change, so that they find the channel that goes with it.
      gate.addEventListener('input', () => narrow(gate, channel, true));
    }
  }
}
