package thudbook.envelopes;

/**
 * One segment of an envelope as it was really run through.
 *
 * @param kind what it is
 * @param startSeconds when it began
 * @param nominalEndSeconds its start plus its set time; for a decay that key up cuts short, key up
 */
public record Segment(Kind kind, double startSeconds, double nominalEndSeconds) {
  /** The kinds of segments. */
  public enum Kind {
    ATTACK,
    HOLD,
    DECAY,
    SUSTAIN,
    RELEASE,
    /** The high part of a pulse. */
    HIGH,
    /** Nothing left to run. */
    REST,
    /** Between two samples of a recorded voltage, or after the last one. */
    SAMPLES;

    /** Whether the envelope falls at its own pace here: decay or release. */
    public boolean falls() {
      return this == DECAY || this == RELEASE;
    }
  }
}
