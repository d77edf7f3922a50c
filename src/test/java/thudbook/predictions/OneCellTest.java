package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Strikes;
import thudbook.quantities.Frequency;
import thudbook.sources.Source;
import thudbook.sources.Spectrum;
import thudbook.yardstick.ChannelBuilder;

/**
 * Property: an amplifier with one cell behind a pulse is a capacitor that is charged and discharged
 * (textbook). Every number of it is worked out here by hand: y = 1 − e^(−t/τ) while the pulse is
 * high, then y₁·e^(−t/τ); level ℓ + (1 − ℓ)·y.
 */
class OneCellTest {
  private static final double OPENING = 0.004;
  private static final double RELEASE = 0.05;
  private static final double LENGTH = 0.01;
  private static final double LEAK = 1e-4;
  private static final double REACHED = 1 - Math.exp(-LENGTH / OPENING);
  private static final double TOP = LEAK + (1 - LEAK) * REACHED;

  static Source sine(double hertz) {
    return new Source.Oscillator(Source.Wave.SINE, Frequency.ofHertz(hertz), 0.5, 5);
  }

  private static ChannelBuilder cell() {
    return ChannelBuilder.amplifier().between(2, 5).times(OPENING, RELEASE);
  }

  private static Sound sound(ChannelBuilder channel, double hertz, double coupling) {
    return new Sound(
        sine(hertz),
        new Envelope.Pulse(8, LENGTH),
        null,
        List.of(new Stage(channel.build(), Drive.UNITY, null)),
        coupling);
  }

  private static Metrics metrics(ChannelBuilder channel) {
    return Predictor.predict(sound(channel, 1000, 0)).metrics();
  }

  private static void check(Metrics metrics, Metric metric, double expected) {
    assertThat(metrics.get(metric).orElseThrow())
        .as(metric.key())
        .isEqualTo(expected, within(1e-9));
  }

  private static double opens(double share) {
    return -OPENING * Math.log(1 - share * REACHED);
  }

  private static double falls(double decibels) {
    double openness = (TOP * Math.pow(10, -decibels / 20) - LEAK) / (1 - LEAK);
    return LENGTH + RELEASE * Math.log(REACHED / openness);
  }

  @Test
  void everyTimeIsThatOfTheCapacitor() {
    Metrics metrics = metrics(cell());
    double leaves = LENGTH + RELEASE * Math.log(1 / 0.9);
    check(metrics, Metric.PEAK_DB, 20 * Math.log10(TOP));
    check(metrics, Metric.PEAK_TIME, LENGTH);
    check(metrics, Metric.DEAD_TIME, 0);
    check(metrics, Metric.ONSET, opens(0.1));
    check(metrics, Metric.ATTACK, opens(0.9) - opens(0.1));
    check(metrics, Metric.HOLD, leaves - opens(0.9));
    check(metrics, Metric.RELEASE_20, falls(20) - leaves);
    check(metrics, Metric.RELEASE_40, falls(40) - leaves);
    check(metrics, Metric.RELEASE_60, falls(60) - leaves);
    check(metrics, Metric.FLOOR_DB, 20 * Math.log10(LEAK / TOP));
    check(metrics, Metric.FLAT_TIME, LENGTH);
    check(metrics, Metric.LET_GO, LENGTH);
    check(metrics, Metric.PEAK_OPENNESS, REACHED);
    check(metrics, Metric.BRIGHTNESS_PEAK, 1000);
    check(metrics, Metric.BRIGHTNESS_AT_20, 1000);
    assertThat(metrics.get(Metric.IGNORED_SHARE)).isEmpty();
    assertThat(metrics.get(Metric.BUILD_UP)).isEmpty();
    assertThat(metrics.reach()).isEqualTo(Reach.BRIEF);
  }

  /** One metric alone is the one among all. */
  @Test
  void metricsAreToldAloneAsAmongAll() {
    Sound sound = sound(cell(), 1000, 0);
    Metrics all = Predictor.predict(sound).metrics();
    for (Metric metric :
        List.of(
            Metric.PEAK_DB,
            Metric.PEAK_TIME,
            Metric.ONSET,
            Metric.ATTACK,
            Metric.HOLD,
            Metric.RELEASE_20,
            Metric.RELEASE_40,
            Metric.RELEASE_60,
            Metric.FLOOR_DB,
            Metric.BRIGHTNESS_PEAK,
            Metric.BRIGHTNESS_AT_20)) {
      assertThat(Predictor.levelMetric(sound, Spectrum.of(sound.source()), metric))
          .as(metric.key())
          .isEqualTo(all.get(metric));
    }
    assertThat(Predictor.levelMetric(sound, Spectrum.of(sound.source()), Metric.THUMP_PEAK))
        .isEmpty();
  }

