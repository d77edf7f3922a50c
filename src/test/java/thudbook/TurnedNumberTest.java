package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import thudbook.equipment.Dialling;
import thudbook.equipment.Rack;
import thudbook.patching.DialledSetting;
import thudbook.patching.DialledSettings;
import thudbook.patching.SoundValue;
import thudbook.patching.TurnedNumber;
import thudbook.predictions.Parameter;
import thudbook.predictions.Sound;
import thudbook.quantities.Dimension;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;

/** Property test: a knob of the samples turns a sound just as it turns the recipe behind it. */
class TurnedNumberTest {
  private final Samples samples;
  private final Rack rack;

  TurnedNumberTest() throws IOException {
    samples = new Samples();
    rack = new Rack(samples.modules);
  }

  @Test
  void aSoundIsTurnedAsItsRecipeIs() {
    int turned = 0;
    for (String slug : samples.sounds.keySet()) {
      Recipe recipe = samples.recipes.get(slug);
      for (DialledSetting knob : DialledSettings.of(recipe, rack).tied()) {
        Dialling dialling = knob.dialling();
        String pointer = knob.setting().forValue();
        Dimension dimension = dialling.knob().dimension();
        for (double share : new double[] {0.03, 0.2, 0.5, 0.77, 1}) {
          double value = dialling.value(share);
          SoundValue written = SoundValue.at(recipe, pointer, dimension).orElseThrow();
          Optional<Sound> expected =
              possible(
                  () ->
                      Resolution.of(written.with(value), samples.studio).complete().orElseThrow());
          Sound sound = samples.sounds.get(slug);
          assertThat(possible(() -> new TurnedNumber(sound, pointer, dimension).at(value)))
              .as("%s %s at %s", slug, pointer, value)
              .isEqualTo(expected);
          turned++;
        }
      }
    }
    assertThat(turned).isGreaterThan(500);
  }

  @Test
  void everyParameterOfEverySampleIsReadWhereItWasSet() {
    samples.sounds.forEach(
        (slug, sound) -> {
          for (Parameter parameter : Parameter.of(sound)) {
            assertThat(parameter.bounds().admits(parameter.value()))
                .as(slug + " " + parameter.address())
                .isTrue();
            for (double value :
                new double[] {parameter.bounds().least(), parameter.bounds().most()}) {
              Sound turned = parameter.with(value);
              assertThat(Parameter.at(turned, parameter.address()).orElseThrow().value())
                  .as(slug + " " + parameter.address())
                  .isEqualTo(value);
            }
          }
        });
  }

  /** A knob may go further than a sound can be described. */
  private static Optional<Sound> possible(Supplier<Sound> sound) {
    try {
      return Optional.of(sound.get());
    } catch (IllegalArgumentException beyondTheModel) {
      return Optional.empty();
    }
  }
}
