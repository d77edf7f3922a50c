package thudbook.notebook;

import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import thudbook.changes.Changes;
import thudbook.changes.Keeper;
import thudbook.changes.Keeping;
import thudbook.documents.Documents;
import thudbook.documents.NounDocument;
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
 * @param nouns the documents of all that is written down, in the order in which they are listed
 */
public record Acts(Changes changes, List<NounDocument<?>> nouns, Photos photos, Tagging tagging) {
  public Acts {
    nouns = List.copyOf(nouns);
  }

  /** The acts of a notebook with the nouns that every notebook has. */
  public static Acts on(Stores stores, InstantSource clock, Runnable afterwards) {
    return on(stores, clock, afterwards, List.of());
  }

  /**
   * The acts over these stores.
   *
   * @param afterwards what follows an act: predictions that a gate has overtaken are remade
   * @param more what is kept beside what every notebook keeps
   */
  public static Acts on(
      Stores stores, InstantSource clock, Runnable afterwards, List<AddedNoun<?>> more) {
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
    more.forEach(noun -> nouns.add(noun.in(stores)));
    Changes changes = new Changes(stores.changes(), nouns, clock, afterwards);
    return new Acts(
        changes,
        Stream.concat(Documents.NOUNS.stream(), more.stream().map(AddedNoun::documents)).toList(),
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
