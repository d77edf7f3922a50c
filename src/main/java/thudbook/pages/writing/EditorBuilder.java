package thudbook.pages.writing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import thudbook.pages.frame.PostedForm;
import thudbook.pages.writing.EditorField.Option;
import thudbook.pages.writing.EditorSheet.Kind;
import thudbook.pages.writing.EditorSheet.Kinds;
import thudbook.pages.writing.EditorSheet.Rows;
import thudbook.pages.writing.EditorSheet.Stage;

/** Lays out the fields of a form: which there are, in which order, with what stands in them. */
final class EditorBuilder {
  /** The lists that the suggestions of a field come from. */
  private static final Map<String, String> LISTS =
      Map.ofEntries(
          Map.entry("tags", "tags"),
          Map.entry("by", "people"),
          Map.entry("with", "people"),
          Map.entry("room", "rooms"),
          Map.entry("out", "outputs"),
          Map.entry("in", "inputs"),
          Map.entry("module", "modules"),
          Map.entry("control", "controls"),
          Map.entry("into", "mixes"),
          Map.entry("what", "treatments"));

  private final PostedForm form;
  private final Map<String, String> faults = new HashMap<>();
  private final List<Option> gates;
  private final List<Option> channels;

  /**
   * @param gates to choose from, by slug
   * @param channels to choose from, in groups by the slug of their gate
   */
  EditorBuilder(
      PostedForm form, List<EditorFault> faults, List<Option> gates, List<Option> channels) {
    this.form = form;
    this.gates = gates;
    this.channels = channels;
    faults.forEach(
        fault -> this.faults.merge(fault.field(), fault.message(), (a, b) -> a + " " + b));
  }

  /** The fields that are no part of the sound. */
  Map<String, List<EditorField>> parts() {
    Map<String, List<EditorField>> parts = new LinkedHashMap<>();
    parts.put("title", fields("", "title"));
    parts.put("about", fields("", "tags", "heard", "by", "with", "made", "room", "rating"));
    parts.put("output", fields("output.", "coupling"));
    parts.put("notes", fields("", "notes"));
    parts.put("names", fields("", "slug", "derivedFrom"));
    return parts;
  }

  Kinds source() {
    return kinds(
        "source",
        "Source",
        new Kind("", "Not yet", List.of(), List.of()),
        new Kind(
            "noise",
            "Noise",
            fields("source.noise.", "from", "to"),
            fields("source.noise.", "colour", "level")),
        new Kind(
            "oscillator",
            "Oscillator",
            fields("source.oscillator.", "frequency", "wave"),
            fields("source.oscillator.", "duty", "level")),
        new Kind(
            "fm",
            "FM pair",
            fields("source.fm.", "carrier", "modulator", "index"),
            fields("source.fm.", "wave", "phase", "level")));
  }

  Kinds envelope() {
    List<Kind> kinds = envelopes("envelope.");
    kinds.add(new Kind("", "Not yet", List.of(), List.of()));
    return kinds("envelope", "Envelope", kinds.toArray(new Kind[0]));
  }

  private List<Kind> envelopes(String in) {
    String struck = in + "attack-hold-decay.";
    String held = in + "attack-decay-sustain-release.";
    return new ArrayList<>(
        List.of(
            new Kind(
                "attack-hold-decay",
                "Attack, hold, decay",
                fields(struck, "peak", "attack", "decay"),
                fields(struck, "hold", "attackCurve", "overshoot", "decayCurve", "decaysTo")),
            new Kind("pulse", "Pulse", fields(in + "pulse.", "peak", "length"), List.of()),
            new Kind(
                "attack-decay-sustain-release",
                "Attack, decay, sustain, release",
                fields(held, "peak", "attack", "decay", "sustain", "length", "release"),
                fields(
                    held,
                    "attackCurve",
                    "overshoot",
                    "decayCurve",
                    "decaysTo",
                    "releaseCurve",
                    "releasesTo")),
            new Kind("recorded", "Recorded", fields(in + "recorded.", "samples"), List.of())));
  }

  Kinds strikes() {
    return kinds(
        "strikes",
        "Strikes",
        new Kind("", "One", List.of(), List.of()),
        new Kind(
            "every", "Evenly", fields("strikes.every.", "every", "count", "restart"), List.of()),
        new Kind(
            "tempo",
            "On notes of a tempo",
            fields("strikes.tempo.", "tempo", "note", "count", "restart"),
            List.of()),
        new Kind("at", "At listed times", fields("strikes.at.", "at", "restart"), List.of()));
  }

  List<Stage> stages() {
    List<Stage> stages = new ArrayList<>();
    for (int i = 0; i < Math.max(1, form.rows("stages")); i++) {
      String in = "stages." + i + ".";
      List<Kind> kinds = envelopes(in + "envelope.");
      kinds.add(0, new Kind("", "The recipe’s", List.of(), List.of()));
      Kinds own = kinds(in + "envelope", "Envelope of this stage", kinds.toArray(new Kind[0]));
      List<EditorField> drive = fields(in, "gain", "offset", "controlRail");
      EditorField tried = field(in + "tried");
      boolean faulty =
          faults.keySet().stream()
              .anyMatch(name -> name.startsWith(in) && !name.matches(".*\\.(gate|channel)"));
      stages.add(
          new Stage(
              i + 1,
              List.of(gate(in + "gate"), channel(in)),
              drive,
              tried,
              own,
              faulty || !own.chosen().isEmpty() || !tried.value().isBlank()));
    }
    return stages;
  }

