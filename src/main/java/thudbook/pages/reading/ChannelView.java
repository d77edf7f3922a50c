package thudbook.pages.reading;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Measured;
import thudbook.equipment.StudioChannel;
import thudbook.gates.Cell;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Transfer;
import thudbook.plots.ChannelPlots;
import thudbook.plots.DataTable;
import thudbook.wording.Entry;
import thudbook.wording.Reading;

/**
 * A channel of a gate, as it is shown.
 *
 * @param summary what it does, in one sentence
 * @param provenance where the numbers come from, in one sentence
 */
public record ChannelView(
    String name, String summary, String provenance, List<Plot> plots, List<Entry> numbers) {

  /**
   * A plot and its numbers.
   *
   * @param svg safe SVG
   */
  public record Plot(String title, String svg, DataTable table) {}

  /** The view of a channel. */
  public static ChannelView of(StudioChannel studio) {
    Channel channel = studio.channel();
    return new ChannelView(
        channel.name(),
        summary(channel),
        provenance(studio.measured()),
        List.of(
            new Plot(
                "Transfer", ChannelPlots.transfer(channel), ChannelPlots.transferTable(channel)),
            new Plot(
                "Level and cutoff",
                ChannelPlots.levelAndCutoff(channel),
                ChannelPlots.levelAndCutoffTable(channel)),
            new Plot(
                "Natural release",
                ChannelPlots.release(channel),
                ChannelPlots.releaseTable(channel))),
        numbers(channel));
  }

  /** What a channel is called by the part of the sound that it moves. */
  static String kind(Channel channel) {
    return switch (channel.response().kind()) {
      case BOTH -> "low-pass gate, level and cutoff together";
      case AMPLITUDE -> "amplifier, level only";
      case LOW_PASS -> "filter, cutoff only";
    };
  }

  /** Threshold, ceiling and release times of a channel in one line. */
  static String brief(Channel channel) {
    Transfer transfer = channel.transfer();
    return "opens from "
        + Reading.entered(transfer.thresholdVolts(), "V")
        + " to "
        + Reading.entered(transfer.ceilingVolts(), "V")
        + ", falls with "
        + releaseTimes(channel);
  }

  private static String releaseTimes(Channel channel) {
    List<String> times =
        channel.cells().list().stream()
            .map(cell -> Reading.enteredTime(cell.releaseSeconds()))
            .toList();
    int last = times.size() - 1;
    return last == 0
        ? times.get(0)
        : String.join(", ", times.subList(0, last)) + " and " + times.get(last);
  }

  private static String summary(Channel channel) {
    Transfer transfer = channel.transfer();
    String opens =
        transfer.thresholdVolts() == 0
            ? "Opens from 0\u00a0V"
            : "Hears nothing below " + Reading.entered(transfer.thresholdVolts(), "V");
    return opens
        + " and is fully open at "
        + Reading.entered(transfer.ceilingVolts(), "V")
        + ". Opens with a time constant of "
        + Reading.enteredTime(channel.cells().openingSeconds())
        + "; falls with "
        + releaseTimes(channel)
        + ".";
  }

  private static String provenance(@Nullable Measured measured) {
    if (measured == null) {
      return "Entered by hand.";
    }
    String how =
        switch (measured.how()) {
          case SWEEP -> "Measured with a sweep";
          case RECORDING -> "Measured from a recording";
          case DATA_SHEET -> "Taken from a data sheet";
        };
    String when = how + " on " + Reading.day(measured.date());
    return measured.warmUpMinutes() == null
        ? when + "."
        : when + ", after warming up for " + Reading.entered(measured.warmUpMinutes(), "min") + ".";
  }

  private static List<Entry> numbers(Channel channel) {
    List<Entry> numbers = new ArrayList<>();
    numbers.add(new Entry("response", "Response", kind(channel)));
    List<Transfer.Knot> knots = channel.transfer().knots();
    numbers.add(line("threshold", "Threshold", knots.get(0).volts(), "V"));
    for (Transfer.Knot knot : knots.subList(1, knots.size() - 1)) {
      numbers.add(
          new Entry(
              "knot",
              "Knot at " + Reading.entered(knot.volts(), "V"),
              Reading.enteredShare(knot.openness()) + " open"));
    }
    numbers.add(line("ceiling", "Ceiling", knots.get(knots.size() - 1).volts(), "V"));
    numbers.add(
        new Entry("opening", "Opening", Reading.enteredTime(channel.cells().openingSeconds())));
    for (int i = 0; i < channel.cells().list().size(); i++) {
      numbers.add(cell(i + 1, channel.cells().list().get(i)));
    }
    channel.response().filter().ifPresent(filter -> numbers.addAll(numbers(filter)));
    channel.response().level().ifPresent(level -> numbers.addAll(numbers(level)));
    numbers.add(line("bleed", "Bleed of the control", channel.output().bleedVolts(), "V"));
    numbers.add(
        new Entry(
            "outputRail", "Output rail", "±" + Reading.entered(channel.output().railVolts(), "V")));
    return numbers;
  }

  private static List<Entry> numbers(Filter filter) {
    return List.of(
        new Entry(
            "cutoff",
            "Cutoff",
            Reading.enteredHertz(filter.closedHertz())
                + " closed, "
                + Reading.enteredHertz(filter.openHertz())
                + " open"),
        new Entry("poles", "Filter", poles(filter)),
        number("exponents.cutoff", "Cutoff exponent", filter.exponent()));
  }

  private static List<Entry> numbers(Level level) {
    return List.of(
        line("leak", "Leak when closed", level.leakDb(), "dB"),
        number("exponents.level", "Level exponent", level.exponent()),
        number("saturation", "Saturation", level.saturation()));
  }

  private static String poles(Filter filter) {
    if (filter.poles() == 1) {
      return "one pole, 6\u00a0dB per octave";
    }
    return filter.spread() == 1
        ? "two equal poles, 12\u00a0dB per octave"
        : "two poles, a factor of " + Reading.entered(filter.spread()) + " apart";
  }

  private static Entry cell(int number, Cell cell) {
    return new Entry(
        "release",
        "Release, cell " + number,
        Reading.enteredTime(cell.releaseSeconds())
            + ", share "
            + Reading.enteredShare(cell.share())
            + (cell.openingSeconds() == null
                ? ""
                : ", opens in " + Reading.enteredTime(cell.openingSeconds())));
  }

  private static Entry line(String key, String name, double value, String unit) {
    return new Entry(key, name, Reading.entered(value, unit));
  }

  private static Entry number(String key, String name, double value) {
    return new Entry(key, name, Reading.entered(value));
  }
}
