package thudbook.documents.tree;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Map;
import thudbook.quantities.Decimals;

/** A draft as JSON. */
public final class JsonPrint {
  private static final JsonFactory FACTORY = new JsonFactory();

  private JsonPrint() {}

  public static String of(Draft draft) {
    StringWriter out = new StringWriter();
    try (JsonGenerator json = FACTORY.createGenerator(out)) {
      print(draft, json);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private static void print(Draft draft, JsonGenerator json) throws IOException {
    if (draft instanceof Draft.Quantity quantity) {
      json.writeNumber(Decimals.text(quantity.si(), 0));
    } else if (draft instanceof Draft.Whole whole) {
      json.writeNumber(whole.number());
    } else if (draft instanceof Draft.Words words) {
      json.writeString(words.text());
    } else if (draft instanceof Draft.Token token) {
      json.writeString(token.text());
    } else if (draft instanceof Draft.Either either) {
      print(either.json(), json);
    } else if (draft instanceof Draft.Sequence list) {
      json.writeStartArray();
      for (Draft item : list.items()) {
        print(item, json);
      }
      json.writeEndArray();
    } else if (draft instanceof Draft.Mapping mapping) {
      json.writeStartObject();
      for (Map.Entry<String, Draft> entry : mapping.entries().entrySet()) {
        json.writeFieldName(entry.getKey());
        print(entry.getValue(), json);
      }
      json.writeEndObject();
    }
  }
}
