package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Reference test: collocation against the textbook answer to an exponential, z′ = ω·(e^(−t) − z)
 * with z(0) = z₀: z = ω/(ω−1)·e^(−t) + (z₀ − ω/(ω−1))·e^(−ωt).
 */
class CollocationTest {
  @ParameterizedTest
  @CsvSource({
    "12, 1, 0.5, 0.5",
    "12, 1, 2, 0.3",
    "12, 0.5, 0.01, 3",
    "4, 0.02, 0.5, 1",
    "4, 0.05, 0.2, 0",
  })
  void followsAnExponential(int nodes, double length, double omega, double start) {
    Collocation rule = new Collocation(nodes);
    double[] drive = new double[rule.count()];
    for (int i = 0; i < drive.length; i++) {
      drive[i] = Math.exp(-length * rule.place(i));
    }
    double[] z = rule.follow(omega * length, start, drive);
    double part = omega / (omega - 1);
    double tolerance = rule.miss(drive) + 1e-13;
    assertThat(tolerance).isLessThan(1e-7);
    for (double place = 0; place <= 1; place += 1 / 16.0) {
      double t = length * place;
      double want = part * Math.exp(-t) + (start - part) * Math.exp(-omega * t);
      assertThat(rule.between(z, place)).as("at " + t).isEqualTo(want, within(tolerance));
    }
  }

  @ParameterizedTest
  @CsvSource({"12, 1e3", "12, 1e9", "4, 1e6"})
  void stepsMuchLongerThanTheFilterRemembersFollowTheDrive(int nodes, double omegaStep) {
    Collocation rule = new Collocation(nodes);
    double[] drive = new double[rule.count()];
    Arrays.fill(drive, 2);
    double[] z = rule.follow(omegaStep, 2, drive);
    assertThat(z).containsOnly(new double[] {2}, within(1e-12));
    assertThat(rule.miss(drive)).isLessThan(1e-12);
  }
}
