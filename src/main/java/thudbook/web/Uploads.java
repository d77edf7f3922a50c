package thudbook.web;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import thudbook.quantities.Refusal;

/**
 * Files and fields of a multipart body. The container refuses a body that is longer than the upload
 * limit while it reads it, also one that does not say its length.
 */
public final class Uploads {
  /** More parts than a form of ours has, and as many files as an import takes. */
  static final int MOST_PARTS = 10_050;

  private static final String TYPE = "multipart/form-data";

  private Uploads() {}

  /** Whether a request has a multipart body. */
  public static boolean isMultipart(Context ctx) {
    String said = ctx.contentType();
    return said != null && MediaTypes.bare(said).equals(TYPE);
  }

  /**
   * A file that was sent.
   *
   * @param name as its sender calls it, perhaps with folders before it; never a path of ours
   */
  public record Sent(String name, long length, Content content) {}

  /** The bytes of a file that was sent. */
  @FunctionalInterface
  public interface Content {
    /** The bytes from the first on. */
    InputStream open();
  }

  /**
   * The files of a field, without those of an empty choice.
   *
   * @throws Refusal if the body is not what it says, or too long
   */
  public static List<Sent> files(Context ctx, String field) {
    return read(ctx).getOrDefault(field, List.of()).stream()
        .filter(file -> file.size() > 0 || !file.filename().isEmpty())
        .map(file -> new Sent(file.filename(), file.size(), file::content))
        .toList();
  }

  private static Map<String, List<UploadedFile>> read(Context ctx) {
    try {
      return ctx.uploadedFileMap();
    } catch (RuntimeException e) {
      throw refused(e);
    } catch (Exception e) { // thrown by code that declares nothing
      throw refused(e);
    }
  }

  /** The whole of a file that was sent. */
  public static byte[] bytes(Sent sent) {
    try (InputStream in = sent.content().open()) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw refused(e);
    }
  }

  private static RuntimeException refused(Exception e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      String said = String.valueOf(cause.getMessage());
      if (said.contains("exceed") || said.contains("max length") || said.contains("too many")) {
        return new HttpError(ErrorKind.TOO_LARGE);
      }
    }
    return Refusal.of(
        Refusal.Kind.MALFORMED, "not-multipart", "The form that was sent can't be read.");
  }
}
