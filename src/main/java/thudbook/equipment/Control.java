package thudbook.equipment;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Check;
import thudbook.quantities.Dimension;

/** A knob or a switch of a module. */
public sealed interface Control {
  /** What is printed beside it, such as {@code decay}. */
  String name();

  /**
   * A knob. Its value may depend on a switch of the same module, as a tuning knob does on a range
   * switch; then it has one taper for each position of that switch.
   *
   * @param dimension of its values; those of {@link Dimension#NUMBER} have no unit
   * @param tapers one, or one for each position of the switch
   * @param switchedBy the name of that switch; null: none
   * @param toleranceDegrees how exactly its position is read back from a note, either way, 0.1 to
   *     90
   */
  record Knob(
      String name,
      Dimension dimension,
      Sweep sweep,
      List<Ranged> tapers,
      @Nullable String switchedBy,
      double toleranceDegrees)
      implements Control {
    /** How exactly a pointer knob is read back if nothing else is said, in degrees either way. */
    public static final double USUAL_TOLERANCE_DEGREES = 5;

    public Knob {
      tapers = List.copyOf(tapers);
      Check.inRange("read-back tolerance in degrees", toleranceDegrees, 0.1, 90);
      boolean fits =
          switchedBy == null
              ? tapers.size() == 1 && tapers.get(0).position() == null
              : !tapers.isEmpty()
                  && tapers.stream().allMatch(t -> t.position() != null)
                  && tapers.stream().map(Ranged::position).distinct().count() == tapers.size();
      if (!fits) {
        throw new IllegalArgumentException(
            "a knob has one taper, or one for each position of its switch, found " + tapers);
      }
    }

    /** A knob of one taper, with the usual sweep and tolerance. */
    public static Knob of(String name, Dimension dimension, Taper taper) {
      return new Knob(
          name,
          dimension,
          Sweep.USUAL,
          List.of(new Ranged(null, taper)),
          null,
          USUAL_TOLERANCE_DEGREES);
    }

    /**
     * The taper that counts.
     *
     * @param switchPosition where the switch stands; null: not said
     * @return empty if the knob depends on a switch and has no taper for this position
     */
    public Optional<Taper> taper(@Nullable String switchPosition) {
      return tapers.stream()
          .filter(t -> t.position() == null || t.position().equals(switchPosition))
          .map(Ranged::taper)
          .findFirst();
    }

    /** The read-back tolerance as a share of the sweep, at most 1. */
    public double toleranceShare() {
      return Math.min(1, toleranceDegrees / sweep.degrees());
    }

    /** The step between clock positions to which its position can be noted, in minutes. */
    public int stepMinutes() {
      return Sweep.stepMinutes(toleranceDegrees);
    }
  }

  /**
   * A taper, and where a switch must stand for it.
   *
   * @param position of the switch; null: the knob depends on none
   */
  record Ranged(@Nullable String position, Taper taper) {}

  /**
   * A switch, or anything else that stands in one of a few named places, such as a memory slot.
   *
   * @param positions at least one, each once
   */
  record Switch(String name, List<String> positions) implements Control {
    public Switch {
      positions = List.copyOf(positions);
      if (positions.isEmpty() || new HashSet<>(positions).size() != positions.size()) {
        throw new IllegalArgumentException(
            "positions with names of their own were expected, found " + positions);
      }
    }
  }
}
