package thudbook.predictions;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Strikes;
import thudbook.quantities.Check;
import thudbook.quantities.Dimension;
import thudbook.quantities.Range;

/**
 * A number of a sound that can be turned while everything else stays, by its address: {@code
 * source.index}, {@code envelope.decay}, {@code stages.0.gain}, {@code stages.0.channel.bleed}. Its
 * addresses are those of documents. Numbers that the sound has and does not use, such as the duty
 * of a sine, are no parameters.
 *
 * @param address blocks and key, separated by dots; stages count from 0
 * @param bounds in the SI unit of its dimension, as far as the other numbers of the sound leave it
 * @param scale on which equal steps are about equally large
 * @param value the number, in the SI unit
 * @param setting makes the sound that has another number
 */
public record Parameter(
    String address, Range bounds, Scale scale, double value, DoubleFunction<Sound> setting) {
  /** On which scale equal steps are about equally large. */
  public enum Scale {
    /** Equal differences. */
    LINEAR,
    /** Equal ratios; of bounds that begin at 0, everything but 0. */
    LOGARITHMIC
  }

  /**
   * All parameters of a sound: of its source, its envelope, its strikes, its stages in their order,
   * its output.
   */
  public static List<Parameter> of(Sound sound) {
    List<Parameter> all = new ArrayList<>();
    SourceParameters.of(sound.source())
        .forEach(number -> all.add(number.named("source.", sound::with)));
    EnvelopeParameters.of(sound.envelope())
        .forEach(number -> all.add(number.named("envelope.", other -> with(sound, other))));
    if (sound.strikes() != null) {
      ofStrikes(sound.strikes())
          .forEach(number -> all.add(number.named("strikes.", other -> with(sound, other))));
    }
    for (int i = 0; i < sound.stages().size(); i++) {
      int index = i;
      StageParameters.of(sound.stages().get(i))
          .forEach(
              number -> all.add(number.named("stages." + index + ".", s -> with(sound, index, s))));
    }
    Range coupling = Range.of(Dimension.FREQUENCY, 0, Sound.HIGHEST_COUPLING_HERTZ);
    all.add(
        new Parameter(
            "output.coupling",
            coupling,
            Scale.LOGARITHMIC,
            sound.couplingHertz(),
            hertz -> with(sound, hertz)));
    return List.copyOf(all);
  }

  /** The parameter of an address, if the sound has it. */
  public static Optional<Parameter> at(Sound sound, String address) {
    return of(sound).stream().filter(p -> p.address().equals(address)).findFirst();
  }

  /**
   * The sound with another number here; whatever does not change is the same object.
   *
   * @throws IllegalArgumentException if it is not within the {@link #bounds}
   */
  public Sound with(double other) {
    if (!bounds.admits(other)) {
      Check.inRange(address, other, bounds.least(), bounds.most());
    }
    return setting.apply(other);
  }

  private static List<Part<Strikes>> ofStrikes(Strikes strikes) {
    if (strikes instanceof Strikes.Every every) {
      return List.of(
          new Part<>(
              "every",
              Range.of(Dimension.TIME, 1e-6, 60),
              Scale.LOGARITHMIC,
              every.everySeconds(),
              s -> new Strikes.Every(s, every.count(), every.restart())));
    } else if (strikes instanceof Strikes.Tempo tempo) {
      double quarters = 240.0 * tempo.numerator() / tempo.denominator();
      // The distance of strikes, 240/bpm · n/d, is 60 s at most.
      return List.of(
          new Part<>(
              "tempo",
              Range.of(Dimension.TEMPO, Math.max(10, Part.inside(quarters / 60, 1)), 999),
              Scale.LOGARITHMIC,
              tempo.beatsPerMinute(),
              bpm ->
                  new Strikes.Tempo(
                      bpm,
                      tempo.numerator(),
                      tempo.denominator(),
                      tempo.count(),
                      tempo.restart())));
    }
    return List.of();
  }

  private static Sound with(Sound sound, Envelope envelope) {
    return new Sound(
        sound.source(), envelope, sound.strikes(), sound.stages(), sound.couplingHertz());
  }

  private static Sound with(Sound sound, Strikes strikes) {
    return new Sound(
        sound.source(), sound.envelope(), strikes, sound.stages(), sound.couplingHertz());
  }

  private static Sound with(Sound sound, int index, Stage stage) {
    List<Stage> stages = new ArrayList<>(sound.stages());
    stages.set(index, stage);
    return new Sound(
        sound.source(), sound.envelope(), sound.strikes(), stages, sound.couplingHertz());
  }

  private static Sound with(Sound sound, double couplingHertz) {
    return new Sound(
        sound.source(), sound.envelope(), sound.strikes(), sound.stages(), couplingHertz);
  }

  /**
   * A number of a part of a sound, and the part with another number there.
   *
   * @param <T> the part
   */
  record Part<T>(
      String key, Range bounds, Scale scale, double value, DoubleFunction<? extends T> setting) {
    /** This number as one of a larger part. */
    <S> Part<S> in(String block, Function<? super T, ? extends S> place) {
      return new Part<>(block + key, bounds, scale, value, v -> place.apply(setting.apply(v)));
    }

    /** This number as one of a sound. */
    Parameter named(String block, Function<? super T, Sound> place) {
      return new Parameter(block + key, bounds, scale, value, v -> place.apply(setting.apply(v)));
    }

    /** A bound that a quotient has, moved inwards (direction 1: up, −1: down) by its rounding. */
    static double inside(double bound, int direction) {
      return bound + direction * 4 * Math.ulp(bound);
    }
  }
}
