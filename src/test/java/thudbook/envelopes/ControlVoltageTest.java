package thudbook.envelopes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import thudbook.envelopes.Segment.Kind;

/**
 * Property: envelopes in closed form, by hand: straight lines, and a capacitor (63.212 % at τ; to 1
 * % in ln 100·τ; textbook).
 */
class ControlVoltageTest {
  private static final double INFINITY = Double.POSITIVE_INFINITY;

  private static ControlVoltage lone(Envelope envelope) {
    return ControlVoltage.of(envelope, null, Drive.UNITY);
  }

  private static List<Kind> kinds(ControlVoltage voltage) {
    return voltage.pieces().stream().map(piece -> piece.segment().kind()).toList();
  }

  @Test
  void aPulseIsHighForItsLengthAndThenZero() {
    ControlVoltage pulse = lone(new Envelope.Pulse(5, 0.004));
    assertThat(kinds(pulse)).containsExactly(Kind.HIGH, Kind.REST);
    assertThat(pulse.before(0)).isZero();
    assertThat(pulse.at(0)).isEqualTo(5);
    assertThat(pulse.before(0.004)).isEqualTo(5);
    assertThat(pulse.at(0.004)).isZero();
    assertThat(pulse.finalVolts()).isZero();
  }

  @Test
  void attackHoldDecayGoesThroughItsThreeSegments() {
    ControlVoltage voltage =
        lone(new Envelope.AttackHoldDecay(8, Rise.linear(0.01), 0.02, Fall.exponential(0.1)));
    assertThat(kinds(voltage)).containsExactly(Kind.ATTACK, Kind.HOLD, Kind.DECAY);
    assertThat(voltage.at(0.0025)).isCloseTo(2, within(1e-12));
    assertThat(voltage.at(0.02)).isCloseTo(8, within(1e-12));
    assertThat(voltage.at(0.03 + 0.1)).isCloseTo(0.08, within(1e-12));
    assertThat(voltage.at(0.03 + 0.1 / Math.log(100))).isCloseTo(8 * Math.exp(-1), within(1e-12));
    assertThat(voltage.pieces().get(2).segment())
        .isEqualTo(new Segment(Kind.DECAY, 0.03, 0.03 + 0.1));
  }

  @Test
  void noAttackIsAJumpAndNoHoldIsNoSegment() {
    ControlVoltage voltage =
        lone(new Envelope.AttackHoldDecay(8, Rise.linear(0), 0, Fall.exponential(0.1)));
    assertThat(kinds(voltage)).containsExactly(Kind.DECAY);
    assertThat(voltage.at(0)).isEqualTo(8);
  }

  @Test
  void anExponentialAttackIsACapacitorThatReachesOneAtItsTime() {
    double tau = 0.01 / Math.log(1.3 / 0.3);
    ControlVoltage voltage =
        lone(
            new Envelope.AttackHoldDecay(
                1, new Rise(0.01, Curve.EXPONENTIAL, 1.3), 1, Fall.exponential(0.1)));
    assertThat(voltage.at(tau)).isCloseTo(1.3 * 0.6321205588285577, within(1e-12));
    assertThat(voltage.before(0.01)).isCloseTo(1, within(1e-12));
    assertThat(voltage.at(0.02)).isCloseTo(1, within(1e-12));
  }

  @Test
  void sustainIsHeldUntilKeyUpAndAReleaseTakesItsFullTime() {
    Fall line = new Fall(0.1, Curve.LINEAR, 0.01);
    ControlVoltage voltage =
        lone(
            new Envelope.AttackDecaySustainRelease(
                10, Rise.linear(0.01), line, 0.4, 0.5, new Fall(0.2, Curve.LINEAR, 0.01)));
    assertThat(kinds(voltage))
        .containsExactly(Kind.ATTACK, Kind.DECAY, Kind.SUSTAIN, Kind.RELEASE, Kind.REST);
    assertThat(voltage.at(0.06)).isCloseTo(7, within(1e-12));
    assertThat(voltage.at(0.3)).isCloseTo(4, within(1e-12));
    assertThat(voltage.at(0.6)).isCloseTo(2, within(1e-12));
    assertThat(voltage.at(0.71)).isZero();
    assertThat(voltage.pieces().get(2).segment()).isEqualTo(new Segment(Kind.SUSTAIN, 0.11, 0.5));
    assertThat(voltage.pieces().get(4).segment())
        .isEqualTo(new Segment(Kind.REST, 0.5 + 0.2, INFINITY));
  }

