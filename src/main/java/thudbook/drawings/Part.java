package thudbook.drawings;

import java.util.List;

/**
 * A part of the x axis, marked in the band above the first panel.
 *
 * @param from in the unit of the x axis
 * @param to not below {@code from}
 * @param look 1 to 5: the style sheet gives each its tint
 * @param name of the part
 * @param numbers what is told of it, in short pieces that may stand on lines of their own
 */
public record Part(double from, double to, int look, String name, List<String> numbers) {
  public Part {
    numbers = List.copyOf(numbers);
    if (!(to >= from)) {
      throw new IllegalArgumentException(
          "a part must not end before it starts: " + from + ", " + to);
    }
  }
}
