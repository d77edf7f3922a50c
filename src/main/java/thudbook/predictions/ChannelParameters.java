package thudbook.predictions;

import static thudbook.predictions.Parameter.Scale.LINEAR;
import static thudbook.predictions.Parameter.Scale.LOGARITHMIC;

import java.util.ArrayList;
import java.util.List;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.predictions.Parameter.Part;
import thudbook.quantities.Dimension;
import thudbook.quantities.Range;

/**
 * The numbers of a channel, as far as its response uses them. Shares of cells are none, since they
 * sum to 1; of a transfer its two ends are ({@code threshold}, {@code ceiling}).
 */
final class ChannelParameters {
  private static final Range TIME = Range.of(Dimension.TIME, 1e-6, 60);
  private static final Range CUTOFF = Range.of(Dimension.FREQUENCY, 0.01, 200_000);
  private static final Range EXPONENT = Range.of(Dimension.NUMBER, 0.5, 4);
  private static final double LEAST_STEP_VOLTS = 0.001;

  private ChannelParameters() {}

  static List<Part<Channel>> of(Channel channel) {
    List<Part<Channel>> parts = new ArrayList<>();
    for (Part<Transfer> part : ofTransfer(channel.transfer())) {
      parts.add(
          part.in(
              "",
              transfer ->
                  new Channel(
                      channel.name(),
                      transfer,
                      channel.cells(),
                      channel.response(),
                      channel.output())));
    }
    for (Part<Cells> part : ofCells(channel.cells())) {
      parts.add(
          part.in(
              "",
              cells ->
                  new Channel(
                      channel.name(),
                      channel.transfer(),
                      cells,
                      channel.response(),
                      channel.output())));
    }
    for (Part<Response> part : ofResponse(channel.response())) {
      parts.add(part.in("", other -> with(channel, other, channel.output())));
    }
    for (Part<Output> part : ofOutput(channel.output())) {
      parts.add(part.in("", output -> with(channel, channel.response(), output)));
    }
    return parts;
  }

  private static Channel with(Channel channel, Response response, Output output) {
    return new Channel(channel.name(), channel.transfer(), channel.cells(), response, output);
  }

  private static List<Part<Transfer>> ofTransfer(Transfer transfer) {
    List<Transfer.Knot> knots = transfer.knots();
    int last = knots.size() - 1;
    double second = knots.get(1).volts();
    double lastButOne = knots.get(last - 1).volts();
    return List.of(
        new Part<>(
            "threshold",
            Range.of(Dimension.VOLTAGE, -20, second - LEAST_STEP_VOLTS),
            LINEAR,
            transfer.thresholdVolts(),
            v -> with(knots, 0, v)),
        new Part<>(
            "ceiling",
            Range.of(Dimension.VOLTAGE, lastButOne + LEAST_STEP_VOLTS, 20),
            LINEAR,
            transfer.ceilingVolts(),
            v -> with(knots, last, v)));
  }

  private static Transfer with(List<Transfer.Knot> knots, int index, double volts) {
    List<Transfer.Knot> moved = new ArrayList<>(knots);
    moved.set(index, new Transfer.Knot(volts, knots.get(index).openness()));
    return new Transfer(moved);
  }

  private static List<Part<Cells>> ofCells(Cells cells) {
    List<Part<Cells>> parts = new ArrayList<>();
    parts.add(
        new Part<>(
            "opening", TIME, LOGARITHMIC, cells.openingSeconds(), v -> new Cells(v, cells.list())));
    for (int i = 0; i < cells.list().size(); i++) {
      int index = i;
      for (Part<Cell> part : ofCell(cells.list().get(i))) {
        parts.add(
            part.in(
                "release." + i + ".",
                cell -> {
                  List<Cell> list = new ArrayList<>(cells.list());
                  list.set(index, cell);
                  return new Cells(cells.openingSeconds(), list);
                }));
      }
    }
    return parts;
  }

