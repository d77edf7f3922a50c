package thudbook.equipment;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Thing;
import thudbook.quantities.Check;

/**
 * A module of the studio: what can be turned, switched and patched on it.
 *
 * @param slug its name in addresses
 * @param label what recipes call it, such as {@code E1}; its own within the studio
 * @param title what it is, such as {@code Attack-hold-decay envelope}
 * @param kind what it does
 * @param place where it stands, such as {@code rack, row 2}; null: not said
 * @param gate the gate document that tells how its channels behave, by slug; null: it is no gate
 * @param warmUpMinutes how long it must be on before it can be trusted, 0 to 600; null: not said
 * @param caution what to be careful about wherever it appears
 * @param controls each with a name of its own
 * @param ports outputs with names of their own, and inputs likewise
 * @param notes CommonMark
 */
public record Module(
    UUID id,
    String slug,
    String label,
    String title,
    Kind kind,
    @Nullable String place,
    @Nullable String gate,
    @Nullable Double warmUpMinutes,
    Gate.Caution caution,
    List<Control> controls,
    List<Port> ports,
    String notes)
    implements Thing {
  /** The longest warm-up, in minutes. */
  public static final double LONGEST_WARM_UP_MINUTES = 600;

  public Module {
    controls = List.copyOf(controls);
    ports = List.copyOf(ports);
    if (label.isBlank()) {
      throw new IllegalArgumentException("a module has a label");
    }
    if (warmUpMinutes != null) {
      Check.inRange("warm-up in minutes", warmUpMinutes, 0, LONGEST_WARM_UP_MINUTES);
    }
    if (!distinct(controls, Control::name)) {
      throw new IllegalArgumentException("controls of one module have names of their own");
    }
    if (!distinct(ports, p -> p.direction() + " " + p.name())) {
      throw new IllegalArgumentException("ports of one direction have names of their own");
    }
    for (Control control : controls) {
      checkSwitch(controls, control);
    }
  }

  /** The control of this name, if there is one. */
  public Optional<Control> control(String name) {
    return controls.stream().filter(c -> c.name().equals(name)).findFirst();
  }

  /** The port of this name and direction, if there is one. */
  public Optional<Port> port(Port.Direction direction, String name) {
    return ports.stream()
        .filter(p -> p.direction() == direction && p.name().equals(name))
        .findFirst();
  }

  /** Its ports of one direction, in order. */
  public List<Port> ports(Port.Direction direction) {
    return ports.stream().filter(p -> p.direction() == direction).toList();
  }

  /** The same module under another name in addresses. */
  public Module withSlug(String other) {
    return new Module(
        id, other, label, title, kind, place, gate, warmUpMinutes, caution, controls, ports, notes);
  }

  private static <T> boolean distinct(List<T> all, Function<T, String> name) {
    return all.stream().map(name).distinct().count() == all.size();
  }

  private static void checkSwitch(List<Control> controls, Control control) {
    if (!(control instanceof Control.Knob knob) || knob.switchedBy() == null) {
      return;
    }
    boolean fits =
        controls.stream()
            .anyMatch(
                other ->
                    other instanceof Control.Switch s
                        && s.name().equals(knob.switchedBy())
                        && knob.tapers().stream()
                            .allMatch(t -> s.positions().contains(t.position())));
    if (!fits) {
      throw new IllegalArgumentException(
          knob.name() + " depends on " + knob.switchedBy() + ", which has no such positions");
    }
  }

  /** What a module does. */
  public enum Kind {
    NOISE,
    OSCILLATOR,
    ENVELOPE,
    /** A recorder and player of control voltages or triggers. */
    RECORDER,
    CLOCK,
    ATTENUVERTER,
    LOW_PASS_GATE,
    AMPLIFIER,
    FILTER,
    MIXER,
    EFFECT,
    OTHER
  }
}
