package thudbook.predictions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Strikes;
import thudbook.gates.Motion;
import thudbook.gates.MotionPiece;
import thudbook.sources.Spectrum;

/** One sound while it is being predicted: its lone strike, and its train if it has one. */
final class Analysis {
  private final Sound sound;
  private final Spectrum spectrum;
  private final Chain chain;
  private final Trace lone;
  private @Nullable Trace train;

  Analysis(Sound sound, Spectrum spectrum) {
    this.sound = sound;
    this.spectrum = spectrum;
    chain = new Chain(sound.stages().stream().map(Stage::channel).toList(), spectrum);
    lone = new Trace(chain, motions(null));
  }

  private List<Motion> motions(@Nullable Strikes strikes) {
    List<Motion> motions = new ArrayList<>(sound.stages().size());
    for (int j = 0; j < sound.stages().size(); j++) {
      Stage stage = sound.stages().get(j);
      ControlVoltage voltage = ControlVoltage.of(sound.envelopeOf(j), strikes, stage.drive());
      motions.add(Motion.of(voltage, stage.channel()));
    }
    return motions;
  }

  /** The trace of all strikes; the lone one where there is no train. */
  private Trace train() {
    if (train == null) {
      train = sound.strikes() == null ? lone : new Trace(chain, motions(sound.strikes()));
    }
    return train;
  }

  /** One metric of the lone strike's level, without working out the others. */
  OptionalDouble levelMetric(Metric metric) {
    return new LevelMetrics(lone).get(metric);
  }

  Prediction predict(boolean withCurve) {
    EnumMap<Metric, Double> values = new EnumMap<>(Metric.class);
    LevelMetrics levels = new LevelMetrics(lone);
    levels.putAll(values);
    List<StageMetrics> stages = stageMetrics();
    putHeadline(values, stages);
    new OutputMetrics(sound, train()).putAll(values, levels.top());
    List<StrikeMetrics> strikes = List.of();
    if (sound.strikes() != null) {
      strikes = TrainMetrics.of(train(), sound.strikes().seconds());
      double last = strikes.get(strikes.size() - 1).peakDb();
      values.put(Metric.BUILD_UP, last - strikes.get(0).peakDb());
    }
    Reach reach =
        stages.stream().map(StageMetrics::reach).min(Comparator.naturalOrder()).orElseThrow();
    return new Prediction(
        new Metrics(values, reach, envelopeOnly(values)),
        stages,
        strikes,
        shape(levels.top()),
        withCurve ? new CurvePlan(sound, train()).curve() : null);
  }

  private List<StageMetrics> stageMetrics() {
    List<StageMetrics> stages = new ArrayList<>(sound.stages().size());
    for (int j = 0; j < sound.stages().size(); j++) {
      Motion motion = lone.motions().get(j);
      stages.add(VoltageMetrics.of(motion, sound.envelopeOf(j), peakOpenness(motion)));
    }
    return stages;
  }

  /** The largest openness: at a corner, unless cells go both ways between two corners. */
  private double peakOpenness(Motion motion) {
    double peak = Math.max(motion.restOpenness(), motion.finalOpenness());
    for (MotionPiece piece : motion.pieces()) {
      peak = Math.max(peak, piece.openness(0));
      if (piece.rises() && piece.falls()) {
        double end = Math.min(piece.end(), lone.horizonSeconds()) - piece.start();
        double[] grid = Scan.growing(end, piece.shortestTimeConstant() / 64, 1.2);
        peak = Math.max(peak, Scan.largest(grid, piece::openness));
      }
    }
    return peak;
  }

  private void putHeadline(Map<Metric, Double> values, List<StageMetrics> stages) {
    if (stages.stream().allMatch(stage -> stage.deadTime() != null)) {
      stages.stream()
          .map(StageMetrics::deadTime)
          .filter(Objects::nonNull)
          .max(Comparator.naturalOrder())
          .ifPresent(time -> values.put(Metric.DEAD_TIME, time));
    }
    Double flat = VoltageMetrics.flatTime(lone.motions());
    if (flat != null) {
      values.put(Metric.FLAT_TIME, flat);
    }
    StageMetrics first = firstToLetGo(stages);
    Double ignored = first == null ? ignoredByNone(stages) : first.ignoredShare();
    if (first != null && first.letGo() != null) {
      values.put(Metric.LET_GO, first.letGo());
    }
    if (ignored != null) {
      values.put(Metric.IGNORED_SHARE, ignored);
    }
    values.put(Metric.PEAK_OPENNESS, stages.get(stages.size() - 1).peakOpenness());
  }

  private static @Nullable StageMetrics firstToLetGo(List<StageMetrics> stages) {
    StageMetrics first = null;
    double earliest = Double.POSITIVE_INFINITY;
    for (StageMetrics stage : stages) {
      Double letGo = stage.letGo();
      if (letGo != null && letGo < earliest) {
        first = stage;
        earliest = letGo;
      }
    }
    return first;
  }

  /** Where no stage lets go: 1 if any is silent, else 0; absent if no envelope can tell. */
  private static @Nullable Double ignoredByNone(List<StageMetrics> stages) {
    if (stages.stream().allMatch(stage -> stage.ignoredShare() == null)) {
      return null;
    }
    return stages.stream().anyMatch(stage -> stage.reach() == Reach.SILENT) ? 1.0 : 0.0;
  }

  /** The times that are shorter than two periods of the lowest strong partial. */
  private EnumSet<Metric> envelopeOnly(Map<Metric, Double> values) {
    EnumSet<Metric> only = EnumSet.noneOf(Metric.class);
    double twoPeriods = 2 / spectrum.lowestStrongHertz();
    for (Metric metric :
        List.of(
            Metric.ATTACK, Metric.HOLD, Metric.RELEASE_20, Metric.RELEASE_40, Metric.RELEASE_60)) {
      Double seconds = values.get(metric);
      if (seconds != null && seconds < twoPeriods) {
        only.add(metric);
      }
    }
    return only;
  }

  private SmallShape shape(double top) {
    List<Double> levels = new ArrayList<>(SmallShape.POINTS);
    for (int k = 0; k < SmallShape.POINTS; k++) {
      double level = LevelMetrics.decibels(lone.level(SmallShape.secondsOf(k)) / top);
      levels.add(Math.max(SmallShape.FLOOR_DB, level));
    }
    return new SmallShape(levels);
  }
}
