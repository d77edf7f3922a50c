package thudbook.library.typed;

import java.util.regex.Pattern;
import thudbook.library.Limits;
import thudbook.library.Quantity;
import thudbook.quantities.Range;
import thudbook.quantities.Reading;

/** What comes behind a comparison: one number with its unit, or two. */
final class TypedNumber {
  /** Limits of a search are wider than those of any value. */
  private static final double WIDE = 1e6;

  private static final Pattern UNIT = Pattern.compile("(?iu)ms|s|µs|μs|us|hz|khz|v|mv|db|%|x");
  private static final Pattern BARE_NUMBER = Pattern.compile("[-+−]?[0-9.,]+");

  private final Pieces pieces;
  private final Quantity quantity;
  private final Range range;

  TypedNumber(Pieces pieces, Quantity quantity) {
    this.pieces = pieces;
    this.quantity = quantity;
    this.range = Range.of(quantity.dimension(), -WIDE, WIDE);
  }

  /** What was read. */
  sealed interface Result {}

  /** The limits that it sets. */
  record Set(Limits limits) implements Result {}

  /** What is wrong: a sentence without its subject. */
  record Wrong(String message) implements Result {}

  private sealed interface Value {}

  private record Read(double si) implements Value {}

  private record Refused(String message) implements Value {}

  /**
   * Reads on behind a comparison. What is wrong is read too, as far as it seems to belong to it.
   */
  Result read(Comparing comparing) {
    if (comparing == Comparing.BETWEEN) {
      return between();
    }
    return value("") instanceof Read number
        ? new Set(comparing.limits(quantity, number.si(), null))
        : wrong();
  }

  private Refused refused = new Refused("");

  private Result wrong() {
    return new Wrong(refused.message());
  }

  private Result between() {
    int begin = pieces.at();
    int and = -1;
    for (int i = 1; i <= 2 && i < pieces.left(); i++) {
      if (pieces.peek(i).folded().equals("and")) {
        and = begin + i;
        break;
      }
    }
    if (and < 0 || and + 1 - begin >= pieces.left()) {
      pieces.goTo(and < 0 ? begin + 1 : and + 1);
      return new Wrong("needs two numbers, such as between " + said(8) + " and " + said(16) + ".");
    }
    pieces.goTo(and + 1);
    if (!(value("") instanceof Read to)) {
      return wrong();
    }
    int end = pieces.at();
    pieces.goTo(end - 1);
    String unit = pieces.peek().text().replaceFirst("^[-+−]?[0-9.]*", "");
    pieces.goTo(begin);
    Value from = value(unit);
    pieces.goTo(end);
    return from instanceof Read number
        ? new Set(Comparing.BETWEEN.limits(quantity, number.si(), to.si()))
        : wrong();
  }

  /**
   * Reads a number, in one piece with its unit or two.
   *
   * @param unit what its unit may be where it has none: "between 0.2 and 0.4 s"
   */
  private Value value(String unit) {
    if (pieces.isAtEnd()) {
      return refuse("needs a number, such as " + said(12) + ".");
    }
    String number = pieces.take().text();
    boolean bare = BARE_NUMBER.matcher(number).matches();
    if (bare && !pieces.isAtEnd() && UNIT.matcher(pieces.peek().text()).matches()) {
      return value(range.read(number + " " + pieces.take().text()));
    }
    Reading read = range.read(number);
    return value(
        bare && !unit.isEmpty() && !(read instanceof Reading.Value)
            ? range.read(number + " " + unit)
            : read);
  }

  private Value value(Reading read) {
    if (read instanceof Reading.Value value) {
      return new Read(value.si());
    }
    Reading.Refused why = (Reading.Refused) read;
    return switch (why.code()) {
      case "decimal-comma" -> refuse("has a decimal comma: write " + why.expected() + ".");
      case "unit-missing" -> refuse("needs " + why.expected() + ".");
      default ->
          refuse(
              "is not understood: "
                  + quantity.names().get(0)
                  + " is compared with a number such as "
                  + said(12)
                  + ".");
    };
  }

  private Refused refuse(String message) {
    refused = new Refused(message);
    return refused;
  }

  /** A number that this quantity may have, as one says it. */
  private String said(int bar) {
    double edge = quantity.bins().edge(bar);
    double power = Math.pow(10, Math.floor(Math.log10(Math.max(Math.abs(edge), 1e-6))));
    return quantity.dimension().say(Math.round(edge / power) * power);
  }
}
