package thudbook.pages.rack;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Control;
import thudbook.equipment.Control.Knob;
import thudbook.equipment.Control.Ranged;
import thudbook.equipment.Control.Switch;
import thudbook.equipment.Dialling;
import thudbook.equipment.Gate;
import thudbook.equipment.MeasuredTaper;
import thudbook.equipment.Module;
import thudbook.equipment.Port;
import thudbook.equipment.Port.Direction;
import thudbook.equipment.Taper;
import thudbook.pages.frame.Notes;
import thudbook.wording.Cautions;
import thudbook.wording.Entry;
import thudbook.wording.PositionWords;
import thudbook.wording.Reading;

/**
 * A module as a page to read.
 *
 * @param gateAddress the gate that it carries; null: none
 * @param notes safe HTML
 * @param version what an act on it has to name
 * @param binned whether it is in the bin
 */
public record ModuleSheet(
    Module module,
    List<Entry> facts,
    @Nullable String gateTitle,
    @Nullable String gateAddress,
    List<Cautions.Caution> cautions,
    List<Scale> scales,
    List<Positions> switches,
    List<Line> outputs,
    List<Line> inputs,
    String notes,
    long version,
    boolean binned) {
  /** Shares of the sweep at which a scale is shown. */
  private static final double[] MARKS = {0, 0.25, 0.5, 0.75, 1};

  /**
   * What a knob says, left to right.
   *
   * @param name of the knob, with the position of the switch that it depends on
   * @param marks a clock position and the value there
   * @param taper in words
   */
  public record Scale(String name, List<Mark> marks, String taper, String readTo) {}

  /** A place on a knob. */
  public record Mark(String at, String value) {}

  /** A switch. */
  public record Positions(String name, String positions) {}

  /** A port. */
  public record Line(String name, String carries, String channel) {}

  static ModuleSheet of(Kept<Module> stored, Things<Gate> gates) {
    Module module = stored.thing();
    List<Entry> facts = new ArrayList<>();
    facts.add(new Entry("", "Kind", kind(module.kind())));
    if (module.place() != null) {
      facts.add(new Entry("", "Place", module.place()));
    }
    if (module.warmUpMinutes() != null) {
      facts.add(new Entry("", "Warm-up", Reading.entered(module.warmUpMinutes(), "min")));
    }
    String slug = module.gate();
    Kept<Gate> gate =
        slug == null
            ? null
            : gates.find(slug).filter(found -> found.binnedAt() == null).orElse(null);
    return new ModuleSheet(
        module,
        facts,
        slug == null ? null : gate == null ? slug : gate.thing().title(),
        gate == null ? null : "/gates/" + gate.thing().slug(),
        Cautions.of(module),
        module.controls().stream()
            .filter(Knob.class::isInstance)
            .flatMap(control -> scales((Knob) control).stream())
            .toList(),
        switches(module.controls()),
        lines(module, Direction.OUT),
        lines(module, Direction.IN),
        Notes.html(module.notes()),
        stored.version(),
        stored.binnedAt() != null);
  }

  /** A kind of module in words. */
  static String kind(Module.Kind kind) {
    return kind == Module.Kind.LOW_PASS_GATE
        ? "low-pass gate"
        : kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static List<Scale> scales(Knob knob) {
    List<Scale> scales = new ArrayList<>();
    for (Ranged ranged : knob.tapers()) {
      Dialling dialling = new Dialling(knob, ranged.taper());
      List<Mark> marks = new ArrayList<>();
      for (double share : MARKS) {
        String value = Reading.shown(dialling.words(dialling.value(share)));
        marks.add(new Mark(PositionWords.of(dialling.clock(share)), value));
      }
      scales.add(
          new Scale(
              ranged.position() == null
                  ? knob.name()
                  : knob.name() + ", " + knob.switchedBy() + " " + ranged.position(),
              marks,
              taper(ranged.taper()),
              "±" + Reading.entered(knob.toleranceDegrees()) + "°"));
    }
    return scales;
  }

  private static String taper(Taper taper) {
    if (taper instanceof MeasuredTaper table) {
      return "measured at " + table.points().size() + " places";
    }
    return taper instanceof Taper.Linear ? "linear" : "exponential";
  }

  private static List<Positions> switches(List<Control> controls) {
    return controls.stream()
        .filter(Switch.class::isInstance)
        .map(control -> (Switch) control)
        .map(toggle -> new Positions(toggle.name(), String.join(", ", toggle.positions())))
        .toList();
  }

  private static List<Line> lines(Module module, Direction direction) {
    return module.ports(direction).stream().map(ModuleSheet::line).collect(Collectors.toList());
  }

  private static Line line(Port port) {
    return new Line(
        port.name(),
        port.carries().name().toLowerCase(Locale.ROOT).replace('_', ' '),
        port.channel() == null ? "" : port.channel());
  }
}
