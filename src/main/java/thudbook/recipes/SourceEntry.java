package thudbook.recipes;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Frequency;
import thudbook.sources.Modulator;
import thudbook.sources.Source;

/** A source as far as it is written down; null: not yet. */
public sealed interface SourceEntry {
  /** The keys that are still missing, such as {@code carrier}. */
  List<String> missing();

  /** The source, once nothing is missing. */
  Optional<Source> complete();

  /** Noise: everything has a default. */
  record Noise(Source.Colour colour, double fromHertz, double toHertz, double levelVolts)
      implements SourceEntry {
    @Override
    public List<String> missing() {
      return List.of();
    }

    @Override
    public Optional<Source> complete() {
      return Optional.of(new Source.Noise(colour, fromHertz, toHertz, levelVolts));
    }
  }

  /** An oscillator. */
  record Oscillator(Source.Wave wave, @Nullable Frequency frequency, double duty, double levelVolts)
      implements SourceEntry {
    @Override
    public List<String> missing() {
      return frequency == null ? List.of("frequency") : List.of();
    }

    @Override
    public Optional<Source> complete() {
      return frequency == null
          ? Optional.empty()
          : Optional.of(new Source.Oscillator(wave, frequency, duty, levelVolts));
    }
  }

  /** A pair in linear frequency modulation. */
  record FrequencyModulation(
      @Nullable Frequency carrier,
      @Nullable Modulator modulator,
      Source.Wave wave,
      @Nullable Double index,
      Source.Phase phase,
      double levelVolts)
      implements SourceEntry {
    @Override
    public List<String> missing() {
      List<String> missing = new ArrayList<>();
      if (carrier == null) {
        missing.add("carrier");
      }
      if (modulator == null) {
        missing.add("modulator");
      }
      if (index == null) {
        missing.add("index");
      }
      return missing;
    }

    @Override
    public Optional<Source> complete() {
      return carrier == null || modulator == null || index == null
          ? Optional.empty()
          : Optional.of(
              new Source.FrequencyModulation(carrier, modulator, wave, index, phase, levelVolts));
    }
  }
}
