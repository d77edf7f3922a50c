package thudbook.commands;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import java.util.function.Supplier;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.Slugs;
import thudbook.quantities.Refusal;

/** Reads documents from files. */
public final class DocumentFiles {
  /** More than any document may have, so that reading refuses it; a wrong file is not swallowed. */
  private static final int MOST_BYTES = 1 << 20;

  /** Gives what a single file lacks; nothing of it is kept. */
  private final Identity passing;

  /** Files without an id get one of these. */
  DocumentFiles(Supplier<UUID> ids) {
    this.passing =
        new Identity() {
          @Override
          public UUID newId() {
            return ids.get();
          }

          @Override
          public String slugFor(String title) {
            return Slugs.of(title);
          }
        };
  }

  /**
   * Reads a document.
   *
   * @throws RefusedFile with all faults of the document, or if the file can't be read
   */
  Documents.Read<?> read(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return Documents.read(in.readNBytes(MOST_BYTES), passing);
    } catch (Refusal refusal) {
      throw RefusedFile.of(file, refusal);
    } catch (IOException e) {
      throw RefusedFile.of(file, e);
    }
  }
}
