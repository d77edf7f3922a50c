package thudbook.changes;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;

/**
 * A thing as it is kept.
 *
 * @param document its canonical text
 * @param version rises with every change of what is shown; the entity tag
 * @param revision the number of the saved state that counts
 * @param binnedAt when it went into the bin; null: it is not there
 * @param <T> what kind of thing
 */
public record Kept<T extends Thing>(
    T thing,
    String document,
    long version,
    int revision,
    Origin origin,
    @Nullable Instant binnedAt) {
  private static final Origin NOWHERE =
      new Origin(new Author("nobody"), Instant.EPOCH, Instant.EPOCH);

  /**
   * Where a thing comes from.
   *
   * @param author who added it
   */
  public record Origin(Author author, Instant createdAt, Instant changedAt) {}

  /** A thing that was just read, with no history. */
  public static <T extends Thing> Kept<T> fresh(T thing, String document) {
    return new Kept<>(thing, document, 1, 1, NOWHERE, null);
  }

  /** The same as it was in an earlier state. */
  public Kept<T> as(Revision<T> earlier) {
    return new Kept<>(
        earlier.thing(), earlier.document(), version, earlier.number(), origin, binnedAt);
  }

  public UUID id() {
    return thing.id();
  }

  public String slug() {
    return thing.slug();
  }

  public String title() {
    return thing.title();
  }

  /** Whether it lies in the bin. */
  public boolean isBinned() {
    return binnedAt != null;
  }
}
