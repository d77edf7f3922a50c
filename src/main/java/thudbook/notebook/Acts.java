package thudbook.notebook;

import java.time.InstantSource;
import thudbook.documents.Documents;
import thudbook.library.Tagging;
import thudbook.photos.Photos;
import thudbook.recipes.Changes;
import thudbook.recipes.Gates;
import thudbook.recipes.Modules;
import thudbook.recipes.Recipes;
import thudbook.sessions.Sessions;

/** What can be done with an opened notebook. */
public record Acts(
    Recipes recipes,
    Gates gates,
    Modules modules,
    Sessions sessions,
    Changes changes,
    Photos photos,
    Tagging tagging) {
  /**
   * The acts over these stores.
   *
   * @param afterwards what follows an act: predictions that a gate has overtaken are remade
   */
  public static Acts on(Stores stores, InstantSource clock, Runnable afterwards) {
    Recipes recipes =
        new Recipes(stores.changes(), stores.recipes(), stores.gates(), clock, afterwards);
    return new Acts(
        recipes,
        new Gates(stores.changes(), stores.recipes(), stores.gates(), clock, afterwards),
        new Modules(stores.changes(), stores.modules(), clock),
        new Sessions(stores.changes(), stores.sessions(), clock),
        new Changes(stores.changes(), stores.recipes(), stores.gates(), clock, afterwards),
        new Photos(stores.photos(), clock),
        new Tagging(stores.library(), stores.recipes(), recipes, Documents::write));
  }
}
