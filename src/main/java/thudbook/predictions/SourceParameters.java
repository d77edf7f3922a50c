package thudbook.predictions;

import static thudbook.predictions.Parameter.Scale.LINEAR;
import static thudbook.predictions.Parameter.Scale.LOGARITHMIC;
import static thudbook.quantities.Frequency.HIGHEST_HERTZ;
import static thudbook.quantities.Frequency.LOWEST_HERTZ;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import thudbook.predictions.Parameter.Part;
import thudbook.quantities.Dimension;
import thudbook.quantities.Frequency;
import thudbook.quantities.Range;
import thudbook.sources.Modulator;
import thudbook.sources.Source;

/**
 * The numbers of a source. A modulator has two, its frequency ({@code modulator}) and its ratio to
 * the carrier ({@code ratio}): setting either makes it one that is given so.
 */
final class SourceParameters {
  private static final Range LEVEL = Range.of(Dimension.VOLTAGE, 1e-3, 20);
  private static final Range HERTZ = Range.of(Dimension.FREQUENCY, LOWEST_HERTZ, HIGHEST_HERTZ);

  private SourceParameters() {}

  static List<Part<Source>> of(Source source) {
    if (source instanceof Source.Noise noise) {
      return ofNoise(noise);
    } else if (source instanceof Source.Oscillator oscillator) {
      return ofOscillator(oscillator);
    } else if (source instanceof Source.FrequencyModulation pair) {
      return ofPair(pair);
    }
    return List.of();
  }

  private static List<Part<Source>> ofNoise(Source.Noise one) {
    double below = Math.nextDown(one.toHertz());
    double above = Math.nextUp(one.fromHertz());
    return List.of(
        new Part<>(
            "from",
            Range.of(Dimension.FREQUENCY, LOWEST_HERTZ, below),
            LOGARITHMIC,
            one.fromHertz(),
            v -> new Source.Noise(one.colour(), v, one.toHertz(), one.levelVolts())),
        new Part<>(
            "to",
            Range.of(Dimension.FREQUENCY, above, HIGHEST_HERTZ),
            LOGARITHMIC,
            one.toHertz(),
            v -> new Source.Noise(one.colour(), one.fromHertz(), v, one.levelVolts())),
        level(one, v -> new Source.Noise(one.colour(), one.fromHertz(), one.toHertz(), v)));
  }

  private static List<Part<Source>> ofOscillator(Source.Oscillator one) {
    List<Part<Source>> parts = new ArrayList<>();
    parts.add(
        new Part<>(
            "frequency",
            HERTZ,
            LOGARITHMIC,
            one.frequency().hertz(),
            v ->
                new Source.Oscillator(
                    one.wave(), Frequency.ofHertz(v), one.duty(), one.levelVolts())));
    if (one.wave() == Source.Wave.PULSE) {
      parts.add(
          new Part<>(
              "duty",
              Range.of(Dimension.SHARE, 0.01, 0.99),
              LINEAR,
              one.duty(),
              v -> new Source.Oscillator(one.wave(), one.frequency(), v, one.levelVolts())));
    }
    parts.add(level(one, v -> new Source.Oscillator(one.wave(), one.frequency(), one.duty(), v)));
    return parts;
  }

  private static List<Part<Source>> ofPair(Source.FrequencyModulation one) {
    double carrier = one.carrier().hertz();
    double ratio = one.modulatorHertz() / carrier;
    return List.of(
        new Part<>(
            "carrier",
            one.modulator() instanceof Modulator.Ratio given ? carriers(given.ratio()) : HERTZ,
            LOGARITHMIC,
            carrier,
            v -> pair(one, Frequency.ofHertz(v), one.modulator(), one.index())),
        new Part<>(
            "modulator",
            HERTZ,
            LOGARITHMIC,
            one.modulatorHertz(),
            v -> {
              Modulator modulator = new Modulator.Absolute(Frequency.ofHertz(v));
              return pair(one, one.carrier(), modulator, one.index());
            }),
        new Part<>(
            "ratio",
            Range.of(
                Dimension.RATIO,
                Math.max(Modulator.LEAST_RATIO, Part.inside(LOWEST_HERTZ / carrier, 1)),
                Math.min(Modulator.MOST_RATIO, Part.inside(HIGHEST_HERTZ / carrier, -1))),
            LOGARITHMIC,
            one.modulator() instanceof Modulator.Ratio given ? given.ratio() : ratio,
            v -> pair(one, one.carrier(), new Modulator.Ratio(v), one.index())),
        new Part<>(
            "index",
            Range.of(Dimension.NUMBER, 0, 50),
            LINEAR,
            one.index(),
            v -> pair(one, one.carrier(), one.modulator(), v)),
        level(
            one,
            v ->
                new Source.FrequencyModulation(
                    one.carrier(), one.modulator(), one.wave(), one.index(), one.phase(), v)));
  }

  /** The carriers whose modulator, a multiple of theirs, is in the range of frequencies too. */
  private static Range carriers(double ratio) {
    return Range.of(
        Dimension.FREQUENCY,
        Math.max(LOWEST_HERTZ, Part.inside(LOWEST_HERTZ / ratio, 1)),
        Math.min(HIGHEST_HERTZ, Part.inside(HIGHEST_HERTZ / ratio, -1)));
  }

  private static Source pair(
      Source.FrequencyModulation one, Frequency carrier, Modulator modulator, double index) {
    return new Source.FrequencyModulation(
        carrier, modulator, one.wave(), index, one.phase(), one.levelVolts());
  }

  private static Part<Source> level(Source source, DoubleFunction<Source> setting) {
    return new Part<>("level", LEVEL, LOGARITHMIC, source.levelVolts(), setting);
  }
}
