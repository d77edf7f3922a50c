package thudbook.web;

import io.javalin.http.Context;
import java.util.Arrays;

/** Entity tags and conditional requests. Source: RFC 9110, sections 8.8.3 and 13.1.2. */
public final class EntityTags {
  private EntityTags() {}

  /** The tag of a version, in the quotes that belong to it. */
  public static String ofVersion(long version) {
    return "\"" + version + "\"";
  }

  /**
   * Sets the entity tag of a GET or HEAD and answers 304 if the reader already has it.
   *
   * @return whether the answer is complete
   */
  public static boolean answered(Context ctx, String tag) {
    ctx.header("ETag", tag);
    String known = ctx.header("If-None-Match");
    if (known == null || !matches(known, tag)) {
      return false;
    }
    ctx.status(304);
    return true;
  }

  /** Weak comparison: {@code W/} does not count. */
  private static boolean matches(String known, String tag) {
    return known.trim().equals("*")
        || Arrays.stream(known.split(","))
            .map(one -> one.trim().replaceFirst("^W/", ""))
            .anyMatch(tag::equals);
  }
}
