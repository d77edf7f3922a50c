package thudbook.documents;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Thing;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Place;
import thudbook.documents.tree.YamlPrint;

/**
 * What differs between two states of a thing, in the order of its document. Values stand as the
 * document writes them, without quotes. Rows of a list, such as connections, are gone, new or
 * changed as a whole; identifiers are not compared.
 */
public final class Differences {
  private static final Set<String> IDENTIFIERS = Set.of("thudbook", "id");

  private final List<Difference> found = new ArrayList<>();

  private Differences() {}

  /**
   * One difference.
   *
   * @param pointer where: a JSON pointer such as {@code /envelope/decay}; of rows, that of their
   *     list
   * @param before null: it was not there
   * @param after null: it is not there any more
   */
  public record Difference(String pointer, @Nullable String before, @Nullable String after) {}

  /** What differs between two states of a thing, or between two things of a noun. */
  public static <T extends Thing> List<Difference> between(T before, T after) {
    return between(Documents.of(before), before, after);
  }

  /** The same for a noun that the notebook need not know. */
  public static <T extends Thing> List<Difference> between(
      NounDocument<T> noun, T before, T after) {
    return differences(noun.whole(before), noun.whole(after));
  }

  private static List<Difference> differences(Draft.Mapping before, Draft.Mapping after) {
    Differences differences = new Differences();
    differences.keys(new Place(0, ""), before, after);
    return List.copyOf(differences.found);
  }

  private void keys(Place place, Draft.Mapping before, Draft.Mapping after) {
    Set<String> keys = new LinkedHashSet<>(after.entries().keySet());
    keys.addAll(before.entries().keySet());
    if (place.pointer().isEmpty()) {
      keys.removeAll(IDENTIFIERS);
    }
    for (String key : keys) {
      values(place.key(key, 0), before.entries().get(key), after.entries().get(key));
    }
  }

  private void values(Place place, @Nullable Draft givenBefore, @Nullable Draft givenAfter) {
    Draft before = ofYaml(givenBefore);
    Draft after = ofYaml(givenAfter);
    if (before instanceof Draft.Mapping one && after instanceof Draft.Mapping other) {
      keys(place, one, other);
    } else if (before instanceof Draft.Mapping one && after == null) {
      keys(place, one, Draft.keys().lines());
    } else if (before == null && after instanceof Draft.Mapping other) {
      keys(place, Draft.keys().lines(), other);
    } else if (isRows(before) || isRows(after)) {
      rows(place, itemsOf(before), itemsOf(after));
    } else {
      String was = said(before);
      String is = said(after);
      if (was == null ? is != null : !was.equals(is)) {
        found.add(new Difference(place.pointer(), was, is));
      }
    }
  }

  /** A list whose items stand for themselves; those of a transfer or a release make one whole. */
  private static boolean isRows(@Nullable Draft draft) {
    return draft instanceof Draft.Sequence list
        && (!list.onOneLine()
            || list.items().stream()
                .map(Differences::ofYaml)
                .allMatch(
                    item ->
                        item instanceof Draft.Words
                            || (item instanceof Draft.Mapping row
                                && !row.entries().containsKey("share"))));
  }

  private void rows(Place place, List<Draft> before, List<Draft> after) {
    boolean parts =
        before.stream().anyMatch(Differences::isPart)
            || after.stream().anyMatch(Differences::isPart);
    if (parts) {
      for (int i = 0; i < Math.max(before.size(), after.size()); i++) {
        values(
            place.item(i, 0),
            i < before.size() ? before.get(i) : null,
            i < after.size() ? after.get(i) : null);
      }
      return;
    }
    List<String> was = before.stream().map(Differences::saidWhole).toList();
    List<String> is = after.stream().map(Differences::saidWhole).toList();
    for (AbstractDelta<String> delta : DiffUtils.diff(was, is).getDeltas()) {
      List<String> gone = delta.getSource().getLines();
      List<String> fresh = delta.getTarget().getLines();
      for (int i = 0; i < Math.max(gone.size(), fresh.size()); i++) {
        found.add(
            new Difference(
                place.pointer(),
                i < gone.size() ? gone.get(i) : null,
                i < fresh.size() ? fresh.get(i) : null));
      }
    }
  }

  /** A stage or a channel: something with parts of its own, compared part by part. */
  private static boolean isPart(Draft draft) {
    return draft instanceof Draft.Mapping mapping && !mapping.onOneLine();
  }

  private static List<Draft> itemsOf(@Nullable Draft draft) {
    return draft instanceof Draft.Sequence list ? List.copyOf(list.items()) : List.of();
  }

  private static @Nullable Draft ofYaml(@Nullable Draft draft) {
    return draft instanceof Draft.Either either ? either.yaml() : draft;
  }

  private static @Nullable String said(@Nullable Draft draft) {
    return draft == null ? null : saidWhole(draft);
  }

  private static String saidWhole(Draft given) {
    Draft draft = given instanceof Draft.Either either ? either.yaml() : given;
    if (draft instanceof Draft.Words words) {
      return words.text();
    } else if (draft instanceof Draft.Mapping mapping) {
      return mapping.entries().values().stream()
          .map(Differences::saidWhole)
          .collect(Collectors.joining(", "));
    } else if (draft instanceof Draft.Sequence list && isRows(draft)) {
      return list.items().stream().map(Differences::saidWhole).collect(Collectors.joining(", "));
    }
    return YamlPrint.line(draft);
  }
}
