package thudbook.plots;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import thudbook.drawings.Moment;
import thudbook.drawings.Part;
import thudbook.predictions.Curve;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Sound;
import thudbook.wording.ReadableNumbers;

/**
 * The parts of a strike on the time axis, from its metrics: dead time (strike to threshold), attack
 * (10 % to 90 %), hold (above 90 %), letting go (end of the hold to −20 dB) and tail (from there to
 * −60 dB). Parts that do not exist for a sound are left out. Metrics are of the lone strike from
 * rest, so nothing of them is marked on a train; there, the strikes are what happens.
 */
final class ShapeParts {
  private final Metrics metrics;
  private final double end;

  /** The strikes of a train; empty: there is one. */
  private final List<Double> train;

  ShapeParts(Prediction prediction, Sound sound, Curve curve) {
    metrics = prediction.metrics();
    end = curve.points().get(curve.points().size() - 1).seconds();
    train = ShapePlot.train(sound);
  }

  /** The parts, in order. */
  List<Part> parts() {
    List<Part> parts = new ArrayList<>();
    if (!train.isEmpty()) {
      return parts;
    }
    double dead = metrics.get(Metric.DEAD_TIME).orElse(0);
    if (dead > 0) {
      parts.add(part(0, dead, 1, "dead time", Metric.DEAD_TIME, ""));
    }
    OptionalDouble onset = metrics.get(Metric.ONSET);
    OptionalDouble attack = metrics.get(Metric.ATTACK);
    if (onset.isPresent() && attack.isPresent()) {
      double start = onset.getAsDouble();
      parts.add(part(start, start + attack.getAsDouble(), 2, "attack", Metric.ATTACK, ""));
    }
    OptionalDouble holdEnd = holdEnd();
    if (holdEnd.isPresent()) {
      double held = holdEnd.getAsDouble();
      double start = held - metrics.get(Metric.HOLD).orElse(0);
      parts.add(part(start, held, 3, "hold", Metric.HOLD, ""));
      falling(held, parts);
    }
    return parts;
  }

  private void falling(double held, List<Part> parts) {
    OptionalDouble first = metrics.get(Metric.RELEASE_20);
    if (first.isEmpty()) {
      if (end > held) {
        parts.add(new Part(held, end, 4, "letting go", List.of("to the floor")));
      }
      return;
    }
    double tail = held + first.getAsDouble();
    parts.add(part(held, tail, 4, "letting go", Metric.RELEASE_20, "to −20 dB"));
    boolean whole = metrics.get(Metric.RELEASE_60).isPresent();
    Metric last = whole ? Metric.RELEASE_60 : Metric.RELEASE_40;
    OptionalDouble release = metrics.get(last);
    if (release.isPresent()) {
      double to = Math.max(tail, held + release.getAsDouble());
      parts.add(part(tail, to, 5, "tail", last, whole ? "to −60 dB" : "to −40 dB"));
    } else if (end > tail) {
      parts.add(new Part(tail, end, 5, "tail", List.of("to the floor")));
    }
  }

  /** When the level falls through 90 % for the last time. */
  private OptionalDouble holdEnd() {
    OptionalDouble onset = metrics.get(Metric.ONSET);
    OptionalDouble attack = metrics.get(Metric.ATTACK);
    OptionalDouble hold = metrics.get(Metric.HOLD);
    return onset.isPresent() && attack.isPresent() && hold.isPresent()
        ? OptionalDouble.of(onset.getAsDouble() + attack.getAsDouble() + hold.getAsDouble())
        : OptionalDouble.empty();
  }

  /** The moment in which the low-pass gate lets go, if it does. */
  List<Moment> moments() {
    OptionalDouble letGo = metrics.get(Metric.LET_GO);
    return train.isEmpty() && letGo.isPresent() && letGo.getAsDouble() <= end
        ? List.of(
            new Moment(
                letGo.getAsDouble(), "lets go " + ReadableNumbers.seconds(letGo.getAsDouble())))
        : List.of();
  }

  /** What happens when, for the table: names of times. */
  List<Moment> events() {
    List<Moment> events = new ArrayList<>();
    for (int k = 0; k < train.size(); k++) {
      add(events, train.get(k), "strike " + (k + 1));
    }
    if (!train.isEmpty()) {
      return events;
    }
    events.add(new Moment(0, "strike"));
    metrics.get(Metric.PEAK_TIME).ifPresent(at -> add(events, at, "peak"));
    metrics.get(Metric.LET_GO).ifPresent(at -> add(events, at, "lets go"));
    for (Part part : parts()) {
      String name =
          switch (part.look()) {
            case 1 -> "end of the dead time";
            case 2 -> "90 % of the rise";
            case 3 -> "end of the hold";
            default -> part.numbers().get(part.numbers().size() - 1).replace("to ", "");
          };
      if (part.look() == 2) {
        add(events, part.from(), "10 % of the rise");
      }
      add(events, part.to(), name);
    }
    return events;
  }

  private void add(List<Moment> events, double at, String name) {
    if (at <= end) {
      events.add(new Moment(at, name));
    }
  }

  private Part part(double from, double to, int look, String name, Metric metric, String note) {
    String number = ReadableNumbers.seconds(metrics.get(metric).orElse(0));
    return new Part(from, to, look, name, note.isEmpty() ? List.of(number) : List.of(number, note));
  }
}
