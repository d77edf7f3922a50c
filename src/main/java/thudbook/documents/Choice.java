package thudbook.documents;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Strikes;
import thudbook.equipment.Gate;
import thudbook.equipment.Measured;
import thudbook.equipment.Module;
import thudbook.equipment.Port;
import thudbook.gates.Response;
import thudbook.sources.Source;

/** The words of a document for the constants of an enumeration. */
final class Choice<T extends Enum<T>> {
  static final Choice<Source.Colour> COLOUR = new Choice<>(Source.Colour.values(), '-');
  static final Choice<Source.Wave> WAVE = new Choice<>(Source.Wave.values(), '-');
  static final Choice<Source.Wave> MODULATOR_WAVE =
      new Choice<>(
          new Source.Wave[] {
            Source.Wave.SINE, Source.Wave.TRIANGLE, Source.Wave.SAWTOOTH, Source.Wave.SQUARE
          },
          '-');
  static final Choice<Source.Phase> PHASE = new Choice<>(Source.Phase.values(), '-');
  static final Choice<Curve> CURVE = new Choice<>(Curve.values(), '-');
  static final Choice<Strikes.Restart> RESTART = new Choice<>(Strikes.Restart.values(), '-');
  static final Choice<Response.Kind> RESPONSE = new Choice<>(Response.Kind.values(), '-');
  static final Choice<Gate.Caution> CAUTION = new Choice<>(Gate.Caution.values(), '-');
  static final Choice<Measured.How> HOW = new Choice<>(Measured.How.values(), ' ');

  static final Choice<SessionDocument.Place> PLACE =
      new Choice<>(SessionDocument.Place.values(), '-');
  static final Choice<SessionDocument.Stays> STAYS =
      new Choice<>(SessionDocument.Stays.values(), '-');

  static final Choice<Module.Kind> MODULE_KIND = new Choice<>(Module.Kind.values(), '-');
  static final Choice<Port.Direction> DIRECTION = new Choice<>(Port.Direction.values(), '-');
  static final Choice<Port.Carries> CARRIES = new Choice<>(Port.Carries.values(), ' ');
  static final Choice<BulkBody.Act> BULK = new Choice<>(BulkBody.Act.values(), '-');

  private final Map<String, T> constants = new LinkedHashMap<>();

  Choice(T[] constants, char between) {
    Arrays.stream(constants).forEach(c -> this.constants.put(word(c, between), c));
  }

  private static String word(Enum<?> constant, char between) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', between);
  }

  /** The word for a constant. */
  String word(T constant) {
    return constants.entrySet().stream()
        .filter(e -> e.getValue() == constant)
        .findFirst()
        .orElseThrow()
        .getKey();
  }

  /** Reads one of the words; null, with a fault, where it is another. */
  @Nullable T read(Tree tree, Faults faults) {
    T constant = tree instanceof Tree.Text text ? constants.get(text.text().strip()) : null;
    if (constant == null) {
      faults.add(tree, "unknown-word", expected());
    }
    return constant;
  }

  /** Its words, as one says them. */
  String expected() {
    return expected(constants.keySet());
  }

  /** Words to choose from, as one says them: {@code sine, triangle or square}. */
  static String expected(Iterable<String> words) {
    String all = String.join(", ", words);
    int last = all.lastIndexOf(", ");
    return last < 0 ? all : all.substring(0, last) + " or " + all.substring(last + 2);
  }
}
