package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Strikes;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;
import thudbook.gates.Response;
import thudbook.predictions.Reach;
import thudbook.predictions.Sound;
import thudbook.quantities.Frequency;
import thudbook.sources.Modulator;
import thudbook.sources.Source;

/** Property: together the samples show every kind of thing that a recipe can be made of. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SampleCoverageTest {
  private final Samples samples;

  SampleCoverageTest() throws IOException {
    samples = new Samples();
  }

  @Test
  void everySourceIsShown() {
    List<Source> sources = samples.sounds.values().stream().map(Sound::source).toList();
    assertThat(some(sources, Source.Noise.class, Source.Noise::colour))
        .isEqualTo(EnumSet.allOf(Source.Colour.class));
    assertThat(some(sources, Source.Oscillator.class, Source.Oscillator::wave))
        .isEqualTo(EnumSet.allOf(Source.Wave.class));
    assertThat(some(sources, Source.FrequencyModulation.class, Source.FrequencyModulation::wave))
        .isEqualTo(EnumSet.complementOf(EnumSet.of(Source.Wave.PULSE)));
    assertThat(some(sources, Source.FrequencyModulation.class, Source.FrequencyModulation::phase))
        .isEqualTo(EnumSet.allOf(Source.Phase.class));
    assertThat(
            some(
                sources, Source.FrequencyModulation.class, source -> source.modulator().getClass()))
        .isEqualTo(Set.of(Modulator.Ratio.class, Modulator.Absolute.class));
    assertThat(
            some(sources, Source.FrequencyModulation.class, source -> source.carrier().getClass()))
        .hasSameSizeAs(Frequency.class.getPermittedSubclasses());
  }

  @Test
  void everyEnvelopeIsShown() {
    List<Envelope> envelopes = new ArrayList<>();
    samples.sounds.values().forEach(sound -> envelopes.add(sound.envelope()));
    samples
        .stages()
        .forEach(stage -> Optional.ofNullable(stage.envelope()).ifPresent(envelopes::add));
    assertThat(some(envelopes, Envelope.class, Object::getClass))
        .isEqualTo(
            Set.of(
                Envelope.Pulse.class,
                Envelope.AttackHoldDecay.class,
                Envelope.AttackDecaySustainRelease.class,
                Envelope.Recorded.class));
    assertThat(some(envelopes, Envelope.AttackHoldDecay.class, e -> e.attack().curve()))
        .isEqualTo(EnumSet.allOf(Curve.class));
    assertThat(some(envelopes, Envelope.AttackHoldDecay.class, e -> e.decay().curve()))
        .isEqualTo(EnumSet.allOf(Curve.class));
    assertThat(some(envelopes, Envelope.AttackDecaySustainRelease.class, e -> e.release().curve()))
        .isEqualTo(EnumSet.allOf(Curve.class));
    assertThat(some(envelopes, Envelope.AttackHoldDecay.class, e -> e.decay().decaysTo()))
        .contains(0.01, 0.001, 0.368);
    assertThat(samples.stages()).anyMatch(stage -> stage.envelope() != null);
  }

  @Test
  void everyPatternOfStrikesIsShown() {
    List<Strikes> strikes =
        samples.sounds.values().stream()
            .flatMap(sound -> Optional.ofNullable(sound.strikes()).stream())
            .toList();
    assertThat(some(strikes, Strikes.class, Object::getClass))
        .isEqualTo(Set.of(Strikes.Every.class, Strikes.Tempo.class, Strikes.At.class));
    assertThat(some(strikes, Strikes.class, Strikes::restart))
        .isEqualTo(EnumSet.allOf(Strikes.Restart.class));
    assertThat(samples.sounds.values()).anyMatch(sound -> sound.strikes() == null);
  }

  @Test
  void everyUseOfGatesIsShown() {
    assertThat(samples.stages().stream().map(stage -> stage.channel().response().kind()))
        .containsAll(EnumSet.allOf(Response.Kind.class));
    assertThat(samples.sounds.values().stream().map(sound -> sound.stages().size()))
        .contains(1, 2, 3);
    assertThat(samples.stages()).anyMatch(stage -> stage.drive().gain() < 0);
    assertThat(samples.stages()).anyMatch(stage -> stage.drive().offsetVolts() > 0);
    assertThat(samples.stages()).anyMatch(stage -> stage.drive().offsetVolts() < 0);
    assertThat(samples.sounds.values()).anyMatch(sound -> sound.couplingHertz() > 0);
    assertThat(samples.gates.values()).anyMatch(gate -> gate.caution() == Gate.Caution.TUBE);
    assertThat(
            samples.gates.values().stream()
                .flatMap(gate -> gate.channels().stream())
                .map(StudioChannel::channel))
        .anyMatch(channel -> channel.cells().list().size() == 4)
        .anyMatch(
            channel -> channel.cells().list().stream().anyMatch(c -> c.openingSeconds() != null))
        .anyMatch(channel -> channel.response().filter().filter(f -> f.spread() == 20).isPresent())
        .anyMatch(
            channel -> channel.response().level().filter(l -> l.saturation() >= 100).isPresent())
        .anyMatch(channel -> channel.output().bleedVolts() < 0)
        .anyMatch(channel -> channel.transfer().knots().size() > 6);
  }

  @Test
  void everyReachIsShown() {
    assertThat(samples.predictions.values().stream().map(p -> p.metrics().reach()))
        .containsAll(EnumSet.allOf(Reach.class));
  }

  /** What a function says of all things of one type. */
  private static <T, R> Set<R> some(
      List<? super T> things, Class<T> type, Function<? super T, ? extends R> of) {
    return things.stream()
        .filter(type::isInstance)
        .map(type::cast)
        .map(of)
        .collect(Collectors.toSet());
  }
}
