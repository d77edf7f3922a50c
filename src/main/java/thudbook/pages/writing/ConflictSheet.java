package thudbook.pages.writing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.documents.Merge;
import thudbook.equipment.Gate;
import thudbook.pages.frame.PostedForm;
import thudbook.recipes.Recipe;
import thudbook.wording.Reading;

/**
 * Two versions of a recipe or gate of which one was saved while the other was written.
 *
 * @param action where the choice is saved
 * @param again where the form goes on from what was chosen
 * @param meanwhile who saved, and when
 * @param carried everything that was typed, and what the page has to know
 */
public record ConflictSheet(
    String title,
    String action,
    String again,
    String meanwhile,
    Map<String, List<String>> carried,
    List<Line> lines) {
  private static final String TAKE = "take.";

  /**
   * One thing to choose.
   *
   * @param name of the radio buttons
   * @param contested whether both changed it
   */
  public record Line(String name, String label, boolean contested, List<Option> options) {}

  /**
   * What one version has.
   *
   * @param value of the radio button
   * @param text empty: nothing is written there
   */
  public record Option(String value, String version, String text, boolean chosen) {}

  /**
   * The choice between what a form holds and the recipe that is stored.
   *
   * @param last the act that stored it
   */
  static ConflictSheet ofRecipe(
      PostedForm form, Kept<Recipe> stored, Revision<Recipe> last, Merge merge) {
    return new ConflictSheet(
        stored.thing().title(),
        "/recipes/" + stored.thing().slug() + "/edit",
        "/editor/form",
        words(last),
        carried(form, stored.version()),
        lines(form, merge, ConflictSheet::label));
  }

  /**
   * The choice between what a form holds and the gate that is stored.
   *
   * @param last the act that stored it
   */
  static ConflictSheet ofGate(
      PostedForm form, Kept<Gate> stored, Revision<Gate> last, Merge merge) {
    return new ConflictSheet(
        stored.thing().title(),
        "/gates/" + stored.thing().slug() + "/edit",
        "/editor/gate/form",
        words(last),
        carried(form, stored.version()),
        lines(form, merge, unit -> labelOfGate(unit, stored.thing())));
  }

  private static String words(Revision<?> last) {
    return last.author().name() + " on " + Reading.day(last.at());
  }

  private static Map<String, List<String>> carried(PostedForm form, long version) {
    Map<String, List<String>> carried = new LinkedHashMap<>(form.fields());
    carried.keySet().removeIf(name -> name.startsWith("form." + TAKE));
    carried.put("form.theirs", List.of(String.valueOf(version)));
    return carried;
  }

  private static List<Line> lines(PostedForm form, Merge merge, UnaryOperator<String> label) {
    List<Line> lines = new ArrayList<>();
    for (Merge.Unit unit : merge.units()) {
      if (!unit.yours().equals(unit.theirs())) {
        lines.add(line(unit, form, label.apply(unit.name())));
      }
    }
    return lines;
  }

  private static Line line(Merge.Unit unit, PostedForm form, String label) {
    String before = form.own(TAKE + unit.name());
    String chosen = before.isEmpty() ? value(unit.changed()) : before;
    return new Line(
        "form." + TAKE + unit.name(),
        label,
        unit.contested(),
        List.of(
            option(unit, Merge.Side.YOURS, "Yours", chosen),
            option(unit, Merge.Side.THEIRS, "Saved meanwhile", chosen),
            option(unit, Merge.Side.BASE, "Before both", chosen)));
  }

  private static Option option(Merge.Unit unit, Merge.Side side, String version, String chosen) {
    return new Option(value(side), version, unit.text(side), value(side).equals(chosen));
  }

  private static String value(Merge.Side side) {
    return side.name().toLowerCase(Locale.ROOT);
  }

  private static String label(String unit) {
    return switch (unit) {
      case "source", "envelope", "strikes", "stages", "connections", "settings", "mix" ->
          unit.substring(0, 1).toUpperCase(Locale.ROOT) + unit.substring(1);
      case "after" -> "Treatment";
      case "photos" -> "Photos";
      default ->
          unit.matches("stages\\.[0-9]+\\.envelope")
              ? "Envelope of stage " + (Integer.parseInt(unit.split("\\.", -1)[1]) + 1)
              : labelOfField(unit);
    };
  }

  private static String labelOfGate(String unit, Gate gate) {
    String[] parts = unit.split("\\.", 3);
    if (!parts[0].equals("channels")) {
      return FieldWords.of(unit).label();
    }
    if (parts.length == 1) {
      return "Channels";
    }
    int number = Integer.parseInt(parts[1]);
    String channel =
        number < gate.channels().size()
            ? "Channel " + gate.channels().get(number).channel().name()
            : "Channel " + (number + 1);
    return channel + ": " + (parts[2].equals("release") ? "cells" : labelOfCell(unit, parts[2]));
  }

  private static String labelOfCell(String unit, String field) {
    String label = FieldWords.of(unit).label();
    return field.startsWith("release.")
        ? "cell " + (Integer.parseInt(field.split("\\.", 3)[1]) + 1) + ", " + label
        : label;
  }

  private static String labelOfField(String field) {
    String block = field.replaceFirst("\\..*", "");
    String label = FieldWords.of(field).label();
    return switch (block) {
      case "source" -> "Source: " + label;
      case "envelope" -> "Envelope: " + label;
      case "strikes" -> "Strikes: " + label;
      case "stages" -> "Stage " + (Integer.parseInt(field.split("\\.", -1)[1]) + 1) + ": " + label;
      default -> label;
    };
  }

  /** What was chosen on this page, by unit. */
  static Map<String, Merge.Side> chosen(PostedForm form) {
    Map<String, Merge.Side> chosen = new HashMap<>();
    form.fields()
        .forEach(
            (name, values) -> {
              String prefix = "form." + TAKE;
              for (Merge.Side side : Merge.Side.values()) {
                if (name.startsWith(prefix) && values.get(0).equals(value(side))) {
                  chosen.put(name.substring(prefix.length()), side);
                }
              }
            });
    return chosen;
  }
}
