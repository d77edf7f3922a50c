package thudbook.documents;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Place;
import thudbook.documents.tree.Tree;
import thudbook.documents.tree.Values;
import thudbook.equipment.StudioChannel;
import thudbook.equipment.UnusedNumbers;
import thudbook.equipment.UnusedNumbers.Cutoff;
import thudbook.equipment.UnusedNumbers.OfFilter;
import thudbook.equipment.UnusedNumbers.OfLevel;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.quantities.Dimension;

/** One channel of a gate, in a gate document or inline in the body of a prediction. */
final class ChannelPart {
  private static final double LEAST_STEP_VOLTS = 0.001 - 1e-12;
  private static final double SHARES_TOLERANCE = 1e-6;

  private ChannelPart() {}

  /**
   * Reads the keys of a channel, but not {@code name} and {@code measured}: the channel is not
   * measured yet.
   *
   * @param fields the caller asks for the other keys and then calls {@link Fields#done}
   */
  static @Nullable StudioChannel read(@Nullable String name, Fields fields, Faults faults) {
    int before = faults.count();
    Response.Kind kind = fields.choice("response", Choices.RESPONSE, Response.Kind.BOTH);
    List<Transfer.Knot> knots = knots(fields, faults);
    Double opening = fields.needQuantity("opening", Limits.TIME);
    List<Cell> release = cells(fields, faults);
    Integer poles = fields.whole("poles", 1, 2);
    double spread = fields.quantity("spread", Limits.SPREAD, 1);
    Cutoff cutoff = cutoff(fields, kind, faults);
    double[] exponents = exponents(fields, faults);
    double saturation = fields.quantity("saturation", Limits.SATURATION, 0);
    Double leak =
        kind.movesLevel()
            ? fields.needQuantity("leak", Limits.LEAK)
            : fields.quantity("leak", Limits.LEAK);
    double bleed = fields.quantity("bleed", Limits.VOLTS, 0);
    double rail = fields.quantity("outputRail", Limits.RAIL, 10);
    if (name == null || opening == null || faults.count() > before) {
      return null;
    }
    OfLevel level = new OfLevel(leak, exponents[0], saturation);
    OfFilter filter = new OfFilter(poles == null ? 2 : poles, spread, cutoff, exponents[1]);
    Response response = response(kind, level, filter);
    Cells cells = new Cells(opening, release);
    Output output = new Output(bleed, rail);
    return new StudioChannel(
        new Channel(name, new Transfer(knots), cells, response, output),
        null,
        switch (kind) {
          case BOTH -> new UnusedNumbers.None();
          case AMPLITUDE -> filter;
          case LOW_PASS -> level;
        });
  }

  private static Response response(Response.Kind kind, OfLevel level, OfFilter filter) {
    return switch (kind) {
      case BOTH -> new Response.Both(used(level), used(filter));
      case AMPLITUDE -> new Response.Amplitude(used(level));
      case LOW_PASS -> new Response.LowPass(used(filter));
    };
  }

  private static Level used(OfLevel written) {
    return new Level(
        Objects.requireNonNull(written.leakDb()), written.exponent(), written.saturation());
  }

  private static Filter used(OfFilter written) {
    Cutoff cutoff = Objects.requireNonNull(written.cutoff());
    return new Filter(
        written.poles(),
        written.spread(),
        cutoff.closedHertz(),
        cutoff.openHertz(),
        written.exponent());
  }

  private static List<Transfer.Knot> knots(Fields fields, Faults faults) {
    String expected = "a list of 2 to 64 knots such as [2.4 V, 0]";
    Tree tree = fields.need("transfer", expected);
    List<Transfer.Knot> knots = new ArrayList<>();
    if (tree == null) {
      return knots;
    }
    int before = faults.count();
    for (Tree item : Fields.itemsOf(tree, 2, Limits.KNOTS, faults)) {
      List<Tree> pair = Fields.itemsOf(item, 2, 2, faults);
      Double volts = pair.isEmpty() ? null : Values.quantity(pair.get(0), Limits.VOLTS, faults);
      Double openness =
          pair.isEmpty() ? null : Values.quantity(pair.get(1), Limits.PROPORTION, faults);
      if (volts != null && openness != null) {
        Transfer.Knot knot = new Transfer.Knot(volts, openness);
        if (!knots.isEmpty()) {
          checkRise(knots.get(knots.size() - 1), knot, pair, faults);
        }
        knots.add(knot);
      }
    }
    if (faults.count() == before) {
      checkEnd(knots.get(0), 0, tree.place().item(0, tree.place().line()), faults);
      int last = knots.size() - 1;
      checkEnd(knots.get(last), 1, tree.place().item(last, tree.place().line()), faults);
    }
    return knots;
  }

  private static void checkRise(
      Transfer.Knot low, Transfer.Knot high, List<Tree> pair, Faults faults) {
    if (high.volts() - low.volts() < LEAST_STEP_VOLTS) {
      faults.add(
          pair.get(0).place(),
          "not-rising",
          Dimension.VOLTAGE.write(high.volts()),
          "at least 1 mV more than " + Dimension.VOLTAGE.write(low.volts()));
    }
    if (high.openness() < low.openness()) {
      faults.add(
          pair.get(1).place(),
          "falling",
          Dimension.NUMBER.write(high.openness()),
          "an openness of at least " + Dimension.NUMBER.write(low.openness()));
    }
  }

  private static void checkEnd(Transfer.Knot knot, int openness, Place place, Faults faults) {
    if (knot.openness() != openness) {
      faults.add(
          place,
          "wrong-end",
          "openness " + Dimension.NUMBER.write(knot.openness()),
          "openness " + openness + ", for it begins at 0 and ends at 1");
    }
  }

