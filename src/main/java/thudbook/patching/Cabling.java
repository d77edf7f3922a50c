package thudbook.patching;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import thudbook.equipment.Module;
import thudbook.equipment.Port;
import thudbook.equipment.Port.Carries;
import thudbook.equipment.Port.Direction;
import thudbook.equipment.Rack;
import thudbook.equipment.Rack.Socket;
import thudbook.patching.CablingFault.Kind;
import thudbook.recipes.Recipe;
import thudbook.recipes.Recipe.Connection;

/**
 * The connections of a recipe on the ports of the studio: what is wrong with them, and the order in
 * which a signal meets them.
 *
 * @param cables in the order of the recipe
 * @param inSignalOrder the numbers of the connections, so that each comes behind those that feed
 *     its module; within that, and within a loop, in the order of the recipe
 * @param faults faults first by connection, then of the stages
 */
public record Cabling(List<Cable> cables, List<Integer> inSignalOrder, List<CablingFault> faults) {
  public Cabling {
    cables = List.copyOf(cables);
    inSignalOrder = List.copyOf(inSignalOrder);
    faults = List.copyOf(faults);
  }

  /**
   * A connection with the ports that it names.
   *
   * @param from empty: there is no such output
   * @param to empty: there is no such input
   */
  public record Cable(Connection connection, Optional<Socket> from, Optional<Socket> to) {}

  /** Looks the connections of a recipe up in the studio. */
  public static Cabling of(Recipe recipe, Rack rack) {
    List<Cable> cables =
        recipe.connections().stream()
            .map(
                c ->
                    new Cable(
                        c, rack.socket(Direction.OUT, c.out()), rack.socket(Direction.IN, c.in())))
            .toList();
    List<CablingFault> faults = new ArrayList<>();
    for (int i = 0; i < cables.size(); i++) {
      ends(i, cables.get(i), rack, faults);
      carried(i, cables.get(i), faults);
    }
    taken(cables, faults);
    SignalPaths paths = new SignalPaths(cables);
    paths
        .loop()
        .ifPresent(
            loop ->
                faults.add(
                    new CablingFault(
                        Kind.LOOP,
                        "connections." + loop.get(0),
                        "the signal goes round: " + route(loop, cables))));
    if (!rack.isEmpty() && !cables.isEmpty()) {
      StageCabling.check(recipe, rack, cables, paths, faults);
      struck(cables, faults);
    }
    return new Cabling(cables, paths.order(), faults);
  }

  private static void ends(int index, Cable cable, Rack rack, List<CablingFault> faults) {
    if (rack.isEmpty()) {
      return;
    }
    String out = cable.connection().out();
    String in = cable.connection().in();
    boolean outIsInput = cable.from().isEmpty() && rack.socket(Direction.IN, out).isPresent();
    boolean inIsOutput = cable.to().isEmpty() && rack.socket(Direction.OUT, in).isPresent();
    if (outIsInput && inIsOutput) {
      faults.add(
          at(
              index,
              "",
              Kind.REVERSED,
              out + " is an input and " + in + " an output: turn it round"));
    } else if (outIsInput) {
      faults.add(
          at(
              index,
              ".out",
              Kind.INPUT_USED_AS_OUTPUT,
              out + " is an input, nothing comes out of it"));
    } else if (inIsOutput) {
      faults.add(
          at(
              index,
              ".in",
              Kind.OUTPUT_INTO_OUTPUT,
              in + " is an output: " + out + " goes from an output into an output"));
    }
    if (cable.from().isEmpty() && !outIsInput) {
      missing(index, ".out", out, Direction.OUT, rack, faults);
    }
    if (cable.to().isEmpty() && !inIsOutput) {
      missing(index, ".in", in, Direction.IN, rack, faults);
    }
  }

  private static void missing(
      int index, String key, String end, Direction way, Rack rack, List<CablingFault> faults) {
    Module module = rack.moduleOf(end).orElse(null);
    if (module == null) {
      faults.add(
          at(index, key, Kind.NO_SUCH_MODULE, end + ": the studio has no module of that label"));
      return;
    }
    String ports = String.join(", ", module.ports(way).stream().map(Port::name).toList());
    String has =
        (way == Direction.IN ? "it has the inputs " : "it has the outputs ")
            + (ports.isEmpty() ? "none" : ports);
    String name = Rack.portName(module, end);
    faults.add(
        name.isEmpty()
            ? at(index, key, Kind.NO_PORT_NAMED, end + " names a module without a port, " + has)
            : at(
                index,
                key,
                Kind.NO_SUCH_PORT,
                module.label() + " has no port " + name + ", " + has));
  }

