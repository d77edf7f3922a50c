package thudbook.wording;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Property: what was entered is shown exactly, without the noise of binary fractions. */
class ReadingTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0 ms",
    "0.0021, 2.1 ms",
    "0.0000005, 0.0005 ms",
    "0.18, 180 ms",
    "0.999, 999 ms",
    "1, 1 s",
    "2.84, 2.84 s",
    "60, 60 s"
  })
  void times(double seconds, String shown) {
    assertThat(Reading.enteredTime(seconds)).isEqualTo(withUnit(shown));
  }

  @ParameterizedTest
  @CsvSource({
    "0.01, 0.01 Hz",
    "82.5, 82.5 Hz",
    "1000, 1 kHz",
    "20000, 20 kHz",
    "1234.5, 1.2345 kHz"
  })
  void frequencies(double hertz, String shown) {
    assertThat(Reading.enteredHertz(hertz)).isEqualTo(withUnit(shown));
  }

  @ParameterizedTest
  @CsvSource({"0.07, 7 %", "0.368, 36.8 %", "1, 100 %", "0, 0 %"})
  void shares(double share, String shown) {
    assertThat(Reading.enteredShare(share)).isEqualTo(withUnit(shown));
  }

  @ParameterizedTest
  @CsvSource({"-66, −66 dB", "-0.0, 0 dB", "0.1, 0.1 dB"})
  void levels(double db, String shown) {
    assertThat(Reading.entered(db, "dB")).isEqualTo(withUnit(shown));
  }

  /** A number and its unit stay on one line. */
  private static String withUnit(String shown) {
    return shown.replace(' ', '\u00a0');
  }
}
