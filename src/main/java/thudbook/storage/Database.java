package thudbook.storage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import thudbook.changes.ChangeStore;
import thudbook.changes.Noun;
import thudbook.changes.Store;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.documents.exchange.DocumentStore;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.library.Library;
import thudbook.library.MarkStore;
import thudbook.library.ShelfStore;
import thudbook.notebook.Stores;
import thudbook.photos.PhotoStore;
import thudbook.quantities.Refusal;
import thudbook.recipes.DraftStore;
import thudbook.recipes.PredictionStore;
import thudbook.recipes.RecipeStore;
import thudbook.sessions.RecallStore;
import thudbook.sessions.Session;
import thudbook.storage.keeping.Backups;
import thudbook.storage.keeping.DatabaseFile;
import thudbook.storage.keeping.FolderLock;
import thudbook.storage.keeping.Restoration;
import thudbook.storage.keeping.Schema;

/**
 * The notebook of a data folder. While it is open this process owns the folder. Its stores are made
 * once, and so is what they keep of what was read; writes wait for each other.
 */
public final class Database implements Stores, AutoCloseable {
  private static final String FILE = "thudbook.db";
  private static final String NATIVE_LIBRARY = "native";

  private final Path file;
  private final FolderLock lock;
  private final Connections connections;
  private final RecipeStore recipes;
  private final Map<Noun<?>, Store<?>> things;
  private final ChangeStore changes;
  private final DraftStore drafts;
  private final RecallStore recalls;
  private final Library library;
  private final MarkStore marks;
  private final ShelfStore shelves;
  private final PredictionStore predictions;
  private final DocumentStore documents;
  private final PhotoStore photos;

  private Database(Path file, FolderLock lock, Connections connections, StoredNouns nouns) {
    this.file = file;
    this.lock = lock;
    this.connections = connections;
    this.recipes = new StoredRecipes(connections);
    this.things = nouns.stores(connections, recipes);
    this.changes = new StoredChanges(connections, nouns);
    this.drafts = new StoredDrafts(connections);
    this.recalls = new StoredRecalls(connections);
    this.library = library(connections, gates());
    this.marks = new StoredMarks(connections);
    this.shelves = new StoredShelves(connections);
    this.predictions = new StoredPredictions(connections);
    this.documents = new StoredDocuments(connections);
    this.photos = new StoredPhotos(connections);
  }

  /**
   * Opens the notebook of a folder, which is created if it is missing, and brings its tables up to
   * date.
   *
   * @throws Refusal if the folder can't be written to, another process has it, its database is none
   *     or was written by a newer version
   */
  public static Database open(Path folder) {
    return open(folder, List.of());
  }

  /**
   * The same with more nouns than every notebook has.
   *
   * @param more nouns on which nothing hangs
   */
  public static Database open(Path folder, List<? extends Noun<?>> more) {
    Path home = folder.toAbsolutePath().normalize();
    FolderLock lock = prepare(home);
    try {
      Path file = home.resolve(FILE);
      return new Database(file, lock, Connections.open(file), StoredNouns.with(more));
    } catch (SQLException e) {
      lock.close();
      throw FolderLock.refusal(home, home.resolve(FILE), e);
    } catch (RuntimeException e) {
      lock.close();
      throw DatabaseFile.explained(home.resolve(FILE), e);
    } catch (Error e) {
      lock.close();
      throw e;
    }
  }

  /** Creates and takes a folder, in which the driver then unpacks its native library. */
  private static FolderLock prepare(Path home) {
    try {
      Files.createDirectories(home.resolve(NATIVE_LIBRARY));
    } catch (IOException e) {
      throw FolderLock.unwritable(home);
    }
    // Not into a temporary folder that others share; it happens at each start.
    System.setProperty("org.sqlite.tmpdir", home.resolve(NATIVE_LIBRARY).toString());
    return FolderLock.take(home);
  }

  @Override
  public RecipeStore recipes() {
    return recipes;
  }

