package thudbook.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import thudbook.equipment.MeasuredTaper.Point;

/**
 * Property: analytic tapers against their formulas in decimal arithmetic and where they are known
 * without them (octaves, a geometric mean); there and back within 1e-12; tables are monotone, meet
 * their points and are inverted.
 */
class TaperTest {
  private static final MathContext DIGITS = new MathContext(40);

  @Test
  void linearIsTheClosedFormula() {
    Taper taper = new Taper.Linear(-2, 2);
    for (int i = 0; i <= 1000; i++) {
      BigDecimal share = new BigDecimal(i / 1000.0);
      BigDecimal exact = BigDecimal.valueOf(-2).add(share.multiply(BigDecimal.valueOf(4)), DIGITS);
      assertThat(taper.value(i / 1000.0)).isCloseTo(exact.doubleValue(), within(1e-15));
    }
  }

  @Test
  void exponentialMakesEqualRatiosOfEqualTurns() {
    // 20 Hz to 20.48 kHz are ten octaves: a tenth of the sweep is one of them, exactly a doubling.
    Taper taper = new Taper.Exponential(20, 20_480);
    for (int octave = 0; octave <= 10; octave++) {
      double exact = 20 * Math.scalb(1.0, octave);
      assertThat(taper.value(octave / 10.0)).isCloseTo(exact, within(exact * 1e-14));
      assertThat(taper.share(exact)).isCloseTo(octave / 10.0, within(1e-15));
    }
    // Half the sweep of 2 ms to 8 s is the geometric mean, √(0.002 · 8) = 0.12649110640673517 s.
    assertThat(new Taper.Exponential(0.002, 8).value(0.5))
        .isCloseTo(0.12649110640673517, within(1e-15));
  }

  @Test
  void analyticTapersGoThereAndBack() {
    Random random = new Random(1);
    for (int i = 0; i < 20_000; i++) {
      double share = random.nextDouble();
      double from = Math.pow(10, -6 + 8 * random.nextDouble());
      double to = from * Math.pow(10, (random.nextBoolean() ? 1 : -1) * (0.1 + 5 * share));
      for (Taper taper : List.of(new Taper.Linear(from, to), new Taper.Exponential(from, to))) {
        double value = taper.value(share);
        assertThat(taper.share(value)).isCloseTo(share, within(1e-12));
        assertThat(taper.value(taper.share(value))).isCloseTo(value, within(1e-12 * value));
      }
    }
  }

  @Test
  void endsAreMetExactly() {
    for (Taper taper :
        List.of(
            new Taper.Linear(0.1, 0.7),
            new Taper.Exponential(1e-4, 3),
            new Taper.Exponential(-8, -0.5))) {
      assertThat(taper.value(0)).isEqualTo(taper.from());
      assertThat(taper.value(1)).isEqualTo(taper.to());
      assertThat(taper.share(taper.from())).isZero();
      assertThat(taper.share(taper.to())).isEqualTo(1);
    }
  }

  @Test
  void tablesAreMonotoneMeetTheirPointsAndAreInverted() {
    Random random = new Random(2);
    for (int table = 0; table < 300; table++) {
      List<Point> points = randomTable(random);
      Taper taper = Taper.measured(points);
      double rising = Math.signum(taper.to() - taper.from());
      for (Point point : points) {
        assertThat(taper.value(point.share())).isEqualTo(point.value());
        assertThat(taper.share(point.value())).isEqualTo(point.share());
      }
      double before = taper.from();
      for (int i = 1; i <= 1000; i++) {
        double share = i / 1000.0;
        double value = taper.value(share);
        assertThat((value - before) * rising).isGreaterThanOrEqualTo(0);
        assertThat(taper.value(taper.share(value)))
            .isCloseTo(value, within(1e-9 * Math.abs(taper.to() - taper.from())));
        before = value;
      }
    }
  }

  @Test
  void aTableOfALineIsTheLine() {
    Taper line = Taper.measured(List.of(new Point(0, 1), new Point(0.3, 3.7), new Point(1, 10)));
    for (int i = 0; i <= 100; i++) {
      double share = i / 100.0;
      assertThat(line.value(share)).isCloseTo(1 + 9 * share, within(1e-13));
    }
  }

  @Test
  void aTableOverDecadesIsInterpolatedInItsLogarithm() {
    // Three points of an exponential taper give that taper back.
    Taper exact = new Taper.Exponential(0.001, 10);
    Taper table =
        Taper.measured(
            List.of(new Point(0, 0.001), new Point(0.4, exact.value(0.4)), new Point(1, 10)));
    for (int i = 0; i <= 100; i++) {
      double share = i / 100.0;
      assertThat(table.value(share)).isCloseTo(exact.value(share), within(1e-12 * 10));
    }
  }

  @Test
  void refusesWhatIsNoTaper() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Taper.Linear(1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Taper.Linear(Double.NaN, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Taper.Exponential(0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Taper.Exponential(-1, 1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Taper.measured(List.of(new Point(0, 1), new Point(0.9, 2))));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> Taper.measured(List.of(new Point(0, 1), new Point(0.5, 1), new Point(1, 2))));
    assertThatIllegalArgumentException().isThrownBy(() -> new Taper.Linear(0, 1).value(1.01));
    assertThatIllegalArgumentException().isThrownBy(() -> new Taper.Linear(0, 1).share(-0.01));
  }

  private static List<Point> randomTable(Random random) {
    int size = 2 + random.nextInt(12);
    boolean falls = random.nextBoolean();
    boolean decades = random.nextBoolean();
    List<Point> points = new ArrayList<>();
    double share = 0;
    double height = decades ? -3 : random.nextDouble() * 10 - 5;
    for (int i = 0; i < size; i++) {
      double value = (falls ? -1 : 1) * height;
      points.add(new Point(i == size - 1 ? 1 : share, decades ? Math.pow(10, value) : value));
      share += (1 - share) * (0.05 + 0.5 * random.nextDouble());
      height += Math.pow(10, -3 + 3.5 * random.nextDouble());
    }
    return points;
  }
}
