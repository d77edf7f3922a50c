package thudbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thudbook.equipment.Dialling;
import thudbook.equipment.Rack;
import thudbook.patching.DialledSetting;
import thudbook.patching.DialledSettings;
import thudbook.patching.KnobTolerance;
import thudbook.patching.KnobTolerance.Span;
import thudbook.patching.SoundValue;
import thudbook.patching.Tolerance;
import thudbook.predictions.Metric;
import thudbook.predictions.Predictor;
import thudbook.predictions.Reach;
import thudbook.quantities.Dimension;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;

/**
 * Property: ranges of metrics within the read-back tolerance of a knob against the extremes of
 * 100,000 random samples of the model.
 */
class ToleranceTest {
  private static final int SAMPLES = 100_000;

  private final Samples samples;
  private final Rack rack;

  ToleranceTest() throws IOException {
    samples = new Samples();
    rack = new Rack(samples.modules);
  }

  @ParameterizedTest
  @CsvSource({
    // At the edge of the ceiling, and of the threshold, where metrics begin to exist.
    "slack-tide-kick, A1 gain 1",
    "the-kick-that-was-not-there, A1 gain 1",
  })
  void rangesAreThoseOfRandomSamples(String slug, String name) {
    Recipe recipe = samples.recipes.get(slug);
    KnobTolerance tolerance =
        Tolerance.of(DialledSettings.of(recipe, rack), samples.studio).stream()
            .filter(t -> t.knob().name().equals(name))
            .findFirst()
            .orElseThrow();
    Map<Metric, double[]> sampled = sampled(recipe, tolerance.knob());
    assertThat(tolerance.spans().keySet()).isEqualTo(sampled.keySet());
    sampled.forEach(
        (metric, extremes) -> {
          Span span = tolerance.spans().get(metric);
          double allowed = 0.01 * (extremes[1] - extremes[0]) + 1e-9 * Math.abs(extremes[1]);
          if (span.absentSomewhere()) {
            // Beside the place where it ceases to exist a release has no bound.
            assertThat(span.lowest()).as(metric.key()).isLessThanOrEqualTo(extremes[0] + allowed);
            assertThat(span.highest())
                .as(metric.key())
                .isGreaterThanOrEqualTo(extremes[1] - allowed);
          } else {
            assertThat(span.lowest()).as(metric.key()).isCloseTo(extremes[0], within(allowed));
            assertThat(span.highest()).as(metric.key()).isCloseTo(extremes[1], within(allowed));
          }
        });
  }

  @Test
  void aKnobThatMayCloseTheGateIsTheTouchiest() {
    Recipe recipe = samples.recipes.get("slack-tide-kick");
    Recipe faint = SoundValue.at(recipe, "stages.0.gain", dimension()).orElseThrow().with(0.36);
    List<KnobTolerance> tolerances =
        Tolerance.of(DialledSettings.of(dialled(faint), rack), samples.studio);
    KnobTolerance gain = Tolerance.touchiest(tolerances).orElseThrow();
    assertThat(gain.knob().name()).isEqualTo("A1 gain 1");
    assertThat(gain.reaches()).contains(Reach.SILENT, Reach.PARTIAL);
    assertThat(gain.touchiness()).isInfinite();
  }

  private static Dimension dimension() {
    return Dimension.NUMBER;
  }

  /** The same recipe with every tied knob where its value stands. */
  private Recipe dialled(Recipe recipe) {
    List<Recipe.Setting> settings =
        DialledSettings.of(recipe, rack).settings().stream()
            .map(
                s ->
                    s.toDial()
                        .map(
                            at ->
                                new Recipe.Setting(
                                    s.setting().module(),
                                    s.setting().control(),
                                    at,
                                    s.setting().forValue()))
                        .orElse(s.setting()))
            .toList();
    return recipe.withSettings(settings);
  }

  private Map<Metric, double[]> sampled(Recipe recipe, DialledSetting knob) {
    Random random = new Random(20261125);
    Dialling dialling = knob.dialling();
    double half = dialling.knob().toleranceShare();
    double least = Math.max(0, knob.share() - half);
    double most = Math.min(1, knob.share() + half);
    SoundValue value =
        SoundValue.at(recipe, knob.setting().forValue(), dialling.knob().dimension()).orElseThrow();
    Map<Metric, double[]> extremes = new EnumMap<>(Metric.class);
    for (int i = 0; i < SAMPLES; i++) {
      double share = least + (most - least) * random.nextDouble();
      var sound =
          Resolution.of(value.with(dialling.value(share)), samples.studio).complete().orElseThrow();
      var metrics = Predictor.predict(sound).metrics();
      for (Metric metric : Metric.values()) {
        OptionalDouble one = metrics.get(metric);
        if (one.isPresent()) {
          double number = one.getAsDouble();
          double[] range = extremes.computeIfAbsent(metric, m -> new double[] {number, number});
          range[0] = Math.min(range[0], number);
          range[1] = Math.max(range[1], number);
        }
      }
    }
    return extremes;
  }
}
