package thudbook.drawings;

/** A rectangle on the page, in user units, y downwards. */
record Box(double left, double top, double right, double bottom) {
  boolean overlaps(Box other) {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }

  double width() {
    return right - left;
  }

  double height() {
    return bottom - top;
  }

  /** The box of a text that starts at x and stands on y. */
  static Box ofText(String text, double size, double x, double baseline) {
    return new Box(x, baseline - 0.8 * size, x + TextWidth.of(text, size), baseline + 0.25 * size);
  }
}
