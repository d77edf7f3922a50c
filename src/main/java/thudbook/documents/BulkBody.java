package thudbook.documents;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;

/**
 * What is to be done to many recipes at once: {@code {"do": "bin" | "restore" | "tag", "recipes":
 * [slugs or ids], "add": [tags], "remove": [tags]}}, the tags only with {@code tag}.
 */
public record BulkBody(Act act, List<String> recipes, List<String> add, List<String> remove) {
  private static final int MOST_RECIPES = 10_000;

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
    Act act = word == null ? null : Choice.BULK.read(word, faults);
    List<String> recipes = RecipeDocument.lines(fields, "recipes", MOST_RECIPES, 80, faults);
    if (recipes.isEmpty() && faults.count() == 0) {
      faults.missing(fields.placeOf("recipes"), "a list of slugs or ids");
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
    return new BulkBody(Objects.requireNonNull(act), recipes, add, remove);
  }

  /**
   * A recipe with the tags added and removed; its own spelling of a tag stays.
   *
   * @throws Refusal if it would have too many
   */
  public Recipe tagged(Recipe recipe) {
    Map<String, String> tags = new LinkedHashMap<>();
    recipe.tags().forEach(tag -> tags.put(Texts.folded(tag), tag));
    remove.forEach(tag -> tags.remove(Texts.folded(tag)));
    add.forEach(tag -> tags.putIfAbsent(Texts.folded(tag), tag));
    if (tags.size() > Limits.TAGS) {
      throw Refusal.of(
          Refusal.Kind.REFUSED_VALUES,
          "too-many-tags",
          recipe.title() + " would have more than " + Limits.TAGS + " tags.");
    }
    return recipe.withTags(List.copyOf(tags.values()));
  }

  /** The act in words. */
  public String what(int changed) {
    List<String> words = new ArrayList<>();
    if (!add.isEmpty()) {
      words.add("tagged " + String.join(", ", add));
    }
    if (!remove.isEmpty()) {
      words.add("untagged " + String.join(", ", remove));
    }
    return String.join(", ", words)
        + (changed == 1 ? " on 1 recipe" : " on " + changed + " recipes");
  }
}
