package thudbook.documents;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Thing;
import thudbook.documents.Differences.Difference;
import thudbook.equipment.Gate;
import thudbook.recipes.Recipe;

/**
 * Differences in words: {@code decay 180 ms → 240 ms}, {@code tag low added}, and in short {@code
 * changed decay and peak}.
 */
public final class DifferenceWords {
  private static final int MOST_NAMES = 3;
  private static final int LONGEST_VALUE = 60;

  private static final Pattern PART = Pattern.compile("/(stages|channels)/([0-9]+)/.*");
  private static final Pattern UNIT =
      Pattern.compile("(?<=[0-9]) (?=(ms|s|Hz|kHz|m?V|dB|%|x|bpm|min)\\b|%)");
  private static final Pattern MINUS =
      Pattern.compile("(?<![0-9A-Za-z])-(?=[0-9]+(\\.[0-9]+)?( |$|]|,))");

  private static final Pattern LIST = Pattern.compile("\\[[\\[{].*[]}]]");

  /** Values that are somebody's own words and stand in quotes. */
  private static final Set<String> OWN_WORDS = Set.of("/title", "/heard", "/room", "/by");

  /** Of things that have no stages and no channels. */
  static final DifferenceWords PLAIN = new DifferenceWords(i -> "", i -> "");

  private final IntFunction<String> stages;
  private final IntFunction<String> channels;

  private DifferenceWords(IntFunction<String> stages, IntFunction<String> channels) {
    this.stages = stages;
    this.channels = channels;
  }

  /** What differs between two states of a thing, one sentence each; none: nothing. */
  public static <T extends Thing> List<String> sentences(T before, T after) {
    return Documents.of(before).differences(before, after);
  }

  /**
   * What a save did to a gate, in a few words: {@code changed opening and leak; channel slow
   * added}.
   */
  public static String summary(Gate before, Gate after) {
    DifferenceWords words = of(before, after);
    List<Difference> changed = new ArrayList<>();
    List<String> told = new ArrayList<>();
    blocks(Differences.between(before, after))
        .forEach(
            (block, inside) -> {
              if (isWhole(block, inside)) {
                told.addAll(words.block(block, inside));
              } else {
                changed.addAll(inside);
              }
            });
    if (!changed.isEmpty() || told.isEmpty()) {
      told.add(0, summary(changed));
    }
    return String.join("; ", told);
  }

  /** What a save did, in a few words: {@code changed decay and peak}. */
  public static String summary(List<Difference> differences) {
    List<String> names =
        differences.stream()
            .map(difference -> KeyWords.name(difference.pointer()))
            .distinct()
            .toList();
    if (names.isEmpty()) {
      return "changed nothing";
    }
    boolean many = names.size() > MOST_NAMES;
    List<String> told = new ArrayList<>(many ? names.subList(0, MOST_NAMES) : names);
    String last = many ? (names.size() - MOST_NAMES) + " more" : told.remove(told.size() - 1);
    return "changed " + (told.isEmpty() ? last : String.join(", ", told) + " and " + last);
  }

  /**
   * The name of what a pointer leads to: {@code decay}, {@code stage 2: control gain}, {@code
   * channel 1: opening}.
   */
  public static String name(String pointer) {
    return new DifferenceWords(i -> "stage " + (i + 1) + ": ", i -> "channel " + (i + 1) + ": ")
        .named(pointer);
  }

  /** A value as a reader sees it; a dash where there is none. */
  public static String value(@Nullable String value) {
    if (value == null || value.isBlank()) {
      return "–";
    }
    String line = flat(value.strip().replaceAll("\\s+", " "));
    String shown =
        line.codePointCount(0, line.length()) <= LONGEST_VALUE
            ? line
            : line.substring(0, line.offsetByCodePoints(0, LONGEST_VALUE - 1)).strip() + "…";
    return UNIT.matcher(MINUS.matcher(shown).replaceAll("−")).replaceAll("\u00a0");
  }

  /** A list of pairs or cells without its brackets: {@code 2.4 V, 0; 5 V, 1}. */
  private static String flat(String line) {
    return LIST.matcher(line).matches()
        ? line.substring(2, line.length() - 2).replaceAll("[]}], [\\[{]", "; ")
        : line;
  }

