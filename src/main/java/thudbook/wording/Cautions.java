package thudbook.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;

/** What to be careful about, where it matters. The help says more. */
public final class Cautions {
  /** From this thump on, in volts, the speaker path deserves a look. Common practice, no source. */
  static final double LARGE_THUMP_VOLTS = 0.5;

  private Cautions() {}

  /** A caution in a few words, and what to do about it. */
  public record Caution(String title, String text) {}

  /** The cautions of a predicted sound. */
  public static List<Caution> of(Metrics metrics) {
    List<Caution> cautions = new ArrayList<>();
    OptionalDouble thump = metrics.get(Metric.THUMP_PEAK);
    if (thump.isPresent() && thump.getAsDouble() > LARGE_THUMP_VOLTS) {
      cautions.add(
          new Caution(
              "Large thump",
              "Under the sound rides an offset of "
                  + ReadableNumbers.volts(thump.getAsDouble())
                  + " that a loudspeaker may not show and still has to swallow. Check the speaker"
                  + " path: a coupling high-pass between the rack and the amplifier, and monitors"
                  + " down before the first strike and before any sweep."));
    }
    OptionalDouble clipped = metrics.get(Metric.CLIPPED_SHARE);
    if (clipped.isPresent() && clipped.getAsDouble() > 0) {
      cautions.add(
          new Caution(
              "Clips",
              "Tone and offset together reach an output rail. Clipped peaks are harder on tweeters"
                  + " and ears than the level shows."));
    }
    return List.copyOf(cautions);
  }

  /** The cautions of a gate. */
  public static List<Caution> of(Gate gate) {
    return of(gate.caution(), gate.title());
  }

  /** The cautions of a module. */
  public static List<Caution> of(Module module) {
    return of(module.caution(), module.label() + " " + module.title());
  }

  private static List<Caution> of(Gate.Caution caution, String name) {
    return switch (caution) {
      case NONE -> List.of();
      case TUBE -> List.of(ofTubes(name));
    };
  }

  /** The caution about tubes in something. */
  public static Caution ofTubes(String title) {
    return new Caution(
        "Tubes in " + title,
        "High voltage and hot glass, also for a while after switching off. Leave covers on; work"
            + " inside is for qualified people only and follows your local electrical codes.");
  }
}
