package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.quantities.Frequency;
import thudbook.sources.Source;

/**
 * Reference test: the thump of two gates whose bleeds are opposed, against time stepped in 4 µs,
 * with target, cells and offset written down here as they are defined.
 */
class OpposedBleedsTest {
  private static final double STEP_SECONDS = 4e-6;
  private static final double THRESHOLD_VOLTS = 0.5;
  private static final double CEILING_VOLTS = 5;
  private static final Source SINE =
      new Source.Oscillator(Source.Wave.SINE, Frequency.ofHertz(55), 0.5, 5);

  @ParameterizedTest
  @ValueSource(longs = {1201, 1202, 1203, 1204})
  void twoHundredPairsAgreeWithFineStepping(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 50; i++) {
      double sign = random.nextBoolean() ? 1 : -1;
      Channel first = channel(random, sign * uniform(random, 0.3, 2));
      Channel second = channel(random, -sign * uniform(random, 0.3, 2));
      Envelope.AttackHoldDecay envelope =
          new Envelope.AttackHoldDecay(
              uniform(random, 3, 9),
              Rise.linear(random.nextBoolean() ? 0 : time(random, 2e-4, 5e-3)),
              random.nextBoolean() ? 0 : time(random, 2e-3, 0.5),
              new Fall(time(random, 5e-3, 0.4), Curve.EXPONENTIAL, 0.01));
      double expected = stepped(envelope, first, second);
      assertThat(thump(envelope, first, second))
          .as("seed %s pair %s: %s into %s, %s", seed, i, first, second, envelope)
          .isCloseTo(expected, within(Math.max(0.01 * expected, 0.003)));
    }
  }

  /**
   * Bleeds of −1.1 V and 1.1 V that are told to open at once: with amplifiers without a leak d =
   * 1.1 V·(1 − e^(−t/1.2 ms))·e^(−t/4 ms), largest where e^(−t/1.2 ms) = 0.25/(0.25 + 1/1.2).
   */
  @Test
  void aStepThroughTwoGatesIsKnownInClosedForm() {
    Channel first = channel(-1.1, 4e-3, 1, List.of(new Cell(1, 0.05, null)), false);
    Channel second = channel(1.1, 1.2e-3, 1, List.of(new Cell(1, 0.05, null)), false);
    double shut = 0.25 / (0.25 + 1 / 1.2);
    double expected = 1.1 * (1 - shut) * Math.exp(1.2 * Math.log(shut) / 4);
    assertThat(expected).isCloseTo(0.545, within(5e-4));
    // Long enough that both are wide open before they are let go: a long span without a corner.
    assertThat(thump(new Envelope.Pulse(5, 0.5), first, second)).isCloseTo(expected, within(1e-6));
  }

  private static double thump(Envelope envelope, Channel first, Channel second) {
    List<Stage> stages =
        List.of(new Stage(first, Drive.UNITY, null), new Stage(second, Drive.UNITY, null));
    return Predictor.predict(new Sound(SINE, envelope, null, stages, 0))
        .metrics()
        .get(Metric.THUMP_PEAK)
        .orElseThrow();
  }

  private static double stepped(Envelope.AttackHoldDecay envelope, Channel first, Channel second) {
    Steps one = new Steps(first);
    Steps two = new Steps(second);
    double end = envelope.attack().seconds() + envelope.holdSeconds();
    end += 5 * envelope.decay().seconds();
    double largest = 0;
    for (long k = 0; k * STEP_SECONDS < end; k++) {
      double target = target(envelope, (k + 0.5) * STEP_SECONDS);
      one.step(target);
      two.step(target);
      double level = level(second.response().level().orElseThrow(), two.openness());
      double offset = first.output().bleedVolts() * one.openness() * level;
      offset += second.output().bleedVolts() * two.openness();
      largest = Math.max(largest, Math.abs(offset));
    }
    return largest;
  }

  private static double target(Envelope.AttackHoldDecay envelope, double seconds) {
    double attack = envelope.attack().seconds();
    double falling = seconds - attack - envelope.holdSeconds();
    double level =
        seconds < attack
            ? seconds / attack
            : falling < 0 ? 1 : Math.pow(0.01, falling / envelope.decay().seconds());
    double volts = envelope.peakVolts() * level;
    double open = (volts - THRESHOLD_VOLTS) / (CEILING_VOLTS - THRESHOLD_VOLTS);
    return Math.max(0, Math.min(1, open));
  }

  /** ℓ + (1 − ℓ)·y^γ; no channel here saturates. */
  private static double level(Level level, double openness) {
    double leak = Math.pow(10, level.leakDb() / 20);
    return leak + (1 - leak) * Math.pow(openness, level.exponent());
  }

  /** The cells of a channel, each a step further towards a target that is held meanwhile. */
  private static final class Steps {
    private final double[] shares;
    private final double[] opening;
    private final double[] release;
    private final double[] state;

    Steps(Channel channel) {
      List<Cell> cells = channel.cells().list();
      shares = cells.stream().mapToDouble(Cell::share).toArray();
      opening = new double[shares.length];
      release = new double[shares.length];
      state = new double[shares.length];
      for (int i = 0; i < shares.length; i++) {
        opening[i] = -Math.expm1(-STEP_SECONDS / channel.cells().openingSeconds());
        release[i] = -Math.expm1(-STEP_SECONDS / cells.get(i).releaseSeconds());
      }
    }

    void step(double target) {
      for (int i = 0; i < state.length; i++) {
        state[i] += (target - state[i]) * (target > state[i] ? opening[i] : release[i]);
      }
    }

    double openness() {
      double sum = 0;
      for (int i = 0; i < state.length; i++) {
        sum += shares[i] * state[i];
      }
      return sum;
    }
  }

  private static Channel channel(Random random, double bleed) {
    List<Cell> cells =
        random.nextBoolean()
            ? List.of(new Cell(1, time(random, 5e-3, 0.3), null))
            : List.of(
                new Cell(0.8, time(random, 5e-3, 0.05), null),
                new Cell(0.2, time(random, 0.05, 0.5), null));
    double exponent = random.nextBoolean() ? 1 : uniform(random, 0.5, 3);
    boolean filtered = !random.nextBoolean();
    return channel(bleed, time(random, 5e-4, 0.03), exponent, cells, filtered);
  }

  private static Channel channel(
      double bleed, double opening, double exponent, List<Cell> cells, boolean filtered) {
    Level level = new Level(-100, exponent, 0);
    return new Channel(
        "opposed",
        Transfer.between(THRESHOLD_VOLTS, CEILING_VOLTS),
        new Cells(opening, cells),
        filtered
            ? new Response.Both(level, new Filter(2, 1, 40, 9000, 1))
            : new Response.Amplitude(level),
        new Output(bleed, 10));
  }

  private static double uniform(Random random, double least, double most) {
    return least + (most - least) * random.nextDouble();
  }

  private static double time(Random random, double least, double most) {
    return least * Math.pow(most / least, random.nextDouble());
  }
}