  /** A floor above the wanted level leaves no release: −30 dB is above −40 and −60 dB. */
  @Test
  void releasesEndAtTheFloor() {
    Metrics metrics = metrics(cell().leak(-30.0));
    assertThat(metrics.get(Metric.RELEASE_20)).isPresent();
    assertThat(metrics.get(Metric.RELEASE_40)).isEmpty();
    assertThat(metrics.get(Metric.RELEASE_60)).isEmpty();
    Metrics loud = metrics(cell().leak(-3.0));
    assertThat(loud.get(Metric.HOLD)).isPresent();
    assertThat(loud.get(Metric.RELEASE_20)).isEmpty();
    assertThat(loud.get(Metric.BRIGHTNESS_AT_20)).isEmpty();
  }

  /** A rise of under 0.1 dB is no strike: with openness reached y and leak ℓ, (ℓ + (1−ℓ)y)/ℓ. */
  @Test
  void hardlyAnyRiseIsNoStrike() {
    for (double rise : new double[] {1.0115, 1.0117}) {
      double leak = REACHED / (rise - 1 + REACHED);
      Metrics metrics = metrics(cell().leak(20 * Math.log10(leak)));
      assertThat(metrics.get(Metric.ONSET).isPresent()).isEqualTo(rise > 1.0116);
      assertThat(metrics.get(Metric.ATTACK).isPresent()).isEqualTo(rise > 1.0116);
      assertThat(metrics.get(Metric.HOLD).isPresent()).isEqualTo(rise > 1.0116);
    }
  }

  /** Reach is open from an openness of 0.99 on, and partial below the ceiling. */
  @Test
  void reachFollowsTheOpenness() {
    assertThat(reach(0.01 * (1 + 1e-6), 8)).isEqualTo(Reach.BRIEF);
    assertThat(reach(0.01 * (1 - 1e-6), 8)).isEqualTo(Reach.OPEN);
    assertThat(reach(1e-9, 4.9)).isEqualTo(Reach.PARTIAL);
    assertThat(reach(1e-9, 5)).isEqualTo(Reach.OPEN);
    assertThat(reach(1e-9, 2)).isEqualTo(Reach.SILENT);
    assertThat(reach(1e-9, 1.9)).isEqualTo(Reach.SILENT);
  }

  private static Reach reach(double left, double volts) {
    Envelope pulse = new Envelope.Pulse(volts, -OPENING * Math.log(left));
    Stage stage = new Stage(cell().build(), Drive.UNITY, null);
    return Predictor.predict(new Sound(sine(100), pulse, null, List.of(stage), 0))
        .metrics()
        .reach();
  }

  @Test
  void theSmallShapeIsTheCapacitor() {
    SmallShape shape = Predictor.predict(sound(cell(), 1000, 0)).shape();
    assertThat(shape.levelsDb()).hasSize(48);
    for (int k = 0; k < 48; k++) {
      double time = 0.5e-3 * Math.pow(8000, k / 47.0);
      double openness =
          time < LENGTH
              ? 1 - Math.exp(-time / OPENING)
              : REACHED * Math.exp(-(time - LENGTH) / RELEASE);
      double level = 20 * Math.log10((LEAK + (1 - LEAK) * openness) / TOP);
      assertThat(shape.levelsDb().get(k)).isEqualTo(Math.max(-60, level), within(1e-9));
    }
    assertThat(SmallShape.secondsOf(0)).isEqualTo(0.5e-3);
    assertThat(SmallShape.secondsOf(47)).isEqualTo(4, within(1e-12));
  }

  /** Times shorter than two periods describe the envelope only. */
  @Test
  void twoPeriodsDecideWhatIsEnvelopeOnly() {
    double attack = opens(0.9) - opens(0.1);
    assertThat(only(2 / attack * 1.000001)).isEmpty();
    assertThat(only(2 / attack * 0.999999)).containsExactly(Metric.ATTACK);
    double hold = LENGTH + RELEASE * Math.log(1 / 0.9) - opens(0.9);
    assertThat(only(2 / hold * 0.999999)).contains(Metric.HOLD).doesNotContain(Metric.RELEASE_20);
    assertThat(only(0.1))
        .containsExactlyInAnyOrder(
            Metric.ATTACK, Metric.HOLD, Metric.RELEASE_20, Metric.RELEASE_40, Metric.RELEASE_60);
  }

