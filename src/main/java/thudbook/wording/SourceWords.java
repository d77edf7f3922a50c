package thudbook.wording;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Frequency;
import thudbook.recipes.SourceEntry;
import thudbook.sources.Modulator;
import thudbook.sources.Source;

/** Sources in plain words. */
public final class SourceWords {
  private static final String NOT_YET = "not written yet";

  private SourceWords() {}

  /** The kind of a source as documents call it, in plain words. */
  public static String kind(@Nullable String kind) {
    if (kind == null) {
      return "no source yet";
    }
    return switch (kind) {
      case "fm" -> "FM pair";
      default -> kind;
    };
  }

  /** What a source is, in one line. */
  public static String line(SourceEntry entry) {
    if (entry instanceof SourceEntry.Noise noise) {
      return noise.colour() == Source.Colour.WHITE ? "White noise" : "Pink noise";
    } else if (entry instanceof SourceEntry.Oscillator oscillator) {
      return "Oscillator: a "
          + wave(oscillator.wave())
          + " wave at "
          + frequency(oscillator.frequency());
    } else {
      SourceEntry.FrequencyModulation fm = (SourceEntry.FrequencyModulation) entry;
      return "FM pair: a carrier of "
          + frequency(fm.carrier())
          + " under a "
          + wave(fm.wave())
          + " modulator";
    }
  }

  /** Every value of a source. */
  public static List<Entry> entries(SourceEntry entry) {
    List<Entry> entries = new ArrayList<>();
    if (entry instanceof SourceEntry.Noise noise) {
      entries.add(new Entry("source.kind", "Kind", "noise"));
      entries.add(new Entry("source.colour", "Colour", colour(noise.colour())));
      entries.add(new Entry("source.from", "From", Reading.enteredHertz(noise.fromHertz())));
      entries.add(new Entry("source.to", "To", Reading.enteredHertz(noise.toHertz())));
      entries.add(
          new Entry(
              "source.level", "Level", Reading.entered(noise.levelVolts(), "V") + " (four sigma)"));
    } else if (entry instanceof SourceEntry.Oscillator oscillator) {
      entries.add(new Entry("source.kind", "Kind", "oscillator"));
      entries.add(new Entry("source.wave", "Wave", wave(oscillator.wave())));
      entries.add(new Entry("source.frequency", "Frequency", frequency(oscillator.frequency())));
      if (oscillator.wave() == Source.Wave.PULSE) {
        entries.add(new Entry("source.duty", "Duty", Reading.enteredShare(oscillator.duty())));
      }
      entries.add(level(oscillator.levelVolts()));
    } else if (entry instanceof SourceEntry.FrequencyModulation fm) {
      entries.add(new Entry("source.kind", "Kind", "FM pair"));
      entries.add(new Entry("source.carrier", "Carrier", frequency(fm.carrier())));
      entries.add(
          new Entry("source.modulator", "Modulator", modulator(fm.modulator(), fm.carrier())));
      entries.add(new Entry("source.wave", "Modulator’s wave", wave(fm.wave())));
      entries.add(
          new Entry(
              "source.index", "Index", fm.index() == null ? NOT_YET : Reading.entered(fm.index())));
      entries.add(
          new Entry(
              "source.phase",
              "Phase",
              fm.phase() == Source.Phase.LOCKED
                  ? "locked, partials add with their signs"
                  : "free, partials add by power"));
      entries.add(level(fm.levelVolts()));
    }
    return entries;
  }

  private static Entry level(double volts) {
    return new Entry("source.level", "Level", Reading.entered(volts, "V") + " peak");
  }

  private static String frequency(@Nullable Frequency frequency) {
    if (frequency == null) {
      return NOT_YET;
    } else if (frequency instanceof Frequency.Note note) {
      String name = note.name().replace('#', '♯').replace('b', '♭');
      return name + " (" + ReadableNumbers.hertz(note.hertz()) + ")";
    }
    return Reading.enteredHertz(frequency.hertz());
  }

  private static String modulator(@Nullable Modulator modulator, @Nullable Frequency carrier) {
    if (modulator == null) {
      return NOT_YET;
    } else if (modulator instanceof Modulator.Ratio ratio) {
      String times = Reading.entered(ratio.ratio()) + " × the carrier";
      return carrier == null
          ? times
          : times + " (" + ReadableNumbers.hertz(ratio.hertz(carrier.hertz())) + ")";
    }
    return frequency(((Modulator.Absolute) modulator).frequency());
  }

  private static String colour(Source.Colour colour) {
    return switch (colour) {
      case WHITE -> "white";
      case PINK -> "pink";
    };
  }

  private static String wave(Source.Wave wave) {
    return switch (wave) {
      case SINE -> "sine";
      case TRIANGLE -> "triangle";
      case SAWTOOTH -> "sawtooth";
      case SQUARE -> "square";
      case PULSE -> "pulse";
    };
  }
}
