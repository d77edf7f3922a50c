package thudbook.patching;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Rise;
import thudbook.quantities.Dimension;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.EnvelopeEntry.FallEntry;

/** The numbers of an envelope that a knob can set. */
final class EnvelopeNumbers {
  /** Knobs for decays and releases are marked for a fall to this fraction. */
  private static final double MARKED_TO = 0.01;

  private EnvelopeNumbers() {}

  /** A number of an envelope. */
  static Optional<Part<EnvelopeEntry>> of(@Nullable EnvelopeEntry envelope, String key) {
    if (envelope instanceof EnvelopeEntry.Pulse pulse) {
      return switch (key) {
        case "peak" ->
            Part.some(
                Dimension.VOLTAGE,
                pulse.peakVolts(),
                volts -> new EnvelopeEntry.Pulse(volts, pulse.lengthSeconds()));
        case "length" ->
            Part.some(
                Dimension.TIME,
                pulse.lengthSeconds(),
                seconds -> new EnvelopeEntry.Pulse(pulse.peakVolts(), seconds));
        default -> Optional.empty();
      };
    } else if (envelope instanceof EnvelopeEntry.AttackHoldDecay struck) {
      return ofStruck(struck, key);
    } else if (envelope instanceof EnvelopeEntry.AttackDecaySustainRelease held) {
      return ofHeld(held, key);
    }
    return Optional.empty();
  }

  private static Optional<Part<EnvelopeEntry>> ofStruck(
      EnvelopeEntry.AttackHoldDecay one, String key) {
    return switch (key) {
      case "peak" ->
          Part.some(
              Dimension.VOLTAGE,
              one.peakVolts(),
              volts ->
                  new EnvelopeEntry.AttackHoldDecay(
                      volts, one.attack(), one.holdSeconds(), one.decay()));
      case "attack" ->
          Part.some(
              Dimension.TIME,
              one.attack().seconds(),
              seconds ->
                  new EnvelopeEntry.AttackHoldDecay(
                      one.peakVolts(),
                      rise(one.attack(), seconds),
                      one.holdSeconds(),
                      one.decay()));
      case "hold" ->
          Part.some(
              Dimension.TIME,
              one.holdSeconds(),
              seconds ->
                  new EnvelopeEntry.AttackHoldDecay(
                      one.peakVolts(), one.attack(), seconds, one.decay()));
      case "decay" ->
          Part.some(
              Dimension.TIME,
              marked(one.decay()),
              seconds ->
                  new EnvelopeEntry.AttackHoldDecay(
                      one.peakVolts(),
                      one.attack(),
                      one.holdSeconds(),
                      fall(one.decay(), seconds)));
      default -> Optional.empty();
    };
  }

  private static Optional<Part<EnvelopeEntry>> ofHeld(
      EnvelopeEntry.AttackDecaySustainRelease one, String key) {
    return switch (key) {
      case "peak" ->
          Part.some(
              Dimension.VOLTAGE,
              one.peakVolts(),
              v -> held(v, one.attack(), one.decay(), one.sustain(), one.lengthSeconds(), one));
      case "attack" ->
          Part.some(
              Dimension.TIME,
              one.attack().seconds(),
              s -> {
                Rise attack = rise(one.attack(), s);
                return held(
                    one.peakVolts(), attack, one.decay(), one.sustain(), one.lengthSeconds(), one);
              });
      case "sustain" ->
          Part.some(
              Dimension.NUMBER,
              one.sustain(),
              v -> held(one.peakVolts(), one.attack(), one.decay(), v, one.lengthSeconds(), one));
      case "length" ->
          Part.some(
              Dimension.TIME,
              one.lengthSeconds(),
              s -> held(one.peakVolts(), one.attack(), one.decay(), one.sustain(), s, one));
      default -> ofHeldFalls(one, key);
    };
  }

  private static Optional<Part<EnvelopeEntry>> ofHeldFalls(
      EnvelopeEntry.AttackDecaySustainRelease one, String key) {
    return switch (key) {
      case "decay" ->
          Part.some(
              Dimension.TIME,
              marked(one.decay()),
              s -> {
                FallEntry decay = fall(one.decay(), s);
                return held(
                    one.peakVolts(), one.attack(), decay, one.sustain(), one.lengthSeconds(), one);
              });
      case "release" ->
          Part.some(
              Dimension.TIME,
              marked(one.release()),
              s ->
                  new EnvelopeEntry.AttackDecaySustainRelease(
                      one.peakVolts(),
                      one.attack(),
                      one.decay(),
                      one.sustain(),
                      one.lengthSeconds(),
                      fall(one.release(), s)));
      default -> Optional.empty();
    };
  }

  private static EnvelopeEntry held(
      @Nullable Double peak,
      Rise attack,
      FallEntry decay,
      @Nullable Double sustain,
      @Nullable Double length,
      EnvelopeEntry.AttackDecaySustainRelease other) {
    return new EnvelopeEntry.AttackDecaySustainRelease(
        peak, attack, decay, sustain, length, other.release());
  }

  private static Rise rise(Rise rise, double seconds) {
    return new Rise(seconds, rise.curve(), rise.overshoot());
  }

  /** The time as knobs are marked, to 1 %; of a linear fall its whole time. */
  private static @Nullable Double marked(FallEntry fall) {
    return fall.seconds() == null ? null : (Double) (fall.seconds() * toMark(fall));
  }

  private static FallEntry fall(FallEntry fall, double marked) {
    return new FallEntry(marked / toMark(fall), fall.curve(), fall.decaysTo());
  }

  private static double toMark(FallEntry fall) {
    return fall.curve() == Curve.LINEAR ? 1 : toMark(fall.decaysTo());
  }

  /** An exponential fall takes ln(1 %)/ln(q) times as long to 1 % as to the fraction q. */
  static double toMark(double decaysTo) {
    return decaysTo == MARKED_TO ? 1 : Math.log(MARKED_TO) / Math.log(decaysTo);
  }
}
