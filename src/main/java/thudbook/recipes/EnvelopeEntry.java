package thudbook.recipes;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;

/** An envelope as far as it is written down; null: not yet. */
public sealed interface EnvelopeEntry {
  /** The keys that are still missing, such as {@code decay}. */
  List<String> missing();

  /** The envelope, once nothing is missing. */
  Optional<Envelope> complete();

  /** A pulse. */
  record Pulse(@Nullable Double peakVolts, @Nullable Double lengthSeconds)
      implements EnvelopeEntry {
    @Override
    public List<String> missing() {
      return absent("peak", peakVolts, "length", lengthSeconds);
    }

    @Override
    public Optional<Envelope> complete() {
      return peakVolts == null || lengthSeconds == null
          ? Optional.empty()
          : Optional.of(new Envelope.Pulse(peakVolts, lengthSeconds));
    }
  }

  /** Attack, hold, decay. */
  record AttackHoldDecay(
      @Nullable Double peakVolts, Rise attack, double holdSeconds, FallEntry decay)
      implements EnvelopeEntry {
    @Override
    public List<String> missing() {
      return absent("peak", peakVolts, "decay", decay.seconds());
    }

    @Override
    public Optional<Envelope> complete() {
      return peakVolts == null || decay.seconds() == null
          ? Optional.empty()
          : Optional.of(
              new Envelope.AttackHoldDecay(
                  peakVolts, attack, holdSeconds, decay.after(decay.seconds())));
    }
  }

  /** Attack, decay, sustain, release. */
  record AttackDecaySustainRelease(
      @Nullable Double peakVolts,
      Rise attack,
      FallEntry decay,
      @Nullable Double sustain,
      @Nullable Double lengthSeconds,
      FallEntry release)
      implements EnvelopeEntry {
    @Override
    public List<String> missing() {
      return absent(
          "peak", peakVolts,
          "decay", decay.seconds(),
          "sustain", sustain,
          "length", lengthSeconds,
          "release", release.seconds());
    }

    @Override
    public Optional<Envelope> complete() {
      return peakVolts == null
              || decay.seconds() == null
              || sustain == null
              || lengthSeconds == null
              || release.seconds() == null
          ? Optional.empty()
          : Optional.of(
              new Envelope.AttackDecaySustainRelease(
                  peakVolts,
                  attack,
                  decay.after(decay.seconds()),
                  sustain,
                  lengthSeconds,
                  release.after(release.seconds())));
    }
  }

  /** A recorded control voltage; null: no samples yet. */
  record Recorded(@Nullable List<Envelope.Sample> samples) implements EnvelopeEntry {
    @Override
    public List<String> missing() {
      return samples == null ? List.of("samples") : List.of();
    }

    @Override
    public Optional<Envelope> complete() {
      return samples == null ? Optional.empty() : Optional.of(new Envelope.Recorded(samples));
    }
  }

  /** A decay or release whose time may be missing. */
  record FallEntry(@Nullable Double seconds, Curve curve, double decaysTo) {
    Fall after(double time) {
      return new Fall(time, curve, decaysTo);
    }
  }

  private static List<String> absent(@Nullable Object... keysAndValues) {
    List<String> missing = new ArrayList<>();
    for (int i = 0; i < keysAndValues.length; i += 2) {
      if (keysAndValues[i + 1] == null) {
        missing.add(String.valueOf(keysAndValues[i]));
      }
    }
    return missing;
  }
}
