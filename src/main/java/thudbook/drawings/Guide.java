package thudbook.drawings;

/**
 * A level line across a panel, with its label at the right end.
 *
 * @param at in the unit of the panel's axis
 * @param kind how it is drawn
 */
public record Guide(double at, String label, Kind kind) {
  /** What a guide stands for, which the style sheet tells apart by dashes. */
  public enum Kind {
    /** A limit that is crossed: dashes. */
    LIMIT,
    /** Where something rests: dots. */
    REST
  }
}