  private static Set<Metric> only(double hertz) {
    return Predictor.predict(sound(cell(), hertz, 0)).metrics().envelopeOnly();
  }

  /** Thump is bleed times openness; headroom and clipping are those of a sine beside it. */
  @ParameterizedTest
  @ValueSource(doubles = {2, -2})
  void theOutputIsASineOnAnOffset(double bleed) {
    Metrics metrics = metrics(cell().output(bleed, 6));
    double offset = bleed * REACHED;
    double tone = 5 * TOP;
    check(metrics, Metric.THUMP_PEAK, Math.abs(offset));
    check(metrics, Metric.THUMP_TO_TONE, 20 * Math.log10(Math.abs(offset) / tone));
    check(metrics, Metric.HEADROOM_POSITIVE, 20 * Math.log10((6 - offset) / tone));
    check(metrics, Metric.HEADROOM_NEGATIVE, 20 * Math.log10((6 + offset) / tone));
    double room = (6 - Math.abs(offset)) / tone;
    check(metrics, Metric.CLIPPED_SHARE, Math.acos(room) / Math.PI);
  }

  @Test
  void whatIsWithinTheRailsIsNotClipped() {
    Metrics metrics = metrics(cell().output(0, 6));
    check(metrics, Metric.CLIPPED_SHARE, 0);
    check(metrics, Metric.THUMP_PEAK, 0);
    assertThat(metrics.get(Metric.THUMP_TO_TONE)).isEmpty();
    check(metrics, Metric.HEADROOM_POSITIVE, 20 * Math.log10(6 / (5 * TOP)));
    Metrics both = metrics(cell().output(0, 3));
    check(both, Metric.CLIPPED_SHARE, 2 * Math.acos(3 / (5 * TOP)) / Math.PI);
  }

  /** An offset at or beyond the rail leaves no room on its side. */
  @Test
  void anOffsetBeyondTheRailLeavesNoHeadroom() {
    Metrics metrics = metrics(cell().output(8, 6));
    assertThat(metrics.get(Metric.HEADROOM_POSITIVE)).isEmpty();
    assertThat(metrics.get(Metric.HEADROOM_NEGATIVE)).isPresent();
    Metrics other = metrics(cell().output(-8, 6));
    assertThat(other.get(Metric.HEADROOM_NEGATIVE)).isEmpty();
    assertThat(other.get(Metric.HEADROOM_POSITIVE)).isPresent();
  }

  /**
   * Behind a coupling the opening is the difference of two exponentials, largest at ln(ωτ)/(ω −
   * 1/τ); the release begins with what is left of it (textbook: two RC in a row).
   */
  @ParameterizedTest
  @ValueSource(doubles = {5, 40, 300})
  void couplingLeavesTheDifferenceOfTwoExponentials(double hertz) {
    double omega = 2 * Math.PI * hertz;
    double largest = 0;
    for (int i = 0; i <= 200_000; i++) {
      double time = i * 1e-6;
      largest = Math.max(largest, Math.abs(coupled(omega, time)));
    }
    Metrics metrics = Predictor.predict(sound(cell().output(2, 6), 1000, hertz)).metrics();
    assertThat(metrics.get(Metric.THUMP_PEAK).orElseThrow()).isEqualTo(largest, within(2e-6));
  }

  /** v for a bleed of 2 V. */
  private static double coupled(double omega, double time) {
    if (time <= LENGTH) {
      return 2 * charge(omega, 1 / OPENING, 1, time);
    }
    double left = 2 * charge(omega, 1 / OPENING, 1, LENGTH);
    double since = time - LENGTH;
    return left * Math.exp(-omega * since) - 2 * charge(omega, 1 / RELEASE, REACHED, since);
  }

  private static double charge(double omega, double rate, double size, double time) {
    return size * rate * (Math.exp(-rate * time) - Math.exp(-omega * time)) / (omega - rate);
  }

