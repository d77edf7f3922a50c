package thudbook.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The files of the page as they stand in the source tree. */
final class PageFiles {
  static final Path ASSETS = Path.of("web/assets");
  static final Path TEMPLATES = Path.of("web/templates");

  private PageFiles() {}

  /** Text by path below a folder, of all files with an ending. */
  static Map<String, String> texts(Path folder, String ending) throws IOException {
    Map<String, String> texts = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(each -> each.toString().endsWith(ending)).toList()) {
        texts.put(folder.relativize(file).toString().replace('\\', '/'), Files.readString(file));
      }
    }
    return texts;
  }

  /** Text by path of all scripts and style sheets. */
  static Map<String, String> scriptsAndStyles() throws IOException {
    Map<String, String> texts = new TreeMap<>(texts(ASSETS, ".js"));
    texts.putAll(texts(ASSETS, ".css"));
    return texts;
  }
}
