package thudbook.documents.tree;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Dimension;
import thudbook.quantities.Range;

/** The units of a knob, as the unit that documents write for each dimension. */
public final class Units {
  private static final String NONE = "number";
  private static final List<Dimension> KNOWN =
      List.of(
          Dimension.TIME,
          Dimension.FREQUENCY,
          Dimension.VOLTAGE,
          Dimension.LEVEL,
          Dimension.SHARE,
          Dimension.RATIO,
          Dimension.TEMPO,
          Dimension.MINUTES,
          Dimension.NUMBER);

  public static final String EXPECTED = Choice.expected(KNOWN.stream().map(Units::word).toList());

  private Units() {}

  public static String word(Dimension dimension) {
    return dimension == Dimension.NUMBER ? NONE : dimension.unit();
  }

  public static @Nullable Dimension read(Tree tree, Faults faults) {
    for (Dimension dimension : KNOWN) {
      if (tree instanceof Tree.Text text && word(dimension).equals(text.text().strip())) {
        return dimension;
      }
    }
    faults.add(tree, "unknown-word", EXPECTED);
    return null;
  }

  /** What may be printed at the ends of a knob. */
  public static Range range(Dimension dimension) {
    return switch (dimension) {
      case TIME -> Range.of(dimension, 0, 3600);
      case FREQUENCY -> Range.of(dimension, 0, 200_000);
      case VOLTAGE -> Range.of(dimension, -100, 100);
      case LEVEL -> Range.of(dimension, -140, 60);
      case SHARE -> Range.of(dimension, -10, 10);
      case RATIO -> Range.of(dimension, 0, 1e6);
      case TEMPO -> Range.of(dimension, 0, 10_000);
      case MINUTES -> Range.of(dimension, 0, 600);
      case ANGLE, NUMBER -> Range.of(dimension, -1e6, 1e6);
    };
  }
}
