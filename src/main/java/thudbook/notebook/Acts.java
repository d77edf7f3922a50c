package thudbook.notebook;

import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import thudbook.changes.Changes;
import thudbook.changes.Keeper;
import thudbook.changes.Keeping;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.equipment.ModuleRule;
import thudbook.library.Tagging;
import thudbook.photos.Photos;
import thudbook.recipes.GateRule;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeRule;
import thudbook.sessions.Session;

/**
 * What can be done with an opened notebook.
 *
 * @param changes everything that is written down, and undoing it
 */
public record Acts(Changes changes, Photos photos, Tagging tagging) {
  /**
   * The acts over these stores.
   *
   * @param afterwards what follows an act: predictions that a gate has overtaken are remade
   * @param more what is kept beside what every notebook keeps
   */
  public static Acts on(
      Stores stores, InstantSource clock, Runnable afterwards, Keeping<?>... more) {
    List<Keeping<?>> nouns = new ArrayList<>();
    nouns.add(
        new Keeping<>(
            Documents.RECIPE,
            stores.recipes(),
            new RecipeRule(stores.changes(), Documents.GATE, stores.gates())));
    nouns.add(
        new Keeping<>(
            Documents.GATE,
            stores.gates(),
            new GateRule(Documents.GATE, stores.gates(), Documents.RECIPE, stores.recipes())));
    nouns.add(
        new Keeping<>(
            Documents.MODULE,
            stores.modules(),
            new ModuleRule(Documents.MODULE, stores.modules())));
    nouns.add(new Keeping<>(Documents.SESSION, stores.sessions()));
    nouns.addAll(List.of(more));
    Changes changes = new Changes(stores.changes(), nouns, clock, afterwards);
    return new Acts(
        changes,
        new Photos(stores.photos(), clock),
        new Tagging(stores.library(), changes.keeper(Documents.RECIPE)));
  }

  /** What can be done with recipes. */
  public Keeper<Recipe> recipes() {
    return changes.keeper(Documents.RECIPE);
  }

  /** What can be done with gates. */
  public Keeper<Gate> gates() {
    return changes.keeper(Documents.GATE);
  }

  /** What can be done with modules. */
  public Keeper<Module> modules() {
    return changes.keeper(Documents.MODULE);
  }

  /** What can be done with sessions. */
  public Keeper<Session> sessions() {
    return changes.keeper(Documents.SESSION);
  }
}
