package thudbook.documents.tree;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Range;
import thudbook.quantities.Reading;

/** Reads single values of a tree; each gives null and a fault where something else stands. */
public final class Values {
  private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}(\\.0)?");

  private Values() {}

  /** A quantity: text with a unit, or a JSON number in SI units. */
  public static @Nullable Double quantity(Tree tree, Range range, Faults faults) {
    return quantity(tree, range, "", faults);
  }

  /**
   * A quantity that is one of several things that may stand here.
   *
   * @param others the other ones, in words that follow those of the range
   */
  public static @Nullable Double quantity(Tree tree, Range range, String others, Faults faults) {
    if (tree instanceof Tree.Digits number) {
      double si = Double.parseDouble(number.digits()) + 0.0;
      if (range.admits(si)) {
        return si;
      }
      faults.add(tree, "out-of-range", range.words() + others);
    } else if (tree instanceof Tree.Text text) {
      Reading reading = range.read(text.text());
      if (reading instanceof Reading.Value read) {
        return read.si();
      }
      Reading.Refused refused = (Reading.Refused) reading;
      if (refused.code().equals("decimal-comma")) {
        String shown = Faults.shown(text.text());
        faults.say(
            tree.place(),
            refused.code(),
            shown,
            refused.expected(),
            "found " + shown + ", write " + refused.expected());
      } else {
        String expected = others.isEmpty() ? refused.expected() : range.words() + others;
        faults.add(tree, refused.code(), expected);
      }
    } else {
      faults.add(tree, "wrong-type", range.words() + others);
    }
    return null;
  }

  /** A whole number. */
  public static @Nullable Integer whole(Tree tree, int least, int most, Faults faults) {
    String expected = "a whole number from " + least + " to " + most;
    String digits = "";
    if (tree instanceof Tree.Digits number) {
      digits = number.digits();
    } else if (tree instanceof Tree.Text text) {
      digits = text.text().strip();
    }
    if (WHOLE.matcher(digits).matches()) {
      int value = (int) Double.parseDouble(digits);
      if (value >= least && value <= most) {
        return value;
      }
      faults.add(tree, "out-of-range", expected);
    } else {
      faults.add(tree, "not-a-whole-number", expected);
    }
    return null;
  }

  /** One line of text without control characters, stripped; null also where it is blank. */
  public static @Nullable String line(Tree tree, int longest, Faults faults) {
    String expected = "text of 1 to " + longest + " characters in one line";
    if (!(tree instanceof Tree.Text text)) {
      faults.add(tree, "wrong-type", expected);
      return null;
    }
    String line = text.text().strip();
    if (line.codePoints().anyMatch(c -> !Texts.visible(c))) {
      faults.add(tree, "control-character", expected);
    } else if (line.codePointCount(0, line.length()) > longest) {
      int length = line.codePointCount(0, line.length());
      faults.add(tree.place(), "too-long", length + " characters", expected);
    } else if (!line.isEmpty()) {
      return line;
    }
    return null;
  }
}
