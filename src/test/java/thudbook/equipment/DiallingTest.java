package thudbook.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thudbook.equipment.Control.Knob;
import thudbook.equipment.Control.Ranged;
import thudbook.quantities.Dimension;
import thudbook.quantities.Position;
import thudbook.quantities.Reading;

/**
 * Reference: angles of a clock face (an hour is 30°, a minute half a degree). Property: each kind
 * of position becomes each other one; what is not on the knob is refused with the reason.
 */
class DiallingTest {
  private static final Knob DECAY =
      Knob.of("decay", Dimension.TIME, new Taper.Exponential(0.002, 8));
  private static final Dialling DIALLING = Dialling.of(DECAY, null).orElseThrow();

  @ParameterizedTest
  @CsvSource({
    "7:00, 0",
    "10:00, 90",
    "12:00, 150",
    "12:30, 165",
    "2:15, 217.5",
    "5:00, 300",
  })
  void aClockIsAnAngle(String clock, double degrees) {
    double share = share(clock);
    assertThat(DIALLING.degrees(share)).isCloseTo(degrees, within(1e-12));
    assertThat(share(degrees + " deg")).isCloseTo(share, within(1e-15));
    assertThat(DIALLING.clock(share).text()).isEqualTo(clock);
  }

  @Test
  void everyMinuteOfEverySweepIsFoundAgain() {
    for (String ends : List.of("7:00 5:00", "8:30 3:15", "7:00 7:00", "11:55 1:05", "7:03 4:58")) {
      String[] both = ends.split(" ", -1);
      Sweep sweep = new Sweep(clock(both[0]), clock(both[1]));
      int minutes = (int) Math.round(sweep.degrees() * 2);
      for (int minute = 0; minute <= minutes; minute++) {
        Position.Clock at = sweep.clock((double) minute / minutes);
        double share = sweep.share(at).orElseThrow();
        boolean fullTurn = both[0].equals(both[1]) && (minute == 0 || minute == minutes);
        if (!fullTurn) {
          assertThat(share * minutes).isCloseTo(minute, within(1e-9));
        }
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "6:00, out-of-range, a clock position clockwise from 7:00 to 5:00",
    "301 deg, out-of-range, an angle from 0 to 300 deg",
    "9 s, out-of-range, 2 ms to 8 s",
    "1 ms, out-of-range, 2 ms to 8 s",
    "3 V, wrong-unit, 2 ms to 8 s",
    "low, not-on-a-knob, 'a clock position, an angle, a share of the sweep or 2 ms to 8 s'",
  })
  void refusesWhatIsNotOnTheKnob(String position, String code, String expected) {
    Reading reading = DIALLING.share(Position.read(position).orElseThrow());
    assertThat(reading).isEqualTo(new Reading.Refused(code, expected));
  }

  @Test
  void aValueIsRoundedToWhatCanBeRead() {
    // 180 ms: ln(0.18/0.002)/ln(8/0.002) = 0.5425360... of 600 minutes = 325.52 from 7:00: 12:26.
    double share = share("180 ms");
    assertThat(share).isCloseTo(Math.log(90) / Math.log(4000), within(1e-15));
    assertThat(DIALLING.clock(share).text()).isEqualTo("12:26");
    assertThat(DIALLING.readable(share).text()).isEqualTo("12:25");
  }

  @Test
  void theReadableStepFollowsTheTolerance() {
    assertThat(DECAY.stepMinutes()).isEqualTo(5);
    assertThat(Sweep.stepMinutes(0.1)).isEqualTo(1);
    assertThat(Sweep.stepMinutes(10)).isEqualTo(10);
    assertThat(Sweep.stepMinutes(45)).isEqualTo(30);
  }

  @Test
  void endsCanBeReadEvenBetweenSteps() {
    Sweep sweep = new Sweep(clock("7:03"), clock("4:58"));
    assertThat(sweep.clock(0, 5).text()).isEqualTo("7:03");
    assertThat(sweep.clock(1, 5).text()).isEqualTo("4:58");
    assertThat(sweep.clock(0.5, 5)).isEqualTo(clock("12:00"));
  }

  @Test
  void aSwitchChoosesTheTaper() {
    Knob tune =
        new Knob(
            "tune",
            Dimension.FREQUENCY,
            Sweep.USUAL,
            List.of(
                new Ranged("low", new Taper.Exponential(10, 200)),
                new Ranged("mid", new Taper.Exponential(80, 1600))),
            "range",
            5);
    assertThat(Dialling.of(tune, "mid").orElseThrow().value(0)).isEqualTo(80);
    assertThat(Dialling.of(tune, "low").orElseThrow().rangeInWords()).isEqualTo("10 Hz to 200 Hz");
    assertThat(Dialling.of(tune, null)).isEqualTo(Optional.empty());
    assertThat(Dialling.of(tune, "high")).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Knob("tune", Dimension.TIME, Sweep.USUAL, List.of(), null, 5));
  }

  private static double share(String position) {
    Reading reading = DIALLING.share(Position.read(position).orElseThrow());
    return ((Reading.Value) reading).si();
  }

  private static Position.Clock clock(String text) {
    return (Position.Clock) Position.read(text).orElseThrow();
  }
}
