package thudbook.changes;

import java.util.UUID;

/** Something that is kept: a recipe, a gate, or whatever has a document of its own. */
public interface Thing {
  /** Its name for machines, which never changes. */
  UUID id();

  /** Its name in addresses, 1 to 80 of a to z, 0 to 9 and hyphens; no other of its noun has it. */
  String slug();

  /** Its name for people, 1 to 200 characters. */
  String title();
}
