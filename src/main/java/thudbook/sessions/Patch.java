package thudbook.sessions;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import thudbook.quantities.Position;
import thudbook.recipes.Recipe;

/**
 * What a step of a session asks of the rack: the connections and where knobs and switches stand, of
 * all of its recipes together, in the order in which the recipes write them.
 */
public record Patch(Set<Recipe.Connection> connections, Map<Control, Position> positions) {
  /** A rack without a connection whose knobs stand anywhere: how a day begins. */
  public static final Patch EMPTY = new Patch(Set.of(), Map.of());

  public Patch {
    connections = Collections.unmodifiableSet(new LinkedHashSet<>(connections));
    positions = Collections.unmodifiableMap(new LinkedHashMap<>(positions));
  }

  /** A knob or switch of a module. */
  public record Control(String module, String name) {
    static Control of(Recipe.Setting setting) {
      return new Control(setting.module(), setting.control());
    }
  }

  /** The patch of one recipe, or of several at once: where two differ about a knob, the first. */
  public static Patch of(Collection<Recipe> recipes) {
    Set<Recipe.Connection> connections = new LinkedHashSet<>();
    Map<Control, Position> positions = new LinkedHashMap<>();
    for (Recipe recipe : recipes) {
      connections.addAll(recipe.connections());
      recipe
          .settings()
          .forEach(setting -> positions.putIfAbsent(Control.of(setting), setting.at()));
    }
    return new Patch(connections, positions);
  }
}
