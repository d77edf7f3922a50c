package thudbook.documents;

import java.util.UUID;

/** Gives identifiers to documents that come without. */
public interface Identity {
  /** A new id. */
  UUID newId();

  /** A free slug made of a title. */
  String slugFor(String title);
}
