package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.quantities.Frequency;
import thudbook.sources.Modulator;
import thudbook.sources.Source;
import thudbook.yardstick.RandomSounds;
import thudbook.yardstick.WorkedChannels;

/** Property test: what may be changed about a sound without changing what is predicted. */
class SymmetriesTest {
  private static final Source NOISE = new Source.Noise(Source.Colour.WHITE, 20, 20_000, 5);

  /** Those that are counted from the strike; the others are differences of two. */
  private static final List<Metric> MOMENTS =
      List.of(Metric.PEAK_TIME, Metric.DEAD_TIME, Metric.ONSET, Metric.LET_GO);

  @ParameterizedTest
  @ValueSource(longs = {501, 502, 503})
  void aRecordedVoltageThatComesLaterShiftsEveryTime(long seed) {
    Random random = new Random(seed);
    double delay = 0.25;
    for (int i = 0; i < 50; i++) {
      List<Envelope.Sample> samples = new ArrayList<>(List.of(new Envelope.Sample(0, 0)));
      double time = 0;
      for (int k = 0; k < 12; k++) {
        time += 1e-3 + 0.02 * random.nextDouble();
        samples.add(new Envelope.Sample(time, k == 11 ? 0 : 9 * random.nextDouble()));
      }
      List<Envelope.Sample> later = new ArrayList<>(List.of(new Envelope.Sample(0, 0)));
      samples.forEach(s -> later.add(new Envelope.Sample(s.seconds() + delay, s.volts())));
      Metrics early = Predictor.predict(recorded(samples)).metrics();
      Metrics late = Predictor.predict(recorded(later)).metrics();
      String what = "seed " + seed + " voltage " + i + " ";
      assertThat(early.values()).containsKeys(Metric.ONSET, Metric.RELEASE_60, Metric.LET_GO);
      assertThat(late.values()).containsOnlyKeys(early.values().keySet());
      early
          .values()
          .forEach(
              (metric, value) ->
                  assertThat(late.get(metric).orElseThrow())
                      .as(what + metric.key())
                      .isEqualTo(
                          value + (MOMENTS.contains(metric) ? delay : 0),
                          within(metric == Metric.PEAK_TIME ? 1e-5 : 1e-7 + 1e-9 * value)));
    }
  }

  private static Sound recorded(List<Envelope.Sample> samples) {
    Stage stage = new Stage(WorkedChannels.of("quick"), Drive.UNITY, null);
    return new Sound(NOISE, new Envelope.Recorded(samples), null, List.of(stage), 0);
  }

  @Tag("long")
  @ParameterizedTest
  @ValueSource(longs = {511, 512})
  void peakAndGainScaledInverselyChangeNothing(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    int compared = 0;
    for (int i = 0; i < 200; i++) {
      Sound sound = sounds.next();
      boolean small = sound.stages().stream().allMatch(s -> Math.abs(s.drive().gain()) <= 1);
      if (sound.envelope() instanceof Envelope.Struck) {
        // By a power of two: every number is then the same to the last digit.
        Sound scaled = scaled(sound, small ? 0.5 : 2);
        assertThat(Predictor.predict(scaled))
            .as("seed " + seed + " sound " + i)
            .isEqualTo(Predictor.predict(sound));
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(100);
  }

  private static Sound scaled(Sound sound, double factor) {
    List<Stage> stages =
        sound.stages().stream()
            .map(
                stage -> {
                  Drive drive = stage.drive();
                  return new Stage(
                      stage.channel(),
                      new Drive(drive.gain() / factor, drive.offsetVolts(), drive.railVolts()),
                      stage.envelope() == null ? null : scaled(stage.envelope(), factor));
                })
            .toList();
    return new Sound(
        sound.source(),
        scaled(sound.envelope(), factor),
        sound.strikes(),
        stages,
        sound.couplingHertz());
  }

  private static Envelope scaled(Envelope envelope, double factor) {
    if (envelope instanceof Envelope.Pulse pulse) {
      return new Envelope.Pulse(pulse.peakVolts() * factor, pulse.lengthSeconds());
    } else if (envelope instanceof Envelope.AttackHoldDecay shape) {
      return new Envelope.AttackHoldDecay(
          shape.peakVolts() * factor, shape.attack(), shape.holdSeconds(), shape.decay());
    }
    Envelope.AttackDecaySustainRelease shape = (Envelope.AttackDecaySustainRelease) envelope;
    return new Envelope.AttackDecaySustainRelease(
        shape.peakVolts() * factor,
        shape.attack(),
        shape.decay(),
        shape.sustain(),
        shape.lengthSeconds(),
        shape.release());
  }

  static Stream<Source> everySource() {
    Frequency hertz = Frequency.ofHertz(110);
    Stream<Source> noises =
        Stream.of(Source.Colour.values()).map(c -> new Source.Noise(c, 20, 20_000, 5));
    Stream<Source> waves =
        Stream.of(Source.Wave.values()).map(w -> new Source.Oscillator(w, hertz, 0.3, 5));
    Stream<Source> pairs =
        Stream.of(Source.Wave.SINE, Source.Wave.TRIANGLE, Source.Wave.SAWTOOTH, Source.Wave.SQUARE)
            .flatMap(
                wave ->
                    Stream.of(Source.Phase.values())
                        .map(
                            phase ->
                                new Source.FrequencyModulation(
                                    hertz, new Modulator.Ratio(1.37), wave, 3, phase, 5)));
    return Stream.of(noises, waves, pairs).flatMap(s -> s);
  }

  @ParameterizedTest
  @MethodSource("everySource")
  void anOpenAmplifierLeavesEverySourceAsItIs(Source source) {
    Channel amplifier =
        new Channel(
            "amplifier",
            Transfer.between(0, 5),
            new Cells(1e-3, List.of(new Cell(1, 1e-2, null))),
            new Response.Amplitude(new Level(-80, 2, 30)),
            new Output(0, 10));
    Envelope open =
        new Envelope.Recorded(List.of(new Envelope.Sample(0, 8), new Envelope.Sample(1, 8)));
    Stage stage = new Stage(amplifier, Drive.UNITY, null);
    Metrics metrics =
        Predictor.predict(new Sound(source, open, null, List.of(stage, stage), 0)).metrics();
    assertThat(metrics.get(Metric.PEAK_OPENNESS)).hasValue(1);
    assertThat(metrics.get(Metric.PEAK_DB).orElseThrow()).isEqualTo(0, within(1e-12));
    assertThat(metrics.get(Metric.FLOOR_DB).orElseThrow()).isEqualTo(0, within(1e-12));
  }
}
