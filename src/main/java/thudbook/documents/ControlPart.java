package thudbook.documents;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Choice;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Tree;
import thudbook.documents.tree.Units;
import thudbook.documents.tree.Values;
import thudbook.equipment.Control;
import thudbook.equipment.Control.Knob;
import thudbook.equipment.Control.Ranged;
import thudbook.equipment.Control.Switch;
import thudbook.equipment.Sweep;
import thudbook.equipment.Taper;
import thudbook.quantities.Dimension;
import thudbook.quantities.Position;

/** The knobs and switches of a module. */
final class ControlPart {
  private static final String CLOCKS = "clock positions clockwise, such as [\"7:00\", \"5:00\"]";

  private ControlPart() {}

  static List<Control> read(Fields module, Faults faults) {
    List<Control> controls = new ArrayList<>();
    List<Fields> rows = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (Tree item : module.items("controls", Limits.CONTROLS)) {
      Fields fields = Fields.of(item, faults);
      String name = fields.needLine("name", Limits.NAME);
      Control control =
          fields.get("positions") == null
              ? knob(name, fields, faults)
              : toggle(name, fields, faults);
      fields.done();
      if (name != null && !names.add(name)) {
        faults.add(fields.placeOf("name"), "name-taken", name, "a name that no control above has");
      } else if (control != null) {
        controls.add(control);
        rows.add(fields);
      }
    }
    for (int i = 0; i < controls.size(); i++) {
      if (controls.get(i) instanceof Knob knob) {
        checkSwitch(knob, controls, rows.get(i), faults);
      }
    }
    return controls;
  }

  private static @Nullable Switch toggle(@Nullable String name, Fields fields, Faults faults) {
    Tree tree = fields.need("positions", "a list of names");
    List<String> positions = new ArrayList<>();
    int before = faults.count();
    for (Tree item : tree == null ? List.<Tree>of() : positions(tree, faults)) {
      String line = Values.line(item, Limits.NAME, faults);
      if (line == null) {
        continue;
      }
      if (!(Position.read(line).orElse(null) instanceof Position.Named)) {
        faults.add(item, "not-a-name", "a name that is no number, clock position or quantity");
      } else if (positions.contains(line)) {
        faults.add(item, "name-taken", "a position that does not stand before");
      } else {
        positions.add(line);
      }
    }
    return name == null || positions.isEmpty() || faults.count() > before
        ? null
        : new Switch(name, positions);
  }

  private static List<Tree> positions(Tree tree, Faults faults) {
    return Fields.itemsOf(tree, 1, Limits.POSITIONS, faults);
  }

  private static @Nullable Knob knob(@Nullable String name, Fields fields, Faults faults) {
    int before = faults.count();
    Tree unit = fields.need("unit", Units.EXPECTED);
    Dimension dimension = unit == null ? null : Units.read(unit, faults);
    String switchedBy = fields.line("by", Limits.NAME);
    List<Ranged> tapers = new ArrayList<>();
    if (switchedBy == null) {
      Taper taper = TaperPart.read(fields, dimension, faults);
      if (taper != null) {
        tapers.add(new Ranged(null, taper));
      }
    } else {
      tapers.addAll(ranges(fields, dimension, faults));
    }
    Sweep sweep = sweep(fields, faults);
    double tolerance = fields.quantity("tolerance", Limits.READ_BACK, Knob.USUAL_TOLERANCE_DEGREES);
    return name == null || dimension == null || tapers.isEmpty() || faults.count() > before
        ? null
        : new Knob(name, dimension, sweep, tapers, switchedBy, tolerance);
  }

  private static List<Ranged> ranges(Fields knob, @Nullable Dimension dimension, Faults faults) {
    Tree tree = knob.need("ranges", "a list of ranges, one for each position of the switch");
    List<Ranged> ranges = new ArrayList<>();
    Set<String> taken = new HashSet<>();
    for (Tree item : tree == null ? List.<Tree>of() : positions(tree, faults)) {
      Fields fields = Fields.of(item, faults);
      String at = fields.needLine("at", Limits.NAME);
      Taper taper = TaperPart.read(fields, dimension, faults);
      fields.done();
      if (at != null && !taken.add(at)) {
        faults.add(fields.placeOf("at"), "name-taken", at, "a position that has no range above");
      } else if (at != null && taper != null) {
        ranges.add(new Ranged(at, taper));
      }
    }
    return ranges;
  }

  private static Sweep sweep(Fields fields, Faults faults) {
    Tree tree = fields.get("sweep");
    if (tree == null) {
      return Sweep.USUAL;
    }
    List<Position.Clock> ends = new ArrayList<>();
    for (Tree item : Fields.itemsOf(tree, 2, 2, faults)) {
      String text = item instanceof Tree.Text written ? written.text() : "";
      if (Position.read(text).orElse(null) instanceof Position.Clock clock) {
        ends.add(clock);
      } else {
        faults.add(item, "not-a-clock", CLOCKS);
      }
    }
    return ends.size() == 2 ? new Sweep(ends.get(0), ends.get(1)) : Sweep.USUAL;
  }

  private static void checkSwitch(Knob knob, List<Control> all, Fields fields, Faults faults) {
    if (knob.switchedBy() == null) {
      return;
    }
    Switch found =
        all.stream()
            .filter(c -> c.name().equals(knob.switchedBy()))
            .filter(Switch.class::isInstance)
            .map(Switch.class::cast)
            .findFirst()
            .orElse(null);
    if (found == null) {
      faults.add(
          fields.placeOf("by"), "no-such-switch", knob.switchedBy(), "a switch of this module");
      return;
    }
    for (Ranged range : knob.tapers()) {
      if (!found.positions().contains(range.position())) {
        faults.add(
            fields.placeOf("ranges"),
            "no-such-position",
            String.valueOf(range.position()),
            found.name() + " to stand at " + Choice.expected(found.positions()));
      }
    }
  }

  static Draft write(Control control) {
    if (control instanceof Switch toggle) {
      return Draft.keys()
          .words("name", toggle.name())
          .put(
              "positions", Draft.inline(toggle.positions().stream().map(Draft.Words::new).toList()))
          .inline();
    }
    Knob knob = (Knob) control;
    Draft.Keys keys =
        Draft.keys().words("name", knob.name()).words("unit", Units.word(knob.dimension()));
    if (knob.switchedBy() == null) {
      keys.all(TaperPart.write(knob.tapers().get(0).taper(), knob.dimension()));
    } else {
      keys.words("by", knob.switchedBy())
          .put("ranges", Draft.inline(knob.tapers().stream().map(r -> range(r, knob)).toList()));
    }
    return keys.put(
            "sweep",
            Draft.inline(
                List.of(
                    new Draft.Words(knob.sweep().from().text()),
                    new Draft.Words(knob.sweep().to().text()))))
        .quantity("tolerance", knob.toleranceDegrees(), Dimension.ANGLE)
        .inline();
  }

  private static Draft range(Ranged range, Knob knob) {
    return Draft.keys()
        .words("at", range.position())
        .all(TaperPart.write(range.taper(), knob.dimension()))
        .inline();
  }
}
