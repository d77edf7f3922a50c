package thudbook.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import thudbook.equipment.Control.Knob;
import thudbook.equipment.Control.Ranged;
import thudbook.equipment.Control.Switch;
import thudbook.equipment.MeasuredTaper.Point;
import thudbook.quantities.Dimension;
import thudbook.quantities.Position;
import thudbook.yardstick.ChannelBuilder;

/**
 * Property: what equipment takes and refuses at the ends of its ranges, and tapers where they can
 * be worked out by hand (means, geometric means, the formula of Fritsch and Butland).
 */
class EquipmentEdgesTest {
  private static final Taper LINE = new Taper.Linear(0, 10);

  private static void refused(String words, ThrowingCallable call) {
    assertThatIllegalArgumentException().isThrownBy(call).withMessageContaining(words);
  }

  private static Taper table(double... sharesAndValues) {
    return Taper.measured(
        IntStream.range(0, sharesAndValues.length / 2)
            .mapToObj(i -> new Point(sharesAndValues[2 * i], sharesAndValues[2 * i + 1]))
            .toList());
  }

  /** Up to a decade a table of two points is a line, beyond it is exponential. */
  @Test
  void tablesOfMoreThanADecadeAreExponential() {
    assertThat(table(0, 1, 1, 10).value(0.5)).isCloseTo(5.5, within(1e-12));
    assertThat(table(0, 10, 1, 1).value(0.5)).isCloseTo(5.5, within(1e-12));
    assertThat(table(0, 1, 1, 100).value(0.5)).isCloseTo(10, within(1e-12));
    assertThat(table(0, 100, 1, 1).value(0.5)).isCloseTo(10, within(1e-12));
    assertThat(table(0, -100, 1, -1).value(0.5)).isCloseTo(-10, within(1e-12));
    assertThat(table(0, -1, 1, -100).value(0.25)).isCloseTo(-Math.sqrt(10), within(1e-12));
    assertThat(table(0, -1, 1, -100).share(-10)).isCloseTo(0.5, within(1e-12));
    assertThat(table(0, 5, 1, 0).value(0.5)).isCloseTo(2.5, within(1e-12));
    assertThat(table(0, 0, 1, -5).value(0.5)).isCloseTo(-2.5, within(1e-12));
    assertThat(table(0, -5, 1, 100).value(0.5)).isCloseTo(47.5, within(1e-12));
  }

  /**
   * Fritsch and Butland: between slopes 4 and 4/3 over widths 1/4 and 3/4 the slope is 3/(1.75/4 +
   * 1.25·3/4) = 24/11; halfway a cubic is the mean plus an eighth of the width times the difference
   * of slopes.
   */
  @Test
  void tablesHaveTheSlopesOfFritschAndButland() {
    Taper taper = table(0, 0, 0.25, 1, 1, 2);
    double slope = 24.0 / 11;
    assertThat(taper.value(0.125)).isCloseTo(0.5 + 0.25 / 8 * (4 - slope), within(1e-14));
    assertThat(taper.value(0.625)).isCloseTo(1.5 + 0.75 / 8 * (slope - 4.0 / 3), within(1e-14));
    assertThat(taper.share(taper.value(0.625))).isCloseTo(0.625, within(1e-12));
    assertThat(taper.share(taper.value(0.125))).isCloseTo(0.125, within(1e-12));
    Taper falling = table(0, 2, 0.75, 1, 1, 0);
    assertThat(falling.value(0.875)).isCloseTo(0.5 + 0.25 / 8 * (4 - slope), within(1e-14));
    assertThat(falling.share(falling.value(0.875))).isCloseTo(0.875, within(1e-12));
  }

