package thudbook.documents;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import thudbook.equipment.Gate;
import thudbook.recipes.Recipe;

/**
 * Two changes of one recipe or gate, field by field against what both began from. What can be
 * chosen apart is a unit: a single field; a whole block where its kinds differ, for the fields of
 * one kind mean nothing to another; a whole list of rows; all stages where their number differs,
 * all channels where their names do, all cells of a channel where their number does.
 *
 * @param units those in which the three are not the same, in the order of the document
 */
public record Merge(List<Unit> units, List<Unit> same) {
  private static final Set<String> LISTS =
      Set.of("connections", "settings", "mix", "after", "photos");
  private static final Pattern BLOCK =
      Pattern.compile("(source|envelope|strikes|stages\\.[0-9]+\\.envelope)\\..*");
  private static final Pattern CELLS = Pattern.compile("(channels\\.[0-9]+\\.release)\\..*");
  private static final Pattern ROW = Pattern.compile("[a-z]+\\.([0-9]+)\\..*");

  public Merge {
    units = List.copyOf(units);
    same = List.copyOf(same);
  }

  /** Where a value comes from. */
  public enum Side {
    /** What both began from. */
    BASE,
    /** What was saved meanwhile. */
    THEIRS,
    /** What is to be saved now. */
    YOURS
  }

  /**
   * What can be chosen apart.
   *
   * @param name of the field, the block or the list
   * @param base its fields, as both began
   */
  public record Unit(
      String name,
      Map<String, List<String>> base,
      Map<String, List<String>> theirs,
      Map<String, List<String>> yours) {
    /** The fields of a side. */
    public Map<String, List<String>> of(Side side) {
      return switch (side) {
        case BASE -> base;
        case THEIRS -> theirs;
        case YOURS -> yours;
      };
    }

    /** Whoever changed it; yours if both did. */
    public Side changed() {
      return yours.equals(base) ? Side.THEIRS : Side.YOURS;
    }

    /** Whether both changed it, and not to the same. */
    public boolean contested() {
      return !yours.equals(base) && !theirs.equals(base) && !yours.equals(theirs);
    }

    /** What a side says, a row or a field of a block to a line; empty: nothing. */
    public String text(Side side) {
      Map<String, List<String>> fields = of(side);
      if (fields.containsKey(name)) {
        return String.join(", ", fields.get(name));
      }
      if (LISTS.contains(name) || name.equals("stages") || name.equals("channels")) {
        Map<Integer, List<String>> rows = new TreeMap<>();
        fields.forEach(
            (field, values) -> {
              Matcher row = ROW.matcher(field);
              if (row.matches()) {
                rows.computeIfAbsent(Integer.valueOf(row.group(1)), i -> new ArrayList<>())
                    .addAll(values);
              }
            });
        return rows.values().stream()
            .map(r -> String.join(", ", r))
            .collect(Collectors.joining("\n"));
      }
      return fields.entrySet().stream()
          .map(
              field ->
                  field.getKey().substring(field.getKey().lastIndexOf('.') + 1)
                      + ": "
                      + String.join(", ", field.getValue()))
          .collect(Collectors.joining("\n"));
    }
  }

  /** Compares two changes of a recipe with what both began from. */
  public static Merge of(Recipe base, Recipe theirs, Recipe yours) {
    return of(
        List.of(Documents.form(base), Documents.form(theirs), Documents.form(yours)),
        Merge::unitOfRecipe);
  }

  /** Compares two changes of a gate with what both began from. */
  public static Merge of(Gate base, Gate theirs, Gate yours) {
    return of(
        List.of(Documents.form(base), Documents.form(theirs), Documents.form(yours)),
        Merge::unitOfGate);
  }

  /** Tells the unit of a field. */
  private interface Units {
    String of(String field, List<Map<String, List<String>>> forms);
  }

  private static Merge of(List<Map<String, List<String>>> forms, Units units) {
    Map<String, Set<String>> names = new LinkedHashMap<>();
    for (Map<String, List<String>> form : forms) {
      for (String field : form.keySet()) {
        names.computeIfAbsent(units.of(field, forms), unit -> new LinkedHashSet<>()).add(field);
      }
    }
    List<Unit> different = new ArrayList<>();
    List<Unit> same = new ArrayList<>();
    names.forEach(
        (name, fields) -> {
          Unit unit =
              new Unit(
                  name,
                  only(forms.get(0), fields),
                  only(forms.get(1), fields),
                  only(forms.get(2), fields));
          boolean differs = !unit.base().equals(unit.theirs()) || !unit.base().equals(unit.yours());
          (differs ? different : same).add(unit);
        });
    return new Merge(different, same);
  }

  private static String unitOfRecipe(String field, List<Map<String, List<String>>> forms) {
    String first = field.replaceFirst("\\..*", "");
    if (LISTS.contains(first) || (first.equals("stages") && differ(forms, Merge::stages))) {
      return first;
    }
    Matcher block = BLOCK.matcher(field);
    return block.matches() && differ(forms, form -> form.get(block.group(1) + ".kind"))
        ? block.group(1)
        : field;
  }

  private static String unitOfGate(String field, List<Map<String, List<String>>> forms) {
    if (field.startsWith("channels.") && differ(forms, Merge::channels)) {
      return "channels";
    }
    Matcher cells = CELLS.matcher(field);
    return cells.matches() && differ(forms, form -> cells(form, cells.group(1)))
        ? cells.group(1)
        : field;
  }

  /** The names of all channels in their order. */
  private static List<List<String>> channels(Map<String, List<String>> form) {
    return form.entrySet().stream()
        .filter(field -> field.getKey().matches("channels\\.[0-9]+\\.name"))
        .map(Map.Entry::getValue)
        .toList();
  }

  private static long cells(Map<String, List<String>> form, String release) {
    return form.keySet().stream()
        .filter(name -> name.startsWith(release + "."))
        .map(name -> name.substring(release.length() + 1).split("\\.", 2)[0])
        .distinct()
        .count();
  }

  private static long stages(Map<String, List<String>> form) {
    return form.keySet().stream()
        .filter(name -> name.startsWith("stages."))
        .map(name -> name.split("\\.", 3)[1])
        .distinct()
        .count();
  }

  private static boolean differ(
      List<Map<String, List<String>>> forms,
      java.util.function.Function<Map<String, List<String>>, ?> what) {
    return forms.stream()
            .map(form -> Objects.requireNonNullElse(what.apply(form), ""))
            .distinct()
            .count()
        > 1;
  }

  private static Map<String, List<String>> only(Map<String, List<String>> form, Set<String> names) {
    Map<String, List<String>> some = new LinkedHashMap<>(form);
    some.keySet().retainAll(names);
    return some;
  }

  /**
   * The form in which every unit is as somebody chose.
   *
   * @param chosen by the names of units; the others are as whoever changed them has them
   */
  public Map<String, List<String>> combined(Map<String, Side> chosen) {
    Map<String, List<String>> form = new LinkedHashMap<>();
    same.forEach(unit -> form.putAll(unit.base()));
    units.forEach(unit -> form.putAll(unit.of(chosen.getOrDefault(unit.name(), unit.changed()))));
    return form;
  }
}
