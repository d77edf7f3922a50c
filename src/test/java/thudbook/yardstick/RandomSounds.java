package thudbook.yardstick;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.quantities.Frequency;
import thudbook.sources.Modulator;
import thudbook.sources.Source;

/**
 * Seeded random sounds of every kind, in the ranges that players use or at the very ends of what is
 * allowed.
 */
public final class RandomSounds {
  private final Random random;
  private final boolean extreme;
  private final double shortest;
  private final double longest;

  private RandomSounds(long seed, boolean extreme, double shortest, double longest) {
    this.random = new Random(seed);
    this.extreme = extreme;
    this.shortest = shortest;
    this.longest = longest;
  }

  /** Times from 0.3 ms to 1.5 s, which an explicit integrator can follow in bounded time. */
  public static RandomSounds usual(long seed) {
    return new RandomSounds(seed, false, 3e-4, 1.5);
  }

  /** Times from 1 µs to 60 s, knots 1 mV apart, 64 strikes, 4,096 samples. */
  public static RandomSounds extreme(long seed) {
    return new RandomSounds(seed, true, 1e-6, 60);
  }

  /** The next sound. */
  public Sound next() {
    boolean struck = random.nextInt(5) > 0;
    Envelope envelope = struck ? struck() : recorded();
    List<Stage> stages = new ArrayList<>();
    int count = random.nextInt(3) > 0 ? 1 : 2 + random.nextInt(3);
    for (int i = 0; i < count; i++) {
      Envelope own = i > 0 && random.nextInt(3) == 0 ? struck() : null;
      stages.add(new Stage(channel(), drive(), own));
    }
    Strikes strikes = struck && random.nextInt(5) < 2 ? strikes() : null;
    double coupling = random.nextBoolean() ? 0 : logUniform(1, extreme ? 1000 : 40);
    return new Sound(source(), envelope, strikes, stages, coupling);
  }

  /** A source without the slow ones: no partials below 20 Hz, sines as modulators. */
  public Source source() {
    double level = uniform(0.5, 10);
    switch (random.nextInt(extreme ? 5 : 4)) {
      case 0:
        return new Source.Noise(pick(Source.Colour.values()), 20, 20_000, level);
      case 1:
        return new Source.Oscillator(Source.Wave.SINE, hertz(20, 5000), 0.5, level);
      case 2:
        return new Source.Oscillator(
            pick(Source.Wave.values()), hertz(30, 2000), uniform(0.05, 0.95), level);
      case 3:
        return new Source.FrequencyModulation(
            hertz(30, 1000),
            new Modulator.Ratio(uniform(0.2, 5)),
            Source.Wave.SINE,
            uniform(0, 8),
            pick(Source.Phase.values()),
            level);
      default:
        Source.Wave wave = pick(Arrays.copyOf(Source.Wave.values(), 4));
        return new Source.FrequencyModulation(
            hertz(0.01, 20_000),
            new Modulator.Absolute(hertz(0.01, 20_000)),
            wave,
            uniform(0, 50),
            pick(Source.Phase.values()),
            level);
    }
  }

  private Frequency hertz(double low, double high) {
    return Frequency.ofHertz(logUniform(low, high));
  }

  private Envelope.Struck struck() {
    double peak = random.nextInt(6) == 0 ? uniform(-10, 0) : uniform(0, extreme ? 20 : 10);
    switch (random.nextInt(3)) {
      case 0:
        return new Envelope.Pulse(peak, time());
      case 1:
        double hold = random.nextBoolean() ? 0 : time();
        return new Envelope.AttackHoldDecay(peak, rise(), hold, fall());
      default:
        double sustain = random.nextInt(4) == 0 ? random.nextInt(2) : random.nextDouble();
        return new Envelope.AttackDecaySustainRelease(
            peak, rise(), fall(), sustain, time(), fall());
    }
  }

  private Envelope.Recorded recorded() {
    int count = 2 + random.nextInt(extreme && random.nextInt(4) == 0 ? 4095 : 40);
    TreeSet<Double> times = new TreeSet<>(List.of(0.0));
    double length = extreme ? logUniform(1e-3, 60) : uniform(0.01, 0.5);
    while (times.size() < count) {
      times.add(length * random.nextDouble());
    }
    List<Envelope.Sample> samples = new ArrayList<>();
    double volts = uniform(-1, 1);
    for (double time : times) {
      samples.add(new Envelope.Sample(time, volts));
      if (random.nextInt(4) > 0) {
        volts = uniform(-3, 10);
      }
    }
    return new Envelope.Recorded(samples);
  }

