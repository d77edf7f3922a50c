/*
 * Cursor of the large plots: shows the numbers at a time, by pointer or by keys.
 *
 * Usage: load as a module on pages with figures that carry data-plot-cursor. Such a figure holds
 *   .plot-frame-box          around one or more svg.plot, of which the style sheet shows one
 *   .plot-readout            an empty live region, where the numbers are written
 *   script[type="application/json"]   the points: {seconds, level, brightness, stages: [{volts,
 *                            openness, cutoff}]}, lists of equal length, null for "does not exist"
 * The svg tells its geometry: data-left, data-right, data-from, data-to, data-bend on itself, and
 * data-top, data-bottom, data-low, data-high on each .plot-panel (first the level, then the
 * voltages). It has a .plot-cursor group whose lines stand at x = 0.
 *
 * Keys, while the plot has the focus: left and right a step, with Shift or as Page up and Page down
 * ten, Home and End to the ends, Escape away. Nothing moves by itself, so there is nothing to still
 * for readers who asked for less motion. Figures that are put in place later are taken up as well.
 */

import { takeUp } from '../frame/parts.js';

const STEPS = 240;
const BIG = 10;
const KEYS = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: BIG,
  PageDown: -BIG,
  Home: -Infinity,
  End: Infinity,
};
const HINT = 'Point at the plot, or focus it and use the arrow keys, to read its numbers.';

/* Numbers, written as the server writes them. */

function significant(value) {
  const size = Math.abs(value);
  const places = size === 0 ? 0 : 2 - Math.floor(Math.log10(size) + 1e-9);
  const digits = value.toFixed(Math.max(0, Math.min(4, places)));
  const short = digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits;
  return Number(short) === 0 ? '0' : short.replace('-', '−');
}

function withUnit(value, unit) {
  return `${significant(value)}\u00a0${unit}`;
}

const time = (s) => (Math.abs(s) < 0.9995 ? withUnit(s * 1000, 'ms') : withUnit(s, 's'));
const hertz = (f) => (f < 999.5 ? withUnit(f, 'Hz') : withUnit(f / 1000, 'kHz'));
const decibels = (db) =>
  `${db
    .toFixed(1)
    .replace(/^-0\.0$/, '0.0')
    .replace('-', '−')}\u00a0dB`;
const volts = (v) => (Math.abs(v) < 0.00005 ? '0\u00a0V' : withUnit(v, 'V'));
const percent = (share) => withUnit(share * 100, '%');

/* Axes: even below a bend, ratios above it; a bend of 0 is even throughout. */

const bent = (value, bend) => (bend > 0 ? Math.asinh(value / bend) : value);
const unbent = (value, bend) => (bend > 0 ? bend * Math.sinh(value) : value);

function numbers(element, names) {
  return Object.fromEntries(names.map((name) => [name, Number(element.dataset[name])]));
}

/** The value of a list at a time, on the straight line between its points. */
function between(seconds, list, at) {
  let low = 0;
  let high = seconds.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (seconds[middle] <= at) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  const before = list[Math.max(0, low - 1)];
  if (low === 0 || low === seconds.length || before === null || list[low] === null) {
    return low === 0 ? list[0] : before;
  }
  const along = (at - seconds[low - 1]) / (seconds[low] - seconds[low - 1]);
  return before + along * (list[low] - before);
}

class PlotCursor {
  constructor(figure) {
    this.figure = figure;
    this.points = JSON.parse(figure.querySelector('script[type="application/json"]').textContent);
    this.readout = figure.querySelector('.plot-readout');
    this.place = null;
    this.handle = document.createElement('div');
    this.handle.className = 'plot-handle';
    this.handle.tabIndex = 0;
    this.handle.setAttribute('role', 'slider');
    this.handle.setAttribute('aria-label', 'Cursor over the plot');
    this.handle.setAttribute('aria-valuemin', '0');
    this.handle.setAttribute('aria-valuemax', String(STEPS));
    this.handle.setAttribute('aria-valuenow', '0');
    this.handle.setAttribute('aria-valuetext', 'at the strike');
    figure.querySelector('.plot-frame-box').append(this.handle);
    this.handle.addEventListener('pointermove', (event) => this.point(event));
    this.handle.addEventListener('pointerdown', (event) => this.point(event));
    this.handle.addEventListener('keydown', (event) => this.key(event));
    this.handle.addEventListener('focus', () => this.show(this.place ?? this.placeOf(0), true));
    this.write([['', HINT]], false);
  }

  /** The drawing that is shown at this width. */
  svg() {
    const drawings = [...this.figure.querySelectorAll('svg.plot')];
    return drawings.find((svg) => svg.getClientRects().length > 0) ?? drawings[0];
  }