  @Test
  void keyUpInTheAttackReleasesFromTheLevelReached() {
    ControlVoltage voltage =
        lone(
            new Envelope.AttackDecaySustainRelease(
                10, Rise.linear(0.1), Fall.exponential(0.1), 0.4, 0.05, Fall.exponential(0.1)));
    assertThat(kinds(voltage)).containsExactly(Kind.ATTACK, Kind.RELEASE);
    assertThat(voltage.at(0.05)).isCloseTo(5, within(1e-12));
    assertThat(voltage.at(0.15)).isCloseTo(0.05, within(1e-12));
    assertThat(voltage.pieces().get(0).segment().nominalEndSeconds()).isEqualTo(0.1);
  }

  /** A key that is let go exactly at the end of the attack leaves no decay; one later does. */
  @Test
  void keyUpAtTheEndOfTheAttackLeavesNoDecay() {
    ControlVoltage at =
        lone(
            new Envelope.AttackDecaySustainRelease(
                10, Rise.linear(0.125), Fall.exponential(0.1), 0.4, 0.125, Fall.exponential(0.1)));
    assertThat(kinds(at)).containsExactly(Kind.ATTACK, Kind.RELEASE);
    ControlVoltage later =
        lone(
            new Envelope.AttackDecaySustainRelease(
                10, Rise.linear(0.125), Fall.exponential(0.1), 0.4, 0.25, Fall.exponential(0.1)));
    assertThat(kinds(later)).containsExactly(Kind.ATTACK, Kind.DECAY, Kind.RELEASE);
    assertThat(later.pieces().get(1).segment()).isEqualTo(new Segment(Kind.DECAY, 0.125, 0.225));
    Envelope cut =
        new Envelope.AttackDecaySustainRelease(
            10, Rise.linear(0.125), Fall.exponential(0.5), 0.4, 0.25, Fall.exponential(0.1));
    assertThat(lone(cut).pieces().get(1).segment()).isEqualTo(new Segment(Kind.DECAY, 0.125, 0.25));
  }

  @Test
  void aStrikeRestartsFromTheLevelReachedOrFromZero() {
    Envelope envelope =
        new Envelope.AttackHoldDecay(10, Rise.linear(0.1), 0, new Fall(0.2, Curve.LINEAR, 0.01));
    ControlVoltage level =
        ControlVoltage.of(envelope, new Strikes.Every(0.2, 2, Strikes.Restart.LEVEL), Drive.UNITY);
    // At 0.2 s the line has fallen to half: the attack goes on from there at its own rate.
    assertThat(level.at(0.2)).isCloseTo(5, within(1e-12));
    assertThat(level.at(0.225)).isCloseTo(7.5, within(1e-12));
    assertThat(level.at(0.25)).isCloseTo(10, within(1e-12));
    assertThat(level.at(0.35)).isCloseTo(5, within(1e-12));
    ControlVoltage zero =
        ControlVoltage.of(envelope, new Strikes.Every(0.2, 2, Strikes.Restart.ZERO), Drive.UNITY);
    assertThat(zero.before(0.2)).isCloseTo(5, within(1e-12));
    assertThat(zero.at(0.2)).isZero();
    assertThat(zero.at(0.3)).isCloseTo(10, within(1e-12));
  }

  @Test
  void aStrikeWithinAPulseOrAtItsEndKeepsItHigh() {
    Envelope pulse = new Envelope.Pulse(5, 0.25);
    for (double every : new double[] {0.125, 0.25}) {
      ControlVoltage voltage =
          ControlVoltage.of(pulse, new Strikes.Every(every, 2, Strikes.Restart.LEVEL), Drive.UNITY);
      assertThat(kinds(voltage)).containsExactly(Kind.HIGH, Kind.HIGH, Kind.REST);
      assertThat(voltage.at(every)).isEqualTo(5);
      assertThat(voltage.before(every + 0.25)).isEqualTo(5);
      assertThat(voltage.at(every + 0.25)).isZero();
    }
    ControlVoltage apart =
        ControlVoltage.of(pulse, new Strikes.Every(0.5, 2, Strikes.Restart.LEVEL), Drive.UNITY);
    assertThat(kinds(apart)).containsExactly(Kind.HIGH, Kind.REST, Kind.HIGH, Kind.REST);
    assertThat(apart.at(0.3)).isZero();
  }

