package thudbook.benchmark;

/**
 * One line of the table.
 *
 * @param value with its unit
 * @param aim what was hoped for, or a dash
 */
record Figure(String name, String value, String aim) {
  /** A line of a table in Markdown. */
  String line() {
    return "| " + name + " | " + aim + " | " + value + " |";
  }
}
