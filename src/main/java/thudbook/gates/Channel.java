package thudbook.gates;

/**
 * One channel of a gate: everything that its output follows from.
 *
 * @param name as printed or written on it
 * @param transfer how far a control voltage tells it to open
 * @param cells how it follows
 * @param response what its openness moves
 * @param output what it does to its output besides
 */
public record Channel(
    String name, Transfer transfer, Cells cells, Response response, Output output) {
  /** Level and cutoff over openness. */
  public Law law() {
    return new Law(this);
  }

  /** The level at an openness from 0 to 1: {@link Law#level}. */
  public double level(double openness) {
    return law().level(openness);
  }

  /** The cutoff at an openness from 0 to 1 in hertz: {@link Law#cutoffHertz}. */
  public double cutoffHertz(double openness) {
    return law().cutoffHertz(openness);
  }
}
