package thudbook.drawings;

/**
 * How large a plot is drawn. Text keeps its size only if the page shows the plot at about its
 * width, so there is one for wide pages and one for phones.
 *
 * @param name class of the drawing, by which the style sheet shows or hides it
 * @param width in user units, pixels at full size
 * @param panels height of all panels together, in user units
 * @param text size of the text, in user units
 * @param left room for the labels of the y axes
 * @param right room for the labels of guides; 0: they stand inside, on the line
 * @param stacked whether the numbers of parts stand on lines of their own
 */
public record Format(
    String name,
    double width,
    double panels,
    double text,
    double left,
    double right,
    boolean stacked) {
  /** For pages from about 45 rem, and for paper. */
  public static final Format WIDE = new Format("plot-wide", 880, 370, 13, 46, 140, false);

  /** For half a wide page, beside a form. */
  public static final Format BESIDE = new Format("plot-beside", 560, 340, 12.5, 40, 0, true);

  /** For phones, 320 to 390 pixels wide. */
  public static final Format NARROW = new Format("plot-narrow", 320, 330, 12, 32, 0, true);

  /** For a plot in a column of its own that is shown at any width. */
  public static final Format COLUMN = new Format("plot-column", 360, 240, 12, 40, 0, true);
}
