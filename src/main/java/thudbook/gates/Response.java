package thudbook.gates;

/** What the openness of a gate moves. */
public enum Response {
  /** Level and cutoff. */
  BOTH,
  /** Level only: an amplifier. */
  AMPLITUDE,
  /** Cutoff only: a filter. */
  LOW_PASS;

  /** Whether the openness moves the level. */
  public boolean movesLevel() {
    return this != LOW_PASS;
  }

  /** Whether the openness moves a filter. */
  public boolean movesCutoff() {
    return this != AMPLITUDE;
  }
}
