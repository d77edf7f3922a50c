package thudbook.envelopes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.predictions.Sound;
import thudbook.yardstick.LiteralVoltage;
import thudbook.yardstick.RandomSounds;

/**
 * Property: the exact pieces agree with the definition of a control voltage, written down literally
 * and evaluated point by point, on seeded random envelopes, strikes and drives.
 */
class DefinitionAgreementTest {
  private static final double[] INSIDE = {1e-6, 0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 1 - 1e-6};

  @ParameterizedTest
  @ValueSource(longs = {601, 602})
  void everyPointIsThatOfTheDefinition(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    for (int i = 0; i < 150; i++) {
      Sound sound = sounds.next();
      Drive drive = sound.stages().get(0).drive();
      String what = "seed " + seed + " sound " + i + " " + sound.envelope();
      LiteralVoltage literal = new LiteralVoltage(sound.envelope(), sound.strikes(), drive);
      ControlVoltage exact = ControlVoltage.of(sound.envelope(), sound.strikes(), drive);
      assertThat(exact.restVolts()).as(what).isCloseTo(literal.restVolts(), within(1e-12));
      assertThat(exact.at(-1e-9)).as(what).isEqualTo(exact.restVolts());
      assertThat(exact.before(0)).as(what).isEqualTo(exact.restVolts());
      assertThat(exact.finalVolts()).as(what).isCloseTo(literal.finalVolts(), within(1e-12));
      for (LiteralVoltage.Segment segment : literal.segments()) {
        double end = Math.min(segment.end(), segment.start() + 2);
        for (double share : INSIDE) {
          double time = segment.start() + share * (end - segment.start());
          double volts = literal.at(segment, time);
          assertThat(exact.at(time)).as(what).isCloseTo(volts, within(1e-9));
          assertThat(exact.before(time)).as(what).isCloseTo(volts, within(1e-9));
        }
      }
    }
  }

  /** Segments carry their nominal ends, which a fall that is cut by the next strike keeps. */
  @ParameterizedTest
  @ValueSource(longs = {603, 604})
  void fallingSegmentsHaveTheirNominalTimes(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    for (int i = 0; i < 150; i++) {
      Sound sound = sounds.next();
      LiteralVoltage literal = new LiteralVoltage(sound.envelope(), sound.strikes(), Drive.UNITY);
      ControlVoltage exact = ControlVoltage.of(sound.envelope(), sound.strikes(), Drive.UNITY);
      for (LiteralVoltage.Segment wanted : literal.segments()) {
        if (wanted.kind() == LiteralVoltage.Kind.DECAY
            || wanted.kind() == LiteralVoltage.Kind.RELEASE) {
          double end = Math.min(wanted.end(), wanted.nominalEnd());
          Segment found = segmentAt(exact, (wanted.start() + end) / 2);
          assertThat(found.kind().name()).isEqualTo(wanted.kind().name());
          assertThat(found.kind().falls()).isTrue();
          assertThat(found.startSeconds()).isCloseTo(wanted.start(), within(1e-9));
          assertThat(found.nominalEndSeconds()).isCloseTo(wanted.nominalEnd(), within(1e-9));
        }
      }
    }
  }

  private static Segment segmentAt(ControlVoltage voltage, double seconds) {
    return voltage.pieces().stream()
        .filter(piece -> piece.start() <= seconds && seconds < piece.end())
        .findFirst()
        .orElseThrow()
        .segment();
  }

  /** Pieces tile the time from 0 to infinity, and none is empty. */
  @Test
  void piecesFollowOneAnotherWithoutGaps() {
    RandomSounds sounds = RandomSounds.extreme(605);
    for (int i = 0; i < 200; i++) {
      Sound sound = sounds.next();
      Drive drive = sound.stages().get(0).drive();
      List<Piece> pieces = ControlVoltage.of(sound.envelope(), sound.strikes(), drive).pieces();
      assertThat(pieces.get(0).start()).isZero();
      for (int k = 0; k + 1 < pieces.size(); k++) {
        assertThat(pieces.get(k).end()).isGreaterThanOrEqualTo(pieces.get(k).start());
        assertThat(pieces.get(k + 1).start())
            .isCloseTo(pieces.get(k).end(), within(1e-12 + 1e-12 * pieces.get(k).end()));
      }
      assertThat(pieces.get(pieces.size() - 1).end()).isInfinite();
    }
  }
}
