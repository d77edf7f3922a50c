package thudbook.sessions;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Position;
import thudbook.recipes.Recipe;

/**
 * What has to be done to get from one patch to the next.
 *
 * @param pull connections that the next patch does not have
 * @param make connections that it has and the one before does not
 * @param set switches and knobs that the one before left elsewhere, or did not place: nobody knows
 *     then where they stand
 */
public record Moves(List<Recipe.Connection> pull, List<Recipe.Connection> make, List<Setting> set) {
  public Moves {
    pull = List.copyOf(pull);
    make = List.copyOf(make);
    set = List.copyOf(set);
  }

  /**
   * A knob to be turned or a switch to be set.
   *
   * @param from where it stands; null: not known
   */
  public record Setting(Patch.Control control, @Nullable Position from, Position to) {
    /** Whether it is a switch: it stands at a name. */
    public boolean isSwitch() {
      return to instanceof Position.Named;
    }
  }

  /** The moves from one patch to another. */
  public static Moves between(Patch before, Patch after) {
    List<Setting> set = new ArrayList<>();
    after
        .positions()
        .forEach(
            (control, to) -> {
              Position from = before.positions().get(control);
              if (!to.equals(from)) {
                set.add(new Setting(control, from, to));
              }
            });
    return new Moves(
        before.connections().stream().filter(c -> !after.connections().contains(c)).toList(),
        after.connections().stream().filter(c -> !before.connections().contains(c)).toList(),
        set);
  }

  /** How many there are: every connection, knob and switch is one. */
  public int count() {
    return pull.size() + make.size() + set.size();
  }
}
