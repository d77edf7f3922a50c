package thudbook.pages.frame;

import io.javalin.http.Context;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Thing;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;

/** What addresses and small forms ask for. */
public final class Requested {
  private Requested() {}

  /**
   * The thing that an address names.
   *
   * @param noun what it is, in a word
   */
  public static <T extends Thing> Kept<T> thing(Context context, String noun, Things<T> things) {
    return things
        .find(context.pathParam("slug"))
        .orElseThrow(() -> notFound("The notebook has no " + noun + " of this name."));
  }

  /** The recipe that an address names. */
  public static Kept<Recipe> recipe(Context context, RecipeStore recipes) {
    return recipes
        .find(context.pathParam("slug"))
        .orElseThrow(() -> notFound("The notebook has no recipe of this name."));
  }

  /** The gate that an address names. */
  public static Kept<Gate> gate(Context context, Things<Gate> gates) {
    return gates
        .find(context.pathParam("slug"))
        .orElseThrow(() -> notFound("The studio has no gate of this name."));
  }

  /** The number in an address. */
  public static int number(Context context) {
    return (int) digits(context.pathParam("number"), 9);
  }

  /** The number behind the question mark of an address; 0 where there is none. */
  public static int number(Context context, String name) {
    String text = context.queryParam(name);
    return text == null ? 0 : (int) digits(text, 9);
  }

  /** The number of a change in an address. */
  public static long change(Context context) {
    return digits(context.pathParam("id"), 18);
  }

  /** The version that a form's author saw. */
  public static long version(Context context) {
    String text = context.formParam("version");
    if (text == null || !text.matches("[0-9]{1,18}")) {
      throw Refusal.of(
          Refusal.Kind.REFUSED_VALUES, "missing", "version: missing, expected a whole number");
    }
    return Long.parseLong(text);
  }

  /** The id in an address. */
  public static UUID id(Context context) {
    String text = context.pathParam("id");
    if (!text.matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")) {
      throw notFound("There is no such thing.");
    }
    return UUID.fromString(text);
  }

  public static Refusal notFound(String message) {
    return Refusal.of(Refusal.Kind.NOT_FOUND, "not-found", message);
  }

  private static long digits(@Nullable String text, int most) {
    if (text == null || !text.matches("[0-9]{1," + most + "}")) {
      throw notFound("There is nothing of this number.");
    }
    return Long.parseLong(text);
  }
}
