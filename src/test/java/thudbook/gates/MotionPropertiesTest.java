package thudbook.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.yardstick.IntegratedMotion;
import thudbook.yardstick.LiteralVoltage;
import thudbook.yardstick.RandomSounds;

/**
 * Property test: what must hold of every motion of cells, on seeded random sounds, and exponentials
 * in a resistor and a capacitor (63.212 % at τ, 10 % to 90 % in ln 9·τ; textbook, IEC 60469).
 */
class MotionPropertiesTest {
  @Tag("long")
  @ParameterizedTest
  @ValueSource(longs = {401, 402, 403})
  void cellsFollowTheirTarget(long seed) {
    RandomSounds sounds = seed == 403 ? RandomSounds.extreme(seed) : RandomSounds.usual(seed);
    for (int i = 0; i < 60; i++) {
      Sound sound = sounds.next();
      Stage stage = sound.stages().get(0);
      ControlVoltage voltage =
          ControlVoltage.of(sound.envelopeOf(0), sound.strikes(), stage.drive());
      Motion motion = Motion.of(voltage, stage.channel());
      String what = "seed " + seed + " sound " + i + " " + sound;
      for (double t = 1e-6; t < 70; t *= 1.02) {
        assertThat(motion.openness(t)).as(what).isBetween(0.0, 1.0);
        assertThat(voltage.at(t))
            .as(what)
            .isBetween(-stage.drive().railVolts(), stage.drive().railVolts());
        assertFollows(what, voltage, motion, stage.channel(), t);
      }
    }
  }

  /** Over a step too short for a corner, a cell never moves away from its target. */
  private static void assertFollows(
      String what, ControlVoltage voltage, Motion motion, Channel channel, double from) {
    double to = from * (1 + 1e-7);
    double before = target(channel, voltage.at(from));
    double after = target(channel, voltage.at(to));
    for (int cell = 0; cell < channel.cells().list().size(); cell++) {
      double start = motion.cell(cell, from);
      double end = motion.cell(cell, to);
      if (start > Math.max(before, after)) {
        assertThat(end).as(what).isLessThanOrEqualTo(start + 1e-14);
      }
      if (start < Math.min(before, after)) {
        assertThat(end).as(what).isGreaterThanOrEqualTo(start - 1e-14);
      }
    }
  }

  private static double target(Channel channel, double volts) {
    LiteralVoltage none = new LiteralVoltage(new Envelope.Pulse(0, 1e-6), null, Drive.UNITY);
    return new IntegratedMotion(none, channel, 0, 1).target(volts);
  }

  @Test
  void equalTimeConstantsAreTheLimitOfNearlyEqualOnes() {
    double own = 0.02;
    double decay = own * Math.log(100); // An exponential to 1 % with the cell's time constant.
    Envelope falling = decay(decay);
    for (double t : new double[] {1e-3, 0.01, 0.05, 0.2}) {
      double equal = motion(falling, own, own).openness(t);
      for (double off : new double[] {1e-3, 1e-5, 1e-7, 1e-9, 1e-11, 1e-13, 1e-15}) {
        double near = motion(falling, own, own * (1 + off)).openness(t);
        double nearly = motion(falling, own * (1 - off), own).openness(t);
        assertThat(near).as("release off by " + off).isEqualTo(equal, within(off + 1e-13));
        assertThat(nearly).as("opening off by " + off).isEqualTo(equal, within(off + 1e-13));
      }
    }
    Envelope rising =
        new Envelope.AttackHoldDecay(
            4, new Rise(own * Math.log(1.3 / 0.3), Curve.EXPONENTIAL, 1.3), 0, fall(0.1));
    double equal = motion(rising, own, 0.1).openness(0.02);
    for (double off : new double[] {1e-4, 1e-8, 1e-12}) {
      assertThat(motion(rising, own * (1 + off), 0.1).openness(0.02))
          .isEqualTo(equal, within(off + 1e-13));
    }
  }

  @Test
  void aCellIsAResistorAndACapacitor() {
    Envelope pulse = new Envelope.Pulse(10, 1);
    double tau = 0.01;
    Motion motion = motion(pulse, tau, 0.05);
    assertThat(motion.openness(tau)).isEqualTo(0.63212, within(5e-6));
    List<Double> crossings = new ArrayList<>();
    for (double level : new double[] {0.1, 0.9}) {
      double low = 0;
      double high = 1;
      for (int i = 0; i < 100; i++) {
        double middle = (low + high) / 2;
        if (motion.openness(middle) < level) {
          low = middle;
        } else {
          high = middle;
        }
      }
      crossings.add(high);
    }
    assertThat(crossings.get(1) - crossings.get(0)).isEqualTo(2.197225 * tau, within(1e-6 * tau));
    double[] lifetimes = {2.302585, 4.605170, 6.907755};
    for (int k = 0; k < 3; k++) {
      double level = 20 * Math.log10(motion.openness(1 + lifetimes[k] * 0.05));
      assertThat(level).isEqualTo(-20.0 * (k + 1), within(1e-5));
    }
  }

  private static Envelope decay(double seconds) {
    return new Envelope.AttackHoldDecay(4, new Rise(0, Curve.LINEAR, 1.3), 0, fall(seconds));
  }

  private static Fall fall(double seconds) {
    return new Fall(seconds, Curve.EXPONENTIAL, 0.01);
  }

  private static Motion motion(Envelope envelope, double opening, double release) {
    Channel channel =
        new Channel(
            "one cell",
            Transfer.between(0, 5),
            new Cells(opening, List.of(new Cell(1, release, null))),
            new Response.Amplitude(new Level(-100, 1, 0)),
            new Output(0, 10));
    return Motion.of(ControlVoltage.of(envelope, null, Drive.UNITY), channel);
  }
}
