package thudbook.documents;

import java.util.UUID;

/** The identifiers of something that is there already, for a text that leaves them out. */
public record SameIdentity(UUID id, String slug) implements Identity {
  @Override
  public UUID newId() {
    return id;
  }

  @Override
  public String slugFor(String title) {
    return slug;
  }
}