  private static void carried(int index, Cable cable, List<CablingFault> faults) {
    if (cable.from().isEmpty() || cable.to().isEmpty()) {
      return;
    }
    Carries given = cable.from().get().port().carries();
    Carries expected = cable.to().get().port().carries();
    Optional<Kind> kind = mismatch(given, expected);
    kind.ifPresent(
        k ->
            faults.add(
                at(
                    index,
                    ".in",
                    k,
                    cable.connection().out()
                        + " gives "
                        + given.words()
                        + ", "
                        + cable.connection().in()
                        + " expects "
                        + expected.words())));
  }

  /** What may be meant and mostly is not; a gate signal also has the edge of a trigger. */
  private static Optional<Kind> mismatch(Carries given, Carries expected) {
    if (given == expected) {
      return Optional.empty();
    }
    return switch (expected) {
      case CONTROL_VOLTAGE ->
          Optional.of(given == Carries.AUDIO ? Kind.AUDIO_INTO_CONTROL : Kind.TRIGGER_INTO_SIGNAL);
      case AUDIO ->
          Optional.of(
              given == Carries.CONTROL_VOLTAGE
                  ? Kind.CONTROL_INTO_AUDIO
                  : Kind.TRIGGER_INTO_SIGNAL);
      case TRIGGER ->
          given == Carries.GATE_SIGNAL ? Optional.empty() : Optional.of(Kind.NO_EDGE_FOR_TRIGGER);
      case GATE_SIGNAL ->
          Optional.of(
              given == Carries.TRIGGER ? Kind.TRIGGER_INTO_GATE_SIGNAL : Kind.NO_EDGE_FOR_TRIGGER);
    };
  }

  private static void taken(List<Cable> cables, List<CablingFault> faults) {
    Map<String, Integer> inputs = new HashMap<>();
    Set<Connection> seen = new HashSet<>();
    for (int i = 0; i < cables.size(); i++) {
      Connection connection = cables.get(i).connection();
      String in = cables.get(i).to().map(Socket::text).orElse(connection.in());
      Integer before = inputs.putIfAbsent(in, i);
      if (!seen.add(connection)) {
        faults.add(
            at(
                i,
                "",
                Kind.LISTED_TWICE,
                connection.out() + " into " + connection.in() + " stands there already"));
      } else if (before != null) {
        faults.add(
            at(
                i,
                ".in",
                Kind.INPUT_FED_TWICE,
                connection.in()
                    + " is fed by "
                    + cables.get(before).connection().out()
                    + " already, "
                    + connection.out()
                    + " needs a mixer"));
      }
    }
  }

  private static void struck(List<Cable> cables, List<CablingFault> faults) {
    Map<String, Integer> used = new LinkedHashMap<>();
    Set<String> struck = new LinkedHashSet<>();
    for (int i = 0; i < cables.size(); i++) {
      int index = i;
      cables
          .get(i)
          .from()
          .map(Socket::module)
          .filter(m -> m.kind() == Module.Kind.ENVELOPE)
          .ifPresent(m -> used.putIfAbsent(m.label(), index));
      cables
          .get(i)
          .to()
          .filter(
              s ->
                  s.port().carries() == Carries.TRIGGER
                      || s.port().carries() == Carries.GATE_SIGNAL)
          .ifPresent(s -> struck.add(s.module().label()));
    }
    used.forEach(
        (label, index) -> {
          if (!struck.contains(label)) {
            faults.add(
                at(
                    index,
                    ".out",
                    Kind.ENVELOPE_NOT_STRUCK,
                    label + " is used and nothing triggers it"));
          }
        });
  }

  private static String route(List<Integer> loop, List<Cable> cables) {
    List<String> steps = new ArrayList<>();
    for (int index : loop) {
      Connection connection = cables.get(index).connection();
      steps.add(connection.out() + " into " + connection.in());
    }
    return String.join(", ", steps);
  }

  private static CablingFault at(int index, String key, Kind kind, String message) {
    return new CablingFault(kind, "connections." + index + key, message);
  }
}
