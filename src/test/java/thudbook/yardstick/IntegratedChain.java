package thudbook.yardstick;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import thudbook.envelopes.Strikes;
import thudbook.gates.Cell;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.yardstick.LiteralVoltage.Segment;

/** All stages of a sound integrated together: h, d and what they are made of, at any time. */
final class IntegratedChain {
  /** Before the strike, as an argument of the functions of time. */
  static final double REST = -1;

  /** When everything has settled, as an argument of the functions of time. */
  static final double SETTLED = Double.POSITIVE_INFINITY;

  private final Sound sound;
  private final LiteralSpectrum spectrum;
  private final List<LiteralVoltage> voltages = new ArrayList<>();
  private final List<IntegratedMotion> motions = new ArrayList<>();
  private final double[] times;
  private final double horizon;

  IntegratedChain(Sound sound, LiteralSpectrum spectrum, Strikes strikes, double tolerance) {
    this.sound = sound;
    this.spectrum = spectrum;
    double end = 0;
    for (int i = 0; i < sound.stages().size(); i++) {
      Stage stage = sound.stages().get(i);
      LiteralVoltage voltage = new LiteralVoltage(sound.envelopeOf(i), strikes, stage.drive());
      voltages.add(voltage);
      end = Math.max(end, settled(voltage, stage.channel()));
    }
    horizon = end;
    NavigableSet<Double> corners = new TreeSet<>();
    for (int i = 0; i < sound.stages().size(); i++) {
      Channel channel = sound.stages().get(i).channel();
      motions.add(new IntegratedMotion(voltages.get(i), channel, horizon, tolerance));
      corners.addAll(motions.get(i).corners());
    }
    if (strikes != null) {
      corners.addAll(strikes.seconds());
    }
    times = times(corners);
  }

  private static double settled(LiteralVoltage voltage, Channel channel) {
    Segment last = voltage.segments().get(voltage.segments().size() - 1);
    double slowest = channel.cells().openingSeconds();
    for (Cell cell : channel.cells().list()) {
      slowest = Math.max(slowest, cell.releaseSeconds());
      slowest = Math.max(slowest, cell.openingSeconds() == null ? 0 : cell.openingSeconds());
    }
    double own = Double.isInfinite(last.nominalEnd()) ? 0 : last.nominalEnd() - last.start();
    // A fall to one half in its own time needs 30 of them to 1e-9.
    return last.start() + 30 * own + 20 * slowest;
  }

  /** Times between which nothing happens twice: dense in every piece, densest at its start. */
  private static double[] times(NavigableSet<Double> corners) {
    int points = corners.size() > 100 ? 12 : corners.size() > 30 ? 30 : 100;
    NavigableSet<Double> times = new TreeSet<>(corners);
    Double from = corners.first();
    for (Double to : corners.tailSet(from, false)) {
      for (int i = 1; i < points; i++) {
        double x = i / (double) points;
        times.add(from + x * (to - from));
        times.add(from + Math.pow(10, 6 * (x - 1)) * (to - from));
      }
      from = to;
    }
    return times.stream().mapToDouble(t -> t).toArray();
  }

  /** The times at which to look, rising from 0 to the horizon. */
  double[] times() {
    return times.clone();
  }

  LiteralVoltage voltage(int stage) {
    return voltages.get(stage);
  }

  int stages() {
    return motions.size();
  }

  double openness(int stage, double t) {
    if (t == SETTLED) {
      return motions.get(stage).target(voltages.get(stage).finalVolts());
    }
    return motions.get(stage).openness(t);
  }

  /** a(y) = ℓ + (1−ℓ)·(1+k)·y^γ/(1 + k·y^γ). */
  private double level(int stage, double t) {
    Channel channel = sound.stages().get(stage).channel();
    Optional<Level> law = channel.response().level();
    if (law.isEmpty()) {
      return 1;
    }
    double leak = Math.pow(10, law.get().leakDb() / 20);
    double y = Math.pow(Math.max(0, openness(stage, t)), law.get().exponent());
    double k = law.get().saturation();
    return leak + (1 - leak) * (1 + k) * y / (1 + k * y);
  }

  double[] poles(int stages, double t) {
    List<Double> poles = new ArrayList<>();
    for (int i = 0; i < stages; i++) {
      Channel channel = sound.stages().get(i).channel();
      Optional<Filter> filter = channel.response().filter();
      if (filter.isPresent()) {
        double closed = filter.get().closedHertz();
        double open = filter.get().openHertz();
        double y = Math.max(0, openness(i, t));
        double cutoff = closed + (open - closed) * Math.pow(y, filter.get().exponent());
        poles.add(cutoff);
        if (filter.get().poles() == 2) {
          poles.add(cutoff * filter.get().spread());
        }
      }
    }
    return poles.stream().mapToDouble(p -> p).toArray();
  }

  /** h after so many stages. */
  double h(int stages, double t) {
    double level = Math.sqrt(spectrum.passedShare(poles(stages, t)));
    for (int i = 0; i < stages; i++) {
      level *= level(i, t);
    }
    return level;
  }

  double h(double t) {
    return h(motions.size(), t);
  }

  /** The offset after so many stages, before coupling: d = d₁·a₂ + d₂ … */
  double d(int stages, double t) {
    double offset = 0;
    for (int i = 0; i < stages; i++) {
      Channel channel = sound.stages().get(i).channel();
      offset = offset * level(i, t) + channel.output().bleedVolts() * openness(i, t);
    }
    return offset;
  }

  double brightness(double t) {
    return spectrum.centroidHertz(poles(motions.size(), t));
  }

  double horizon() {
    return horizon;
  }
}
