package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import thudbook.predictions.Metric;
import thudbook.predictions.Reach;

/**
 * Property: the samples are predicted, and the numbers bear out what their notes say. Bounds come
 * from the notes and from the settings, not from what the program once answered.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SampleNotesTest {
  private final Samples samples;

  SampleNotesTest() throws IOException {
    samples = new Samples();
  }

  @Test
  void numbersAreFinite() {
    samples.predictions.forEach(
        (slug, prediction) ->
            prediction
                .metrics()
                .values()
                .forEach((metric, value) -> assertThat(value).as(slug + " " + metric).isFinite()));
  }

  @Test
  void theNotesAreRight() {
    assertThat(reach("the-kick-that-was-not-there")).isEqualTo(Reach.SILENT);
    assertThat(reach("foghorn-answer")).isEqualTo(Reach.PARTIAL);
    assertThat(reach("lens-tick")).isEqualTo(Reach.BRIEF);
    assertThat(reach("spring-tide-kick")).isEqualTo(Reach.OPEN);
    assertThat(reach("gust-under-the-door")).isEqualTo(Reach.IDLE_OPEN);
    assertThat(metric("oil-can", Metric.PEAK_OPENNESS)).isBetween(0.6, 0.73);
    assertThat(metric("lens-tick", Metric.PEAK_OPENNESS)).isBetween(0.6, 0.73);
    assertThat(metric("rain-on-the-lens", Metric.PEAK_OPENNESS)).isLessThan(0.5);
    assertThat(metric("iron-stairs", Metric.LET_GO)).isLessThan(0.02);
    assertThat(metric("spring-tide-kick", Metric.THUMP_PEAK)).isGreaterThan(1);
    assertThat(metric("spray-snare", Metric.THUMP_PEAK)).isGreaterThan(1.4);
    assertThat(metric("gale-tom-low", Metric.RELEASE_40)).isGreaterThan(1);
    assertThat(metric("gale-tom-high", Metric.BUILD_UP)).isBetween(0.05, 0.15);
    assertThat(metric("lens-rim", Metric.BUILD_UP)).isPositive();
    assertThat(metric("thunder-roll", Metric.BUILD_UP)).isGreaterThan(6);
    assertThat(metric("bell-buoy", Metric.RELEASE_20)).isLessThan(1);
    assertThat(metric("bell-buoy-held", Metric.RELEASE_20))
        .isGreaterThan(3 * metric("bell-buoy", Metric.RELEASE_20));
    assertThat(metric("anchor-clank", Metric.FLAT_TIME)).isBetween(0.075, 0.09);
    assertThat(metric("telegraph-key", Metric.RELEASE_60)).isLessThan(0.001);
    assertThat(samples.predictions.get("ratchet").strikes().stream().limit(13))
        .allMatch(strike -> Boolean.TRUE.equals(strike.separated()));
  }

  private Reach reach(String slug) {
    return samples.predictions.get(slug).metrics().reach();
  }

  private double metric(String slug, Metric metric) {
    return samples.predictions.get(slug).metrics().get(metric).orElseThrow();
  }
}
