package thudbook.recipes;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Act;
import thudbook.changes.Binning;
import thudbook.changes.Kept;
import thudbook.changes.Noun;
import thudbook.changes.Rule;
import thudbook.changes.Things;
import thudbook.changes.Write;
import thudbook.equipment.Gate;
import thudbook.quantities.Fault;

/** What recipes use of a gate can't be taken away from them. */
public final class GateRule implements Rule<Gate> {
  private final Noun<Gate> gate;
  private final Things<Gate> studio;
  private final Noun<Recipe> recipe;
  private final RecipeStore recipes;

  /** Asks the recipes of a notebook. */
  public GateRule(Noun<Gate> gate, Things<Gate> studio, Noun<Recipe> recipe, RecipeStore recipes) {
    this.gate = gate;
    this.studio = studio;
    this.recipe = recipe;
    this.recipes = recipes;
  }

  @Override
  public List<Fault> obstacles(Act act) {
    Set<String> leaving =
        act.binnings(recipe, true)
            .flatMap(binning -> recipes.find(binning.id().toString()).stream())
            .map(Kept::slug)
            .collect(Collectors.toSet());
    List<Fault> faults = new ArrayList<>();
    for (Binning binning : act.binnings(gate, true).toList()) {
      studio
          .find(binning.id().toString())
          .ifPresent(kept -> faults.addAll(used(kept.thing(), null, leaving)));
    }
    for (Write<Gate> write : act.writes(gate)) {
      if (write.version() != null) {
        studio
            .find(write.thing().id().toString())
            .ifPresent(kept -> faults.addAll(used(kept.thing(), write.thing(), leaving)));
      }
    }
    return faults;
  }

  /**
   * What recipes would lose.
   *
   * @param after the gate as it will be; null: it goes into the bin
   * @param leaving slugs of recipes that go into the bin with it, and don't hold it
   */
  private List<Fault> used(Gate before, @Nullable Gate after, Set<String> leaving) {
    Set<String> kept =
        after == null
            ? Set.of()
            : after.channels().stream().map(c -> c.channel().name()).collect(Collectors.toSet());
    List<Fault> faults = new ArrayList<>();
    for (RecipeStore.Use use : recipes.using(before.id())) {
      List<String> lost =
          use.channels().stream()
              .filter(name -> before.channel(name).isPresent() && !kept.contains(name))
              .toList();
      if ((after == null || !lost.isEmpty()) && !leaving.contains(use.slug())) {
        String what =
            after == null
                ? "the gate " + before.title()
                : "the channel " + String.join(" and ", lost) + " of " + before.title();
        faults.add(
            new Fault(
                "/channels", 0, "in-use", use.slug(), "", use.title() + " uses " + what + "."));
      }
    }
    return faults;
  }
}