  axis() {
    return numbers(this.svg(), ['left', 'right', 'from', 'to', 'bend']);
  }

  placeOf(seconds) {
    const { from, to, bend } = this.axis();
    const start = bent(from, bend);
    return (bent(seconds, bend) - start) / (bent(to, bend) - start);
  }

  point(event) {
    const { left, right } = this.axis();
    const box = this.handle.getBoundingClientRect();
    const width = this.svg().viewBox.baseVal.width;
    const x = ((event.clientX - box.left) / box.width) * width;
    this.show((x - left) / (right - left), false);
  }

  key(event) {
    if (event.key === 'Escape') {
      this.hide();
      return;
    }
    const step = KEYS[event.key];
    if (step === undefined || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    event.preventDefault();
    const far = event.shiftKey && Math.abs(step) === 1 ? BIG : 1;
    this.show((this.place ?? this.placeOf(0)) + (step * far) / STEPS, true);
  }

  show(place, aloud) {
    this.place = Math.max(0, Math.min(1, place));
    const { left, right, from, to, bend } = this.axis();
    const start = bent(from, bend);
    const at = unbent(start + this.place * (bent(to, bend) - start), bend);
    const state = this.read(at);
    this.draw(left + this.place * (right - left), state);
    this.handle.setAttribute('aria-valuenow', String(Math.round(this.place * STEPS)));
    this.handle.setAttribute('aria-valuetext', time(at));
    this.write(this.words(at, state), aloud);
  }

  read(at) {
    const { seconds, level, brightness, stages } = this.points;
    return {
      level: between(seconds, level, at),
      brightness: between(seconds, brightness, at),
      stages: stages.map((stage) => ({
        volts: between(seconds, stage.volts, at),
        openness: between(seconds, stage.openness, at),
        cutoff: between(seconds, stage.cutoff, at),
      })),
    };
  }

  words(at, state) {
    const words = [['time', time(at)]];
    words.push(['level', state.level === null ? 'silence' : decibels(state.level)]);
    state.stages.forEach((stage, i) => {
      const of = state.stages.length > 1 ? ` ${i + 1}` : '';
      words.push([`control voltage${of}`, volts(stage.volts)]);
      words.push([`openness${of}`, percent(stage.openness)]);
      if (stage.cutoff !== null) {
        words.push([`cutoff${of}`, hertz(stage.cutoff)]);
      }
    });
    if (state.brightness !== null) {
      words.push(['brightness', hertz(state.brightness)]);
    }
    return words;
  }

  /** Writes names and values; what the pointer passes over is not read aloud. */
  write(words, aloud) {
    this.readout.setAttribute('aria-live', aloud ? 'polite' : 'off');
    this.readout.replaceChildren(
      ...words.map(([name, value]) => {
        const item = document.createElement('span');
        const label = document.createElement('span');
        label.className = 'plot-readout-name';
        label.textContent = name === '' ? value : `${name} `;
        item.append(label);
        if (name !== '') {
          item.append(value);
        }
        return item;
      }),
    );
  }

  draw(x, state) {
    const svg = this.svg();
    const cursor = svg.querySelector('.plot-cursor');
    const panels = [...svg.querySelectorAll('.plot-panel')];
    const values = [[state.level], state.stages.map((stage) => stage.volts)];
    const dots = panels.flatMap((panel, i) => {
      const { top, bottom, low, high } = numbers(panel, ['top', 'bottom', 'low', 'high']);
      return values[i]
        .filter((value) => value !== null && value >= low && value <= high)
        .map((value) => bottom - ((value - low) / (high - low)) * (bottom - top));
    });
    cursor.querySelectorAll('circle').forEach((dot) => dot.remove());
    for (const y of dots) {
      const dot = document.createElementNS('http://www.w3.org/2000/svg', 'circle');
      dot.setAttribute('class', 'plot-cursor-dot');
      dot.setAttribute('r', '3.5');
      dot.setAttribute('cy', String(y));
      cursor.append(dot);
    }
    cursor.setAttribute('transform', `translate(${x} 0)`);
    this.figure.classList.add('plot-cursor-on');
  }

  hide() {
    this.figure.classList.remove('plot-cursor-on');
    this.write([['', HINT]], false);
  }
}

const attached = new WeakSet();

/** Gives every figure below a node its cursor, once. */
function attach(node) {
  const inside = [...node.querySelectorAll('[data-plot-cursor]')];
  for (const figure of node.matches?.('[data-plot-cursor]') ? [node, ...inside] : inside) {
    if (!attached.has(figure)) {
      attached.add(figure);
      new PlotCursor(figure);
    }
  }
}

takeUp(attach);
