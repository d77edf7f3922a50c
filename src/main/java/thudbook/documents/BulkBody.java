package thudbook.documents;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.JsonTree;
import thudbook.documents.tree.Tree;
import thudbook.quantities.Refusal;

/**
 * What is to be done to many recipes at once: {@code {"do": "bin" | "restore" | "tag", "recipes":
 * [slugs or ids], "add": [tags], "remove": [tags]}}, the tags only with {@code tag}; instead of
 * recipes {@code "search"}, the query of an address: all that match.
 *
 * @param search null: the recipes are named
 */
public record BulkBody(
    Act act, List<String> recipes, @Nullable String search, List<String> add, List<String> remove) {
  private static final int MOST_RECIPES = 10_000;
  private static final int LONGEST_SEARCH = 8_000;

  public BulkBody {
    recipes = List.copyOf(recipes);
    add = List.copyOf(add);
    remove = List.copyOf(remove);
  }

  /** What can be done. */
  public enum Act {
    BIN,
    RESTORE,
    TAG
  }

  /**
   * Reads the body.
   *
   * @throws Refusal with all faults of it
   */
  public static BulkBody of(byte[] json) {
    Faults faults = new Faults();
    Fields fields = Fields.of(JsonTree.read(json), faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    Tree word = fields.need("do", "bin, restore or tag");
    Act act = word == null ? null : Choices.BULK.read(word, faults);
    List<String> recipes = RecipeDocument.lines(fields, "recipes", MOST_RECIPES, 80, faults);
    String search = fields.line("search", LONGEST_SEARCH);
    if (recipes.isEmpty() == (search == null) && faults.count() == 0) {
      faults.missing(fields.placeOf("recipes"), "either a list of slugs or ids, or a search");
    }
    List<String> add = List.of();
    List<String> remove = List.of();
    if (act == Act.TAG) {
      add = RecipeDocument.lines(fields, "add", Limits.TAGS, Limits.TAG, faults);
      remove = RecipeDocument.lines(fields, "remove", Limits.TAGS, Limits.TAG, faults);
      if (add.isEmpty() && remove.isEmpty() && faults.count() == 0) {
        faults.missing(fields.placeOf("add"), "tags to add or to remove");
      }
    }
    fields.done();
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    return new BulkBody(Objects.requireNonNull(act), recipes, search, add, remove);
  }
}
