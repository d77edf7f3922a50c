package thudbook.storage;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.UUID;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.recipes.Recipe;
import thudbook.sessions.Session;

/** The canonical text of a revision and the noun that it says. */
final class StoredText {
  /** What was stored has an id and a slug. */
  private static final Identity WRITTEN =
      new Identity() {
        @Override
        public UUID newId() {
          throw new IllegalStateException("a stored document has no id");
        }

        @Override
        public String slugFor(String title) {
          throw new IllegalStateException("the stored document " + title + " has no slug");
        }
      };

  private StoredText() {}

  static Recipe recipe(String document) {
    if (read(document) instanceof Documents.ARecipe found) {
      return found.recipe();
    }
    throw new IllegalStateException("the stored document is not a recipe");
  }

  static Gate gate(String document) {
    if (read(document) instanceof Documents.AGate found) {
      return found.gate();
    }
    throw new IllegalStateException("the stored document is not a gate");
  }

  static Session session(String document) {
    if (read(document) instanceof Documents.ASession found) {
      return found.session();
    }
    throw new IllegalStateException("the stored document is not a session");
  }

  static Module module(String document) {
    if (read(document) instanceof Documents.AModule found) {
      return found.module();
    }
    throw new IllegalStateException("the stored document is not a module");
  }

  /** The SHA-256 of the text in UTF-8, in lower-case hexadecimal digits. */
  static String sha256(String document) {
    return sha256(document.getBytes(StandardCharsets.UTF_8));
  }

  /** The SHA-256 of bytes, in lower-case hexadecimal digits. */
  static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  static Documents.Noun read(String document) {
    return Documents.read(document.getBytes(StandardCharsets.UTF_8), WRITTEN).noun();
  }
}