  @Override
  public Store<Gate> gates() {
    return things(Documents.GATE);
  }

  @Override
  public Store<Module> modules() {
    return things(Documents.MODULE);
  }

  @Override
  public Store<Session> sessions() {
    return things(Documents.SESSION);
  }

  @Override
  @SuppressWarnings("unchecked") // A noun is kept in a store of its own type.
  public <T extends Thing> Store<T> things(Noun<T> noun) {
    Store<?> store = things.get(noun);
    if (store == null) {
      throw new IllegalStateException("this notebook was opened without a " + noun.word());
    }
    return (Store<T>) store;
  }

  @Override
  public ChangeStore changes() {
    return changes;
  }

  @Override
  public DraftStore drafts() {
    return drafts;
  }

  @Override
  public RecallStore recalls() {
    return recalls;
  }

  @Override
  public Library library() {
    return library;
  }

  @Override
  public MarkStore marks() {
    return marks;
  }

  @Override
  public ShelfStore shelves() {
    return shelves;
  }

  @Override
  public PredictionStore predictions() {
    return predictions;
  }

  @Override
  public DocumentStore documents() {
    return documents;
  }

  @Override
  public PhotoStore photos() {
    return photos;
  }

  private static Library library(Connections connections, Store<Gate> gates) {
    return new Library(
        connections.catalogue(),
        new StoredWords(connections),
        new StoredRecipeList(connections),
        gates);
  }

  /** The backups of this notebook. */
  public Backups backups() {
    return new Backups(file);
  }

  /** The backups of a data folder, whether a server has it or not. */
  public static Backups backups(Path folder) {
    return new Backups(folder.toAbsolutePath().normalize().resolve(FILE));
  }

  /**
   * Finds recipes in the notebook of a data folder, whether a server has it or not.
   *
   * @throws Refusal if there is no notebook, it can't be read, or its tables are not of this
   *     version
   */
  public static <T> T find(Path folder, Function<Library, T> work) {
    Path file = folder.toAbsolutePath().normalize().resolve(FILE);
    try (Connections connections = Connections.openForReading(file)) {
      return work.apply(library(connections, new StoredThings<>(connections, Documents.GATE)));
    } catch (SQLException e) {
      throw DatabaseFile.refusal(file, e);
    } catch (RuntimeException e) {
      throw DatabaseFile.explained(file, e);
    }
  }

  /**
   * Looks at everything in the notebook of a data folder, whether a server has it or not.
   *
   * @throws Refusal if there is no notebook, it can't be read, or its tables are not of this
   *     version
   */
  public static Verification.Findings verify(Path folder) {
    return verify(folder, List.of());
  }

  /** The same in a notebook with more nouns. */
  public static Verification.Findings verify(Path folder, List<? extends Noun<?>> more) {
    Path file = folder.toAbsolutePath().normalize().resolve(FILE);
    return Verification.of(file, StoredNouns.with(more));
  }

  /**
   * Puts a backup in the place of the notebook of a data folder. What was there is kept beside it.
   *
   * @return the file in which the former notebook is kept, if there was one
   * @throws Refusal if a server has the folder, or anything is wrong with the backup
   */
  public static Optional<Path> restore(Path backup, Path folder, Instant at) {
    Path home = folder.toAbsolutePath().normalize();
    try (FolderLock lock = prepare(home)) {
      return new Restoration(
              home.resolve(FILE), lock, FactRows::fill, copy -> Verification.of(copy).wrong())
          .restore(backup, at);
    }
  }

  /** The number of the newest migration that the tables have. */
  public int schemaVersion() {
    return Schema.NEWEST;
  }

  /** Waits for a write that is under way, empties the write-ahead log and gives the folder up. */
  @Override
  public void close() {
    try (lock) {
      connections.close();
    }
  }

  /** The connections themselves, for tests that look at plans and pragmas. */
  Connections connections() {
    return connections;
  }
}