  @Test
  void tablesAreCheckedAndCompared() {
    refused("2 to 64", () -> Taper.measured(List.of(new Point(0, 1))));
    List<Point> many = new ArrayList<>();
    for (int i = 0; i < 64; i++) {
      many.add(new Point(i / 63.0, i));
    }
    assertThat(((MeasuredTaper) Taper.measured(many)).points()).isEqualTo(many);
    many.add(63, new Point(62.5 / 63, 62.5));
    refused("2 to 64", () -> Taper.measured(many));
    refused("share 0 to share 1", () -> table(0.1, 1, 1, 2));
    refused("share 0 to share 1", () -> table(0, 1, 0.9, 2));
    refused("shares of a table rise", () -> table(0, 1, 0.5, 2, 0.5, 3, 1, 4));
    refused("values of a table", () -> table(0, 1, 0.5, 3, 1, 2));
    refused("values of a table", () -> table(0, 1, 0.5, 0.5, 1, 2));
    refused("values of a table", () -> table(0, 1, 0.5, 1, 1, 2));
    refused("share", () -> new Point(1.1, 0));
    refused("value", () -> new Point(0, Double.NaN));
    refused("share of the sweep", () -> table(0, 1, 1, 2).value(1.01));
    refused("value of the knob", () -> table(0, 1, 1, 2).share(2.01));
    assertThat(table(0, 1, 1, 2)).isEqualTo(table(0, 1, 1, 2)).hasSameHashCodeAs(table(0, 1, 1, 2));
    assertThat(table(0, 1, 1, 2)).isNotEqualTo(table(0, 1, 1, 3)).isNotEqualTo(LINE);
    assertThat(table(0, 1, 1, 2).hashCode()).isNotEqualTo(table(0, 1, 1, 3).hashCode());
    assertThat(table(0, 1, 1, 2))
        .hasToString("MeasuredTaper" + List.of(new Point(0, 1), new Point(1, 2)));
  }

  @Test
  void analyticTapersHoldTheirEnds() {
    for (Taper taper : List.of(LINE, new Taper.Linear(10, 0), new Taper.Exponential(-8, -1))) {
      assertThat(taper.reaches(taper.from())).isTrue();
      assertThat(taper.reaches(taper.to())).isTrue();
      assertThat(taper.reaches(11)).isFalse();
      assertThat(taper.reaches(-9)).isFalse();
      refused("share of the sweep", () -> taper.value(1.1));
      refused("share of the sweep", () -> taper.value(-0.1));
      refused("value of the knob", () -> taper.share(11));
      refused("value of the knob", () -> taper.share(-9));
    }
    refused("far left", () -> new Taper.Linear(Double.NaN, 1));
    refused("far right", () -> new Taper.Linear(1, Double.POSITIVE_INFINITY));
    refused("far right", () -> new Taper.Exponential(1, Double.NaN));
    refused("both ends", () -> new Taper.Exponential(2, 2));
    refused("one side", () -> new Taper.Exponential(1, -2));
    refused("one side", () -> new Taper.Exponential(1, 0));
    assertThat(new Taper.Exponential(-8, -0.5).value(0.5)).isCloseTo(-2, within(1e-14));
  }

  @Test
  void anEndIsReadWhereItIsNearerThanAStep() {
    Sweep sweep = new Sweep(clock("7:03"), clock("4:58"));
    assertThat(sweep.clock(594.0 / 595, 5).text()).isEqualTo("4:58");
    assertThat(sweep.clock(592.0 / 595, 5).text()).isEqualTo("4:55");
    assertThat(sweep.clock(0.9 / 595, 5).text()).isEqualTo("7:03");
    assertThat(sweep.clock(2.0 / 595, 5).text()).isEqualTo("7:05");
    refused("share of the sweep", () -> sweep.clock(1.01));
    refused("share of the sweep", () -> sweep.clock(-0.01));
  }

  private static Position.Clock clock(String text) {
    return (Position.Clock) Position.read(text).orElseThrow();
  }

  private static Knob knob(List<Ranged> tapers, String switchedBy, double tolerance) {
    return new Knob("tune", Dimension.TIME, Sweep.USUAL, tapers, switchedBy, tolerance);
  }

