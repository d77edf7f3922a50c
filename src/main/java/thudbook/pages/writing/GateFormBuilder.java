package thudbook.pages.writing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import thudbook.documents.Limits;
import thudbook.pages.frame.PostedForm;
import thudbook.recipes.RecipeStore;

/** Lays out the fields of a gate's form. */
final class GateFormBuilder {
  private final PostedForm form;
  private final List<RecipeStore.Use> uses;
  private final Map<String, String> faults = new HashMap<>();

  /**
   * @param uses the recipes that use the gate as it is saved
   */
  GateFormBuilder(PostedForm form, List<EditorFault> faults, List<RecipeStore.Use> uses) {
    this.form = form;
    this.uses = uses;
    faults.forEach(
        fault -> this.faults.merge(fault.field(), fault.message(), (a, b) -> a + " " + b));
  }

  EditorField field(String name) {
    FieldWords words = FieldWords.of(name);
    boolean gateTitle = name.equals("title");
    return new EditorField(
        name,
        words.label(),
        words.range(),
        gateTitle ? "What the gate is called in the studio." : words.help(),
        form.text(name),
        words.usual(),
        words.look(),
        words.options(),
        words.turn(),
        "",
        faults.getOrDefault(name, ""));
  }

  List<GateEditorSheet.Channel> channels() {
    List<GateEditorSheet.Channel> channels = new ArrayList<>();
    for (int i = 0; i < Math.max(1, form.rows("channels")); i++) {
      channels.add(channel(i));
    }
    return channels;
  }

  private GateEditorSheet.Channel channel(int place) {
    String in = "channels." + place + ".";
    String was = form.text(in + "was");
    List<EditorField> more =
        fields(
            in,
            "poles",
            "spread",
            "exponents.cutoff",
            "exponents.level",
            "saturation",
            "outputRail");
    return new GateEditorSheet.Channel(
        place + 1,
        was,
        uses.stream().filter(use -> !was.isEmpty() && use.channels().contains(was)).toList(),
        fields(in, "name", "response", "opening"),
        field(in + "transfer"),
        IntStream.range(0, Limits.CELLS)
            .mapToObj(cell -> fields(in + "release." + cell + ".", "share", "time", "opening"))
            .toList(),
        fields(in, "cutoff.closed", "cutoff.open", "leak", "bleed"),
        more,
        fields(in, "measured.how", "measured.date", "measured.warmUp"),
        more.stream().anyMatch(EditorField::faulty));
  }

  private List<EditorField> fields(String in, String... names) {
    return Arrays.stream(names).map(name -> field(in + name)).toList();
  }
}
