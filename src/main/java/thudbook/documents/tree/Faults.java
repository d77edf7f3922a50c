package thudbook.documents.tree;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** Everything that is wrong with one document, gathered while it is read. */
public final class Faults {
  private static final int LONGEST_FOUND = 60;
  private static final int LONGEST_POINTER = 200;

  /** A person mends the first ones first; a hostile document must not be answered at its length. */
  private static final int MOST = 100;

  private final List<Fault> faults = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private int count;

  /** How many there are; a reader compares it to know whether its own part was clean. */
  public int count() {
    return count;
  }

  /** Something else was expected. */
  public void add(Place place, String code, String found, String expected) {
    String shown = shown(found);
    say(place, code, shown, expected, "found " + shown + ", expected " + expected);
  }

  /** Something else was expected than what stands there. */
  public void add(Tree tree, String code, String expected) {
    add(tree.place(), code, tree.found(), expected);
  }

  /** A key that must be there is not. */
  public void missing(Place place, String expected) {
    say(place, "missing", "nothing", expected, "missing, expected " + expected);
  }

  /** A fault in words of its own. */
  public void say(Place place, String code, String found, String expected, String sentence) {
    count++;
    if (count > MOST) {
      return;
    }
    String where = place.words().isEmpty() ? "" : shown(place.words()) + ": ";
    String pointer = place.pointer();
    if (pointer.length() > LONGEST_POINTER) {
      pointer = pointer.substring(0, LONGEST_POINTER);
    }
    faults.add(new Fault(pointer, place.line(), code, shown(found), expected, where + sentence));
  }

  /** Everything that a part of it was refused for. */
  public void addAll(Refusal refusal) {
    count += refusal.faults().size();
    faults.addAll(refusal.faults());
  }

  /** A value that is right and has no effect where it stands: it is not kept. */
  public void dropped(Place place, String why) {
    String line = place.line() > 0 ? "line " + place.line() + ": " : "";
    notes.add(line + place.words() + " was dropped, " + why);
  }

  /** What a reader should be told though nothing is wrong. */
  public List<String> notes() {
    return List.copyOf(notes);
  }

  /** Refuses the document if anything is wrong with it. */
  public void refuseIfAny(Refusal.Kind kind) {
    if (!faults.isEmpty()) {
      throw refusal(kind);
    }
  }

  /** The refusal with everything gathered so far, in the order of the lines. */
  Refusal refusal(Refusal.Kind kind) {
    List<Fault> inOrder = new ArrayList<>(faults);
    inOrder.sort(Comparator.comparingInt(Fault::line));
    if (count > MOST) {
      String more = (count - MOST) + " more faults are not listed";
      inOrder.add(new Fault("", 0, "more-faults", "", "", more));
    }
    return new Refusal(kind, inOrder);
  }

  /** What was found, safe to print: short, and without characters that can't be seen. */
  public static String shown(String found) {
    StringBuilder shown = new StringBuilder();
    int[] points = found.codePoints().limit(LONGEST_FOUND + 1L).toArray();
    for (int i = 0; i < Math.min(points.length, LONGEST_FOUND); i++) {
      if (Texts.visible(points[i])) {
        shown.appendCodePoint(points[i]);
      } else {
        shown.append(String.format("\\u%04X", points[i]));
      }
    }
    return points.length > LONGEST_FOUND ? shown + "…" : shown.toString();
  }
}
