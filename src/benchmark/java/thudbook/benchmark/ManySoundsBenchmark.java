package thudbook.benchmark;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.yardstick.RandomSounds;

/** All metrics of 10,000 seeded random sounds of every kind, up to four stages and 64 strikes. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 1, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class ManySoundsBenchmark {
  private static final int SOUNDS = 10_000;
  private static final long SEED = 10;

  private final List<Sound> sounds =
      Stream.generate(RandomSounds.usual(SEED)::next).limit(SOUNDS).toList();

  /** Time per sound. */
  @Benchmark
  @OperationsPerInvocation(SOUNDS)
  public void perSound(Blackhole hole) {
    sounds.forEach(sound -> hole.consume(Predictor.predict(sound)));
  }
}