  @Test
  void railsCutALineOnBothSides() {
    Envelope line =
        new Envelope.Recorded(List.of(new Envelope.Sample(0, -15), new Envelope.Sample(3, 15)));
    ControlVoltage voltage = ControlVoltage.of(line, null, new Drive(1, 0, 5));
    assertThat(voltage.restVolts()).isEqualTo(-5);
    assertThat(voltage.pieces()).hasSize(4);
    assertThat(voltage.pieces().get(1).start()).isCloseTo(1, within(1e-12));
    assertThat(voltage.pieces().get(2).start()).isCloseTo(2, within(1e-12));
    assertThat(voltage.at(0.5)).isEqualTo(-5);
    assertThat(voltage.at(1.5)).isCloseTo(0, within(1e-12));
    assertThat(voltage.at(2.5)).isEqualTo(5);
    assertThat(voltage.at(9)).isEqualTo(5);
    ControlVoltage falling = ControlVoltage.of(line, null, new Drive(-1, 0, 5));
    assertThat(falling.at(0.5)).isEqualTo(5);
    assertThat(falling.at(1.25)).isCloseTo(2.5, within(1e-12));
    assertThat(falling.at(2.5)).isEqualTo(-5);
  }

  /** A voltage that only touches a rail is not cut; one that is wholly beyond is held there. */
  @Test
  void railsThatAreOnlyTouchedCutNothing() {
    Envelope line =
        new Envelope.Recorded(List.of(new Envelope.Sample(0, -5), new Envelope.Sample(2, 5)));
    assertThat(ControlVoltage.of(line, null, new Drive(1, 0, 5)).pieces()).hasSize(2);
    ControlVoltage above = ControlVoltage.of(line, null, new Drive(1, 10, 5));
    assertThat(above.pieces()).hasSize(2);
    assertThat(above.pieces()).allMatch(Piece::isConstant);
    assertThat(above.at(1)).isEqualTo(5);
    assertThat(above.finalVolts()).isEqualTo(5);
    ControlVoltage below = ControlVoltage.of(line, null, new Drive(1, -10, 5));
    assertThat(below.pieces()).hasSize(2);
    assertThat(below.at(1)).isEqualTo(-5);
    ControlVoltage held = ControlVoltage.of(new Envelope.Pulse(20, 1), null, new Drive(-1, 0, 12));
    assertThat(held.at(0.5)).isEqualTo(-12);
    assertThat(held.at(1.5)).isZero();
  }

  @Test
  void aRecordingCannotBeStruck() {
    Envelope recorded =
        new Envelope.Recorded(List.of(new Envelope.Sample(0, 1), new Envelope.Sample(1, 0)));
    Strikes strikes = new Strikes.Every(1, 2, Strikes.Restart.LEVEL);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ControlVoltage.of(recorded, strikes, Drive.UNITY));
  }

  @Test
  void aPieceIsInvertedAndCut() {
    Segment segment = new Segment(Kind.DECAY, 1, 3);
    Piece line = Piece.line(1, 3, 4, -2, segment);
    assertThat(line.secondsUntil(1)).isEqualTo(1.5);
    assertThat(line.direction()).isEqualTo(-1);
    assertThat(line.part(0.5, 1).first()).isEqualTo(3);
    assertThat(line.part(0.5, 1).end()).isEqualTo(2);
    assertThat(line.part(0.5, 2).end()).isEqualTo(3);
    Piece charge = Piece.exponential(0, INFINITY, 0, 4, 0.5, segment);
    assertThat(charge.direction()).isEqualTo(1);
    assertThat(charge.first()).isZero();
    assertThat(charge.last()).isEqualTo(4);
    assertThat(charge.secondsUntil(2)).isCloseTo(0.5 * Math.log(2), within(1e-15));
    assertThat(charge.part(0.5, INFINITY).first()).isCloseTo(4 * (1 - Math.exp(-1)), within(1e-15));
    assertThat(charge.part(0.5, INFINITY).end()).isInfinite();
    Piece constant = Piece.constant(0, 1, 7, segment);
    assertThat(constant.isConstant()).isTrue();
    assertThat(constant.direction()).isZero();
    assertThat(line.isConstant()).isFalse();
    assertThat(charge.isConstant()).isFalse();
  }

  @Test
  void theLastPieceThatHasBegunIsFound() {
    double[] starts = {0, 1, 1, 2, 5};
    for (double time : new double[] {-1, 0, 0.5, 1, 1.5, 2, 4.9, 5, 9}) {
      int last = 0;
      for (int i = 0; i < starts.length; i++) {
        last = starts[i] <= time ? i : last;
      }
      assertThat(Piece.lastBegun(starts.length, i -> starts[i], time)).isEqualTo(last);
    }
  }
}
