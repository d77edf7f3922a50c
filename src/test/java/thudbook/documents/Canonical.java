package thudbook.documents;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * Rewrites documents in their canonical form: {@code java -cp target/classes:target/test-classes:…
 * thudbook.documents.Canonical FILE…}. What is refused is left alone and reported.
 */
final class Canonical {
  private static final Identity IDENTITY =
      new Identity() {
        @Override
        public UUID newId() {
          return UUID.randomUUID();
        }

        @Override
        public String slugFor(String title) {
          return Slugs.of(title);
        }
      };

  private Canonical() {}

  public static void main(String[] files) throws IOException {
    for (String name : files) {
      Path file = Path.of(name);
      try {
        Documents.Read<?> read = Documents.read(Files.readAllBytes(file), IDENTITY);
        read.notes().forEach(note -> System.out.println(name + ": " + note));
        Files.writeString(file, read.text());
      } catch (Refusal refusal) {
        for (Fault fault : refusal.faults()) {
          System.out.println(name + ":" + fault.line() + ": " + fault.message());
        }
      }
    }
  }
}
