package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** What sounds alike: 1.5 dB of peak and 15 % of a time, whichever is named first. */
class DepartureTest {
  @Test
  void aDecibelAndAHalfIsTheLimitOfPeaks() {
    assertThat(Departure.ofPeaks(-3, -4.5)).isEqualTo(1, within(1e-12));
    assertThat(Departure.ofPeaks(-4.5, -3)).isEqualTo(1, within(1e-12));
    assertThat(Departure.ofPeaks(-3, -3)).isZero();
    assertThat(Departure.ofPeaks(0, -6)).isEqualTo(4, within(1e-12));
  }

  @Test
  void fifteenPerCentIsTheLimitOfTimes() {
    assertThat(Departure.ofTimes(0.2, 0.23)).isEqualTo(1, within(1e-12));
    assertThat(Departure.ofTimes(0.23, 0.2)).isEqualTo(1, within(1e-12));
    assertThat(Departure.ofTimes(0.2, 0.2)).isZero();
    assertThat(Departure.ofTimes(0.2, 0.2 * 1.15 * 1.15)).isEqualTo(2, within(1e-12));
    assertThat(Departure.ofTimes(0, 0.2)).isZero();
  }
}
