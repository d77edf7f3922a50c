package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Strikes;
import thudbook.yardstick.ChannelBuilder;

/**
 * Property: roots and extrema of functions whose roots and extrema are known (sine, cosine,
 * parabolas), grids, and what records of predictions refuse.
 */
class SearchesTest {
  @Test
  void rootsAreFoundToTheLastDigits() {
    assertThat(Roots.between(1, 2, Math::cos)).isCloseTo(Math.PI / 2, within(1e-12));
    assertThat(Roots.between(3, 4, Math::sin)).isCloseTo(Math.PI, within(1e-12));
    assertThat(Roots.between(0, 2, x -> 1 - x * x)).isCloseTo(1, within(1e-12));
  }

  @Test
  void rootsAtEndsAndNowhere() {
    assertThat(Roots.between(2, 5, x -> x - 2)).isEqualTo(2);
    assertThat(Roots.between(2, 5, x -> x - 5)).isEqualTo(5);
    assertThat(Roots.between(2, 5, x -> x)).isEqualTo(2);
    assertThat(Roots.between(2, 5, x -> x - 9)).isEqualTo(5);
    assertThat(Roots.between(2, 5, x -> -x)).isEqualTo(2);
    assertThat(Roots.between(3, 3, x -> x - 9)).isEqualTo(3);
    assertThat(Roots.between(4, 3, x -> x - 3.5)).isEqualTo(4);
  }

  @Test
  void maximaAreFoundWhereverTheyLie() {
    for (double place : new double[] {0.01, 0.3, 0.5, 0.77, 0.999}) {
      assertThat(Roots.maximum(0, 1, x -> -(x - place) * (x - place)))
          .isCloseTo(place, within(2e-8));
    }
    assertThat(Roots.maximum(0, 1, x -> x)).isCloseTo(1, within(1e-8));
    assertThat(Roots.maximum(0, 1, x -> -x)).isCloseTo(0, within(1e-8));
  }

  @Test
  void theLargestValueIsBetweenThePlacesOfAGrid() {
    double[] grid = {0, 1, 2, 3};
    for (double place : new double[] {0.2, 0.5, 1.3, 1.9, 2.5, 2.9}) {
      assertThat(Scan.largest(grid, x -> 7 - (x - place) * (x - place)))
          .isCloseTo(7, within(1e-15));
    }
    assertThat(Scan.largest(grid, x -> x)).isEqualTo(3);
    assertThat(Scan.largest(grid, x -> -x)).isEqualTo(0);
    assertThat(Scan.largest(grid, x -> Math.sin(x))).isCloseTo(1, within(1e-15));
    // Just inside an edge.
    assertThat(Scan.largest(grid, x -> 7 - Math.abs(x - 2.999))).isCloseTo(7, within(1e-7));
    assertThat(Scan.largest(grid, x -> 7 - Math.abs(x - 0.001))).isCloseTo(7, within(1e-7));
  }

  @Test
  void gridsAreRefinedAndGrow() {
    assertThat(Scan.refine(new double[] {0, 1, 3}, 2)).containsExactly(0, 0.5, 1, 2, 3);
    assertThat(Scan.refine(new double[] {0, 4}, 1)).containsExactly(0, 4);
    assertThat(Scan.growing(10, 1, 2)).containsExactly(0, 1, 2, 4, 8, 10);
    assertThat(Scan.growing(8, 1, 2)).containsExactly(0, 1, 2, 4, 8);
    assertThat(Scan.growing(0.5, 1, 2)).containsExactly(0, 0.5);
  }

  @Test
  void metricsAreFiniteAndNeverMinusZero() {
    Metrics metrics = new Metrics(Map.of(Metric.HOLD, -0.0), Reach.OPEN, Set.of(Metric.HOLD));
    assertThat(1 / metrics.get(Metric.HOLD).orElseThrow()).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(metrics.get(Metric.ATTACK)).isEmpty();
    assertThat(metrics.envelopeOnly()).containsExactly(Metric.HOLD);
    for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new Metrics(Map.of(Metric.HOLD, bad), Reach.OPEN, Set.of()))
          .withMessageContaining("hold");
    }
  }

  @Test
  void aSmallShapeHas48Points() {
    assertThat(new SmallShape(Collections.nCopies(48, -1.0)).levelsDb()).hasSize(48);
    for (int count : new int[] {0, 47, 49}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new SmallShape(Collections.nCopies(count, -1.0)));
    }
  }

  @Test
  void soundsHaveOneToFourStagesAndACoupling() {
    Envelope pulse = new Envelope.Pulse(5, 0.01);
    Envelope recorded =
        new Envelope.Recorded(List.of(new Envelope.Sample(0, 1), new Envelope.Sample(1, 0)));
    Stage stage = new Stage(ChannelBuilder.amplifier().build(), Drive.UNITY, null);
    Stage own = new Stage(ChannelBuilder.amplifier().build(), Drive.UNITY, recorded);
    Strikes strikes = new Strikes.Every(1, 2, Strikes.Restart.LEVEL);
    Sound most = sound(pulse, null, Collections.nCopies(4, stage), 1000);
    assertThat(most.envelopeOf(3)).isEqualTo(pulse);
    assertThat(sound(pulse, null, List.of(stage, own), 0).envelopeOf(1)).isEqualTo(recorded);
    refused("stages", () -> sound(pulse, null, List.of(), 0));
    refused("stages", () -> sound(pulse, null, Collections.nCopies(5, stage), 0));
    refused("coupling", () -> sound(pulse, null, List.of(stage), 1001));
    refused("coupling", () -> sound(pulse, null, List.of(stage), -1));
    refused("struck", () -> sound(recorded, strikes, List.of(stage), 0));
    refused("struck", () -> sound(pulse, strikes, List.of(stage, own), 0));
    assertThat(sound(pulse, strikes, List.of(stage), 0).strikes()).isEqualTo(strikes);
  }

  private static void refused(String words, ThrowingCallable c) {
    assertThatIllegalArgumentException().isThrownBy(c).withMessageContaining(words);
  }

  private static Sound sound(
      Envelope envelope, Strikes strikes, List<Stage> stages, double coupling) {
    return new Sound(OneCellTest.sine(100), envelope, strikes, stages, coupling);
  }
}