  private static List<Part<Cell>> ofCell(Cell cell) {
    Double opening = cell.openingSeconds();
    Part<Cell> time =
        new Part<>(
            "time",
            TIME,
            LOGARITHMIC,
            cell.releaseSeconds(),
            v -> new Cell(cell.share(), v, opening));
    return opening == null
        ? List.of(time)
        : List.of(
            time,
            new Part<>(
                "opening",
                TIME,
                LOGARITHMIC,
                opening,
                v -> new Cell(cell.share(), cell.releaseSeconds(), v)));
  }

  private static List<Part<Response>> ofResponse(Response response) {
    List<Part<Response>> parts = new ArrayList<>();
    if (response instanceof Response.Both both) {
      ofFilter(both.filtered())
          .forEach(p -> parts.add(p.in("", other -> new Response.Both(both.moved(), other))));
      ofLevel(both.moved())
          .forEach(p -> parts.add(p.in("", other -> new Response.Both(other, both.filtered()))));
    } else if (response instanceof Response.LowPass lowPass) {
      ofFilter(lowPass.filtered()).forEach(p -> parts.add(p.in("", Response.LowPass::new)));
    } else if (response instanceof Response.Amplitude amplitude) {
      ofLevel(amplitude.moved()).forEach(p -> parts.add(p.in("", Response.Amplitude::new)));
    }
    return parts;
  }

  private static List<Part<Filter>> ofFilter(Filter one) {
    List<Part<Filter>> parts = new ArrayList<>();
    if (one.poles() == 2) {
      parts.add(
          new Part<>(
              "spread",
              Range.of(Dimension.NUMBER, 1, 1000),
              LOGARITHMIC,
              one.spread(),
              v -> new Filter(2, v, one.closedHertz(), one.openHertz(), one.exponent())));
    }
    parts.add(
        new Part<>(
            "cutoff.closed",
            Range.of(Dimension.FREQUENCY, CUTOFF.least(), one.openHertz()),
            LOGARITHMIC,
            one.closedHertz(),
            v -> new Filter(one.poles(), one.spread(), v, one.openHertz(), one.exponent())));
    parts.add(
        new Part<>(
            "cutoff.open",
            Range.of(Dimension.FREQUENCY, one.closedHertz(), CUTOFF.most()),
            LOGARITHMIC,
            one.openHertz(),
            v -> new Filter(one.poles(), one.spread(), one.closedHertz(), v, one.exponent())));
    parts.add(
        new Part<>(
            "exponents.cutoff",
            EXPONENT,
            LOGARITHMIC,
            one.exponent(),
            v -> new Filter(one.poles(), one.spread(), one.closedHertz(), one.openHertz(), v)));
    return parts;
  }

  private static List<Part<Level>> ofLevel(Level one) {
    return List.of(
        new Part<>(
            "exponents.level",
            EXPONENT,
            LOGARITHMIC,
            one.exponent(),
            v -> new Level(one.leakDb(), v, one.saturation())),
        new Part<>(
            "saturation",
            Range.of(Dimension.NUMBER, 0, 1e6),
            LOGARITHMIC,
            one.saturation(),
            v -> new Level(one.leakDb(), one.exponent(), v)),
        new Part<>(
            "leak",
            Range.of(Dimension.LEVEL, -140, 0),
            LINEAR,
            one.leakDb(),
            v -> new Level(v, one.exponent(), one.saturation())));
  }

  private static List<Part<Output>> ofOutput(Output one) {
    return List.of(
        new Part<>(
            "bleed",
            Range.of(Dimension.VOLTAGE, -20, 20),
            LINEAR,
            one.bleedVolts(),
            v -> new Output(v, one.railVolts())),
        new Part<>(
            "outputRail",
            Range.of(Dimension.VOLTAGE, 0.1, 20),
            LOGARITHMIC,
            one.railVolts(),
            v -> new Output(one.bleedVolts(), v)));
  }
}
