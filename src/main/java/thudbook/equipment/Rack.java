package thudbook.equipment;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import thudbook.changes.Kept;
import thudbook.changes.Things;

/**
 * The modules of a studio under their labels, as recipes name them: {@code E1}, and {@code G1
 * control 1} for a port of G1.
 *
 * @param modules in the order of their labels
 */
public record Rack(List<Module> modules) {
  /** A studio whose modules nobody has written down yet. */
  public static final Rack EMPTY = new Rack(List.of());

  /** Longest labels first: {@code G1 B out} belongs to a module G1 B before it belongs to G1. */
  private static final Comparator<Module> LONGEST_LABEL_FIRST =
      Comparator.comparingInt((Module m) -> m.label().length()).reversed();

  public Rack {
    modules = modules.stream().sorted(Comparator.comparing(Module::label)).toList();
  }

  /** The modules of a studio that are not in the bin. */
  public static Rack of(Things<Module> modules) {
    return new Rack(modules.all().stream().map(Kept::thing).toList());
  }

  /** Whether nothing is written down: then nothing can be compared with it either. */
  public boolean isEmpty() {
    return modules.isEmpty();
  }

  /** The module of this label, if there is one; upper and lower case are the same. */
  public Optional<Module> module(String label) {
    return modules.stream().filter(m -> m.label().equalsIgnoreCase(label)).findFirst();
  }

  /** The modules that carry a gate of this slug. */
  public List<Module> carrying(String gate) {
    return modules.stream().filter(m -> gate.equals(m.gate())).toList();
  }

  /**
   * The module that the name of a port begins with, such as G1 for {@code G1 control 1}, if there
   * is one.
   */
  public Optional<Module> moduleOf(String end) {
    return modules.stream()
        .sorted(LONGEST_LABEL_FIRST)
        .filter(m -> begins(end, m.label()))
        .findFirst();
  }

  /** The name of a port behind the label of its module: {@code control 1}. */
  public static String portName(Module module, String end) {
    return end.length() <= module.label().length()
        ? ""
        : end.substring(module.label().length() + 1).strip();
  }

  /** The port of this name, with its module, if there is one. */
  public Optional<Socket> socket(Port.Direction direction, String end) {
    return moduleOf(end)
        .flatMap(
            module ->
                module
                    .port(direction, portName(module, end))
                    .map(port -> new Socket(module, port)));
  }

  private static boolean begins(String end, String label) {
    return end.equalsIgnoreCase(label)
        || end.regionMatches(true, 0, label + " ", 0, label.length() + 1);
  }

  /** A port of a certain module. */
  public record Socket(Module module, Port port) {
    /** As recipes write it: {@code G1 control 1}. */
    public String text() {
      return module.label() + " " + port.name();
    }
  }
}