  private static List<Cell> cells(Fields fields, Faults faults) {
    Tree tree = fields.need("release", "a list of 1 to 4 cells such as {share: 1, time: 18 ms}");
    List<Cell> cells = new ArrayList<>();
    if (tree == null) {
      return cells;
    }
    int before = faults.count();
    for (Tree item : Fields.itemsOf(tree, 1, Limits.CELLS, faults)) {
      Fields cell = Fields.of(item, faults);
      Double share = cell.needQuantity("share", Limits.CELL_SHARE);
      Double time = cell.needQuantity("time", Limits.TIME);
      Double opening = cell.quantity("opening", Limits.TIME);
      cell.done();
      if (share != null && time != null) {
        cells.add(new Cell(share, time, opening));
      }
    }
    double sum = cells.stream().mapToDouble(Cell::share).sum();
    if (faults.count() == before && !(Math.abs(sum - 1) <= SHARES_TOLERANCE)) {
      faults.add(
          tree.place(),
          "shares",
          "shares that sum to " + Dimension.NUMBER.write(sum),
          "shares that sum to 1");
    }
    return cells;
  }

  private static @Nullable Cutoff cutoff(Fields fields, Response.Kind kind, Faults faults) {
    String expected = "keys such as {closed: 40 Hz, open: 9000 Hz}";
    Tree tree = kind.movesCutoff() ? fields.need("cutoff", expected) : fields.get("cutoff");
    if (tree == null) {
      return null;
    }
    Fields cutoff = Fields.of(tree, faults);
    Double closed = cutoff.needQuantity("closed", Limits.CUTOFF);
    Double open = cutoff.needQuantity("open", Limits.CUTOFF);
    cutoff.done();
    if (closed == null || open == null) {
      return null;
    }
    if (closed > open) {
      faults.add(
          cutoff.placeOf("closed"),
          "not-below",
          Dimension.FREQUENCY.say(closed),
          "at most the open one, which is " + Dimension.FREQUENCY.say(open));
      return null;
    }
    return new Cutoff(closed, open);
  }

  private static double[] exponents(Fields fields, Faults faults) {
    Tree tree = fields.get("exponents");
    if (tree == null) {
      return new double[] {1, 1};
    }
    Fields exponents = Fields.of(tree, faults);
    double level = exponents.quantity("level", Limits.EXPONENT, 1);
    double cutoff = exponents.quantity("cutoff", Limits.EXPONENT, 1);
    exponents.done();
    return new double[] {level, cutoff};
  }

  static Draft.Keys write(StudioChannel studio) {
    Channel channel = studio.channel();
    OfLevel level = level(studio);
    OfFilter filter = filter(studio);
    Cutoff cutoff = filter.cutoff();
    return Draft.keys()
        .words("name", channel.name())
        .choice("response", Choices.RESPONSE, channel.response().kind())
        .put(
            "transfer",
            Draft.inline(channel.transfer().knots().stream().map(ChannelPart::knot).toList()))
        .quantity("opening", channel.cells().openingSeconds(), Dimension.TIME)
        .put(
            "release",
            Draft.inline(channel.cells().list().stream().map(ChannelPart::cell).toList()))
        .whole("poles", filter.poles())
        .quantity("spread", filter.spread(), Dimension.NUMBER)
        .put(
            "cutoff",
            cutoff == null
                ? null
                : Draft.keys()
                    .quantity("closed", cutoff.closedHertz(), Dimension.FREQUENCY)
                    .quantity("open", cutoff.openHertz(), Dimension.FREQUENCY)
                    .inline())
        .put(
            "exponents",
            Draft.keys()
                .quantity("level", level.exponent(), Dimension.NUMBER)
                .quantity("cutoff", filter.exponent(), Dimension.NUMBER)
                .inline())
        .quantity("saturation", level.saturation(), Dimension.NUMBER)
        .quantity("leak", level.leakDb(), Dimension.LEVEL)
        .quantity("bleed", channel.output().bleedVolts(), Dimension.VOLTAGE)
        .quantity("outputRail", channel.output().railVolts(), Dimension.VOLTAGE);
  }

  /** What is written of the level, whether the response uses it or not. */
  private static OfLevel level(StudioChannel studio) {
    return studio
        .channel()
        .response()
        .level()
        .map(level -> new OfLevel(level.leakDb(), level.exponent(), level.saturation()))
        .orElseGet(() -> studio.unused() instanceof OfLevel kept ? kept : new OfLevel(null, 1, 0));
  }

  /** What is written of the filter, whether the response uses it or not. */
  private static OfFilter filter(StudioChannel studio) {
    return studio
        .channel()
        .response()
        .filter()
        .map(
            filter ->
                new OfFilter(
                    filter.poles(),
                    filter.spread(),
                    new Cutoff(filter.closedHertz(), filter.openHertz()),
                    filter.exponent()))
        .orElseGet(
            () -> studio.unused() instanceof OfFilter kept ? kept : new OfFilter(2, 1, null, 1));
  }

  private static Draft knot(Transfer.Knot knot) {
    return Draft.inline(
        List.of(
            new Draft.Quantity(knot.volts(), Dimension.VOLTAGE),
            new Draft.Quantity(knot.openness(), Dimension.NUMBER)));
  }

  private static Draft cell(Cell cell) {
    return Draft.keys()
        .quantity("share", cell.share(), Dimension.NUMBER)
        .quantity("time", cell.releaseSeconds(), Dimension.TIME)
        .quantity("opening", cell.openingSeconds(), Dimension.TIME)
        .inline();
  }
}
