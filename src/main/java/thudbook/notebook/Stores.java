package thudbook.notebook;

import thudbook.changes.ChangeStore;
import thudbook.changes.Noun;
import thudbook.changes.Store;
import thudbook.changes.Thing;
import thudbook.documents.exchange.DocumentStore;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.library.Library;
import thudbook.library.MarkStore;
import thudbook.library.ShelfStore;
import thudbook.photos.PhotoStore;
import thudbook.recipes.DraftStore;
import thudbook.recipes.Listening;
import thudbook.recipes.PredictionStore;
import thudbook.recipes.RecipeStore;
import thudbook.sessions.RecallStore;
import thudbook.sessions.Session;

/**
 * Where an opened notebook keeps things. Each store is made once: whoever asks gets the same one,
 * and so shares what was read lately. They may be used by many threads at once.
 */
public interface Stores {
  /** Recipes with their revisions. */
  RecipeStore recipes();

  /** The studio's gates with their revisions. */
  Store<Gate> gates();

  /** Modules with their revisions. */
  Store<Module> modules();

  /** Sessions with their revisions. */
  Store<Session> sessions();

  /**
   * Things of a noun with their revisions.
   *
   * @throws IllegalStateException if the notebook was opened without this noun
   */
  <T extends Thing> Store<T> things(Noun<T> noun);

  /** The acts of this notebook. */
  ChangeStore changes();

  /** What somebody is typing. */
  DraftStore drafts();

  /** What was ticked off while recipes were set up again. */
  RecallStore recalls();

  /** Everything that finds recipes. */
  Library library();

  /** Favourites, and what was used when. */
  MarkStore marks();

  /** Searches that were given a name. */
  ShelfStore shelves();

  /** The predictions that are kept beside the recipes. */
  PredictionStore predictions();

  /** The texts of everything, for an export. */
  DocumentStore documents();

  /** Photos. */
  PhotoStore photos();

  /** What an answer hears of recipes; each answer has its own. */
  default Listening listening() {
    return new Listening(gates());
  }
}