  @Test
  void knobsHaveOneTaperOrOneAPosition() {
    Ranged plain = new Ranged(null, LINE);
    Ranged low = new Ranged("low", LINE);
    Ranged high = new Ranged("high", LINE);
    assertThat(knob(List.of(plain), null, 0.1).toleranceShare())
        .isCloseTo(0.1 / 300, within(1e-15));
    assertThat(knob(List.of(low, high), "range", 90).tapers()).hasSize(2);
    refused("tolerance", () -> knob(List.of(plain), null, 0.09));
    refused("tolerance", () -> knob(List.of(plain), null, 90.1));
    refused("one taper", () -> knob(List.of(low), null, 5));
    refused("one taper", () -> knob(List.of(plain, plain), null, 5));
    refused("one taper", () -> knob(List.of(), null, 5));
    refused("one taper", () -> knob(List.of(plain), "range", 5));
    refused("one taper", () -> knob(List.of(low, low), "range", 5));
    refused("one taper", () -> knob(List.of(low, plain), "range", 5));
    Sweep hour = new Sweep(clock("7:00"), clock("8:00"));
    assertThat(new Knob("fine", Dimension.TIME, hour, List.of(plain), null, 60).toleranceShare())
        .isEqualTo(1);
    assertThat(new Knob("fine", Dimension.TIME, hour, List.of(plain), null, 15).toleranceShare())
        .isEqualTo(0.5);
    refused("positions", () -> new Switch("range", List.of()));
    refused("positions", () -> new Switch("range", List.of("low", "low")));
    assertThat(new Switch("range", List.of("low", "high")).positions()).hasSize(2);
  }

  @Test
  void valuesAreReadToThreeDigits() {
    Dialling dialling = Dialling.of(Knob.of("decay", Dimension.TIME, LINE), null).orElseThrow();
    assertThat(Dialling.read(0.12345)).isEqualTo(0.123);
    assertThat(Dialling.read(1789)).isEqualTo(1790);
    assertThat(dialling.words(0.1784)).isEqualTo("178 ms");
    assertThat(dialling.words(2)).isEqualTo("2 s");
  }

  @Test
  void modulesKnowTheirControls() {
    Switch range = new Switch("range", List.of("low", "high"));
    Knob tune = knob(List.of(new Ranged("low", LINE), new Ranged("high", LINE)), "range", 5);
    Module module = RackTest.module("O1", List.of(range, tune), 600.0, null);
    assertThat(module.control("tune")).contains(tune);
    assertThat(module.control("nothing")).isEmpty();
    assertThat(module.warmUpMinutes()).isEqualTo(600);
    refused("depends on range", () -> RackTest.module("O1", List.of(tune), null, null));
    Switch other = new Switch("range", List.of("low"));
    refused("depends on range", () -> RackTest.module("O1", List.of(other, tune), null, null));
    Switch elsewhere = new Switch("shape", List.of("low", "high"));
    refused("depends on range", () -> RackTest.module("O1", List.of(elsewhere, tune), null, null));
    refused("names of their own", () -> RackTest.module("O1", List.of(range, range), null, null));
    refused("warm-up", () -> RackTest.module("O1", List.of(), 601.0, null));
    refused("warm-up", () -> RackTest.module("O1", List.of(), -1.0, null));
    refused("label", () -> RackTest.module(" ", List.of(), null, null));
  }

  @Test
  void racksFindModulesByLabelAndGate() {
    Module one = RackTest.module("G1", List.of(), null, "quick-gate");
    Module two = RackTest.module("E1", List.of(), null, null);
    Rack rack = new Rack(List.of(one, two));
    assertThat(rack.isEmpty()).isFalse();
    assertThat(Rack.EMPTY.isEmpty()).isTrue();
    assertThat(rack.modules()).containsExactly(two, one);
    assertThat(rack.module("g1")).contains(one);
    assertThat(rack.module("G2")).isEmpty();
    assertThat(rack.carrying("quick-gate")).containsExactly(one);
    assertThat(rack.carrying("other")).isEmpty();
  }

  @Test
  void gatesHaveChannelsWithNamesOfTheirOwn() {
    StudioChannel channel = new StudioChannel(ChannelBuilder.amplifier().build(), null);
    Gate gate = gate(List.of(channel));
    assertThat(gate.channel(channel.channel().name())).contains(channel);
    assertThat(gate.channel("none")).isEmpty();
    refused("at least one", () -> gate(List.of()));
    refused("names of their own", () -> gate(List.of(channel, channel)));
  }

  private static Gate gate(List<StudioChannel> channels) {
    return new Gate(new UUID(0, 1), "gate", "Gate", Gate.Caution.NONE, channels, "");
  }

  @Test
  void portsSayWhatTheyCarry() {
    assertThat(Port.Carries.values())
        .extracting(Port.Carries::words)
        .containsExactly("audio", "a control voltage", "a gate signal", "a trigger");
  }
}
