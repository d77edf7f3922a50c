package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.quantities.Frequency;
import thudbook.quantities.Range;
import thudbook.sources.Modulator;
import thudbook.sources.Source;
import thudbook.yardstick.RandomSounds;
import thudbook.yardstick.WorkedChannels;

/** Property test: a number of a sound is read where it was set, and nothing else moves. */
class ParameterTest {
  private static final int SOUNDS_PER_SEED = 60;

  @ParameterizedTest
  @ValueSource(longs = {1301, 1302})
  void whatIsSetIsRead(long seed) {
    eachParameter(
        seed,
        (sound, parameter) -> {
          for (double wanted : inside(parameter.bounds())) {
            Sound turned = parameter.with(wanted);
            String what = parameter.address() + " to " + wanted + " of " + sound;
            assertThat(Parameter.at(turned, parameter.address()).orElseThrow().value())
                .as(what)
                .isEqualTo(wanted);
            assertOthersStay(what, sound, turned, parameter.address());
          }
        });
  }

  @ParameterizedTest
  @ValueSource(longs = {1303, 1304})
  void theOldNumberMakesTheOldSound(long seed) {
    eachParameter(
        seed,
        (sound, parameter) -> {
          assertThat(parameter.bounds().admits(parameter.value()))
              .as(parameter.address() + " of " + sound)
              .isTrue();
          double other = inside(parameter.bounds()).get(2);
          Sound there = parameter.with(other);
          Sound back =
              Parameter.at(there, parameter.address()).orElseThrow().with(parameter.value());
          // A modulator that was given one way is then given the other way.
          if (!Set.of("source.modulator", "source.ratio").contains(parameter.address())) {
            assertThat(back).isEqualTo(sound);
          }
        });
  }

  @ParameterizedTest
  @ValueSource(longs = {1305, 1306})
  void whatIsBeyondItsBoundsIsRefused(long seed) {
    eachParameter(
        seed,
        (sound, parameter) -> {
          Range bounds = parameter.bounds();
          double below = bounds.least() - Math.max(1e-9, Math.abs(bounds.least()) * 1e-6);
          double above = bounds.most() + Math.max(1e-9, Math.abs(bounds.most()) * 1e-6);
          for (double beyond : new double[] {below, above, Double.NaN}) {
            assertThatThrownBy(() -> parameter.with(beyond))
                .as(parameter.address() + " of " + sound)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(parameter.address());
          }
        });
  }

  @Test
  void everyNumberOfASoundHasAnAddress() {
    Source pair =
        new Source.FrequencyModulation(
            Frequency.ofHertz(110),
            new Modulator.Ratio(1.5),
            Source.Wave.SINE,
            2,
            Source.Phase.LOCKED,
            5);
    Rise rise = new Rise(0.01, Curve.EXPONENTIAL, 1.3);
    Envelope held =
        new Envelope.AttackDecaySustainRelease(
            7, rise, Fall.exponential(0.1), 0.5, 0.3, new Fall(0.2, Curve.LINEAR, 0.01));
    Stage gate = new Stage(WorkedChannels.of("plain"), Drive.UNITY, null);
    Stage second = new Stage(WorkedChannels.of("quick"), Drive.UNITY, new Envelope.Pulse(5, 0.01));
    Strikes strikes = new Strikes.Every(0.5, 3, Strikes.Restart.LEVEL);
    Sound sound = new Sound(pair, held, strikes, List.of(gate, second), 20);
    assertThat(Parameter.of(sound))
        .extracting(Parameter::address)
        .containsExactly(
            "source.carrier",
            "source.modulator",
            "source.ratio",
            "source.index",
            "source.level",
            "envelope.peak",
            "envelope.attack",
            "envelope.overshoot",
            "envelope.decay",
            "envelope.decaysTo",
            "envelope.sustain",
            "envelope.length",
            "envelope.release",
            "strikes.every",
            "stages.0.gain",
            "stages.0.offset",
            "stages.0.controlRail",
            "stages.0.channel.threshold",
            "stages.0.channel.ceiling",
            "stages.0.channel.opening",
            "stages.0.channel.release.0.time",
            "stages.0.channel.release.1.time",
            "stages.0.channel.cutoff.closed",
            "stages.0.channel.cutoff.open",
            "stages.0.channel.exponents.cutoff",
            "stages.0.channel.exponents.level",
            "stages.0.channel.saturation",
            "stages.0.channel.leak",
            "stages.0.channel.bleed",
            "stages.0.channel.outputRail",
            "stages.1.gain",
            "stages.1.offset",
            "stages.1.controlRail",
            "stages.1.envelope.peak",
            "stages.1.envelope.length",
            "stages.1.channel.threshold",
            "stages.1.channel.ceiling",
            "stages.1.channel.opening",
            "stages.1.channel.release.0.time",
            "stages.1.channel.release.1.time",
            "stages.1.channel.spread",
            "stages.1.channel.cutoff.closed",
            "stages.1.channel.cutoff.open",
            "stages.1.channel.exponents.cutoff",
            "stages.1.channel.exponents.level",
            "stages.1.channel.saturation",
            "stages.1.channel.leak",
            "stages.1.channel.bleed",
            "stages.1.channel.outputRail",
            "output.coupling");
  }

