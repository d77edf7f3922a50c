package thudbook.pages.history;

import java.util.UUID;
import thudbook.changes.Kept;

/**
 * A thing of a noun that has no page of its own, as its text.
 *
 * @param folder of the addresses of such things: {@code gates}
 * @param document its canonical text
 */
public record PlainSheet(
    UUID id,
    String title,
    String folder,
    String slug,
    String document,
    long version,
    boolean binned) {
  static PlainSheet of(Kept<?> kept, String folder) {
    return new PlainSheet(
        kept.id(),
        kept.title(),
        folder,
        kept.slug(),
        kept.document(),
        kept.version(),
        kept.isBinned());
  }

  /** The address of its page. */
  public String address() {
    return "/" + folder + "/" + slug;
  }
}
