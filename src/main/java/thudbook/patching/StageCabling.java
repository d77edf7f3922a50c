package thudbook.patching;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import thudbook.equipment.Module;
import thudbook.equipment.Port;
import thudbook.equipment.Port.Carries;
import thudbook.equipment.Port.Direction;
import thudbook.equipment.Rack;
import thudbook.equipment.Rack.Socket;
import thudbook.patching.Cabling.Cable;
import thudbook.patching.CablingFault.Kind;
import thudbook.recipes.Recipe;
import thudbook.recipes.StageEntry;

/**
 * Whether the gate stages of a recipe are patched as the recipe says: fed, opened, heard, in
 * series.
 */
final class StageCabling {
  private final List<Cable> cables;
  private final SignalPaths paths;
  private final List<CablingFault> faults;

  private StageCabling(List<Cable> cables, SignalPaths paths, List<CablingFault> faults) {
    this.cables = cables;
    this.paths = paths;
    this.faults = faults;
  }

  static void check(
      Recipe recipe, Rack rack, List<Cable> cables, SignalPaths paths, List<CablingFault> faults) {
    StageCabling check = new StageCabling(cables, paths, faults);
    List<Integer> before = List.of();
    for (int i = 0; i < recipe.stages().size(); i++) {
      StageEntry stage = recipe.stages().get(i);
      if (stage.gate() == null || stage.channel() == null) {
        before = List.of();
        continue;
      }
      List<Module> modules = rack.carrying(stage.gate());
      if (modules.isEmpty()) {
        faults.add(
            new CablingFault(
                Kind.STAGE_WITHOUT_MODULE,
                "stages." + i,
                "stage " + (i + 1) + ": no module of the studio carries " + stage.gate()));
        before = List.of();
        continue;
      }
      before = check.stage(i, modules, stage.channel(), before);
    }
  }

  /**
   * Checks one stage.
   *
   * @param before the cables that leave the stage before it
   * @return the cables that leave it
   */
  private List<Integer> stage(
      int index, List<Module> modules, String channel, List<Integer> before) {
    String where = modules.get(0).label() + " " + channel;
    List<Integer> audio = into(modules, channel, Carries.AUDIO);
    List<Integer> control = into(modules, channel, Carries.CONTROL_VOLTAGE);
    List<Integer> leaving = outOf(modules, channel);
    if (audio.isEmpty() && has(modules, channel, Direction.IN, Carries.AUDIO)) {
      add(
          Kind.STAGE_NOT_FED,
          index,
          where + " is not fed: nothing goes into " + ports(modules, channel, Carries.AUDIO));
    }
    if (control.isEmpty() && has(modules, channel, Direction.IN, Carries.CONTROL_VOLTAGE)) {
      add(
          Kind.STAGE_NOT_CONTROLLED,
          index,
          where
              + " is never opened: nothing goes into "
              + ports(modules, channel, Carries.CONTROL_VOLTAGE));
    }
    if (leaving.isEmpty()) {
      add(Kind.STAGE_NOT_HEARD, index, where + " is not heard: nothing goes on from it");
    }
    boolean inSeries =
        before.stream().anyMatch(out -> audio.stream().anyMatch(in -> paths.reaches(out, in)));
    if (!before.isEmpty() && !audio.isEmpty() && !inSeries) {
      add(
          Kind.STAGES_NOT_IN_SERIES,
          index,
          where + " is not fed by stage " + index + ", which the recipe puts before it");
    }
    return leaving;
  }

  private void add(Kind kind, int stage, String message) {
    faults.add(new CablingFault(kind, "stages." + stage, "stage " + (stage + 1) + ": " + message));
  }

  private List<Integer> into(List<Module> modules, String channel, Carries carries) {
    return numbers(
        cable ->
            cable
                .to()
                .filter(s -> isOf(s, modules, channel) && s.port().carries() == carries)
                .isPresent());
  }

  private List<Integer> outOf(List<Module> modules, String channel) {
    return numbers(cable -> cable.from().filter(s -> isOf(s, modules, channel)).isPresent());
  }

  private List<Integer> numbers(Predicate<Cable> which) {
    return IntStream.range(0, cables.size())
        .filter(i -> which.test(cables.get(i)))
        .boxed()
        .toList();
  }

  private static boolean isOf(Socket socket, List<Module> modules, String channel) {
    return modules.stream().anyMatch(m -> m.id().equals(socket.module().id()))
        && isOf(socket.port(), channel);
  }

  private static boolean isOf(Port port, String channel) {
    return port.channel() == null || port.channel().equals(channel);
  }

  private static boolean has(
      List<Module> modules, String channel, Direction direction, Carries carries) {
    return modules.stream()
        .flatMap(m -> m.ports(direction).stream())
        .anyMatch(p -> isOf(p, channel) && p.carries() == carries);
  }

  private static String ports(List<Module> modules, String channel, Carries carries) {
    List<String> names = new ArrayList<>();
    for (Module module : modules) {
      module.ports(Direction.IN).stream()
          .filter(p -> isOf(p, channel) && p.carries() == carries)
          .forEach(p -> names.add(module.label() + " " + p.name()));
    }
    return String.join(" or ", names);
  }
}
