package thudbook.pages.sessions;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import thudbook.quantities.Refusal;

/**
 * What was ticked on a recall sheet, and what was set otherwise there.
 *
 * @param ticked names of rows, as {@link RecallSheet} gives them
 * @param asSet where knobs and switches were set instead, by the names of their rows
 */
record RecallMarks(Set<String> ticked, Map<String, String> asSet) {
  static final RecallMarks NONE = new RecallMarks(Set.of(), Map.of());

  /** A recipe has at most 200 connections and 200 settings. */
  private static final int MOST = 1000;

  private static final int LONGEST = 300;
  private static final ObjectMapper MAPPER = new ObjectMapper();

  RecallMarks {
    ticked = Set.copyOf(ticked);
    asSet = Map.copyOf(asSet);
  }

  /**
   * Reads {@code {"ticked": [names], "asSet": {name: text}}}; anything else there is left out.
   *
   * @throws Refusal of kind MALFORMED if it is no JSON object, or is too large
   */
  static RecallMarks read(String json) {
    try {
      return read(MAPPER.readTree(json));
    } catch (JsonProcessingException e) {
      throw malformed();
    }
  }

  /** Likewise, from JSON that was read. */
  static RecallMarks read(JsonNode node) {
    if (!node.isObject() || node.path("ticked").size() + node.path("asSet").size() > MOST) {
      throw malformed();
    }
    Set<String> ticked = new LinkedHashSet<>();
    for (JsonNode name : node.path("ticked")) {
      if (isShortText(name)) {
        ticked.add(name.textValue());
      }
    }
    Map<String, String> asSet = new LinkedHashMap<>();
    node.path("asSet")
        .properties()
        .forEach(
            entry -> {
              if (isShortText(entry.getValue()) && entry.getKey().length() <= LONGEST) {
                asSet.put(entry.getKey(), entry.getValue().textValue());
              }
            });
    return new RecallMarks(ticked, asSet);
  }

  private static boolean isShortText(JsonNode node) {
    return node.isTextual() && node.textValue().length() <= LONGEST;
  }

  private static Refusal malformed() {
    return Refusal.of(
        Refusal.Kind.MALFORMED,
        "not-marks",
        "An object with the lists of what was ticked and set otherwise is expected.");
  }

  /** As JSON, in which they are kept. */
  String json() {
    ObjectNode node = MAPPER.createObjectNode();
    ticked.stream().sorted().forEach(node.putArray("ticked")::add);
    ObjectNode set = node.putObject("asSet");
    asSet.keySet().stream().sorted().forEach(name -> set.put(name, asSet.get(name)));
    return node.toString();
  }
}
