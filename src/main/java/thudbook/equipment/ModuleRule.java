package thudbook.equipment;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import thudbook.changes.Act;
import thudbook.changes.Binning;
import thudbook.changes.Kept;
import thudbook.changes.Noun;
import thudbook.changes.Rule;
import thudbook.changes.Things;
import thudbook.quantities.Fault;

/** No two modules have one label: recipes could not tell them apart. */
public final class ModuleRule implements Rule<Module> {
  private final Noun<Module> module;
  private final Things<Module> modules;

  /** Asks the modules of a notebook. */
  public ModuleRule(Noun<Module> module, Things<Module> modules) {
    this.module = module;
    this.modules = modules;
  }

  @Override
  public List<Fault> obstacles(Act act) {
    List<Module> coming =
        Stream.concat(
                act.writes(module).stream().map(write -> write.thing()),
                act.binnings(module, false)
                    .flatMap(binning -> modules.find(binning.id().toString()).stream())
                    .map(Kept::thing))
            .toList();
    if (coming.isEmpty()) {
      return List.of();
    }
    Set<UUID> touched =
        Stream.concat(coming.stream().map(Module::id), act.binnings(module, true).map(Binning::id))
            .collect(Collectors.toSet());
    Map<String, Module> labels = new HashMap<>();
    modules.all().stream()
        .map(Kept::thing)
        .filter(there -> !touched.contains(there.id()))
        .forEach(there -> labels.put(folded(there.label()), there));
    return coming.stream()
        .flatMap(
            one -> {
              Module other = labels.putIfAbsent(folded(one.label()), one);
              return other == null ? Stream.<Fault>empty() : Stream.of(taken(one, other));
            })
        .toList();
  }

  /** Upper and lower case are the same. */
  private static String folded(String label) {
    return label.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
  }

  private static Fault taken(Module module, Module other) {
    String label = module.label();
    return new Fault(
        "/label",
        0,
        "label-taken",
        label,
        "a label of its own",
        "The label " + label + " is taken by " + other.title() + ".");
  }
}