  /** Strikes of a train in closed form: charged again from what is left. */
  @Test
  void aTrainIsChargedFromWhatIsLeft() {
    double every = 0.06;
    Sound train =
        new Sound(
            sine(1000),
            new Envelope.Pulse(8, LENGTH),
            new Strikes.Every(every, 3, Strikes.Restart.LEVEL),
            List.of(new Stage(cell().output(2, 6).build(), Drive.UNITY, null)),
            0);
    Prediction prediction = Predictor.predict(train);
    double openness = 0;
    double first = 0;
    for (int k = 0; k < 3; k++) {
      double before = openness;
      openness = 1 - (1 - before) * Math.exp(-LENGTH / OPENING);
      double peak = 20 * Math.log10(LEAK + (1 - LEAK) * openness);
      first = k == 0 ? peak : first;
      assertThat(prediction.strikes().get(k).peakDb()).isEqualTo(peak, within(1e-9));
      if (k == 2) {
        check(prediction.metrics(), Metric.BUILD_UP, peak - first);
        check(prediction.metrics(), Metric.THUMP_PEAK, 2 * openness);
      } else {
        openness *= Math.exp(-(every - LENGTH) / RELEASE);
      }
    }
    check(prediction.metrics(), Metric.PEAK_OPENNESS, REACHED);
    check(prediction.metrics(), Metric.PEAK_TIME, LENGTH);
  }

  /** A dip of 10 dB separates: with no leak to speak of, τ·ln √10 after the pulse. */
  @ParameterizedTest
  @ValueSource(doubles = {0.999, 1.001})
  void tenDecibelsSeparateTwoStrikes(double share) {
    double gap = RELEASE * Math.log(Math.sqrt(10)) * share;
    Sound train =
        new Sound(
            sine(1000),
            new Envelope.Pulse(8, LENGTH),
            new Strikes.Every(LENGTH + gap, 2, Strikes.Restart.ZERO),
            List.of(new Stage(cell().leak(-140.0).build(), Drive.UNITY, null)),
            0);
    Prediction prediction = Predictor.predict(train);
    assertThat(prediction.strikes().get(0).separated()).isEqualTo(share > 1);
    assertThat(prediction.strikes().get(1).separated()).isNull();
  }

  /** The points of a curve lie on the capacitor, and its lines within what it tells. */
  @Test
  void aCurveLiesOnTheCapacitor() {
    Curve curve = Predictor.predictWithCurve(sound(cell().output(2, 6), 1000, 0)).curve();
    List<CurvePoint> points = curve.points();
    assertThat(points).hasSizeBetween(20, 240);
    assertThat(curve.worstDb()).isBetween(1e-4, 0.1);
    double last = falls(60);
    assertThat(points.get(points.size() - 1).seconds()).isEqualTo(1.05 * last, within(1e-6));
    assertThat(points.get(0).seconds()).isEqualTo(-0.02 * 1.05 * last, within(1e-6));
    double worst = 0;
    for (int i = 0; i < points.size(); i++) {
      CurvePoint point = points.get(i);
      double openness = openness(point.seconds());
      assertThat(point.outputDb()).isEqualTo(decibels(openness), within(1e-9));
      assertThat(point.offsetVolts()).isEqualTo(2 * openness, within(1e-9));
      assertThat(point.brightnessHertz()).isEqualTo(1000, within(1e-9));
      assertThat(point.stages().get(0).openness()).isEqualTo(openness, within(1e-9));
      assertThat(point.stages().get(0).cutoffHertz()).isInfinite();
      for (double share = 0.01; i > 0 && share < 1; share += 0.01) {
        CurvePoint before = points.get(i - 1);
        double time = before.seconds() + share * (point.seconds() - before.seconds());
        double exact = decibels(openness(time));
        double line = before.outputDb() + share * (point.outputDb() - before.outputDb());
        worst = exact > 20 * Math.log10(TOP) - 60 ? Math.max(worst, Math.abs(exact - line)) : worst;
      }
    }
    assertThat(worst).isLessThan(curve.worstDb() + 0.01);
  }

  private static double openness(double time) {
    return time <= 0
        ? 0
        : time <= LENGTH
            ? 1 - Math.exp(-time / OPENING)
            : REACHED * Math.exp(-(time - LENGTH) / RELEASE);
  }

  private static double decibels(double openness) {
    return 20 * Math.log10(LEAK + (1 - LEAK) * openness);
  }
}
