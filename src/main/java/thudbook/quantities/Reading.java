package thudbook.quantities;

/** What reading a quantity came to: a number, or what is wrong with the text. */
public sealed interface Reading {
  /**
   * A number in range.
   *
   * @param si in the SI unit of its dimension
   */
  record Value(double si) implements Reading {}

  /**
   * A text that is refused.
   *
   * @param code a stable word for programs: {@code not-a-quantity}, {@code decimal-comma}, {@code
   *     unit-missing}, {@code wrong-unit}, {@code out-of-range}
   * @param expected what may stand there, in words that fit behind "expected"
   */
  record Refused(String code, String expected) implements Reading {}
}
