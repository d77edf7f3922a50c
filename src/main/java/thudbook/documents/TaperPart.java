package thudbook.documents;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Choice;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Place;
import thudbook.documents.tree.Tree;
import thudbook.documents.tree.Units;
import thudbook.documents.tree.Values;
import thudbook.equipment.MeasuredTaper;
import thudbook.equipment.MeasuredTaper.Point;
import thudbook.equipment.Taper;
import thudbook.quantities.Dimension;
import thudbook.quantities.Range;

/** The range and taper of a knob: {@code taper}, {@code from} and {@code to}, or {@code table}. */
final class TaperPart {
  private TaperPart() {}

  /** The words for tapers. */
  enum Word {
    LINEAR,
    EXPONENTIAL,
    TABLE
  }

  private static final Choice<Word> WORD = new Choice<>(Word.values(), '-');

  /**
   * Reads a taper; a reader may leave out that it is linear.
   *
   * @param dimension null: refused already, then nothing else is said about the values
   */
  static @Nullable Taper read(Fields fields, @Nullable Dimension dimension, Faults faults) {
    Word word = fields.choice("taper", WORD, Word.LINEAR);
    if (dimension == null) {
      fields.get("from");
      fields.get("to");
      fields.get("table");
      return null;
    }
    Range range = Units.range(dimension);
    if (word == Word.TABLE) {
      return table(fields, range, faults);
    }
    Double from = fields.needQuantity("from", range);
    Double to = fields.needQuantity("to", range);
    if (from == null || to == null) {
      return null;
    }
    if (from.equals(to)) {
      faults.add(
          fields.placeOf("to"), "same-ends", dimension.say(to), "another value than at the start");
      return null;
    }
    if (word == Word.LINEAR) {
      return new Taper.Linear(from, to);
    }
    if (!(from * Math.signum(to) > 0)) {
      faults.add(
          fields.placeOf("from"),
          "crosses-zero",
          dimension.say(from) + " to " + dimension.say(to),
          "two values above 0 for an exponential taper");
      return null;
    }
    return new Taper.Exponential(from, to);
  }

  private static @Nullable Taper table(Fields fields, Range range, Faults faults) {
    String pair = "[25 %, " + range.dimension().write(range.most()) + "]";
    Tree tree = fields.need("table", "a list of 2 to 64 points such as " + pair);
    List<Point> points = new ArrayList<>();
    if (tree == null) {
      return null;
    }
    int before = faults.count();
    for (Tree item : Fields.itemsOf(tree, 2, MeasuredTaper.MOST_POINTS, faults)) {
      List<Tree> both = Fields.itemsOf(item, 2, 2, faults);
      Double share = both.isEmpty() ? null : Values.quantity(both.get(0), Limits.SWEEP, faults);
      Double value = both.isEmpty() ? null : Values.quantity(both.get(1), range, faults);
      if (share != null && value != null) {
        points.add(new Point(share, value));
        checkStep(points, both, range.dimension(), faults);
      }
    }
    if (faults.count() == before) {
      checkEnd(points.get(0), 0, tree.place().item(0, tree.place().line()), faults);
      int last = points.size() - 1;
      checkEnd(points.get(last), 1, tree.place().item(last, tree.place().line()), faults);
    }
    return faults.count() == before ? Taper.measured(points) : null;
  }

  private static void checkStep(
      List<Point> points, List<Tree> both, Dimension dimension, Faults faults) {
    int last = points.size() - 1;
    if (last == 0) {
      return;
    }
    Point point = points.get(last);
    Point above = points.get(last - 1);
    if (point.share() <= above.share()) {
      faults.add(
          both.get(0).place(),
          "not-rising",
          Dimension.SHARE.write(point.share()),
          "more than " + Dimension.SHARE.write(above.share()));
    }
    double first = points.get(1).value() - points.get(0).value();
    double step = point.value() - above.value();
    if (!(step * Math.signum(first) > 0)) {
      faults.add(
          both.get(1).place(),
          "not-monotone",
          dimension.write(point.value()),
          (first < 0 ? "less than " : "more than ") + dimension.write(above.value()));
    }
  }

  private static void checkEnd(Point point, int share, Place place, Faults faults) {
    if (point.share() != share) {
      faults.add(
          place,
          "wrong-end",
          Dimension.SHARE.write(point.share()),
          String.format(Locale.ROOT, "%d %%, for it goes from 0 %% to 100 %%", share * 100));
    }
  }

  static Draft.Keys write(Taper taper, Dimension dimension) {
    if (taper instanceof MeasuredTaper table) {
      return Draft.keys()
          .choice("taper", WORD, Word.TABLE)
          .put(
              "table",
              Draft.inline(table.points().stream().map(p -> point(p, dimension)).toList()));
    }
    return Draft.keys()
        .choice("taper", WORD, taper instanceof Taper.Linear ? Word.LINEAR : Word.EXPONENTIAL)
        .quantity("from", taper.from(), dimension)
        .quantity("to", taper.to(), dimension);
  }

  private static Draft point(Point point, Dimension dimension) {
    return Draft.inline(
        List.of(
            new Draft.Quantity(point.share(), Dimension.SHARE),
            new Draft.Quantity(point.value(), dimension)));
  }
}
