package thudbook.patching;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Dimension;
import thudbook.quantities.Frequency;
import thudbook.recipes.SourceEntry;
import thudbook.sources.Modulator;

/** The numbers of a source that a knob can set. */
final class SourceNumbers {
  private SourceNumbers() {}

  /** A number of a source. */
  static Optional<Part<SourceEntry>> of(
      @Nullable SourceEntry source, String key, Dimension marked) {
    if (source instanceof SourceEntry.Noise noise) {
      return ofNoise(noise, key);
    } else if (source instanceof SourceEntry.Oscillator oscillator) {
      return ofOscillator(oscillator, key);
    } else if (source instanceof SourceEntry.FrequencyModulation pair) {
      return ofPair(pair, key, marked);
    }
    return Optional.empty();
  }

  private static Optional<Part<SourceEntry>> ofNoise(SourceEntry.Noise noise, String key) {
    return switch (key) {
      case "from" ->
          Part.some(
              Dimension.FREQUENCY,
              noise.fromHertz(),
              hertz ->
                  new SourceEntry.Noise(
                      noise.colour(), hertz, noise.toHertz(), noise.levelVolts()));
      case "to" ->
          Part.some(
              Dimension.FREQUENCY,
              noise.toHertz(),
              hertz ->
                  new SourceEntry.Noise(
                      noise.colour(), noise.fromHertz(), hertz, noise.levelVolts()));
      case "level" ->
          Part.some(
              Dimension.VOLTAGE,
              noise.levelVolts(),
              volts ->
                  new SourceEntry.Noise(noise.colour(), noise.fromHertz(), noise.toHertz(), volts));
      default -> Optional.empty();
    };
  }

  private static Optional<Part<SourceEntry>> ofOscillator(SourceEntry.Oscillator one, String key) {
    return switch (key) {
      case "frequency" ->
          Part.some(
              Dimension.FREQUENCY,
              hertz(one.frequency()),
              hertz ->
                  new SourceEntry.Oscillator(
                      one.wave(), Frequency.ofHertz(hertz), one.duty(), one.levelVolts()));
      case "duty" ->
          Part.some(
              Dimension.SHARE,
              one.duty(),
              duty ->
                  new SourceEntry.Oscillator(one.wave(), one.frequency(), duty, one.levelVolts()));
      case "level" ->
          Part.some(
              Dimension.VOLTAGE,
              one.levelVolts(),
              volts -> new SourceEntry.Oscillator(one.wave(), one.frequency(), one.duty(), volts));
      default -> Optional.empty();
    };
  }

  private static Optional<Part<SourceEntry>> ofPair(
      SourceEntry.FrequencyModulation pair, String key, Dimension marked) {
    return switch (key) {
      case "carrier" ->
          Part.some(
              Dimension.FREQUENCY,
              hertz(pair.carrier()),
              hertz -> pair(pair, Frequency.ofHertz(hertz), pair.modulator(), pair.index()));
      case "modulator" ->
          marked == Dimension.RATIO
              ? Part.some(
                  Dimension.RATIO,
                  ratio(pair),
                  ratio -> pair(pair, pair.carrier(), new Modulator.Ratio(ratio), pair.index()))
              : Part.some(
                  Dimension.FREQUENCY,
                  modulatorHertz(pair),
                  hertz ->
                      pair(
                          pair,
                          pair.carrier(),
                          new Modulator.Absolute(Frequency.ofHertz(hertz)),
                          pair.index()));
      case "index" ->
          Part.some(
              Dimension.NUMBER,
              pair.index(),
              index -> pair(pair, pair.carrier(), pair.modulator(), index));
      case "level" ->
          Part.some(
              Dimension.VOLTAGE,
              pair.levelVolts(),
              volts ->
                  new SourceEntry.FrequencyModulation(
                      pair.carrier(),
                      pair.modulator(),
                      pair.wave(),
                      pair.index(),
                      pair.phase(),
                      volts));
      default -> Optional.empty();
    };
  }

  private static SourceEntry pair(
      SourceEntry.FrequencyModulation pair,
      @Nullable Frequency carrier,
      @Nullable Modulator modulator,
      @Nullable Double index) {
    return new SourceEntry.FrequencyModulation(
        carrier, modulator, pair.wave(), index, pair.phase(), pair.levelVolts());
  }

  private static @Nullable Double hertz(@Nullable Frequency frequency) {
    return frequency == null ? null : (Double) frequency.hertz();
  }

  private static @Nullable Double modulatorHertz(SourceEntry.FrequencyModulation pair) {
    if (pair.modulator() instanceof Modulator.Absolute absolute) {
      return absolute.frequency().hertz();
    }
    return pair.modulator() == null || pair.carrier() == null
        ? null
        : (Double) pair.modulator().hertz(pair.carrier().hertz());
  }

  private static @Nullable Double ratio(SourceEntry.FrequencyModulation pair) {
    if (pair.modulator() instanceof Modulator.Ratio ratio) {
      return ratio.ratio();
    }
    return pair.modulator() == null || pair.carrier() == null
        ? null
        : (Double) (pair.modulator().hertz(pair.carrier().hertz()) / pair.carrier().hertz());
  }
}
