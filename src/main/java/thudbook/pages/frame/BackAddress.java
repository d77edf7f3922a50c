package thudbook.pages.frame;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.regex.Pattern;

/** Where a small form of a list leads back to: a page of the notebook that shows recipes. */
public final class BackAddress {
  private static final Pattern LISTS =
      Pattern.compile("/(\\?[!-~]*)?|/tags|/shelves|/recipes/[a-z0-9-]+(/alike(\\?[!-~]*)?)?");

  private static final Pattern DONE = Pattern.compile("(?<=[?&])done=[0-9]*&?");

  private BackAddress() {}

  /** What the form names, or the list of all recipes. */
  public static String of(Context context) {
    String back = context.formParam("back");
    return back != null && LISTS.matcher(back).matches() ? back : "/";
  }

  /** Whether the form names a place to come back to. */
  public static boolean isNamed(Context context) {
    return context.formParam("back") != null;
  }

  /** Leads back, where what was done is told and can be undone. */
  public static void lead(Context context, long change) {
    String back = DONE.matcher(of(context)).replaceAll("").replaceFirst("[?&]$", "");
    String joint = back.contains("?") ? "&" : "?";
    context.redirect(back + joint + DoneNotice.PARAMETER + "=" + change, HttpStatus.SEE_OTHER);
  }
}
