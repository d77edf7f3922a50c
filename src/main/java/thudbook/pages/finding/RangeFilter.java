package thudbook.pages.finding;

import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thudbook.library.Bins;
import thudbook.library.Limits;
import thudbook.library.Quantity;
import thudbook.wording.QuantityWords;

/**
 * From and to of one number, with a small histogram of what there is.
 *
 * @param key the name in addresses
 * @param words what the histogram shows
 * @param heights of its bars, 0 to {@value #HEIGHT}; empty: not counted
 * @param inside which bars lie within the limits
 */
public record RangeFilter(
    String key,
    String name,
    Field from,
    Field to,
    String words,
    List<Integer> heights,
    List<Boolean> inside) {
  /** The histogram's height in its own units. */
  public static final int HEIGHT = 28;

  /** One end, as a field of a form. */
  public record Field(String name, String text, String fault) {}

  static RangeFilter of(
      Quantity quantity, @Nullable Limits limits, Field from, Field to, List<Integer> bars) {
    int most = bars.stream().mapToInt(bar -> bar).max().orElse(0);
    Bins bins = quantity.bins();
    List<Integer> heights =
        bars.stream()
            .map(bar -> bar == 0 ? 0 : Math.max(2, (int) Math.round((double) HEIGHT * bar / most)))
            .toList();
    List<Boolean> inside =
        IntStream.range(0, bars.size())
            .mapToObj(
                bar ->
                    limits == null
                        || ((limits.from() == null
                                || bins.edge(bar + 1) > limits.from()
                                || bar == bars.size() - 1)
                            && (limits.to() == null || bins.edge(bar) < limits.to() || bar == 0)))
            .toList();
    return new RangeFilter(
        quantity.key(),
        QuantityWords.name(quantity),
        from,
        to,
        words(quantity, bars),
        heights,
        inside);
  }

  /** What the histogram shows: how many, and where the middle half of them lies. */
  private static String words(Quantity quantity, List<Integer> bars) {
    int total = bars.stream().mapToInt(bar -> bar).sum();
    if (total == 0) {
      return "No recipe has it.";
    }
    String recipes = total == 1 ? "1 recipe" : total + " recipes";
    return recipes
        + ", half of them between "
        + QuantityWords.said(quantity, quantity.bins().edge(quartile(bars, total * 0.25)))
        + " and "
        + QuantityWords.said(quantity, quantity.bins().edge(quartile(bars, total * 0.75) + 1));
  }

  private static int quartile(List<Integer> bars, double count) {
    double seen = 0;
    for (int bar = 0; bar < bars.size(); bar++) {
      seen += bars.get(bar);
      if (seen >= count) {
        return bar;
      }
    }
    return bars.size() - 1;
  }

  /** The outline of the bars within the limits, or of those outside, each 5 wide with a gap. */
  public String bars(boolean within) {
    StringBuilder path = new StringBuilder();
    for (int bar = 0; bar < heights.size(); bar++) {
      if (heights.get(bar) > 0 && inside.get(bar) == within) {
        path.append('M').append(5 * bar).append(' ').append(HEIGHT);
        path.append('v').append(-heights.get(bar)).append("h4v").append(heights.get(bar));
        path.append('z');
      }
    }
    return path.toString();
  }

  /** Where the axis of the histogram begins, as an example of what may be typed. */
  public String least() {
    return end(0);
  }

  /** Where it ends. */
  public String most() {
    return end(Bins.COUNT);
  }

  private String end(int edge) {
    Quantity quantity = Quantity.ofKey(key).orElseThrow();
    return quantity.dimension().say(quantity.bins().edge(edge));
  }

  /** Whether anything is asked of it, or was in vain. */
  public boolean isUsed() {
    return !from.text().isEmpty() || !to.text().isEmpty();
  }
}
