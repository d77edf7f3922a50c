package thudbook.pages.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import thudbook.library.Quantity;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Reach;

/** Property: what is said of two recipes follows from their numbers, and turns round with them. */
class AlikeWordsTest {
  private static final Metrics KICK =
      metrics(
          Reach.OPEN,
          Map.of(
              Metric.ATTACK, 0.002,
              Metric.HOLD, 0.020,
              Metric.RELEASE_40, 0.300,
              Metric.BRIGHTNESS_PEAK, 800.0,
              Metric.PEAK_DB, -6.0,
              Metric.THUMP_PEAK, 0.5));

  @Test
  void differencesAreSaidFromTheFirst() {
    Metrics other =
        with(
            KICK,
            Map.of(
                Metric.HOLD, 0.032,
                Metric.BRIGHTNESS_PEAK, 600.0,
                Metric.PEAK_DB, -3.0,
                Metric.THUMP_PEAK, 0.3));
    assertThat(AlikeWords.heard(KICK, other))
        .containsExactly(
            "12\u00a0ms more hold", "darker", "3\u00a0dB louder", "0.2\u00a0V less thump");
    assertThat(AlikeWords.heard(other, KICK))
        .containsExactly(
            "12\u00a0ms less hold", "brighter", "3\u00a0dB quieter", "0.2\u00a0V more thump");
  }

  @Test
  void whatNobodyNoticesIsLeftOut() {
    assertThat(AlikeWords.heard(KICK, KICK)).isEmpty();
    Metrics close =
        with(
            KICK, Map.of(Metric.HOLD, 0.0203, Metric.PEAK_DB, -6.3, Metric.BRIGHTNESS_PEAK, 830.0));
    assertThat(AlikeWords.heard(KICK, close)).isEmpty();
  }

  @Test
  void anOctaveIsMuch() {
    assertThat(AlikeWords.heard(KICK, with(KICK, Map.of(Metric.BRIGHTNESS_PEAK, 1700.0))))
        .containsExactly("much brighter");
    assertThat(AlikeWords.heard(KICK, with(KICK, Map.of(Metric.BRIGHTNESS_PEAK, 390.0))))
        .containsExactly("much darker");
  }

  @Test
  void whatOnlyOneHasIsSaidAsItIs() {
    Map<Metric, Double> fewer = new EnumMap<>(KICK.values());
    fewer.remove(Metric.HOLD);
    Metrics droning = metrics(Reach.IDLE_OPEN, fewer);
    assertThat(AlikeWords.heard(KICK, droning)).containsExactly("no hold", "open at rest");
    assertThat(AlikeWords.heard(droning, KICK)).containsExactly("hold 20\u00a0ms", "opens fully");
    assertThat(AlikeWords.heard(KICK, null)).containsExactly("no prediction yet");
    assertThat(AlikeWords.heard(null, KICK)).isEmpty();
  }

  @Test
  void settingsAreSaidWithBothValues() {
    Map<Quantity, Double> own = Map.of(Quantity.CARRIER, 55.0, Quantity.PEAK, 7.0);
    Map<Quantity, Double> other =
        Map.of(Quantity.CARRIER, 110.0, Quantity.PEAK, 7.0, Quantity.INDEX, 0.8);
    assertThat(AlikeWords.set(own, other))
        .containsExactly(
            "carrier or frequency 110\u00a0Hz instead of 55\u00a0Hz", "modulation index 0.8");
    assertThat(AlikeWords.set(other, own))
        .containsExactly(
            "carrier or frequency 55\u00a0Hz instead of 110\u00a0Hz", "no modulation index");
  }

  @Test
  void theNearerTheStrongerTheWord() {
    assertThat(List.of(0.0, 2.0, 4.0, 8.0, 30.0))
        .extracting(AlikeWords::distance)
        .doesNotHaveDuplicates()
        .startsWith("as good as the same")
        .endsWith("of another kind");
  }

  private static Metrics metrics(Reach reach, Map<Metric, Double> values) {
    return new Metrics(values, reach, Set.of());
  }

  private static Metrics with(Metrics metrics, Map<Metric, Double> changed) {
    Map<Metric, Double> values = new EnumMap<>(metrics.values());
    values.putAll(changed);
    return metrics(metrics.reach(), values);
  }
}
