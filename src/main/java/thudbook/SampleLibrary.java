package thudbook;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.equipment.Gate;
import thudbook.recipes.Act.PlainWrite;
import thudbook.recipes.Gates;
import thudbook.recipes.Modules;
import thudbook.recipes.Recipe;
import thudbook.recipes.Recipes;
import thudbook.sessions.Sessions;

/** The documents that an empty notebook is filled with. */
final class SampleLibrary {
  private static final String GATES = "sample-library/gates";
  private static final String RECIPES = "sample-library/recipes";
  private static final String MODULES = "sample-library/modules";
  private static final String SESSIONS = "sample-library/sessions";

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

  static List<Gates.Written> gates() {
    return Bundled.list(GATES).stream()
        .map(file -> read(GATES + "/" + file))
        .map(noun -> ((Documents.AGate) noun).gate())
        .map((Gate gate) -> new Gates.Written(gate, Documents.write(gate)))
        .toList();
  }

  static List<Recipes.Written> recipes() {
    return Bundled.list(RECIPES).stream()
        .map(file -> read(RECIPES + "/" + file))
        .map(noun -> ((Documents.ARecipe) noun).recipe())
        .map((Recipe recipe) -> new Recipes.Written(recipe, Documents.write(recipe)))
        .toList();
  }

  /** Modules and sessions. */
  static List<PlainWrite> others() {
    return Stream.concat(modules(), sessions()).toList();
  }

  private static Stream<PlainWrite> modules() {
    return Bundled.list(MODULES).stream()
        .map(file -> read(MODULES + "/" + file))
        .map(noun -> new Modules.Written(((Documents.AModule) noun).module(), noun.text()))
        .map(written -> written.write(null));
  }

  private static Stream<PlainWrite> sessions() {
    return Bundled.list(SESSIONS).stream()
        .map(file -> read(SESSIONS + "/" + file))
        .map(noun -> new Sessions.Written(((Documents.ASession) noun).session(), noun.text()))
        .map(written -> written.write(null));
  }

  private static Documents.Noun read(String path) {
    return Documents.read(Bundled.read(path), NONE).noun();
  }
}
