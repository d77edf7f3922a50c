package thudbook.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.ControlVoltage;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.yardstick.LiteralVoltage;
import thudbook.yardstick.RandomSounds;

/**
 * Property: motions agree with stepping, dy = (u − y)·(1 − e^(−h/T)) with the target read off the
 * knots in the middle of each step, on seeded random sounds. Quicker and coarser than the
 * integrator: it is for finding mistakes soon, not for the last digits.
 */
class SteppedAgreementTest {
  private static final double STEP = 2e-5;
  private static final int STEPS = 10_000;

  @ParameterizedTest
  @ValueSource(longs = {611, 612})
  void everyCellAgreesWithStepping(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    for (int i = 0; i < 25; i++) {
      Sound sound = sounds.next();
      Stage stage = sound.stages().get(0);
      LiteralVoltage literal = new LiteralVoltage(sound.envelope(), sound.strikes(), stage.drive());
      Motion motion =
          Motion.of(
              ControlVoltage.of(sound.envelope(), sound.strikes(), stage.drive()), stage.channel());
      assertAgrees("seed " + seed + " sound " + i, stage.channel(), literal, motion);
    }
  }

  private static void assertAgrees(
      String what, Channel channel, LiteralVoltage literal, Motion motion) {
    List<Cell> cells = channel.cells().list();
    double[] state = new double[cells.size()];
    Arrays.fill(state, target(channel.transfer(), literal.restVolts()));
    for (int k = 0; k < STEPS; k++) {
      double wanted = target(channel.transfer(), literal.at((k + 0.5) * STEP));
      for (int c = 0; c < state.length; c++) {
        Double own = cells.get(c).openingSeconds();
        double opening = own == null ? channel.cells().openingSeconds() : own;
        double time = wanted > state[c] ? opening : cells.get(c).releaseSeconds();
        state[c] += (wanted - state[c]) * (1 - Math.exp(-STEP / time));
      }
      if (k % 199 == 0) {
        double openness = 0;
        for (int c = 0; c < state.length; c++) {
          // A jump within a step is told half a step wrong: the quickest cell takes 0.3 ms.
          assertThat(motion.cell(c, (k + 1) * STEP))
              .as(what)
              .isEqualTo(state[c], within(STEP / 3e-4));
          openness += cells.get(c).share() * state[c];
        }
        assertThat(motion.openness((k + 1) * STEP))
            .as(what)
            .isEqualTo(openness, within(STEP / 3e-4));
      }
    }
  }

  private static double target(Transfer transfer, double volts) {
    List<Transfer.Knot> knots = transfer.knots();
    if (volts <= knots.get(0).volts()) {
      return 0;
    }
    for (int i = 1; i < knots.size(); i++) {
      Transfer.Knot low = knots.get(i - 1);
      Transfer.Knot high = knots.get(i);
      if (volts < high.volts()) {
        double share = (volts - low.volts()) / (high.volts() - low.volts());
        return low.openness() + share * (high.openness() - low.openness());
      }
    }
    return 1;
  }
}
