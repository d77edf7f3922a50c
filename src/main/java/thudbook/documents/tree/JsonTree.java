package thudbook.documents.tree;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import thudbook.quantities.Refusal;

/** JSON as a tree: numbers keep their digits, a key twice is refused, depth is bounded. */
public final class JsonTree {
  private static final int DEEPEST = 16;
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .streamReadConstraints(
              StreamReadConstraints.builder().maxNestingDepth(2 * DEEPEST).build())
          .build();

  private final JsonParser parser;
  private final Faults faults = new Faults();

  private JsonTree(JsonParser parser) {
    this.parser = parser;
  }

  /**
   * Reads one JSON value.
   *
   * @throws Refusal if it is not JSON or has what we do not take
   */
  public static Tree read(byte[] json) {
    String text = Utf8.decode(json);
    try (JsonParser parser = FACTORY.createParser(text)) {
      JsonTree reader = new JsonTree(parser);
      Tree tree = reader.whole();
      reader.faults.refuseIfAny(Refusal.Kind.MALFORMED);
      return tree;
    } catch (JsonProcessingException e) {
      throw malformed(
          "line "
              + e.getLocation().getLineNr()
              + ", column "
              + e.getLocation().getColumnNr()
              + " can't be understood");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Tree whole() throws IOException {
    if (parser.nextToken() == null) {
      throw malformed("it is empty");
    }
    Tree tree = value(new Place(0, ""), 1);
    if (parser.nextToken() != null) {
      throw malformed("something follows behind its end");
    }
    return tree;
  }

  private Tree value(Place place, int depth) throws IOException {
    JsonToken token = parser.currentToken();
    return switch (token) {
      case START_OBJECT -> object(place, depth);
      case START_ARRAY -> array(place, depth);
      case VALUE_STRING -> new Tree.Text(place, parser.getText());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new Tree.Digits(place, parser.getText());
      case VALUE_TRUE, VALUE_FALSE -> new Tree.Truth(place, token == JsonToken.VALUE_TRUE);
      default -> new Tree.Nothing(place);
    };
  }

  private Tree object(Place place, int depth) throws IOException {
    refuseDepth(depth);
    Map<String, Tree> entries = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName();
      Place at = place.key(key, 0);
      parser.nextToken();
      Tree value = value(at, depth + 1);
      if (entries.putIfAbsent(key, value) != null) {
        faults.say(at, "duplicate-key", key, "each key once", "this key is here twice");
      }
    }
    return new Tree.Mapping(place, entries);
  }

  private Tree array(Place place, int depth) throws IOException {
    refuseDepth(depth);
    List<Tree> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(value(place.item(items.size(), 0), depth + 1));
    }
    return new Tree.Sequence(place, items);
  }

  private static void refuseDepth(int depth) {
    if (depth > DEEPEST) {
      throw malformed("lists and objects go more than " + DEEPEST + " levels deep");
    }
  }

  private static Refusal malformed(String problem) {
    return Refusal.of(Refusal.Kind.MALFORMED, "not-json", "this is not JSON: " + problem);
  }
}
