package thudbook.predictions;

import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Segment;
import thudbook.gates.Motion;
import thudbook.gates.MotionPiece;
import thudbook.gates.Target;

/** What one stage's control voltage does with its threshold and ceiling. */
final class VoltageMetrics {
  /** From this openness on, a gate counts as open (chosen by the model's description). */
  private static final double OPEN = 0.99;

  private VoltageMetrics() {}

  static StageMetrics of(Motion motion, Envelope envelope, double peakOpenness) {
    boolean openBefore = motion.restZone() != Target.Zone.SHUT;
    OptionalDouble deadTime = deadTime(motion, openBefore);
    Double letGo = letGo(motion, openBefore);
    boolean silent = deadTime.isEmpty();
    return new StageMetrics(
        silent ? null : deadTime.getAsDouble(),
        flatTime(List.of(motion)),
        letGo,
        ignoredShare(motion, envelope, silent, letGo),
        peakOpenness,
        reach(motion, openBefore, silent, peakOpenness));
  }

  private static OptionalDouble deadTime(Motion motion, boolean openBefore) {
    if (openBefore) {
      return OptionalDouble.of(0);
    }
    return motion.pieces().stream()
        .filter(piece -> piece.target().zone() != Target.Zone.SHUT)
        .mapToDouble(MotionPiece::start)
        .findFirst();
  }

  /**
   * The time during which all of the stages are at their ceilings, in seconds; null if that never
   * ends.
   */
  static @Nullable Double flatTime(List<Motion> motions) {
    double[] corners =
        motions.stream()
            .flatMap(motion -> motion.pieces().stream())
            .mapToDouble(MotionPiece::start)
            .sorted()
            .distinct()
            .toArray();
    double flat = 0;
    for (int k = 0; k < corners.length; k++) {
      double corner = corners[k];
      boolean allFlat =
          motions.stream()
              .map(motion -> motion.pieces().get(motion.pieceAt(corner)).target().zone())
              .allMatch(zone -> zone == Target.Zone.CEILING);
      if (allFlat && k + 1 == corners.length) {
        return null;
      }
      flat += allFlat ? corners[k + 1] - corner : 0;
    }
    return flat;
  }

  private static @Nullable Double letGo(Motion motion, boolean openBefore) {
    List<MotionPiece> pieces = motion.pieces();
    int last = pieces.size() - 1;
    while (last >= 0 && pieces.get(last).target().zone() == Target.Zone.SHUT) {
      last--;
    }
    if (last == pieces.size() - 1) {
      return null;
    }
    if (last < 0) {
      return openBefore ? 0.0 : null;
    }
    return pieces.get(last).end();
  }

  private static @Nullable Double ignoredShare(
      Motion motion, Envelope envelope, boolean silent, @Nullable Double letGo) {
    if (envelope instanceof Envelope.Pulse || envelope instanceof Envelope.Recorded) {
      return null;
    }
    if (silent) {
      return 1.0;
    }
    if (letGo == null) {
      return 0.0;
    }
    Segment segment = segmentThatLetsGo(motion, letGo);
    double start = segment.startSeconds();
    double end = segment.nominalEndSeconds();
    return segment.kind().falls()
        ? Math.max(0, Math.min(1, (end - letGo) / (end - start)))
        : Double.valueOf(0);
  }

  /** The segment in which the voltage falls through the threshold: the one that ends there last. */
  private static Segment segmentThatLetsGo(Motion motion, double letGo) {
    MotionPiece found = motion.pieces().get(0);
    for (MotionPiece piece : motion.pieces()) {
      if (piece.start() < letGo) {
        found = piece;
      }
    }
    return found.target().piece().segment();
  }

  private static Reach reach(
      Motion motion, boolean openBefore, boolean silent, double peakOpenness) {
    if (openBefore) {
      return Reach.IDLE_OPEN;
    }
    if (silent) {
      return Reach.SILENT;
    }
    if (!motion.touchesCeiling()) {
      return Reach.PARTIAL;
    }
    return peakOpenness < OPEN ? Reach.BRIEF : Reach.OPEN;
  }
}
