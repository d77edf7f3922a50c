package thudbook.patching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Things;
import thudbook.equipment.Dialling;
import thudbook.equipment.Gate;
import thudbook.patching.KnobTolerance.Span;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Predictor;
import thudbook.predictions.Reach;
import thudbook.predictions.Sound;
import thudbook.recipes.Resolution;
import thudbook.sources.Source;
import thudbook.sources.Spectrum;

/**
 * Tolerance of a recipe: what its metrics may come to when it is dialled again from its settings.
 *
 * <p>Each knob is taken through its read-back tolerance on an even grid. An extreme inside is
 * polished by golden section between its neighbours, and a place where the reach changes or a
 * metric begins to exist is closed in by bisection, since a metric may be largest just beside it.
 * Tuning a pair of oscillators is done with free phase, as gate-model and maps do, so that nothing
 * jumps at simple ratios.
 */
public final class Tolerance {
  private static final int POLISHINGS = 20;

  /** To less than a hundred-thousandth of the tolerance: no hand comes nearer to such a place. */
  private static final int BISECTIONS = 14;

  private static final Look CLOSE = new Look(12, BISECTIONS, EnumSet.allOf(Metric.class));
  private static final Look GRID = new Look(12, BISECTIONS, Set.of());
  private static final Look ENDS = new Look(1, 0, Set.of());

  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private final Sound sound;
  private final Spectrum spectrum;
  private final DialledSetting knob;
  private final Dialling dialling;
  private final TurnedNumber number;
  private final TreeMap<Double, Optional<Metrics>> known = new TreeMap<>();

  /** How closely a tolerance is looked at: its grid, the bisections, and what is polished. */
  private record Look(int halfGrid, int bisections, Set<Metric> polished) {}

  private Tolerance(Sound sound, DialledSetting knob, Dialling dialling, String pointer) {
    this.sound = sound;
    this.spectrum = Spectrum.of(sound.source());
    this.knob = knob;
    this.dialling = dialling;
    this.number = new TurnedNumber(sound, pointer, dialling.knob().dimension());
  }

  /** The tolerances of all tied knobs, in the order of the settings; none without a prediction. */
  public static List<KnobTolerance> of(DialledSettings settings, Things<Gate> gates) {
    return retuned(settings, gates).map(sound -> of(settings, sound, CLOSE)).orElse(List.of());
  }

  /**
   * The touchiest knob, if one is touchy; for pages, where nobody waits. What makes a knob touchy
   * is of one strike, so trains are left out, and the grid alone is fine enough.
   */
  public static Optional<KnobTolerance> touchiest(DialledSettings settings, Things<Gate> gates) {
    return retuned(settings, gates)
        .flatMap(sound -> touchiest(of(settings, sound.struckOnce(), GRID)));
  }

  /**
   * The same as {@link #of(DialledSettings, Things)}, from the ends and the middle of each
   * tolerance alone: enough to warn.
   */
  public static List<KnobTolerance> atEnds(DialledSettings settings, Things<Gate> gates) {
    return retuned(settings, gates)
        .map(sound -> of(settings, sound.struckOnce(), ENDS))
        .orElse(List.of());
  }

  private static List<KnobTolerance> of(DialledSettings settings, Sound sound, Look look) {
    List<KnobTolerance> all = new ArrayList<>();
    for (DialledSetting knob : settings.tied()) {
      Dialling dialling = knob.dialling();
      String pointer = knob.setting().forValue();
      Double share = knob.share();
      if (dialling != null && pointer != null && share != null) {
        KnobTolerance tolerance = new Tolerance(sound, knob, dialling, pointer).around(share, look);
        if (tolerance != null) {
          all.add(tolerance);
        }
      }
    }
    return all;
  }

  /** The touchiest knob, if one is touchy. */
  public static Optional<KnobTolerance> touchiest(List<KnobTolerance> tolerances) {
    return tolerances.stream()
        .filter(KnobTolerance::isTouchy)
        .max(Comparator.comparingDouble(KnobTolerance::touchiness));
  }

  /**
   * The sound whose knobs are turned: a modulator that has a knob of its own in hertz no longer
   * follows the carrier, and tuned pairs have free phase.
   */
  private static Optional<Sound> retuned(DialledSettings settings, Things<Gate> gates) {
    Sound sound = Resolution.of(settings.recipe(), gates).complete().orElse(null);
    if (sound == null) {
      return Optional.empty();
    }
    for (DialledSetting knob : settings.tied()) {
      String pointer = String.valueOf(knob.setting().forValue());
      SoundValue tied = knob.tied();
      Double value = tied == null ? null : tied.si();
      if (pointer.equals("source.modulator") && tied != null && value != null) {
        sound = new TurnedNumber(sound, pointer, tied.dimension()).at(value);
      }
      if ((pointer.equals("source.modulator") || pointer.equals("source.carrier"))
          && sound.source() instanceof Source.FrequencyModulation pair) {
        sound = sound.with(pair.free());
      }
    }
    return Optional.of(sound);
  }

