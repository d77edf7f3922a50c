package thudbook;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import thudbook.changes.Write;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.NounDocument;

/** The documents that an empty notebook is filled with. */
final class SampleLibrary {
  /** Every sample has an id and a slug of its own, so that it is the same in every notebook. */
  private static final Identity NONE =
      new Identity() {
        @Override
        public UUID newId() {
          throw new IllegalStateException("a sample has no id");
        }

        @Override
        public String slugFor(String title) {
          throw new IllegalStateException("the sample " + title + " has no slug");
        }
      };

  private SampleLibrary() {}

  /** What writes all of them down. */
  static List<Write<?>> writes() {
    List<Write<?>> writes = new ArrayList<>();
    for (NounDocument<?> noun : Documents.NOUNS) {
      String folder = "sample-library/" + noun.word() + "s";
      for (String file : Bundled.list(folder)) {
        writes.add(Documents.read(Bundled.read(folder + "/" + file), NONE).write(null));
      }
    }
    return writes;
  }
}
