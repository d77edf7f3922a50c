package thudbook.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * Style sheets, scripts, icons and fonts. Our own stand under {@code /assets/}, those of libraries
 * under {@code /lib/<library>/}, both without versions.
 *
 * <p>A browser may keep a file for ever if its address holds a hash of the content. Our own are
 * addressed with one hash over all of them, {@code /assets/<hash>/site.css}, so that the imports of
 * a script module, which are relative, carry it too; those of libraries with a query, {@code
 * /lib/inter/a.woff2?v=<hash>}. Without the right hash a file is served too, to be asked for again
 * each time.
 *
 * <p>The style sheets of a folder, a component each, are also served as one, {@code frame.css} for
 * those in {@code frame/}, in alphabetical order: a page asks for few files.
 */
public final class Assets {
  private static final int HASH_CHARACTERS = 16;
  private static final int LEAST_BYTES_TO_SQUEEZE = 1_000;
  private static final Pattern LIBRARY_IN_STYLE = Pattern.compile("url\\(\"?(/lib/[^\"?)]+)\"?\\)");
  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "svg", "image/svg+xml",
          "png", "image/png",
          "ico", "image/x-icon",
          "woff2", "font/woff2",
          "txt", "text/plain; charset=utf-8");

  private final Map<String, File> own = new TreeMap<>();
  private final Map<String, File> ofLibraries = new ConcurrentHashMap<>();
  private final Function<String, Optional<byte[]>> libraries;
  private final String ownHash;

  /**
   * Takes all our own files, and a way to those of libraries.
   *
   * @param own content by path, such as {@code site.css}
   * @param libraries the content of {@code <library>/<path>}, such as {@code inter/a.woff2}
   */
  public Assets(Map<String, byte[]> own, Function<String, Optional<byte[]>> libraries) {
    this.libraries = libraries;
    MessageDigest digest = sha256();
    new TreeMap<>(withSheetsOfFolders(own))
        .forEach(
            (path, content) -> {
              byte[] shown = path.endsWith(".css") ? withAddresses(content) : content;
              digest.update((path + "\n" + shown.length + "\n").getBytes(StandardCharsets.UTF_8));
              digest.update(shown);
              this.own.put(path, File.of(path, shown));
            });
    ownHash = shortened(digest);
  }

  private static Map<String, byte[]> withSheetsOfFolders(Map<String, byte[]> own) {
    Map<String, byte[]> all = new TreeMap<>(own);
    new TreeMap<>(own)
        .forEach(
            (path, content) -> {
              int slash = path.indexOf('/');
              if (slash > 0 && path.endsWith(".css")) {
                all.merge(path.substring(0, slash) + ".css", content, Assets::joined);
              }
            });
    return all;
  }

  private static byte[] joined(byte[] first, byte[] second) {
    return (new String(first, StandardCharsets.UTF_8) + new String(second, StandardCharsets.UTF_8))
        .getBytes(StandardCharsets.UTF_8);
  }

  /**
   * The address of a file, to be kept for ever.
   *
   * @param name {@code site.css} for one of our own, {@code lib/inter/a.woff2} for a library's
   * @throws IllegalArgumentException if there is no such file
   */
  public String address(String name) {
    if (name.startsWith("lib/")) {
      String path = name.substring("lib/".length());
      File file =
          ofLibrary(path).orElseThrow(() -> new IllegalArgumentException("no file " + name));
      return "/lib/" + path + "?v=" + file.hash;
    }
    if (!own.containsKey(name)) {
      throw new IllegalArgumentException("no file web/assets/" + name);
    }
    return "/assets/" + ownHash + "/" + name;
  }

  /** Adds the routes of all files. */
  public void addTo(JavalinConfig config) {
    config.routes.get("/assets/<path>", this::serveOwn);
    config.routes.get(
        "/lib/<path>",
        ctx -> {
          File file = ofLibrary(ctx.pathParam("path")).orElseThrow(Assets::notFound);
          serve(ctx, file, file.hash.equals(ctx.queryParam("v")));
        });
  }

  private void serveOwn(Context ctx) {
    String path = ctx.pathParam("path");
    boolean hashed = path.startsWith(ownHash + "/");
    File file = own.get(hashed ? path.substring(ownHash.length() + 1) : path);
    if (file == null) {
      throw notFound();
    }
    serve(ctx, file, hashed);
  }

  private static void serve(Context ctx, File file, boolean forEver) {
    ctx.header("Cache-Control", forEver ? "public, max-age=31536000, immutable" : "no-cache");
    byte[] squeezed = file.squeezed;
    boolean squeeze = squeezed != null && acceptsGzip(ctx.header("Accept-Encoding"));
    if (squeezed != null) {
      ctx.header("Vary", "Accept-Encoding");
    }
    // Two forms of one file are two entities.
    if (EntityTags.answered(ctx, "\"" + file.hash + (squeeze ? "-gz" : "") + "\"")) {
      return;
    }
    ctx.contentType(file.type);
    if (squeezed != null && squeeze) {
      ctx.header("Content-Encoding", "gzip").result(squeezed);
    } else {
      ctx.result(file.content);
    }
  }

  private static boolean acceptsGzip(@Nullable String accepted) {
    return accepted != null && MediaTypes.preferred(accepted).contains("gzip");
  }

  /** Only what is there is remembered, so that asking for nonsense fills no memory. */
  private Optional<File> ofLibrary(String path) {
    File known = ofLibraries.get(path);
    if (known != null) {
      return Optional.of(known);
    }
    Optional<File> file = libraries.apply(path).map(content -> File.of(path, content));
    file.ifPresent(found -> ofLibraries.put(path, found));
    return file;
  }

  /** Gives the library files that a style sheet names their addresses. */
  private byte[] withAddresses(byte[] style) {
    return LIBRARY_IN_STYLE
        .matcher(new String(style, StandardCharsets.UTF_8))
        .replaceAll((MatchResult m) -> "url(\"" + address(m.group(1).substring(1)) + "\")")
        .getBytes(StandardCharsets.UTF_8);
  }

  private static HttpError notFound() {
    return new HttpError(ErrorKind.NOT_FOUND);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String shortened(MessageDigest digest) {
    return HexFormat.of().formatHex(digest.digest()).substring(0, HASH_CHARACTERS);
  }

  /**
   * A file ready to be sent.
   *
   * @param squeezed the content in gzip; null where that saves nothing
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared, never handed out
  private record File(String type, String hash, byte[] content, byte @Nullable [] squeezed) {
    static File of(String path, byte[] content) {
      String type =
          TYPES.getOrDefault(path.substring(path.lastIndexOf('.') + 1), "application/octet-stream");
      MessageDigest digest = sha256();
      digest.update(content);
      return new File(type, shortened(digest), content, squeeze(type, content));
    }

    private static byte @Nullable [] squeeze(String type, byte[] content) {
      boolean text = type.startsWith("text/") || type.startsWith("image/svg");
      if (!text || content.length < LEAST_BYTES_TO_SQUEEZE) {
        return null;
      }
      ByteArrayOutputStream squeezed = new ByteArrayOutputStream();
      try (GZIPOutputStream gzip = new GZIPOutputStream(squeezed)) {
        gzip.write(content);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return squeezed.toByteArray();
    }
  }
}
