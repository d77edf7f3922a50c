package thudbook.benchmark;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.quantities.Frequency;
import thudbook.sources.Source;
import thudbook.yardstick.BruteForce;
import thudbook.yardstick.IntegratedMotion;
import thudbook.yardstick.LiteralVoltage;
import thudbook.yardstick.WorkedChannels;

/**
 * All metrics of one sound in closed form, and by the general-purpose integrator at the same
 * accuracy: the bare integration, from which not one metric is known yet, and the integration with
 * every metric read off it by its definition. The source is a single sine, so that no spectrum
 * weighs on either side.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class OneSoundBenchmark {
  /** What the test of agreement gives the integrator, to agree within 1e-8. */
  private static final double TOLERANCE = 1e-11;

  /** When this sound has fallen by 60 dB. */
  private static final double HORIZON_SECONDS = 0.6;

  private final Sound sound = sound();

  private static Sound sound() {
    Source sine = new Source.Oscillator(Source.Wave.SINE, Frequency.ofHertz(55), 0.5, 5);
    Envelope envelope =
        new Envelope.AttackHoldDecay(7, Rise.linear(1e-3), 0, Fall.exponential(0.5));
    Stage stage = new Stage(WorkedChannels.of("quick"), Drive.UNITY, null);
    return new Sound(sine, envelope, null, List.of(stage), 0);
  }

  /** The way of the product. */
  @Benchmark
  public Prediction closedForm() {
    return Predictor.predict(sound);
  }

  /** The cells alone, cut at the corners. */
  @Benchmark
  public double integrationAlone() {
    Stage stage = sound.stages().get(0);
    LiteralVoltage voltage = new LiteralVoltage(sound.envelopeOf(0), null, stage.drive());
    return new IntegratedMotion(voltage, stage.channel(), HORIZON_SECONDS, TOLERANCE)
        .openness(HORIZON_SECONDS);
  }

  /** The same metrics as the closed form. */
  @Benchmark
  public BruteForce integrationWithMetrics() {
    return new BruteForce(sound, TOLERANCE);
  }
}
