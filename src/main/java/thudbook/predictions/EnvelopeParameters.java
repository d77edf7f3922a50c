package thudbook.predictions;

import static thudbook.predictions.Parameter.Scale.LINEAR;
import static thudbook.predictions.Parameter.Scale.LOGARITHMIC;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.predictions.Parameter.Part;
import thudbook.quantities.Dimension;
import thudbook.quantities.Range;

/** The numbers of an envelope; a recorded voltage has none. */
final class EnvelopeParameters {
  private static final Range PEAK = Range.of(Dimension.VOLTAGE, -20, 20);
  private static final Range TIME = Range.of(Dimension.TIME, 1e-6, 60);

  private EnvelopeParameters() {}

  static List<Part<Envelope>> of(Envelope envelope) {
    if (envelope instanceof Envelope.Pulse pulse) {
      return List.of(
          peak(pulse, v -> new Envelope.Pulse(v, pulse.lengthSeconds())),
          time("length", pulse.lengthSeconds(), v -> new Envelope.Pulse(pulse.peakVolts(), v)));
    } else if (envelope instanceof Envelope.AttackHoldDecay shape) {
      return ofStruck(shape);
    } else if (envelope instanceof Envelope.AttackDecaySustainRelease shape) {
      return ofHeld(shape);
    }
    return List.of();
  }

  private static List<Part<Envelope>> ofStruck(Envelope.AttackHoldDecay one) {
    double peak = one.peakVolts();
    double hold = one.holdSeconds();
    List<Part<Envelope>> parts = new ArrayList<>();
    parts.add(peak(one, v -> new Envelope.AttackHoldDecay(v, one.attack(), hold, one.decay())));
    parts.addAll(
        rise(one.attack(), rise -> new Envelope.AttackHoldDecay(peak, rise, hold, one.decay())));
    parts.add(
        new Part<>(
            "hold",
            TIME.orZeroToo(),
            LOGARITHMIC,
            hold,
            v -> new Envelope.AttackHoldDecay(peak, one.attack(), v, one.decay())));
    parts.addAll(
        fall(
            "decay",
            one.decay(),
            fall -> new Envelope.AttackHoldDecay(peak, one.attack(), hold, fall)));
    return parts;
  }

  private static List<Part<Envelope>> ofHeld(Envelope.AttackDecaySustainRelease one) {
    Held held = new Held(one);
    List<Part<Envelope>> parts = new ArrayList<>();
    parts.add(peak(one, v -> held.with(v, one.sustain(), one.lengthSeconds())));
    parts.addAll(rise(one.attack(), rise -> held.with(rise, one.decay(), one.release())));
    parts.addAll(fall("decay", one.decay(), fall -> held.with(one.attack(), fall, one.release())));
    parts.add(
        new Part<>(
            "sustain",
            Range.of(Dimension.NUMBER, 0, 1),
            LINEAR,
            one.sustain(),
            v -> held.with(one.peakVolts(), v, one.lengthSeconds())));
    parts.add(
        time("length", one.lengthSeconds(), v -> held.with(one.peakVolts(), one.sustain(), v)));
    parts.addAll(
        fall("release", one.release(), fall -> held.with(one.attack(), one.decay(), fall)));
    return parts;
  }

  /** An envelope that is held, with some of its values replaced. */
  private record Held(Envelope.AttackDecaySustainRelease one) {
    Envelope with(double peak, double sustain, double length) {
      return new Envelope.AttackDecaySustainRelease(
          peak, one.attack(), one.decay(), sustain, length, one.release());
    }

    Envelope with(Rise attack, Fall decay, Fall release) {
      return new Envelope.AttackDecaySustainRelease(
          one.peakVolts(), attack, decay, one.sustain(), one.lengthSeconds(), release);
    }
  }

  private static Part<Envelope> peak(Envelope.Struck one, DoubleFunction<Envelope> setting) {
    return new Part<>("peak", PEAK, LINEAR, one.peakVolts(), setting);
  }

  private static Part<Envelope> time(String key, double seconds, DoubleFunction<Envelope> setting) {
    return new Part<>(key, TIME, LOGARITHMIC, seconds, setting);
  }

  private static List<Part<Envelope>> rise(Rise rise, Function<Rise, Envelope> place) {
    Part<Envelope> attack =
        new Part<>(
            "attack",
            TIME.orZeroToo(),
            LOGARITHMIC,
            rise.seconds(),
            v -> place.apply(new Rise(v, rise.curve(), rise.overshoot())));
    if (rise.curve() == Curve.LINEAR) {
      return List.of(attack);
    }
    return List.of(
        attack,
        new Part<>(
            "overshoot",
            Range.of(Dimension.NUMBER, 1.001, 10),
            LOGARITHMIC,
            rise.overshoot(),
            v -> place.apply(new Rise(rise.seconds(), rise.curve(), v))));
  }

  private static List<Part<Envelope>> fall(String key, Fall fall, Function<Fall, Envelope> place) {
    Part<Envelope> time =
        time(key, fall.seconds(), v -> place.apply(new Fall(v, fall.curve(), fall.decaysTo())));
    if (fall.curve() == Curve.LINEAR) {
      return List.of(time);
    }
    return List.of(
        time,
        new Part<>(
            key + "sTo",
            Range.of(Dimension.SHARE, 1e-4, 0.9),
            LOGARITHMIC,
            fall.decaysTo(),
            v -> place.apply(new Fall(fall.seconds(), fall.curve(), v))));
  }
}