  static DifferenceWords of(Recipe before, Recipe after) {
    int stages = Math.max(before.stages().size(), after.stages().size());
    return new DifferenceWords(i -> stages < 2 ? "" : "stage " + (i + 1) + ": ", i -> "");
  }

  static DifferenceWords of(Gate before, Gate after) {
    return new DifferenceWords(
        i -> "",
        i ->
            (i < after.channels().size() ? after : before).channels().get(i).channel().name()
                + ": ");
  }

  List<String> all(List<Difference> differences) {
    List<String> sentences = new ArrayList<>();
    blocks(differences).forEach((block, inside) -> sentences.addAll(block(block, inside)));
    return sentences;
  }

  /** What belongs to one block is looked at together: another kind brings other keys with it. */
  private static Map<String, List<Difference>> blocks(List<Difference> differences) {
    Map<String, List<Difference>> blocks = new LinkedHashMap<>();
    for (Difference difference : differences) {
      blocks.computeIfAbsent(block(difference.pointer()), b -> new ArrayList<>()).add(difference);
    }
    return blocks;
  }

  /** Whether a block that stands for itself is new or gone as a whole. */
  private static boolean isWhole(String block, List<Difference> differences) {
    return isPart(block)
        && differences.size() > 1
        && (differences.stream().allMatch(d -> d.before() == null)
            || differences.stream().allMatch(d -> d.after() == null));
  }

  private List<String> block(String block, List<Difference> differences) {
    if (isWhole(block, differences)) {
      return List.of(whole(block, differences.get(0).before() == null));
    }
    boolean otherKind = differences.stream().anyMatch(d -> d.pointer().equals(block + "/kind"));
    return differences.stream()
        .filter(d -> !otherKind || d.pointer().endsWith("/kind") || isBoth(d))
        .map(this::sentence)
        .toList();
  }

  private String whole(String block, boolean isNew) {
    Matcher part = PART.matcher(block + "/");
    String what = block.substring(1);
    if (part.matches()) {
      int place = Integer.parseInt(part.group(2));
      what =
          part.group(1).equals("stages")
              ? "stage " + (place + 1)
              : "channel " + channels.apply(place).replace(": ", "");
    }
    return what + (isNew ? " added" : " removed");
  }

  private String sentence(Difference difference) {
    String pointer = difference.pointer();
    String before = difference.before();
    String after = difference.after();
    if (pointer.equals("/notes")) {
      return before == null || before.isEmpty()
          ? "notes added"
          : after == null || after.isEmpty() ? "notes removed" : "notes changed";
    }
    String row = KeyWords.row(pointer);
    String name = row == null ? named(pointer) : row;
    if (before == null) {
      return name + " " + shown(pointer, after) + " added";
    } else if (after == null) {
      return name + " " + shown(pointer, before) + " removed";
    }
    return name + " " + shown(pointer, before) + " → " + shown(pointer, after);
  }

  private String named(String pointer) {
    Matcher part = PART.matcher(pointer);
    if (!part.matches()) {
      return KeyWords.name(pointer);
    }
    int place = Integer.parseInt(part.group(2));
    IntFunction<String> prefix = part.group(1).equals("stages") ? stages : channels;
    return prefix.apply(place) + KeyWords.name(pointer);
  }

  private static String shown(String pointer, @Nullable String text) {
    return OWN_WORDS.contains(pointer) ? "“" + value(text) + "”" : value(text);
  }

  /** A stage or a channel as a whole, else the first key: {@code /source}, {@code /title}. */
  private static String block(String pointer) {
    Matcher part = PART.matcher(pointer);
    int end = part.matches() ? part.end(2) : pointer.indexOf('/', 1);
    return end < 0 ? pointer : pointer.substring(0, end);
  }

  private static boolean isPart(String block) {
    return PART.matcher(block + "/").matches() || block.equals("/strikes");
  }

  private static boolean isBoth(Difference difference) {
    return difference.before() != null && difference.after() != null;
  }
}