  private @Nullable KnobTolerance around(double share, Look look) {
    double half = dialling.knob().toleranceShare();
    double least = Math.max(0, share - half);
    double most = Math.min(1, share + half);
    for (int i = 0; i <= 2 * look.halfGrid(); i++) {
      at(least + (most - least) * i / (2.0 * look.halfGrid()));
    }
    Metrics exact = at(share).orElse(null);
    if (exact == null) {
      return null;
    }
    closeIn(look.bisections());
    for (Metric metric : look.polished()) {
      polish(metric, 1);
      polish(metric, -1);
    }
    Map<Metric, Span> spans = new EnumMap<>(Metric.class);
    for (Metric metric : Metric.values()) {
      span(metric).ifPresent(span -> spans.put(metric, span));
    }
    Set<Reach> reaches = EnumSet.noneOf(Reach.class);
    known.values().forEach(metrics -> metrics.ifPresent(m -> reaches.add(m.reach())));
    double one = dialling.value(least);
    double other = dialling.value(most);
    return new KnobTolerance(
        knob, Math.min(one, other), Math.max(one, other), exact, spans, reaches);
  }

  /** The metrics with the knob at a share of its sweep; empty where the sound can't have that. */
  private Optional<Metrics> at(double share) {
    return known.computeIfAbsent(share, this::predicted);
  }

  private Optional<Metrics> predicted(double share) {
    try {
      Sound turned = number.at(dialling.value(share));
      boolean same = turned.source() == sound.source();
      Spectrum here = same ? spectrum : Spectrum.of(turned.source());
      return Optional.of(Predictor.predict(turned, here).metrics());
    } catch (IllegalArgumentException beyondTheModel) {
      return Optional.empty();
    }
  }

  /** Bisects between neighbours that differ in kind, so that both sides of the change are known. */
  private void closeIn(int bisections) {
    List<Double> grid = new ArrayList<>(known.keySet());
    for (int i = 1; i < grid.size(); i++) {
      double low = grid.get(i - 1);
      double high = grid.get(i);
      if (alike(at(low), at(high))) {
        continue;
      }
      for (int step = 0; step < bisections; step++) {
        double middle = (low + high) / 2;
        if (alike(at(low), at(middle))) {
          low = middle;
        } else {
          high = middle;
        }
      }
    }
  }

  private static boolean alike(Optional<Metrics> one, Optional<Metrics> other) {
    return one.isPresent() == other.isPresent()
        && (one.isEmpty()
            || other.isEmpty()
            || (one.get().reach() == other.get().reach()
                && one.get().values().keySet().equals(other.get().values().keySet())));
  }

  /** Polishes the largest value of a metric, or with sign −1 the smallest, if it lies inside. */
  private void polish(Metric metric, int sign) {
    Double best = null;
    double most = Double.NEGATIVE_INFINITY;
    for (Map.Entry<Double, Optional<Metrics>> entry : known.entrySet()) {
      double value = signed(entry.getValue(), metric, sign);
      if (value > most) {
        most = value;
        best = entry.getKey();
      }
    }
    Double low = best == null ? null : known.lowerKey(best);
    Double high = best == null ? null : known.higherKey(best);
    if (low == null || high == null) {
      return;
    }
    boolean flat = signed(at(low), metric, sign) == most || signed(at(high), metric, sign) == most;
    double from = low;
    double to = high;
    for (int step = 0; step < POLISHINGS && !flat; step++) {
      double left = to - GOLDEN * (to - from);
      double right = from + GOLDEN * (to - from);
      if (signed(at(left), metric, sign) >= signed(at(right), metric, sign)) {
        to = right;
      } else {
        from = left;
      }
    }
  }

  private static double signed(Optional<Metrics> metrics, Metric metric, int sign) {
    OptionalDouble value = metrics.map(m -> m.get(metric)).orElse(OptionalDouble.empty());
    return value.isPresent() ? sign * value.getAsDouble() : Double.NEGATIVE_INFINITY;
  }

  private Optional<Span> span(Metric metric) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    boolean absent = false;
    for (Optional<Metrics> metrics : known.values()) {
      OptionalDouble value = metrics.map(m -> m.get(metric)).orElse(OptionalDouble.empty());
      if (value.isPresent()) {
        lowest = Math.min(lowest, value.getAsDouble());
        highest = Math.max(highest, value.getAsDouble());
      } else {
        absent = true;
      }
    }
    return lowest > highest ? Optional.empty() : Optional.of(new Span(lowest, highest, absent));
  }
}
