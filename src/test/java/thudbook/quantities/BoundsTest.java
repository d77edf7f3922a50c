package thudbook.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalTime;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Property: both ends of every range belong to it, and nothing beyond them. Prefixes are those of
 * the International System of Units (milli 10⁻³, micro 10⁻⁶, kilo 10³), hours those of a clock
 * face.
 */
class BoundsTest {
  @Test
  void aRangeHoldsItsEnds() {
    Range range = Range.of(Dimension.VOLTAGE, 1, 60);
    assertThat(range.admits(1)).isTrue();
    assertThat(range.admits(60)).isTrue();
    assertThat(range.admits(Math.nextDown(1.0))).isFalse();
    assertThat(range.admits(Math.nextUp(60.0))).isFalse();
    assertThat(range.admits(0)).isFalse();
    assertThat(range.admits(Double.NaN)).isFalse();
    assertThat(Range.of(Dimension.VOLTAGE, 5, 5).admits(5)).isTrue();
    assertThatIllegalArgumentException().isThrownBy(() -> Range.of(Dimension.VOLTAGE, 5, 4));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Range.of(Dimension.VOLTAGE, Double.NaN, 4));
  }

  @Test
  void aRangeMayHoldZeroToo() {
    Range range = Range.of(Dimension.TIME, 1, 60).orZeroToo();
    assertThat(range.read("0")).isEqualTo(new Reading.Value(0));
    assertThat(range.read("1 s")).isEqualTo(new Reading.Value(1));
    assertThat(range.read("0.5 s"))
        .isEqualTo(new Reading.Refused("out-of-range", "0 or a time from 1 s to 60 s"));
    assertThat(Range.of(Dimension.TIME, 1, 60).read("0"))
        .isEqualTo(new Reading.Refused("out-of-range", "a time from 1 s to 60 s"));
  }

  @Test
  void timesAreZeroOrFromAMicrosecondToAMinute() {
    for (double seconds : new double[] {0, 1e-6, 1, 60}) {
      Check.time("attack", seconds);
    }
    Check.positiveTime("decay", 1e-6);
    Check.positiveTime("decay", 60);
    for (double seconds : new double[] {-1e-3, 0.99e-6, 60.01, Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Check.time("attack", seconds))
          .withMessageContaining("attack in seconds")
          .withMessageContaining(String.valueOf(seconds));
      assertThatIllegalArgumentException().isThrownBy(() -> Check.positiveTime("decay", seconds));
    }
    assertThatIllegalArgumentException().isThrownBy(() -> Check.positiveTime("decay", 0));
  }

  @ParameterizedTest
  @CsvSource({
    "TIME, 0.001, 1 ms",
    "TIME, 0.0009, 900 µs",
    "TIME, 0.999, 999 ms",
    "TIME, 1, 1 s",
    "TIME, 0, 0 s",
    "TIME, -0.002, -2 ms",
    "FREQUENCY, 1000, 1 kHz",
    "FREQUENCY, 999, 999 Hz",
    "VOLTAGE, 0.1, 0.1 V",
    "VOLTAGE, 0.099, 99 mV",
    "VOLTAGE, 0, 0 V",
    "VOLTAGE, -0.05, -50 mV",
    "SHARE, 1, 100 %",
    "ANGLE, 75, 75 deg",
    "MINUTES, 20, 20 min"
  })
  void prefixesChangeAtTheirPowersOfTen(Dimension dimension, double si, String words) {
    assertThat(dimension.say(si)).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource({"TIME, 3, s", "FREQUENCY, 0, Hz", "SHARE, 2, ''", "LEVEL, 0, dB", "NUMBER, 0, ''"})
  void unitsOfDocumentsArePowersOfTenOfThoseInMemory(Dimension dimension, int places, String si) {
    assertThat(dimension.places()).isEqualTo(places);
    assertThat(dimension.siUnit()).isEqualTo(si);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"1:00", "12:59", "12:00", "10:09", "10:10", "0 deg", "3600 deg", "0 %", "100 %"})
  void bothEndsOfAKnobArePositions(String text) {
    Position position = Position.read(text).orElseThrow();
    assertThat(position).isNotInstanceOf(Position.Named.class);
    assertThat(position.text()).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0:59", "13:00", "12:60", "3600.1 deg", "-0.1 deg", "100.1 %", "-0.1 %"})
  void nothingBeyondTheEndsIsAPosition(String text) {
    assertThat(Position.read(text)).isEmpty();
  }

  @Test
  void positionsCheckThemselves() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Position.Clock(LocalTime.of(13, 0)))
        .withMessageContaining("13");
    assertThatIllegalArgumentException().isThrownBy(() -> new Position.Clock(LocalTime.of(0, 30)));
    assertThatIllegalArgumentException().isThrownBy(() -> new Position.Angle(3600.5));
    assertThatIllegalArgumentException().isThrownBy(() -> new Position.Angle(Double.NaN));
    assertThatIllegalArgumentException().isThrownBy(() -> new Position.Share(-0.01));
    assertThatIllegalArgumentException().isThrownBy(() -> new Position.Share(1.01));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Position.Value(Double.NaN, Dimension.TIME));
    assertThatIllegalArgumentException().isThrownBy(() -> new Position.Value(0.5, Dimension.SHARE));
    assertThat(new Position.Clock(LocalTime.of(10, 30, 59)))
        .isEqualTo(new Position.Clock(LocalTime.of(10, 30)));
  }

  @Test
  void aValueWithItsUnitIsNoAngle() {
    assertThat(Position.read("5 ms. deg")).contains(new Position.Named("5 ms. deg"));
  }

  @Test
  void numbersOf64CharactersAreReadAndLongerOnesAreNot() {
    String sixtyFour = "1." + "0".repeat(62);
    assertThat(Written.read(sixtyFour).orElseThrow().si()).isEqualTo(1);
    assertThat(Written.read(sixtyFour + "0")).isEmpty();
    String withComma = "1," + "1".repeat(62);
    assertThat(Written.withoutComma(withComma)).contains("1." + "1".repeat(62));
    assertThat(Written.withoutComma(withComma + "1")).isEmpty();
  }

  @Test
  void aCommaBeforeNoUnitOfOursIsNoNumber() {
    assertThat(Written.withoutComma("1,2 apples")).isEmpty();
    assertThat(Written.withoutComma("1,2 ms")).contains("1.2 ms");
    assertThat(Range.of(Dimension.TIME, 1, 60).read("1,2 apples"))
        .isEqualTo(new Reading.Refused("not-a-quantity", "a time from 1 s to 60 s"));
  }

  /**
   * Property: of every power of two there is, the shortest number reads back and none with one
   * digit less does. Below a power of two doubles lie twice as close as above it, so that the
   * nearest decimal of few digits may miss where its neighbour hits.
   */
  @Test
  void powersOfTwoAndOtherNumbersReadBackFromTheirShortestDigits() {
    for (int power = -1074; power <= 1023; power++) {
      assertShortest(Math.scalb(1.0, power));
    }
    Random random = new Random(51);
    for (int i = 0; i < 500; i++) {
      assertShortest(Math.exp(60 * random.nextDouble() - 30));
    }
  }

  private static void assertShortest(double value) {
    assertThat(Decimals.shortest(value).doubleValue()).isEqualTo(value);
    int digits = Decimals.shortest(value).precision();
    if (digits > 1) {
      assertThat(DecimalsTest.anyReadsBack(value, digits - 1)).as("%s", value).isFalse();
    }
  }

  @Test
  void aRefusalSaysItsFirstFault() {
    Fault first = new Fault("/decay", 3, "out-of-range", "-1 s", "a time", "the decay is negative");
    Fault second = new Fault("", 0, "other", "", "", "and more");
    Refusal refusal = new Refusal(Refusal.Kind.REFUSED_VALUES, List.of(first, second));
    assertThat(refusal).hasMessage("the decay is negative");
    assertThat(refusal.kind()).isEqualTo(Refusal.Kind.REFUSED_VALUES);
    assertThat(refusal.faults()).containsExactly(first, second);
    assertThat(new Refusal(Refusal.Kind.STALE, List.of())).hasMessage("STALE");
    assertThat(Refusal.of(Refusal.Kind.NOT_FOUND, "no-such", "nothing there").faults())
        .containsExactly(new Fault("", 0, "no-such", "", "", "nothing there"));
  }
}
