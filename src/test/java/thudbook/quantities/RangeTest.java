package thudbook.quantities;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Property: quantities are read as people write them, exactly, and written so that they read. */
class RangeTest {
  private static final double MOST = 1e12;

  @ParameterizedTest
  @CsvSource({
    "TIME, 180ms, 0.18",
    "TIME, 180 ms, 0.18",
    "TIME, 0.18 s, 0.18",
    "TIME, .18s, 0.18",
    "TIME, 2.1 ms, 0.0021",
    "TIME, 1.1 ms, 0.0011",
    "TIME, 5 us, 0.000005",
    "TIME, 5 µs, 0.000005",
    "TIME, 5 \u03bcs, 0.000005",
    "TIME, 180 MS, 0.18",
    "TIME, 1e-3 s, 0.001",
    "TIME, 180\u00a0ms, 0.18",
    "TIME, 0, 0",
    "FREQUENCY, 1.2 kHz, 1200",
    "FREQUENCY, 1.2khz, 1200",
    "FREQUENCY, 55 hz, 55",
    "FREQUENCY, 0.1 Hz, 0.1",
    "VOLTAGE, 5V, 5",
    "VOLTAGE, +5 V, 5",
    "VOLTAGE, -2.4 V, -2.4",
    "VOLTAGE, \u22122.4 V, -2.4",
    "VOLTAGE, 1 mV, 0.001",
    "VOLTAGE, -0 V, 0",
    "LEVEL, -66 dB, -66",
    "LEVEL, -66db, -66",
    "LEVEL, 0 dB, 0",
    "SHARE, 1 %, 0.01",
    "SHARE, 36.8%, 0.368",
    "SHARE, 0.2, 0.2",
    "NUMBER, 0.8, 0.8",
    "NUMBER, -1, -1",
    "NUMBER, 20 %, 0.2",
    "NUMBER, 5., 5",
    "RATIO, 1.5 x, 1.5",
    "RATIO, 1.5x, 1.5",
    "RATIO, 1.5 ×, 1.5",
    "TEMPO, 80 bpm, 80",
    "TEMPO, 80 BPM, 80",
    "MINUTES, 20 min, 20"
  })
  void reads(Dimension dimension, String text, double si) {
    Range range = Range.of(dimension, -MOST, MOST);
    assertThat(range.read(text)).isEqualTo(new Reading.Value(si));
    assertThat(range.read("  " + text + " ")).isEqualTo(new Reading.Value(si));
  }

  @ParameterizedTest
  @CsvSource({
    "TIME, 180, unit-missing, 'a time with its unit, such as 180 ms'",
    "FREQUENCY, 55, unit-missing, 'a frequency with its unit, such as 55 Hz'",
    "LEVEL, 0, unit-missing, 'a level with its unit, such as 0 dB'",
    "TIME, 5 Hz, wrong-unit, a time from 1 s to 60 s",
    "TIME, 5 sec, wrong-unit, a time from 1 s to 60 s",
    "TIME, 5 min, wrong-unit, a time from 1 s to 60 s",
    "LEVEL, -6 dBu, wrong-unit, a level from 1 dB to 60 dB",
    "NUMBER, 5 V, wrong-unit, a number from 1 to 60",
    "TIME, '1,2 ms', decimal-comma, 1.2 ms",
    "TIME, '1,2', decimal-comma, 1.2",
    "FREQUENCY, '1,200 Hz', decimal-comma, 1.200 Hz or 1200 Hz",
    "TIME, NaN, not-a-quantity, a time from 1 s to 60 s",
    "TIME, Infinity s, not-a-quantity, a time from 1 s to 60 s",
    "TIME, .inf, not-a-quantity, a time from 1 s to 60 s",
    "TIME, '', not-a-quantity, a time from 1 s to 60 s",
    "TIME, long, not-a-quantity, a time from 1 s to 60 s",
    "TIME, 1 2 ms, not-a-quantity, a time from 1 s to 60 s",
    "TIME, 1.2.3 ms, not-a-quantity, a time from 1 s to 60 s",
    "TIME, --1 ms, not-a-quantity, a time from 1 s to 60 s",
    "TIME, 0x10 ms, not-a-quantity, a time from 1 s to 60 s",
    "TIME, 1_000 ms, not-a-quantity, a time from 1 s to 60 s",
    "TIME, ١ s, not-a-quantity, a time from 1 s to 60 s",
    "TIME, 1e400 s, out-of-range, a time from 1 s to 60 s",
    "TIME, 1e99999 s, not-a-quantity, a time from 1 s to 60 s",
    "TIME, 61 s, out-of-range, a time from 1 s to 60 s",
    "TIME, -5 s, out-of-range, a time from 1 s to 60 s",
    "FREQUENCY, 61 Hz, out-of-range, a frequency from 1 Hz to 60 Hz"
  })
  void refuses(Dimension dimension, String text, String code, String expected) {
    assertThat(Range.of(dimension, 1, 60).read(text))
        .isEqualTo(new Reading.Refused(code, expected));
  }

  @Test
  void refusesAVeryLongNumber() {
    Range range = Range.of(Dimension.NUMBER, 0, 10);
    assertThat(range.read("1." + "0".repeat(100_000))).isInstanceOf(Reading.Refused.class);
  }

  @Tag("long")
  @ParameterizedTest
  @EnumSource(Dimension.class)
  void whatIsWrittenReadsBackExactly(Dimension dimension) {
    Range range = Range.of(dimension, -MOST, MOST);
    Random random = new Random(4);
    for (int i = 0; i < 5000; i++) {
      double si = (random.nextBoolean() ? 1 : -1) * Math.exp(random.nextDouble() * 54 - 27);
      assertThat(range.read(dimension.write(si))).isEqualTo(new Reading.Value(si));
      double round = random.nextInt(100_000) / 1000.0;
      assertThat(range.read(dimension.write(round))).isEqualTo(new Reading.Value(round));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "TIME, 0.18, 180 ms",
    "TIME, 60, 60000 ms",
    "TIME, 0.000001, 0.001 ms",
    "TIME, -0.0, 0 ms",
    "FREQUENCY, 9000, 9000 Hz",
    "VOLTAGE, 0.001, 0.001 V",
    "LEVEL, -66, -66 dB",
    "SHARE, 0.01, 1 %",
    "SHARE, 0.368, 36.8 %",
    "RATIO, 1.5, 1.5 x",
    "TEMPO, 80, 80 bpm",
    "MINUTES, 20, 20 min",
    "NUMBER, 0.8, 0.8"
  })
  void writes(Dimension dimension, double si, String text) {
    assertThat(dimension.write(si)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({
    "TIME, 0.000001, 1 µs",
    "TIME, 0.02, 20 ms",
    "TIME, 60, 60 s",
    "FREQUENCY, 20000, 20 kHz",
    "FREQUENCY, 0.01, 0.01 Hz",
    "VOLTAGE, 0.001, 1 mV",
    "VOLTAGE, -20, -20 V",
    "SHARE, 0.9, 90 %"
  })
  void says(Dimension dimension, double si, String text) {
    assertThat(dimension.say(si)).isEqualTo(text);
  }
}
