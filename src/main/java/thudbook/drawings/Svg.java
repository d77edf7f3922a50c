package thudbook.drawings;

/**
 * Writes SVG: escapes text, writes coordinates to a tenth of a unit. Only classes and presentation
 * attributes are used, because the pages allow no inline style.
 */
final class Svg {
  private final StringBuilder out = new StringBuilder(8192);

  /** A start tag; attributes as names and values in turn. */
  Svg open(String name, Object... attributes) {
    tag(name, attributes);
    out.append('>');
    return this;
  }

  /** An end tag. */
  Svg close(String name) {
    out.append("</").append(name).append('>');
    return this;
  }

  /** An element without content. */
  Svg empty(String name, Object... attributes) {
    tag(name, attributes);
    out.append("/>");
    return this;
  }

  /** An element with text. */
  Svg text(String name, String text, Object... attributes) {
    open(name, attributes);
    escape(text, out);
    return close(name);
  }

  /** A straight line. */
  Svg line(String look, double x1, double y1, double x2, double y2) {
    return empty("path", "class", look, "d", new Path().move(x1, y1).line(x2, y2));
  }

  @Override
  public String toString() {
    return out.toString();
  }

  private void tag(String name, Object... attributes) {
    out.append('<').append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"");
      Object value = attributes[i + 1];
      escape(value instanceof Double number ? number(number) : value.toString(), out);
      out.append('"');
    }
  }

  /** A coordinate to a tenth, in its shortest form. */
  static String number(double value) {
    return tenths(Math.round(value * 10));
  }

  /** So many tenths as a decimal number: 123 is 12.3, −5 is -.5. */
  static String tenths(long tenths) {
    long size = Math.abs(tenths);
    String whole = size >= 10 || size == 0 ? Long.toString(size / 10) : "";
    return (tenths < 0 ? "-" : "") + whole + (size % 10 == 0 ? "" : "." + size % 10);
  }

  private static void escape(String text, StringBuilder out) {
    text.codePoints()
        .forEach(
            letter -> {
              switch (letter) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                // Control characters and lone surrogates are not allowed in XML at all.
                default -> out.appendCodePoint(isAllowed(letter) ? letter : 0xFFFD);
              }
            });
  }

  private static boolean isAllowed(int letter) {
    return letter == '\t'
        || letter == '\n'
        || letter == '\r'
        || (letter >= 0x20 && letter < 0xD800)
        || (letter >= 0xE000 && letter < 0xFFFE)
        || letter >= 0x10000;
  }

  /** The data of a path: relative moves from rounded places, so that rounding never adds up. */
  static final class Path {
    private final StringBuilder data = new StringBuilder();
    private long x;
    private long y;

    /** Starts a new line. */
    Path move(double toX, double toY) {
      x = Math.round(toX * 10);
      y = Math.round(toY * 10);
      data.append('M').append(tenths(x));
      separated(y);
      return this;
    }

    /** A straight line. */
    Path line(double toX, double toY) {
      long nextX = Math.round(toX * 10);
      long nextY = Math.round(toY * 10);
      if (nextX == x) {
        data.append('v').append(tenths(nextY - y));
      } else if (nextY == y) {
        data.append('h').append(tenths(nextX - x));
      } else {
        data.append('l').append(tenths(nextX - x));
        separated(nextY - y);
      }
      x = nextX;
      y = nextY;
      return this;
    }

    /** Back to the start of the line. */
    Path close() {
      data.append('z');
      return this;
    }

    private void separated(long value) {
      if (value >= 0) {
        data.append(' ');
      }
      data.append(tenths(value));
    }

    @Override
    public String toString() {
      return data.toString();
    }
  }
}
