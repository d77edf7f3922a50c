package thudbook.plots;

import java.util.List;

/**
 * The numbers of a plot, ready to be read. The first cell of each row is its heading.
 *
 * @param caption what the table tells
 * @param header names of the columns, with units
 * @param rows as many cells as the header has
 */
public record DataTable(String caption, List<String> header, List<List<String>> rows) {
  public DataTable {
    header = List.copyOf(header);
    rows = rows.stream().map(List::copyOf).toList();
    for (List<String> row : rows) {
      if (row.size() != header.size()) {
        throw new IllegalArgumentException(
            "a row of " + header.size() + " cells was expected, found " + row.size());
      }
    }
  }
}
