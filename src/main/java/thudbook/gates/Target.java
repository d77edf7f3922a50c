package thudbook.gates;

import thudbook.envelopes.Piece;

/**
 * What a control voltage tells a gate on a stretch of time between two corners: the openness to go
 * to.
 *
 * @param piece the target over time, a constant, a line or a constant plus an exponential
 * @param zone where the control voltage is
 */
public record Target(Piece piece, Zone zone) {
  /** Where a control voltage is, seen from a transfer. */
  public enum Zone {
    /** At or below the threshold. */
    SHUT,
    /** Above the threshold, below the ceiling. */
    BETWEEN,
    /** At or above the ceiling. */
    CEILING
  }
}
