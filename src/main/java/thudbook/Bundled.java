package thudbook;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;

/** What travels with the program, in its jar or in the folder that it is started from. */
final class Bundled {
  /** The libraries whose files pages may use: name, coordinates, and where their files stand. */
  private static final Map<String, Library> LIBRARIES =
      Map.of("inter", new Library("org.mvnpm.at.fontsource", "inter", "_static/inter/%s/files/"));

  private Bundled() {}

  /**
   * The paths of all files below a folder, relative to it, in alphabetical order.
   *
   * @param folder such as {@code sample-library/gates}; without such a folder there are no files
   */
  static List<String> list(String folder) {
    String prefix = folder + "/";
    try {
      Path home =
          Path.of(Bundled.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      if (!Files.isDirectory(home)) {
        try (JarFile jar = new JarFile(home.toFile())) {
          return jar.stream()
              .filter(entry -> !entry.isDirectory())
              .map(ZipEntry::getName)
              .filter(name -> name.startsWith(prefix))
              .map(name -> name.substring(prefix.length()))
              .sorted()
              .toList();
        }
      }
      Path top = home.resolve(folder);
      if (!Files.isDirectory(top)) {
        return List.of();
      }
      try (Stream<Path> files = Files.walk(top)) {
        return files
            .filter(Files::isRegularFile)
            .map(file -> top.relativize(file).toString().replace('\\', '/'))
            .sorted()
            .toList();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The content of a file, such as {@code sample-library/gates/keeper-twin.md}. */
  static byte[] read(String path) {
    return open(path).orElseThrow(() -> new IllegalStateException("not bundled: " + path));
  }

  /**
   * The content of a library's file, if there is such a file.
   *
   * @param path name of the library and path below its folder, such as {@code
   *     inter/inter-latin-400-normal.woff2}
   */
  static Optional<byte[]> ofLibrary(String path) {
    int slash = path.indexOf('/');
    Library library = slash < 0 ? null : LIBRARIES.get(path.substring(0, slash));
    return library == null || path.contains("..") || path.endsWith("/")
        ? Optional.empty()
        : open(library.folder() + path.substring(slash + 1));
  }

  private static Optional<byte[]> open(String path) {
    try (InputStream in = Bundled.class.getResourceAsStream("/" + path)) {
      return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * A library of the page.
   *
   * @param pattern where its files stand below {@code META-INF/resources}, with the version left
   *     out
   */
  private record Library(String group, String artifact, String pattern) {
    /** The library's own record of its version saves us from repeating it. */
    String folder() {
      Properties properties = new Properties();
      byte[] own = read("META-INF/maven/" + group + "/" + artifact + "/pom.properties");
      try (InputStream in = new ByteArrayInputStream(own)) {
        properties.load(in);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return "META-INF/resources/" + String.format(pattern, properties.getProperty("version"));
    }
  }
}
