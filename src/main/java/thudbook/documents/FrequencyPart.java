package thudbook.documents;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Tree;
import thudbook.documents.tree.Values;
import thudbook.quantities.Dimension;
import thudbook.quantities.Frequency;
import thudbook.sources.Modulator;

/** Frequencies: hertz or a note; of a modulator also a ratio of its carrier. */
final class FrequencyPart {
  private static final String OR_NOTE = ", or a note such as A1 or C#3";
  private static final String OR_RATIO = OR_NOTE + ", or a ratio such as 1.5 x";

  private FrequencyPart() {}

  static @Nullable Frequency read(Tree tree, Faults faults) {
    return read(tree, OR_NOTE, faults);
  }

  private static @Nullable Frequency read(Tree tree, String others, Faults faults) {
    if (tree instanceof Tree.Mapping) {
      Fields fields = Fields.of(tree, faults);
      Tree note = fields.need("note", "a note such as A1 or C#3");
      fields.done();
      return note == null ? null : note(note, faults);
    }
    if (tree instanceof Tree.Text text) {
      Optional<Frequency.Note> note = Frequency.Note.read(text.text().strip());
      if (note.isPresent()) {
        return note.get();
      }
    }
    Double hertz = Values.quantity(tree, Limits.FREQUENCY, others, faults);
    return hertz == null ? null : Frequency.ofHertz(hertz);
  }

  private static @Nullable Frequency note(Tree tree, Faults faults) {
    Optional<Frequency.Note> note =
        tree instanceof Tree.Text text
            ? Frequency.Note.read(text.text().strip())
            : Optional.empty();
    if (note.isEmpty()) {
      faults.add(tree, "not-a-note", "a note such as A1 or C#3");
    }
    return note.orElse(null);
  }

  static @Nullable Modulator readModulator(Tree tree, Faults faults) {
    if (tree instanceof Tree.Mapping mapping && mapping.entries().containsKey("ratio")) {
      Fields fields = Fields.of(tree, faults);
      Double ratio = fields.needQuantity("ratio", Limits.RATIO);
      fields.done();
      return ratio == null ? null : new Modulator.Ratio(ratio);
    }
    if (tree instanceof Tree.Text text && endsWithTimes(text.text())) {
      Double ratio = Values.quantity(tree, Limits.RATIO, faults);
      return ratio == null ? null : new Modulator.Ratio(ratio);
    }
    Frequency frequency = read(tree, OR_RATIO, faults);
    return frequency == null ? null : new Modulator.Absolute(frequency);
  }

  private static boolean endsWithTimes(String text) {
    String word = text.strip().toLowerCase(Locale.ROOT);
    return word.endsWith("x") || word.endsWith("×");
  }

  static Draft write(Frequency frequency) {
    return frequency instanceof Frequency.Note note
        ? new Draft.Either(
            new Draft.Token(note.name()), Draft.keys().token("note", note.name()).inline())
        : new Draft.Quantity(frequency.hertz(), Dimension.FREQUENCY);
  }

  static Draft write(Modulator modulator) {
    if (modulator instanceof Modulator.Ratio ratio) {
      Draft written = new Draft.Quantity(ratio.ratio(), Dimension.RATIO);
      return new Draft.Either(written, Draft.keys().put("ratio", written).inline());
    }
    return write(((Modulator.Absolute) modulator).frequency());
  }
}
