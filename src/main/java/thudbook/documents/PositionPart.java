package thudbook.documents;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Choice;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Tree;
import thudbook.documents.tree.Values;
import thudbook.quantities.Dimension;
import thudbook.quantities.Position;
import thudbook.quantities.Range;

/** Where a knob or switch stands: text in documents, in JSON also keys that say the kind. */
final class PositionPart {
  private static final Range DEGREES = Range.of(Dimension.NUMBER, 0, 3600);
  private static final Range ANYTHING =
      Range.of(Dimension.NUMBER, -Double.MAX_VALUE, Double.MAX_VALUE);
  private static final List<Dimension> VALUES =
      List.of(
          Dimension.TIME,
          Dimension.FREQUENCY,
          Dimension.VOLTAGE,
          Dimension.LEVEL,
          Dimension.RATIO,
          Dimension.TEMPO,
          Dimension.MINUTES);

  private PositionPart() {}

  static @Nullable Position read(Tree tree, Faults faults) {
    if (tree instanceof Tree.Mapping mapping) {
      return keyed(mapping, faults);
    }
    if (tree instanceof Tree.Digits) {
      Double number = Values.quantity(tree, ANYTHING, faults);
      return number == null ? null : new Position.Value(number, Dimension.NUMBER);
    }
    String line = Values.line(tree, Limits.NAME, faults);
    return line == null ? null : read(tree, line, faults);
  }

  private static @Nullable Position read(Tree tree, String line, Faults faults) {
    Optional<Position> position = Position.read(line);
    if (position.isEmpty()) {
      faults.add(tree, "not-a-position", Position.EXPECTED);
    }
    return position.orElse(null);
  }

  private static @Nullable Position keyed(Tree.Mapping mapping, Faults faults) {
    Fields fields = Fields.of(mapping, faults);
    int before = faults.count();
    String clock = fields.line("clock", Limits.NAME);
    Double angle = fields.quantity("angle", DEGREES);
    Double share = fields.quantity("share", Limits.PROPORTION);
    Double value = fields.quantity("value", ANYTHING);
    Tree unit = fields.get("unit");
    Dimension dimension = dimension(unit, faults);
    fields.done();
    if (faults.count() > before) {
      return null;
    }
    long kinds = Stream.of(clock, angle, share, value).filter(Objects::nonNull).count();
    if (kinds == 1 && (unit == null || value != null)) {
      if (angle != null) {
        return new Position.Angle(angle);
      } else if (share != null) {
        return new Position.Share(share);
      } else if (value != null) {
        return new Position.Value(value, dimension);
      } else if (clock != null
          && Position.read(clock).orElse(null) instanceof Position.Clock position) {
        return position;
      }
    }
    faults.add(mapping, "not-a-position", "one of clock (1:00 to 12:59), angle, share or value");
    return null;
  }

  private static Dimension dimension(@Nullable Tree unit, Faults faults) {
    if (unit == null) {
      return Dimension.NUMBER;
    }
    for (Dimension dimension : VALUES) {
      if (unit instanceof Tree.Text text && dimension.siUnit().equals(text.text())) {
        return dimension;
      }
    }
    faults.add(
        unit, "unknown-word", Choice.expected(VALUES.stream().map(Dimension::siUnit).toList()));
    return Dimension.NUMBER;
  }

  static Draft write(Position position) {
    if (position instanceof Position.Named named) {
      return new Draft.Words(named.name());
    }
    Draft.Keys json = Draft.keys();
    if (position instanceof Position.Clock) {
      json.token("clock", position.text());
    } else if (position instanceof Position.Angle angle) {
      json.quantity("angle", angle.degrees(), Dimension.NUMBER);
    } else if (position instanceof Position.Share share) {
      json.quantity("share", share.share(), Dimension.SHARE);
    } else if (position instanceof Position.Value value) {
      json.quantity("value", value.si(), value.dimension());
      json.token("unit", value.dimension().siUnit().isEmpty() ? null : value.dimension().siUnit());
    }
    // Some readers of YAML take 10:30 for a number in base 60, so a clock is quoted.
    Draft yaml =
        position instanceof Position.Clock
            ? new Draft.Words(position.text())
            : new Draft.Token(position.text());
    return new Draft.Either(yaml, json.inline());
  }
}
