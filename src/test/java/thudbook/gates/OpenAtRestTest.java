package thudbook.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Piece;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Segment;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.quantities.Frequency;
import thudbook.quantities.Refusal;
import thudbook.sources.Source;
import thudbook.yardstick.IntegratedMotion;
import thudbook.yardstick.LiteralVoltage;
import thudbook.yardstick.WorkedChannels;

/**
 * Property test: sounds whose gate is open at rest, with several cells and an exponential attack,
 * are answered. Several cells then meet their target within rounding of each other. The limits of
 * time are no figures of performance: they end a search that would not end.
 */
class OpenAtRestTest {
  private static final int SOUNDS_PER_SEED = 5_000;
  private static final Duration MOST_PER_SEED = Duration.ofMinutes(2);
  private static final Source SINE =
      new Source.Oscillator(Source.Wave.SINE, Frequency.ofHertz(110), 0.5, 5);

  @ParameterizedTest
  @ValueSource(longs = {1101, 1102, 1103, 1104})
  void everySoundIsAnswered(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < SOUNDS_PER_SEED; i++) {
      Sound sound = openAtRest(random);
      String what = "seed " + seed + " sound " + i + " " + sound;
      Prediction prediction =
          assertTimeoutPreemptively(MOST_PER_SEED, () -> Predictor.predict(sound), () -> what);
      assertThat(prediction.metrics().values().values())
          .as(what)
          .allSatisfy(value -> assertThat(value).isFinite());
    }
  }

  /** The pieces, and the integrator (Hipparchus, cut at every corner, tolerance 1e-11). */
  @Test
  void theAnswerIsWhatTheIntegratorSays() {
    Random random = new Random(1105);
    for (int i = 0; i < 150; i++) {
      Sound sound = openAtRest(random);
      Stage stage = sound.stages().get(0);
      Motion motion =
          Motion.of(ControlVoltage.of(sound.envelope(), null, stage.drive()), stage.channel());
      IntegratedMotion expected =
          new IntegratedMotion(
              new LiteralVoltage(sound.envelope(), null, stage.drive()), stage.channel(), 8, 1e-11);
      for (double t = 1e-5; t < 8; t *= 1.2) {
        assertThat(Math.abs(motion.openness(t) - expected.openness(t)))
            .as("sound %s at %s: %s", i, t, sound)
            .isLessThan(1e-8);
      }
    }
  }

  @Test
  void aSampleThatIsOpenAtRestIsAnsweredWithASlowerAttack() {
    for (double seconds = 1.7; seconds < 1.9; seconds += 0.004) {
      Sound sound = gust(seconds);
      Prediction prediction =
          assertTimeoutPreemptively(Duration.ofSeconds(60), () -> Predictor.predict(sound));
      assertThat(prediction.metrics().values().values())
          .allSatisfy(value -> assertThat(value).isFinite());
    }
  }

  @Test
  void aTargetThatHasNoEndIsRefusedInWords() {
    Channel channel = cells(List.of(new Cell(0.5, 0.1, null), new Cell(0.5, 0.2, null)), 0.01);
    Segment segment = new Segment(Segment.Kind.ATTACK, 0, 1);
    Piece unending = new Piece(0, Double.NaN, 0, 1, 0, 1, segment);
    Motion.Run run = new Motion.Run(channel, 0);
    assertThatThrownBy(() -> run.follow(new Target(unending, Target.Zone.BETWEEN)))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("This sound can't be predicted");
  }

  private static Sound openAtRest(Random random) {
    int count = 2 + random.nextInt(3);
    List<Cell> cells = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Double own = random.nextInt(3) == 0 ? time(random, 5e-4, 1) : null;
      cells.add(new Cell(1.0 / count, time(random, 5e-3, 2), own));
    }
    Channel channel = cells(cells, time(random, 5e-4, 0.1));
    Rise rise = new Rise(time(random, 1e-3, 5), Curve.EXPONENTIAL, 1.001 + 2 * random.nextDouble());
    Fall fall = Fall.exponential(time(random, 1e-2, 3));
    double peak = 1 + 6 * random.nextDouble();
    Envelope envelope =
        random.nextBoolean()
            ? new Envelope.AttackHoldDecay(peak, rise, 0, fall)
            : new Envelope.AttackDecaySustainRelease(
                peak, rise, fall, random.nextDouble(), time(random, 1e-2, 4), fall);
    // Open at rest: the offset lies between the threshold at 0 V and the ceiling at 5 V.
    Drive drive = new Drive(1, 0.05 + 4 * random.nextDouble(), 12);
    return new Sound(SINE, envelope, null, List.of(new Stage(channel, drive, null)), 0);
  }

  private static double time(Random random, double least, double most) {
    return least * Math.pow(most / least, random.nextDouble());
  }

  private static Channel cells(List<Cell> cells, double opening) {
    return new Channel(
        "open at rest",
        Transfer.between(0, 5),
        new Cells(opening, cells),
        new Response.Amplitude(new Level(-80, 1, 0)),
        new Output(0.5, 10));
  }

  /** The sample "Gust under the door", but for its attack; its channel is the plain one. */
  private static Sound gust(double attackSeconds) {
    Envelope envelope =
        new Envelope.AttackDecaySustainRelease(
            5.5,
            new Rise(attackSeconds, Curve.EXPONENTIAL, 1.5),
            new Fall(0.7, Curve.LINEAR, 0.01),
            0.4,
            2.2,
            new Fall(1.8, Curve.LINEAR, 0.01));
    Source source = new Source.Noise(Source.Colour.PINK, 120, 6000, 5);
    Stage stage = new Stage(WorkedChannels.of("plain"), new Drive(1, 0.35, 12), null);
    return new Sound(source, envelope, null, List.of(stage), 0);
  }
}
