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
import org.openjdk.jmh.infra.Blackhole;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.predictions.Metric;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.sources.Source;
import thudbook.sources.Spectrum;
import thudbook.yardstick.WorkedChannels;

/** A map of one metric: 120 peaks from 2.5 V to 10 V by 120 decays from 10 ms to 2 s. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class SweepBenchmark {
  private static final int SIDE = 120;

  private final Source noise = new Source.Noise(Source.Colour.WHITE, 20, 20_000, 5);
  private final List<Stage> stages =
      List.of(new Stage(WorkedChannels.of("quick"), Drive.UNITY, null));

  /** The whole map of release40. */
  @Benchmark
  public void peakByDecay(Blackhole hole) {
    Spectrum spectrum = Spectrum.of(noise);
    for (int i = 0; i < SIDE; i++) {
      double peakVolts = 2.5 * Math.pow(4, i / (SIDE - 1.0));
      for (int k = 0; k < SIDE; k++) {
        double decaySeconds = 0.01 * Math.pow(200, k / (SIDE - 1.0));
        Envelope envelope =
            new Envelope.AttackHoldDecay(
                peakVolts, Rise.linear(1e-3), 0, Fall.exponential(decaySeconds));
        Sound sound = new Sound(noise, envelope, null, stages, 0);
        hole.consume(Predictor.levelMetric(sound, spectrum, Metric.RELEASE_40));
      }
    }
  }
}
