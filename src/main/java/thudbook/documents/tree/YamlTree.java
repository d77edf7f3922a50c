package thudbook.documents.tree;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.comments.CommentType;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.CommentEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingEndEvent;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceEndEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import thudbook.quantities.Refusal;

/**
 * YAML as a tree. It is built from the parser's events, because they come one at a time: depth,
 * number, anchors, aliases and tags are refused before they can cost anything. Scalars stay text
 * whatever they look like.
 */
public final class YamlTree {
  private static final int DEEPEST = 16;
  private static final int MOST_EVENTS = 80_000;
  private static final Pattern WHOLE_PART = Pattern.compile("[-+\u2212]?\\d{1,9}");
  private static final Pattern FRACTION = Pattern.compile("\\d{1,12}(?:\\D{0,8})");

  private final Iterator<Event> events;
  private final Place whole;
  private final Faults faults;
  private int comments;
  private int count;

  private YamlTree(String yaml, Place whole, Faults faults) {
    LoadSettings settings = LoadSettings.builder().setParseComments(true).build();
    this.events = new Parse(settings).parseString(yaml).iterator();
    this.whole = whole;
    this.faults = faults;
  }

  /**
   * A tree, and how many comments it does not hold.
   *
   * @param tree the whole document
   */
  public record Parsed(Tree tree, int comments) {}

  /**
   * Reads one YAML document.
   *
   * @param firstLine the line of the file in which it begins
   * @throws Refusal if it is not YAML or has what we do not take
   */
  public static Parsed read(String yaml, int firstLine) {
    return read(yaml, new Place(firstLine, ""));
  }

  /**
   * Reads one YAML document that stands within something else.
   *
   * @param whole where it stands; its line is the one in which it begins
   * @throws Refusal if it is not YAML or has what we do not take
   */
  public static Parsed read(String yaml, Place whole) {
    Faults faults = new Faults();
    YamlTree reader = new YamlTree(yaml, whole, faults);
    Tree tree;
    try {
      tree = reader.document();
    } catch (MarkedYamlEngineException e) {
      int line = e.getProblemMark().map(Mark::getLine).orElse(0) + whole.line();
      throw malformed(whole.at(line), inWords(e.getProblem()));
    } catch (YamlEngineException e) {
      throw malformed(whole, "it can't be read");
    }
    faults.refuseIfAny(Refusal.Kind.MALFORMED);
    return new Parsed(tree, reader.comments);
  }

  /** The parser's problem, and what it mostly comes from. */
  private static String inWords(String problem) {
    if (problem.contains("<document start>")) {
      return "something follows behind its end";
    }
    return problem.startsWith("mapping values")
        ? "a second colon in one line; text with a colon belongs in double quotes"
        : problem;
  }

  private static Refusal malformed(Place place, String problem) {
    Faults faults = new Faults();
    faults.say(place, "not-yaml", "", "YAML", "this is not YAML: " + problem);
    return faults.refusal(Refusal.Kind.MALFORMED);
  }

  private Tree document() {
    Tree tree = new Tree.Nothing(whole);
    boolean read = false;
    while (events.hasNext()) {
      Event event = next();
      if (event instanceof DocumentStartEvent start) {
        if (read || start.getSpecVersion().isPresent() || !start.getTags().isEmpty()) {
          faults.say(
              whole.at(line(event)),
              "second-document",
              "",
              "one document",
              "one document without directives is expected between the lines of hyphens");
          return tree;
        }
      } else if (event instanceof NodeEvent) {
        tree = node(event, whole.at(line(event)), 1);
        read = true;
      }
    }
    return tree;
  }

  private Tree node(Event event, Place place, int depth) {
    refuseSharing(event, place);
    if (event instanceof ScalarEvent scalar) {
      return scalar.isPlain() && scalar.getValue().isEmpty()
          ? new Tree.Nothing(place)
          : new Tree.Text(place, scalar.getValue());
    }
    if (event instanceof AliasEvent) {
      return new Tree.Nothing(place);
    }
    if (depth > DEEPEST) {
      faults.say(
          place.inWhole(),
          "too-deep",
          "",
          "at most " + DEEPEST + " levels",
          "lists and keys go more than " + DEEPEST + " levels deep here");
      throw faults.refusal(Refusal.Kind.MALFORMED);
    }
    return event instanceof MappingStartEvent ? mapping(place, depth) : sequence(place, depth);
  }

  private Tree mapping(Place place, int depth) {
    Map<String, Tree> entries = new LinkedHashMap<>();
    String before = "";
    for (Event event = next(); !(event instanceof MappingEndEvent); event = next()) {
      if (!(event instanceof ScalarEvent key)) {
        faults.say(place.at(line(event)), "key-not-a-word", "", "a word", "a key must be a word");
        throw faults.refusal(Refusal.Kind.MALFORMED);
      }
      Place at = place.key(key.getValue(), line(event));
      refuseSharing(event, at);
      Tree value = node(next(), at, depth + 1);
      Tree whole = withComma(entries.get(before), key.getValue(), value);
      if (whole != null) {
        entries.put(before, whole);
        continue;
      }
      before = key.getValue();
      if (entries.putIfAbsent(key.getValue(), value) != null) {
        faults.say(at, "duplicate-key", key.getValue(), "each key once", "this key is here twice");
      }
    }
    return new Tree.Mapping(place, entries);
  }

  /**
   * A number that was cut at its decimal comma: in {@code {decay: 0,3 s}} the comma ends the entry,
   * and what follows is a key without a value. Put together again, the number gets the same advice
   * as anywhere else. Null where this is something else.
   */
  private static Tree.@Nullable Text withComma(@Nullable Tree before, String key, Tree value) {
    return before instanceof Tree.Text number
            && value instanceof Tree.Nothing
            && WHOLE_PART.matcher(number.text()).matches()
            && FRACTION.matcher(key).matches()
        ? new Tree.Text(number.place(), number.text() + "," + key)
        : null;
  }

  private Tree sequence(Place place, int depth) {
    List<Tree> items = new ArrayList<>();
    for (Event event = next(); !(event instanceof SequenceEndEvent); event = next()) {
      items.add(node(event, place.item(items.size(), line(event)), depth + 1));
    }
    return new Tree.Sequence(place, items);
  }

  private void refuseSharing(Event event, Place place) {
    if (event instanceof AliasEvent) {
      faults.say(place, "alias", "*", "the value itself", "aliases (*) are not taken");
    } else if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
      faults.say(place, "anchor", "&", "the value itself", "anchors (&) are not taken");
    }
    Optional<String> tag = Optional.empty();
    if (event instanceof ScalarEvent scalar) {
      tag = scalar.getTag();
    } else if (event instanceof CollectionStartEvent start) {
      tag = start.getTag();
    }
    if (tag.isPresent()) {
      faults.say(place, "tag", "!", "the value itself", "tags (!) are not taken");
    }
  }

  private int line(Event event) {
    return event.getStartMark().map(Mark::getLine).orElse(0) + whole.line();
  }

  /** The next event that is no comment. */
  private Event next() {
    while (true) {
      Event event = events.next();
      count++;
      if (count > MOST_EVENTS) {
        faults.say(
            whole.at(line(event)),
            "too-many-values",
            "",
            "fewer values",
            "the document has too many values");
        throw faults.refusal(Refusal.Kind.MALFORMED);
      }
      if (!(event instanceof CommentEvent comment)) {
        return event;
      }
      if (comment.getCommentType() != CommentType.BLANK_LINE) {
        comments++;
      }
    }
  }
}
