package thudbook.documents;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Moments;
import thudbook.documents.tree.Tree;
import thudbook.documents.tree.Values;
import thudbook.envelopes.Strikes;
import thudbook.quantities.Dimension;

/** The {@code strikes} of a recipe: at a distance, on notes of a tempo, or at listed times. */
final class StrikesPart {
  private static final Pattern NOTE = Pattern.compile("([0-9]{1,3})/([0-9]{1,3})");
  private static final String NOTE_EXPECTED = "a note such as 1/8, from 1 to 64 over from 1 to 128";
  private static final String FORMS = "every and count, or tempo, note and count, or at";

  private StrikesPart() {}

  static @Nullable Strikes read(Tree tree, Faults faults) {
    int before = faults.count();
    Fields fields = Fields.of(tree, faults);
    Strikes.Restart restart = fields.choice("restart", Choices.RESTART, Strikes.Restart.LEVEL);
    Tree every = fields.get("every");
    Tree tempo = fields.get("tempo");
    Tree note = fields.get("note");
    Tree count = fields.get("count");
    Tree at = fields.get("at");
    fields.done();
    if (!(tree instanceof Tree.Mapping mapping)) {
      return null;
    }
    int forms = (every == null ? 0 : 1) + (tempo == null ? 0 : 1) + (at == null ? 0 : 1);
    if (forms != 1 || (at != null && count != null) || (tempo == null && note != null)) {
      faults.add(fields.place(), "mixed", String.join(", ", mapping.entries().keySet()), FORMS);
      return null;
    }
    if (at != null) {
      List<Double> seconds = moments(at, faults);
      return faults.count() == before ? new Strikes.At(seconds, restart) : null;
    }
    Integer times = need(count, fields, "count", "a whole number from 1 to 64", faults);
    if (every != null) {
      Double seconds = Values.quantity(every, Limits.TIME, faults);
      return seconds == null || times == null ? null : new Strikes.Every(seconds, times, restart);
    }
    int[] fraction = fraction(note, fields, faults);
    Double beats = tempo == null ? null : Values.quantity(tempo, Limits.TEMPO, faults);
    if (beats == null || times == null || faults.count() > before) {
      return null;
    }
    double seconds = 240 / beats * fraction[0] / fraction[1];
    if (!Limits.TIME.admits(seconds)) {
      faults.add(
          fields.placeOf("note"),
          "out-of-range",
          "strikes " + Dimension.TIME.say(seconds) + " apart",
          Limits.TIME.words());
      return null;
    }
    return new Strikes.Tempo(beats, fraction[0], fraction[1], times, restart);
  }

  private static @Nullable Integer need(
      @Nullable Tree count, Fields fields, String key, String expected, Faults faults) {
    if (count == null) {
      faults.missing(fields.placeOf(key), expected);
      return null;
    }
    return Values.whole(count, 1, Strikes.MOST, faults);
  }

  private static int[] fraction(@Nullable Tree note, Fields fields, Faults faults) {
    if (note == null) {
      faults.missing(fields.placeOf("note"), NOTE_EXPECTED);
      return new int[] {1, 1};
    }
    Matcher matcher = NOTE.matcher(note instanceof Tree.Text text ? text.text().strip() : "");
    if (matcher.matches()) {
      int over = Integer.parseInt(matcher.group(1));
      int under = Integer.parseInt(matcher.group(2));
      if (over >= 1 && over <= 64 && under >= 1 && under <= 128) {
        return new int[] {over, under};
      }
    }
    faults.add(note, "not-a-note", NOTE_EXPECTED);
    return new int[] {1, 1};
  }

  private static List<Double> moments(Tree tree, Faults faults) {
    List<Double> moments = new ArrayList<>();
    for (Tree item : Fields.itemsOf(tree, 1, Strikes.MOST, faults)) {
      Double seconds = Values.quantity(item, Limits.MOMENT, faults);
      if (seconds != null) {
        Double previous = moments.isEmpty() ? null : moments.get(moments.size() - 1);
        Moments.check(item.place(), seconds, previous, faults);
        moments.add(seconds);
      }
    }
    return moments;
  }

  static Draft write(Strikes strikes) {
    Draft.Keys keys = Draft.keys();
    if (strikes instanceof Strikes.Every every) {
      keys.quantity("every", every.everySeconds(), Dimension.TIME).whole("count", every.count());
    } else if (strikes instanceof Strikes.Tempo tempo) {
      keys.quantity("tempo", tempo.beatsPerMinute(), Dimension.TEMPO)
          .token("note", tempo.numerator() + "/" + tempo.denominator())
          .whole("count", tempo.count());
    } else {
      keys.put(
          "at",
          Draft.inline(
              strikes.seconds().stream()
                  .map(seconds -> new Draft.Quantity(seconds, Dimension.TIME))
                  .toList()));
    }
    return keys.choice("restart", Choices.RESTART, strikes.restart()).inline();
  }
}
