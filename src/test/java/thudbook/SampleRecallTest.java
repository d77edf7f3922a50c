package thudbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import thudbook.equipment.Rack;
import thudbook.patching.Cabling;
import thudbook.patching.DialledSetting;
import thudbook.patching.DialledSettings;
import thudbook.patching.KnobTolerance;
import thudbook.patching.Tolerance;
import thudbook.predictions.Metric;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;

/**
 * Property of the sample library: connections and settings of every recipe are those of its rack,
 * and every position gives back the value of the sound within what the knob can be read to.
 */
class SampleRecallTest {
  private final Samples samples;
  private final Rack rack;

  SampleRecallTest() throws IOException {
    samples = new Samples();
    rack = new Rack(samples.modules);
  }

  @Test
  void everyPositionGivesBackItsValue() {
    int compared = 0;
    for (Recipe recipe : samples.recipes.values()) {
      DialledSettings settings = DialledSettings.of(recipe, rack);
      assertThat(settings.problems()).as(recipe.slug()).isEmpty();
      assertThat(settings.disagreeingShare()).as(recipe.slug()).isZero();
      for (DialledSetting tied : settings.tied()) {
        double off = Math.abs(tied.share() - tied.wantedShare().orElseThrow());
        assertThat(off)
            .as(recipe.slug() + " " + tied.name())
            .isLessThanOrEqualTo(tied.dialling().knob().toleranceShare());
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(200);
  }

  @Test
  void everyConnectionIsBetweenPortsOfTheRack() {
    for (Recipe recipe : samples.recipes.values()) {
      Cabling cabling = Cabling.of(recipe, rack);
      // A half-written one may have a stage that nothing feeds yet.
      boolean complete = samples.sounds.containsKey(recipe.slug());
      assertThat(cabling.faults())
          .as(recipe.slug())
          .allMatch(fault -> !complete && fault.place().startsWith("stages"));
      assertThat(cabling.inSignalOrder()).hasSameSizeAs(recipe.connections());
    }
  }

  @Test
  void whatIsDialledAsItCanBeReadSoundsAsMeant() {
    for (Recipe recipe : samples.recipes.values()) {
      DialledSettings settings = DialledSettings.of(recipe, rack);
      Sound rounded = Resolution.of(settings.asRounded(), samples.studio).sound();
      Prediction meant = samples.predictions.get(recipe.slug());
      if (rounded != null && meant != null) {
        double peak = Predictor.predict(rounded).metrics().get(Metric.PEAK_DB).orElseThrow();
        assertThat(peak)
            .as(recipe.slug())
            .isCloseTo(meant.metrics().get(Metric.PEAK_DB).orElseThrow(), within(1.5));
      }
    }
  }

  @Test
  void theKickIsTouchyOnItsGain() {
    DialledSettings settings = DialledSettings.of(samples.recipes.get("slack-tide-kick"), rack);
    List<KnobTolerance> tolerances = Tolerance.of(settings, samples.studio);
    KnobTolerance touchiest = Tolerance.touchiest(tolerances).orElseThrow();
    // As its notes say: "The gain is the touchy knob".
    assertThat(touchiest.knob().name()).isEqualTo("A1 gain 1");
  }
}
