package thudbook.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.yardstick.IntegratedMotion;
import thudbook.yardstick.LiteralVoltage;
import thudbook.yardstick.RandomSounds;

/**
 * Property test: the closed forms against a general-purpose integrator (Hipparchus,
 * DormandPrince853Integrator, tolerance 1e-11, cut at every corner) behind a control voltage that
 * is written down literally. Seeded random sounds of all kinds; every stage of every sound.
 */
class IntegratorAgreementTest {
  private static final double HORIZON_SECONDS = 4;
  private static final int SOUNDS_PER_SEED = 60;

  @Tag("long")
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void closedFormsAgreeWithTheIntegrator(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    SoftAssertions all = new SoftAssertions();
    for (int i = 0; i < SOUNDS_PER_SEED; i++) {
      Sound sound = sounds.next();
      for (int stage = 0; stage < sound.stages().size(); stage++) {
        String what = "seed " + seed + " sound " + i + " stage " + stage + " " + sound;
        all.assertThat(worst(sound, stage)).as(what).isLessThan(1e-8);
      }
    }
    all.assertAll();
  }

  @Test
  void theYardstickItselfKnowsAnExponential() {
    Channel one =
        new Channel(
            "one",
            Transfer.between(1, 2),
            new Cells(0.01, List.of(new Cell(1, 0.05, null))),
            new Response.Amplitude(new Level(-80, 1, 0)),
            new Output(0, 10));
    LiteralVoltage pulse = new LiteralVoltage(new Envelope.Pulse(5, 0.02), null, Drive.UNITY);
    IntegratedMotion motion = new IntegratedMotion(pulse, one, 1, 1e-11);
    double top = 1 - Math.exp(-2);
    assertThat(motion.openness(0.01)).isEqualTo(1 - Math.exp(-1), within(1e-10));
    assertThat(motion.openness(0.02)).isEqualTo(top, within(1e-10));
    assertThat(motion.openness(0.07)).isEqualTo(top * Math.exp(-1), within(1e-10));
  }

  private static double worst(Sound sound, int index) {
    Stage stage = sound.stages().get(index);
    LiteralVoltage literal =
        new LiteralVoltage(sound.envelopeOf(index), sound.strikes(), stage.drive());
    IntegratedMotion expected =
        new IntegratedMotion(literal, stage.channel(), HORIZON_SECONDS, 1e-11);
    Motion motion =
        Motion.of(
            ControlVoltage.of(sound.envelopeOf(index), sound.strikes(), stage.drive()),
            stage.channel());
    double worst = 0;
    for (double t : times(expected.corners())) {
      worst = Math.max(worst, Math.abs(motion.openness(t) - expected.openness(t)));
      for (int i = 0; i < stage.channel().cells().list().size(); i++) {
        worst = Math.max(worst, Math.abs(motion.cell(i, t) - expected.cell(i, t)));
      }
    }
    return worst;
  }

  /** Times before the strike, at every corner, just beside it, and evenly and unevenly between. */
  private static List<Double> times(NavigableSet<Double> corners) {
    List<Double> times = new ArrayList<>(List.of(-1.0, -1e-9));
    Double from = corners.first();
    for (Double to : corners.tailSet(from, false)) {
      double length = to - from;
      for (double x : new double[] {0, 1e-9, 1e-6, 1e-4, 1e-3, 0.01, 0.03, 1 - 1e-6}) {
        times.add(from + x * length);
      }
      for (int i = 1; i < 20; i++) {
        times.add(from + i / 20.0 * length);
      }
      from = to;
    }
    times.add(from);
    return times;
  }
}
