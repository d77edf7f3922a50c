package thudbook.recipes;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.envelopes.Envelope;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.sources.Source;

/**
 * A recipe joined with the studio's gates.
 *
 * @param missing what keeps it from being predicted, in words; empty if and only if there is a
 *     sound
 * @param gates the gates that its stages name and the studio has, each once, in order of the stages
 */
public record Resolution(@Nullable Sound sound, List<String> missing, List<Gate> gates) {
  public Resolution {
    missing = List.copyOf(missing);
    gates = List.copyOf(gates);
  }

  /** Joins a recipe with the studio's gates. */
  public static Resolution of(Recipe recipe, Things<Gate> gates) {
    return new Joining(recipe, gates).join();
  }

  /** The sound, if nothing is missing. */
  public Optional<Sound> complete() {
    return Optional.ofNullable(sound);
  }

  /** Collects what is there and what is missing. */
  private static final class Joining {
    private final Recipe recipe;
    private final Things<Gate> studio;
    private final List<String> missing = new ArrayList<>();
    private final Set<Gate> gates = new LinkedHashSet<>();

    Joining(Recipe recipe, Things<Gate> studio) {
      this.recipe = recipe;
      this.studio = studio;
    }

    Resolution join() {
      Source source = source();
      Envelope envelope = envelope("", recipe.envelope());
      if (recipe.envelope() == null) {
        missing.add("no envelope");
      }
      List<Stage> stages = new ArrayList<>();
      for (int i = 0; i < recipe.stages().size(); i++) {
        Stage stage = stage(recipe.stages().size() == 1 ? "" : "stage " + (i + 1) + ": ", i);
        if (stage != null) {
          stages.add(stage);
        }
      }
      if (recipe.stages().isEmpty()) {
        missing.add("no gate channel");
      }
      refuseStruckRecordings();
      if (!missing.isEmpty()) {
        return new Resolution(null, missing, List.copyOf(gates));
      }
      double coupling = recipe.couplingHertz() == null ? 0 : recipe.couplingHertz();
      return new Resolution(
          new Sound(
              Objects.requireNonNull(source),
              Objects.requireNonNull(envelope),
              recipe.strikes(),
              stages,
              coupling),
          missing,
          List.copyOf(gates));
    }

    private @Nullable Source source() {
      SourceEntry source = recipe.source();
      if (source == null) {
        missing.add("no source");
        return null;
      }
      source.missing().forEach(key -> missing.add("source: " + key));
      return source.complete().orElse(null);
    }

    private @Nullable Envelope envelope(String place, @Nullable EnvelopeEntry envelope) {
      if (envelope == null) {
        return null;
      }
      envelope.missing().forEach(key -> missing.add(place + "envelope: " + key));
      return envelope.complete().orElse(null);
    }

    private @Nullable Stage stage(String place, int index) {
      StageEntry stage = recipe.stages().get(index);
      Envelope own = envelope(place, stage.envelope());
      if (stage.gate() == null) {
        missing.add(place + "no gate channel");
        return null;
      }
      Optional<Gate> found =
          studio.find(stage.gate()).filter(stored -> stored.binnedAt() == null).map(Kept::thing);
      if (found.isEmpty()) {
        missing.add(place + "no gate " + stage.gate() + " in the studio");
        return null;
      }
      Gate gate = found.get();
      gates.add(gate);
      if (stage.channel() == null) {
        missing.add(place + "no channel of the gate " + gate.slug());
        return null;
      }
      Optional<StudioChannel> channel = gate.channel(stage.channel());
      if (channel.isEmpty()) {
        missing.add(place + "gate " + gate.slug() + " has no channel " + stage.channel());
        return null;
      }
      return new Stage(channel.get().channel(), stage.drive(), own);
    }

    private void refuseStruckRecordings() {
      if (recipe.strikes() == null) {
        return;
      }
      boolean shared =
          recipe.envelope() instanceof EnvelopeEntry.Recorded
              && (recipe.stages().isEmpty()
                  || recipe.stages().stream().anyMatch(stage -> stage.envelope() == null));
      boolean own =
          recipe.stages().stream()
              .anyMatch(stage -> stage.envelope() instanceof EnvelopeEntry.Recorded);
      if (shared || own) {
        missing.add("strikes: a recorded control voltage can't be struck again");
      }
    }
  }
}