  @Test
  void whatASoundDoesNotHaveHasNoParameter() {
    Sound sound = RandomSounds.usual(1307).next();
    assertThat(Parameter.at(sound, "stages.7.gain")).isEqualTo(Optional.empty());
    assertThat(Parameter.at(sound, "envelope.colour")).isEqualTo(Optional.empty());
  }

  private interface Check {
    void of(Sound sound, Parameter parameter);
  }

  private static void eachParameter(long seed, Check check) {
    RandomSounds sounds = RandomSounds.usual(seed);
    for (int i = 0; i < SOUNDS_PER_SEED; i++) {
      Sound sound = sounds.next();
      List<Parameter> parameters = Parameter.of(sound);
      assertThat(parameters).extracting(Parameter::address).doesNotHaveDuplicates();
      for (Parameter parameter : parameters) {
        check.of(sound, parameter);
      }
    }
  }

  /** Both ends, and places between, evenly on the scale that the bounds allow. */
  private static List<Double> inside(Range bounds) {
    double least = bounds.least();
    double most = bounds.most();
    return List.of(least, least + (most - least) * 1e-4, (least + most) / 2, most);
  }

  /** Every part that the address does not lie in is the same object. */
  private static void assertOthersStay(String what, Sound sound, Sound turned, String address) {
    Set<String> untouched = new HashSet<>(Set.of("source", "envelope", "strikes"));
    untouched.removeIf(address.startsWith("stages") ? part -> false : address::startsWith);
    if (untouched.contains("source")) {
      assertThat(turned.source()).as(what).isSameAs(sound.source());
    }
    if (untouched.contains("envelope")) {
      assertThat(turned.envelope()).as(what).isSameAs(sound.envelope());
    }
    if (untouched.contains("strikes")) {
      assertThat(turned.strikes()).as(what).isSameAs(sound.strikes());
    }
    for (int i = 0; i < sound.stages().size(); i++) {
      Stage before = sound.stages().get(i);
      Stage after = turned.stages().get(i);
      if (!address.startsWith("stages." + i + ".")) {
        assertThat(after).as(what).isSameAs(before);
      } else if (!address.contains(".channel.")) {
        assertThat(after.channel()).as(what).isSameAs(before.channel());
      } else {
        assertThat(after.drive()).as(what).isSameAs(before.drive());
      }
    }
    if (!address.equals("output.coupling")) {
      assertThat(turned.couplingHertz()).as(what).isEqualTo(sound.couplingHertz());
    }
  }
}
