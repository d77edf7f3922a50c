package thudbook.predictions;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Strikes;
import thudbook.quantities.Check;
import thudbook.sources.Source;

/**
 * Everything that a prediction follows from.
 *
 * @param strikes null: one strike from rest
 * @param stages 1 to 4, in series
 * @param couplingHertz the output's coupling high-pass, 0 (none) to 1 kHz
 */
public record Sound(
    Source source,
    Envelope envelope,
    @Nullable Strikes strikes,
    List<Stage> stages,
    double couplingHertz) {
  /** The highest corner of the output's coupling, in hertz. */
  static final double HIGHEST_COUPLING_HERTZ = 1000;

  public Sound {
    stages = List.copyOf(stages);
    Check.inRange("number of stages", stages.size(), 1, 4);
    Check.inRange("coupling in hertz", couplingHertz, 0, HIGHEST_COUPLING_HERTZ);
    if (strikes != null) {
      for (Stage stage : stages) {
        if ((stage.envelope() == null ? envelope : stage.envelope()) instanceof Envelope.Recorded) {
          throw new IllegalArgumentException("a recorded control voltage can't be struck again");
        }
      }
    }
  }

  /** The envelope that drives a stage, its own or the sound's. */
  public Envelope envelopeOf(int stage) {
    Envelope own = stages.get(stage).envelope();
    return own == null ? envelope : own;
  }

  /** The same sound struck once, from rest. */
  public Sound struckOnce() {
    return strikes == null ? this : new Sound(source, envelope, null, stages, couplingHertz);
  }

  /** The same sound of another source. */
  public Sound with(Source other) {
    return new Sound(other, envelope, strikes, stages, couplingHertz);
  }
}
