package thudbook.documents;

import java.util.UUID;
import java.util.function.Predicate;
import java.util.function.Supplier;

/** Gives new ids, and slugs that nothing else has: {@code tide-kick}, {@code tide-kick-2}, …. */
public final class NewIdentity implements Identity {
  private final Supplier<UUID> ids;
  private final Predicate<String> taken;

  /**
   * Identifiers for one noun.
   *
   * @param ids new ids, none of them twice
   * @param taken whether a slug is in use, now or as an old name
   */
  public NewIdentity(Supplier<UUID> ids, Predicate<String> taken) {
    this.ids = ids;
    this.taken = taken;
  }

  @Override
  public UUID newId() {
    return ids.get();
  }

  @Override
  public String slugFor(String title) {
    String slug = Slugs.of(title);
    String free = slug;
    for (int number = 2; taken.test(free); number++) {
      free = slug + "-" + number;
    }
    return free;
  }
}
