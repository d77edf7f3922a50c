package thudbook.pages.sharing;

import java.util.List;
import java.util.stream.IntStream;
import thudbook.documents.exchange.Import;

/**
 * What would change, as it is shown.
 *
 * @param address where the form goes
 * @param rows the first of the documents
 * @param more how many are not shown
 * @param leftOut names of files that were left out; empty: none
 * @param columns how the columns of tables were understood
 */
public record ImportSheet(
    String address,
    String summary,
    List<Row> rows,
    int more,
    String leftOut,
    List<String> columns,
    boolean canImport) {
  /** A longer page would not be read. */
  static final int MOST_ROWS = 500;

  private static final int MOST_NAMES = 10;

  /**
   * A document.
   *
   * @param number its place among all that came, from 0
   */
  public record Row(int number, Import.Entry entry) {
    /** What it is to the notebook, in a word or two. */
    public String word() {
      return switch (entry.kind()) {
        case NEW -> "new";
        case SAME -> "same as here";
        case CHANGES -> "changes";
        case CONFLICT -> "in conflict";
      };
    }

    /** The style of its row. */
    public String style() {
      return entry.kind() == Import.Kind.CONFLICT ? "import-conflict" : "import";
    }
  }

  static ImportSheet of(String address, PendingImports.Pending pending) {
    List<Import.Entry> entries = pending.documents().entries();
    int shown = Math.min(MOST_ROWS, entries.size());
    return new ImportSheet(
        address,
        summary(pending),
        IntStream.range(0, shown).mapToObj(i -> new Row(i, entries.get(i))).toList(),
        entries.size() - shown,
        names(pending.leftOut()),
        pending.columns(),
        entries.stream().anyMatch(Import.Entry::canBeTaken));
  }

  private static String summary(PendingImports.Pending pending) {
    Import documents = pending.documents();
    StringBuilder summary = new StringBuilder();
    summary.append(documents.count(Import.Kind.NEW)).append(" new, ");
    summary.append(documents.count(Import.Kind.CHANGES)).append(" changed, ");
    summary.append(documents.count(Import.Kind.SAME)).append(" the same as here");
    long conflicts = documents.count(Import.Kind.CONFLICT);
    if (conflicts > 0) {
      summary.append(", ").append(conflicts).append(" in conflict, which stay out");
    }
    int photos = pending.photos().size();
    if (photos > 0) {
      summary.append(photos == 1 ? "; with 1 photo" : "; with " + photos + " photos");
    }
    return summary.append('.').toString();
  }

  private static String names(List<String> leftOut) {
    String first = String.join(", ", leftOut.subList(0, Math.min(MOST_NAMES, leftOut.size())));
    int more = leftOut.size() - MOST_NAMES;
    return more > 0 ? first + " and " + more + " more" : first;
  }
}
