package thudbook.recipes;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;
import thudbook.predictions.Sound;

/**
 * A recipe joined with the studio's gates.
 *
 * @param missing what keeps it from being predicted, in words; empty if and only if there is a
 *     sound
 * @param gates the gates that its stages name and the studio has, in order of the stages
 */
public record Resolution(@Nullable Sound sound, List<String> missing, List<Gate> gates) {
  public Resolution {
    missing = List.copyOf(missing);
    gates = List.copyOf(gates);
  }

  /** Joins a recipe with the studio's gates. */
  public static Resolution of(Recipe recipe, GateStore gates) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** The sound, if nothing is missing. */
  public Optional<Sound> complete() {
    return Optional.ofNullable(sound);
  }
}
