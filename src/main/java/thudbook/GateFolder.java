package thudbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import thudbook.documents.Documents;
import thudbook.equipment.GateStore;

/**
 * Gates as files {@code <slug>.md} of a folder, each read when it is asked for. A file with faults
 * ends the search with a {@link RefusedFile}.
 */
final class GateFolder implements GateStore {
  private static final String ENDING = ".md";

  private final Path folder;

  GateFolder(Path folder) {
    this.folder = folder;
  }

  /** The folder {@code ../gates} beside a recipe. */
  static GateFolder beside(Path recipe) {
    return new GateFolder(recipe.toAbsolutePath().resolveSibling("../gates").normalize());
  }

  /** Finds by slug only: that is the name of the file. */
  @Override
  public Optional<Stored> find(String slug) {
    // A name with separators would leave the folder.
    return slug.matches("[a-z0-9-]+") ? read(folder.resolve(slug + ENDING)) : Optional.empty();
  }

  @Override
  public List<Stored> all() {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.toString().endsWith(ENDING))
          .flatMap(file -> read(file).stream())
          .sorted(Comparator.comparing(stored -> stored.gate().title()))
          .toList();
    } catch (IOException e) {
      throw RefusedFile.of(folder, e);
    }
  }

  private static Optional<Stored> read(Path file) {
    return Files.isRegularFile(file)
            && DocumentFile.read(file).noun() instanceof Documents.AGate gate
        ? Optional.of(new Stored(gate.gate(), 1, Documents.write(gate.gate())))
        : Optional.empty();
  }
}
