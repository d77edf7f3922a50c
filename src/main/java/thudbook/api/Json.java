package thudbook.api;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import org.jspecify.annotations.Nullable;
import thudbook.web.MediaTypes;

/** Building and sending JSON. */
final class Json {
  static final String MEDIA_TYPE = "application/json";

  /** Lists hold thousands of numbers, and Java's own way to write one is slow. */
  private static final ObjectMapper MAPPER =
      new ObjectMapper(
          JsonFactory.builder().enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER).build());

  private Json() {}

  static ObjectNode object() {
    return MAPPER.createObjectNode();
  }

  static ArrayNode array() {
    return MAPPER.createArrayNode();
  }

  static ArrayNode words(Collection<String> words) {
    ArrayNode array = array();
    words.forEach(array::add);
    return array;
  }

  /** A number; what is absent or infinite has none in JSON and is null. */
  static JsonNode number(@Nullable Double value) {
    return value == null || value.isInfinite()
        ? JsonNodeFactory.instance.nullNode()
        : JsonNodeFactory.instance.numberNode(value);
  }

  static String write(JsonNode node) {
    try {
      return MAPPER.writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  static void answer(Context ctx, JsonNode node) {
    answer(ctx, write(node));
  }

  static void answer(Context ctx, String json) {
    MediaTypes.requireAccepted(ctx, MEDIA_TYPE);
    ctx.contentType(MEDIA_TYPE).result(json.getBytes(StandardCharsets.UTF_8));
  }
}
