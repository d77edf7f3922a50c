package thudbook.web;

import io.javalin.http.Context;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** Entity tags and conditional requests. Source: RFC 9110, sections 8.8.3 and 13.1.2. */
public final class EntityTags {
  private static final Pattern VERSION = Pattern.compile("\"(\\d{1,18})\"");

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

  /**
   * The version that a change is meant for, from If-Match.
   *
   * @param current the version that is there, for {@code *}
   * @throws HttpError 428 if the header is absent
   * @throws Refusal of kind STALE if it names no version, or several
   */
  public static long wantedVersion(Context ctx, long current) {
    String said = ctx.header("If-Match");
    if (said == null || said.isBlank()) {
      throw new HttpError(ErrorKind.PRECONDITION_REQUIRED);
    }
    if (said.trim().equals("*")) {
      return current;
    }
    Matcher version = VERSION.matcher(said.trim());
    if (version.matches()) {
      return Long.parseLong(version.group(1));
    }
    // Strong comparison (RFC 9110, 8.8.3.2): a weak tag matches nothing.
    throw new Refusal(
        Refusal.Kind.STALE,
        List.of(
            new Fault(
                "If-Match",
                0,
                "no-version",
                said.length() <= 40 ? said : said.substring(0, 40) + "…",
                ofVersion(current),
                "If-Match names no version of this: " + ofVersion(current) + " is there.")));
  }

  /** Weak comparison: {@code W/} does not count. */
  private static boolean matches(String known, String tag) {
    return known.trim().equals("*")
        || Arrays.stream(known.split(","))
            .map(one -> one.trim().replaceFirst("^W/", ""))
            .anyMatch(tag::equals);
  }
}