  private EditorField gate(String name) {
    String now = form.text(name);
    List<Option> options = new ArrayList<>(List.of(Option.of("", "not yet")));
    options.addAll(gates);
    if (options.stream().noneMatch(option -> option.value().equals(now))) {
      options.add(Option.of(now, now + ", not in the studio"));
    }
    return field(name, options);
  }

  private EditorField channel(String in) {
    String now = form.text(in + "channel");
    String gate = form.text(in + "gate");
    List<Option> options = new ArrayList<>(List.of(Option.of("", "not yet")));
    options.addAll(channels);
    if (!now.isEmpty()
        && options.stream().noneMatch(o -> o.value().equals(now) && o.group().equals(gate))) {
      options.add(new Option(now, now + ", not a channel of this gate", ""));
    }
    return field(in + "channel", options);
  }

  List<Rows> rows() {
    return List.of(
        rows(
            "connections", "Connections", "Cables, output first.", "Add a connection", "out", "in"),
        rows(
            "settings",
            "Settings",
            "Knobs and switches, and which value of the sound each of them sets.",
            "Add a setting",
            "module",
            "control",
            "at",
            "for"),
        rows("mix", "Mix", "Where the sound goes.", "Add a destination", "into", "level"),
        rows(
            "after",
            "Treatment",
            "What treats the sound behind the low-pass gate.",
            "Add a treatment",
            "what",
            "how"),
        rows("photos", "Photos", "Pictures of the patch, in words.", "", "shows"));
  }

  /** The first field of a row. */
  static String firstColumn(String list) {
    return switch (list) {
      case "connections" -> "out";
      case "settings" -> "module";
      case "mix" -> "into";
      default -> "what";
    };
  }

  private Rows rows(String name, String title, String help, String add, String... columns) {
    List<List<EditorField>> rows = new ArrayList<>();
    int count = 0;
    int least = add.isEmpty() ? 0 : 1;
    for (int i = 0; i < Math.max(least, form.rows(name)); i++) {
      List<EditorField> row = new ArrayList<>();
      for (String column : columns) {
        String field = name + "." + i + "." + column;
        row.add(column.equals("for") ? field(field, values(form.text(field))) : field(field));
      }
      rows.add(row);
      count += row.stream().allMatch(field -> field.value().isBlank()) ? 0 : 1;
    }
    List<String> header = new ArrayList<>();
    for (String column : columns) {
      header.add(FieldWords.of(name + ".0." + column).label());
    }
    return new Rows(name, title, help, add, count, header, rows);
  }

  /** The values of the sound that a knob may set. */
  private List<Option> values(String now) {
    List<Option> values = new ArrayList<>(List.of(Option.of("", "nothing named")));
    for (Kinds block : List.of(source(), envelope(), strikes())) {
      for (Kind kind : block.kinds()) {
        if (block.isChosen(kind)) {
          List<EditorField> fields = new ArrayList<>(kind.first());
          fields.addAll(kind.more());
          for (EditorField field : fields) {
            String value = field.name().replaceFirst("\\." + kind.value() + "\\.", ".");
            values.add(new Option(value, field.label(), block.legend()));
          }
        }
      }
    }
    for (int i = 0; i < Math.max(1, form.rows("stages")); i++) {
      for (EditorField field : fields("stages." + i + ".", "gain", "offset")) {
        values.add(new Option(field.name(), field.label(), "Stage " + (i + 1)));
      }
    }
    if (values.stream().noneMatch(option -> option.value().equals(now))) {
      values.add(Option.of(now, now));
    }
    return values;
  }

  private Kinds kinds(String name, String legend, Kind... kinds) {
    return new Kinds(
        name,
        legend,
        form.text(name + ".kind"),
        List.of(kinds),
        faults.getOrDefault(name + ".kind", ""));
  }

  private List<EditorField> fields(String in, String... names) {
    List<EditorField> fields = new ArrayList<>();
    for (String name : names) {
      fields.add(field(in + name));
    }
    return fields;
  }

  private EditorField field(String name) {
    return field(name, FieldWords.of(name).options());
  }

  private EditorField field(String name, List<Option> options) {
    FieldWords words = FieldWords.of(name);
    return new EditorField(
        name,
        words.label(),
        words.range(),
        words.help(),
        form.text(name),
        words.usual(),
        words.look(),
        options,
        words.turn(),
        LISTS.getOrDefault(name.substring(name.lastIndexOf('.') + 1), ""),
        faults.getOrDefault(name, ""));
  }

  /** The parts that something is wrong in. */
  Set<String> faultyParts() {
    Set<String> parts = new HashSet<>();
    for (String name : faults.keySet()) {
      parts.add(name.replaceFirst("\\..*", ""));
    }
    parts()
        .forEach(
            (part, fields) -> {
              if (fields.stream().anyMatch(EditorField::faulty)) {
                parts.add(part);
              }
            });
    return parts;
  }
}
