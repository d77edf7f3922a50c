/*
 * Sliders beside number fields. A slider writes a number with its unit into the field, and follows
 * what is typed there; it never changes a text that is being typed. Up and down in the field turn
 * it too, with Shift in larger steps.
 *
 * Usage: putSliders(node). Fields carry data-turn ("even", or "ratio" for equal factors),
 * data-least, data-most and data-unit, in the unit of documents.
 */

const STEPS = 240;
const BIG = 10;

/** What one of each unit is, in the unit of documents. */
const UNITS = {
  ms: { s: 1000, ms: 1, µs: 0.001, us: 0.001 },
  Hz: { hz: 1, khz: 1000 },
  V: { v: 1, mv: 0.001 },
  '%': { '%': 1 },
  x: { x: 1, '×': 1 },
  bpm: { bpm: 1 },
  dB: { db: 1 },
  min: { min: 1 },
  '': { '': 1 },
};

function three(number) {
  const size = Math.abs(number);
  const places = size === 0 ? 0 : Math.max(0, Math.min(4, 2 - Math.floor(Math.log10(size) + 1e-9)));
  return String(Number(number.toFixed(places)));
}

class Slider {
  constructor(field) {
    this.field = field;
    this.even = field.dataset.turn === 'even';
    this.least = Number(field.dataset.least);
    this.most = Number(field.dataset.most);
    this.unit = field.dataset.unit ?? '';
    this.range = document.createElement('input');
    this.range.type = 'range';
    this.range.min = '0';
    this.range.max = String(STEPS);
    // The field does all that it does, so it is no stop of its own on the way through the form.
    this.range.tabIndex = -1;
    this.range.setAttribute('aria-hidden', 'true');
    field.after(this.range);
    this.range.addEventListener('input', (event) => {
      event.stopPropagation();
      this.write(Number(this.range.value));
    });
    field.addEventListener('input', () => this.follow());
    field.addEventListener('keydown', (event) => this.key(event));
    this.follow();
  }

  /** The number in the field, in the unit of documents; null where it is none. */
  number() {
    const text = this.field.value.trim() || this.field.placeholder.trim();
    const match = /^([+\-−]?[0-9]*\.?[0-9]+)\s*([^0-9]*)$/.exec(text);
    const factor = match === null ? undefined : UNITS[this.unit]?.[match[2].trim().toLowerCase()];
    return factor === undefined ? null : Number(match[1].replace('−', '-')) * factor;
  }

  place(number) {
    if (this.even) {
      return ((number - this.least) / (this.most - this.least)) * STEPS;
    }
    const from = Math.log(this.least);
    return ((Math.log(Math.max(number, this.least)) - from) / (Math.log(this.most) - from)) * STEPS;
  }

  follow() {
    const number = this.number();
    // A note or a ratio is not on this scale.
    this.range.disabled = number === null;
    this.range.classList.toggle('unset', this.field.value.trim() === '');
    if (number !== null) {
      this.range.value = String(this.place(number));
    }
  }

  write(place) {
    const share = Math.max(0, Math.min(1, place / STEPS));
    const number = this.even
      ? this.least + share * (this.most - this.least)
      : this.least * (this.most / this.least) ** share;
    this.field.value = this.unit === '' ? three(number) : `${three(number)} ${this.unit}`;
    this.field.dispatchEvent(new Event('input', { bubbles: true }));
  }

  key(event) {
    const way = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    const number = this.number();
    if (way === undefined || number === null || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    event.preventDefault();
    this.write(Math.round(this.place(number)) + way * (event.shiftKey ? BIG : 1));
  }
}

const turned = new WeakSet();

/** Puts a slider behind each field that can be turned, once. */
export function putSliders(node) {
  for (const field of node.querySelectorAll('[data-turn]')) {
    if (!turned.has(field)) {
      turned.add(field);
      new Slider(field);
    }
  }
}
