package thudbook.commands;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;

/**
 * Gates as files {@code <slug>.md} of a folder, each read when it is asked for. A file with faults
 * ends the search with a {@link RefusedFile}.
 */
final class GateFolder implements Things<Gate> {
  private static final String ENDING = ".md";
  private static final Pattern ID = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");

  private final Path folder;
  private final DocumentFiles documents;

  GateFolder(Path folder, DocumentFiles documents) {
    this.folder = folder;
    this.documents = documents;
  }

  /** The folder {@code ../gates} beside a recipe. */
  static GateFolder beside(Path recipe, DocumentFiles documents) {
    return new GateFolder(
        recipe.toAbsolutePath().resolveSibling("../gates").normalize(), documents);
  }

  @Override
  public Optional<Kept<Gate>> find(String slugOrId) {
    if (ID.matcher(slugOrId).matches()) {
      return all().stream().filter(stored -> stored.id().toString().equals(slugOrId)).findFirst();
    }
    // A name with separators would leave the folder.
    return slugOrId.matches("[a-z0-9-]+")
        ? read(folder.resolve(slugOrId + ENDING))
        : Optional.empty();
  }

  @Override
  public List<Kept<Gate>> all() {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.toString().endsWith(ENDING))
          .flatMap(file -> read(file).stream())
          .sorted(Comparator.comparing(stored -> stored.title()))
          .toList();
    } catch (IOException e) {
      throw RefusedFile.of(folder, e);
    }
  }

  private Optional<Kept<Gate>> read(Path file) {
    return Files.isRegularFile(file) && documents.read(file).thing() instanceof Gate gate
        ? Optional.of(Kept.fresh(gate, Documents.write(gate)))
        : Optional.empty();
  }
}
