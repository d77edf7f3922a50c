package thudbook.envelopes;

/** How a segment of an envelope gets where it goes. */
public enum Curve {
  LINEAR,
  EXPONENTIAL
}
