package thudbook.library;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.function.Function;
import thudbook.access.Author;
import thudbook.changes.Derived;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Write;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;

/**
 * Tags of many recipes at once. Each act is one change that can be undone, and a new revision of
 * every recipe that it touches: the documents stay true. Recipes in the bin keep their tags.
 */
public final class Tagging {
  private static final int MOST_TAGS = 32;
  private static final int LONGEST_TAG = 40;

  private final Library library;
  private final Keeper<Recipe> recipes;

  /** Acts on the tags of a notebook. */
  public Tagging(Library library, Keeper<Recipe> recipes) {
    this.library = library;
    this.recipes = recipes;
  }

  /**
   * Adds tags to recipes and takes others away. A recipe's own spelling of a tag stays.
   *
   * @return the number of the change; empty if all of them had these tags already
   * @throws Refusal of kind REFUSED_VALUES or CONFLICT with everything that is in the way, such as
   *     a recipe that would have more than 32 tags
   */
  public OptionalLong tag(
      Collection<UUID> ids, List<String> add, List<String> remove, Author author) {
    List<String> words = new ArrayList<>();
    if (!add.isEmpty()) {
      words.add("tagged " + String.join(", ", add));
    }
    if (!remove.isEmpty()) {
      words.add("untagged " + String.join(", ", remove));
    }
    add.forEach(Tagging::refuseUnfit);
    return write(
        ids,
        tags -> {
          Map<String, String> kept = byFolded(tags);
          remove.forEach(tag -> kept.remove(Words.fold(tag)));
          add.forEach(tag -> kept.putIfAbsent(Words.fold(tag), tag));
          return List.copyOf(kept.values());
        },
        String.join(", ", words),
        author);
  }

  /**
   * Gives a tag another name over the whole library. If there is a tag of that name, the two become
   * one.
   *
   * @return the number of the change; empty if no recipe has the tag
   * @throws Refusal if the new name is no tag
   */
  public OptionalLong rename(String tag, String name, Author author) {
    String kept = name.strip();
    refuseUnfit(kept);
    String old = Words.fold(tag);
    boolean merged =
        !old.equals(Words.fold(kept))
            && library.catalogue().labels(Facet.TAG).containsKey(Words.fold(kept));
    return write(
        having(tag, author),
        tags -> {
          Map<String, String> renamed = new LinkedHashMap<>();
          for (String each : tags) {
            if (Words.fold(each).equals(old)) {
              renamed.putIfAbsent(Words.fold(kept), kept);
            } else {
              renamed.putIfAbsent(Words.fold(each), each);
            }
          }
          return List.copyOf(renamed.values());
        },
        (merged ? "merged the tag " + tag + " into " : "renamed the tag " + tag + " to ") + kept,
        author);
  }

  /**
   * Takes a tag from the whole library.
   *
   * @return the number of the change; empty if no recipe has the tag
   */
  public OptionalLong delete(String tag, Author author) {
    String old = Words.fold(tag);
    return write(
        having(tag, author),
        tags -> tags.stream().filter(each -> !Words.fold(each).equals(old)).toList(),
        "deleted the tag " + tag,
        author);
  }

  private Collection<UUID> having(String tag, Author author) {
    Wanted wanted = Wanted.ALL.choosing(Facet.TAG, Words.fold(tag));
    return library.list().ids(library.search().all(wanted, author));
  }

  private static Map<String, String> byFolded(List<String> tags) {
    Map<String, String> byFolded = new LinkedHashMap<>();
    tags.forEach(tag -> byFolded.put(Words.fold(tag), tag));
    return byFolded;
  }

  private OptionalLong write(
      Collection<UUID> ids,
      Function<List<String>, List<String>> change,
      String what,
      Author author) {
    List<Write<Recipe>> writes = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    for (UUID id : ids) {
      Kept<Recipe> stored = recipes.store().find(id.toString()).orElse(null);
      if (stored == null || stored.binnedAt() != null) {
        faults.add(
            fault(
                "not-there",
                id.toString(),
                stored == null
                    ? "There is no recipe " + id + "."
                    : stored.thing().title() + " is in the bin."));
        continue;
      }
      Recipe recipe = stored.thing();
      List<String> tags = change.apply(recipe.tags());
      if (tags.size() > MOST_TAGS) {
        faults.add(
            fault(
                "too-many-tags",
                recipe.slug(),
                recipe.title() + " would have more than " + MOST_TAGS + " tags."));
      } else if (!tags.equals(recipe.tags())) {
        Recipe changed = recipe.withTags(tags);
        writes.add(
            Write.changed(recipes.noun(), changed, stored.version()).with(Derived.AS_BEFORE));
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, faults);
    }
    if (writes.isEmpty()) {
      return OptionalLong.empty();
    }
    String on = writes.size() == 1 ? " on 1 recipe" : " on " + writes.size() + " recipes";
    return OptionalLong.of(recipes.write(writes, author, what + on));
  }

  private static void refuseUnfit(String tag) {
    if (tag.isBlank() || tag.length() > LONGEST_TAG || tag.chars().anyMatch(c -> c < ' ')) {
      throw new Refusal(
          Refusal.Kind.REFUSED_VALUES,
          List.of(
              new Fault(
                  "/add",
                  0,
                  "out-of-range",
                  tag.length() > LONGEST_TAG ? tag.substring(0, LONGEST_TAG) + "…" : tag,
                  "a tag of 1 to " + LONGEST_TAG + " characters",
                  "A tag has 1 to " + LONGEST_TAG + " characters in one line.")));
    }
  }

  private static Fault fault(String code, String found, String message) {
    return new Fault("", 0, code, found, "", message);
  }
}