  private Strikes strikes() {
    Strikes.Restart restart = pick(Strikes.Restart.values());
    int count = random.nextInt(8) == 0 ? 64 : 1 + random.nextInt(12);
    switch (random.nextInt(3)) {
      case 0:
        return new Strikes.Every(extreme ? time() : logUniform(1e-3, 0.3), count, restart);
      case 1:
        int denominator = 1 << (2 + random.nextInt(4));
        return new Strikes.Tempo(
            uniform(60, 300), 1 + random.nextInt(3), denominator, count, restart);
      default:
        TreeSet<Double> times = new TreeSet<>(List.of(0.0));
        double length = extreme ? logUniform(1e-5, 60) : uniform(0.02, 1.5);
        while (times.size() < count) {
          times.add(length * random.nextDouble());
        }
        return new Strikes.At(new ArrayList<>(times), restart);
    }
  }

  private Drive drive() {
    double gain = random.nextInt(3) == 0 ? 1 : uniform(-2, 2);
    if (random.nextInt(3) > 0) {
      gain = Math.abs(gain);
    }
    double offset = random.nextInt(2) == 0 ? 0 : uniform(-4, 6);
    return new Drive(gain, offset, random.nextInt(3) == 0 ? uniform(2, 12) : 12);
  }

  /** A channel of any kind. */
  public Channel channel() {
    List<Cell> cells = new ArrayList<>();
    int count = 1 + random.nextInt(4);
    double left = 1;
    for (int i = 0; i < count; i++) {
      double share = i == count - 1 ? left : left * uniform(0.3, 0.95);
      left -= share;
      cells.add(new Cell(share, time(), random.nextInt(5) < 2 ? time() : null));
    }
    double closed = logUniform(extreme ? 0.01 : 20, 400);
    // Drawn in this order, so that a seed makes the same sounds as ever.
    Response.Kind kind = pick(Response.Kind.values());
    Transfer transfer = transfer();
    double opening = time();
    int poles = 1 + random.nextInt(2);
    double spread = random.nextInt(3) == 0 ? logUniform(1, extreme ? 1000 : 30) : 1;
    double open = logUniform(closed, extreme ? 200_000 : 18_000);
    double levelExponent = random.nextBoolean() ? 1 : uniform(0.5, 4);
    double cutoffExponent = random.nextBoolean() ? 1 : uniform(0.5, 4);
    double saturation = random.nextInt(3) > 0 ? 0 : logUniform(0.1, extreme ? 1e6 : 1000);
    double leak = random.nextInt(20) == 0 ? 0 : uniform(extreme ? -140 : -100, -40);
    double bleed = random.nextInt(3) == 0 ? 0 : uniform(-2, 2);
    Level level = new Level(leak, levelExponent, saturation);
    Filter filter = new Filter(poles, spread, closed, open, cutoffExponent);
    Response response =
        switch (kind) {
          case BOTH -> new Response.Both(level, filter);
          case AMPLITUDE -> new Response.Amplitude(level);
          case LOW_PASS -> new Response.LowPass(filter);
        };
    return new Channel(
        "random", transfer, new Cells(opening, cells), response, new Output(bleed, uniform(1, 12)));
  }

  private Transfer transfer() {
    int count = random.nextInt(3) > 0 ? 2 : 3 + random.nextInt(62);
    double gap = extreme && random.nextBoolean() ? 0.0011 : logUniform(0.02, 4) / (count - 1);
    gap = Math.max(gap, extreme ? 0.0011 : 0.002);
    double threshold = random.nextInt(4) == 0 ? 0 : uniform(-1, 4);
    List<Double> levels = new ArrayList<>(List.of(0.0, 1.0));
    while (levels.size() < count) {
      levels.add(random.nextInt(6) == 0 ? levels.get(levels.size() - 1) : random.nextDouble());
    }
    levels.sort(null);
    List<Transfer.Knot> knots = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double early = i == 0 ? 0 : Math.min(gap - 0.001, 0.5 * gap) * random.nextDouble();
      knots.add(new Transfer.Knot(threshold + i * gap - early / 2, levels.get(i)));
    }
    return new Transfer(knots);
  }

  private Rise rise() {
    double time = random.nextInt(4) == 0 ? 0 : Math.min(time(), extreme ? 60 : 0.2);
    double overshoot = random.nextBoolean() ? 1.3 : extreme ? logUniform(1.001, 10) : 1.05;
    return new Rise(time, pick(Curve.values()), overshoot);
  }

  private Fall fall() {
    double decaysTo = random.nextBoolean() ? 0.01 : logUniform(extreme ? 1e-4 : 1e-3, 0.5);
    return new Fall(time(), pick(Curve.values()), decaysTo);
  }

  private double time() {
    return logUniform(shortest, longest);
  }

  private double uniform(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private double logUniform(double low, double high) {
    return Math.min(high, Math.max(low, low * Math.pow(high / low, random.nextDouble())));
  }

  private <T> T pick(T[] values) {
    return values[random.nextInt(values.length)];
  }
}
