package thudbook.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Exchange;
import thudbook.Exchange.Answer;
import thudbook.ServedNotebook;
import thudbook.notebook.Acts;
import thudbook.storage.Database;

/**
 * Property: the description of the API against the routes that there are and against answers of a
 * served notebook. Reference: that it is OpenAPI 3.1 (OpenAPI Initiative, 2021) is left to a parser
 * of that format, that answers are as it says to a validator of JSON Schema 2020-12.
 */
class ApiDescriptionTest {
  private static final Path FILE = Path.of("src", "main", "resources", "openapi.json");
  private static final Set<String> METHODS = Set.of("get", "post", "put", "delete");
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private static Path folder;

  private static ServedNotebook notebook;
  private static JsonNode description;

  @BeforeAll
  static void start() throws IOException {
    notebook = ServedNotebook.in(folder, Map.of());
    description = JSON.readTree(Exchange.get(notebook.port(), "/api/openapi.json").bytes());
  }

  @AfterAll
  static void stop() {
    notebook.close();
  }

  @Test
  void itIsOpenApi31() throws IOException {
    assertThat(description).isEqualTo(JSON.readTree(Files.readString(FILE)));
    SwaggerParseResult parsed =
        new OpenAPIV3Parser().readContents(Files.readString(FILE), null, null);
    assertThat(parsed.getMessages()).isEmpty();
    assertThat(parsed.getOpenAPI().getOpenapi()).isEqualTo("3.1.0");
  }

  @Test
  void itNamesTheRoutesThatThereAreAndNoOthers() {
    Set<String> described = new TreeSet<>();
    description
        .get("paths")
        .properties()
        .forEach(
            path ->
                path.getValue()
                    .fieldNames()
                    .forEachRemaining(
                        method -> {
                          if (METHODS.contains(method)) {
                            described.add(method.toUpperCase(Locale.ROOT) + " " + path.getKey());
                          }
                        }));
    assertThat(described).isEqualTo(routes());
  }

  private static Set<String> routes() {
    Path other = folder.resolve("other");
    try (Database database = Database.open(other)) {
      InstantSource clock = InstantSource.system();
      Acts acts = Acts.on(database, clock, () -> {});
      Api api =
          new Api(database, acts, UUID::randomUUID, clock, database::schemaVersion, new byte[0]);
      return Javalin.create((JavalinConfig config) -> api.addTo(config))
          .unsafe
          .internalRouter
          .allHttpHandlers()
          .stream()
          .map(route -> route.endpoint.method.name() + " " + route.endpoint.path)
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  @Test
  void everySampleIsAsTheSchemasSay() throws IOException {
    for (String noun : new String[] {"recipes", "gates", "sessions"}) {
      try (Stream<Path> files = Files.list(Path.of("sample-library", noun))) {
        for (Path file : files.sorted().toList()) {
          String slug = file.getFileName().toString().replace(".md", "");
          check("/api/" + noun + "/{id}", "get", "/api/" + noun + "/" + slug);
          if (noun.equals("recipes")) {
            String target = "/api/recipes/" + slug + "/prediction?include=curve";
            check("/api/recipes/{id}/prediction", "get", target);
          } else if (noun.equals("sessions")) {
            check("/api/sessions/{id}/plan", "get", "/api/sessions/" + slug + "/plan");
          }
        }
      }
    }
  }

  @Test
  void everyOtherAnswerIsAsTheSchemasSay() throws IOException {
    check("/health", "get", "/health");
    check("/api/recipes", "get", "/api/recipes?limit=200");
    check("/api/gates", "get", "/api/gates");
    check("/api/recipes/{id}/revisions", "get", "/api/recipes/slack-tide-kick/revisions");
    check(
        "/api/recipes/{id}/revisions/{number}", "get", "/api/recipes/slack-tide-kick/revisions/1");
    check("/api/gates/{id}/revisions", "get", "/api/gates/keeper-twin/revisions");
    check("/api/gates/{id}/revisions/{number}", "get", "/api/gates/keeper-twin/revisions/1");
    String bin = "{\"do\": \"bin\", \"recipes\": [\"slack-tide-kick\"]}";
    JsonNode done = check("/api/changes", "post", "/api/changes", bin, "");
    check("/api/bin", "get", "/api/bin");
    check("/api/changes", "get", "/api/changes");
    check("/api/changes/{id}", "get", "/api/changes/" + done.get("change"));
    check("/api/changes/{id}/undo", "post", done.get("undo").asText(), "", "");
    ObjectNode gate =
        (ObjectNode) JSON.readTree(Exchange.get(notebook.port(), "/api/gates/keeper-twin").bytes());
    gate.put("title", "Keeper twin, warm");
    JsonNode changed =
        check("/api/gates/{id}", "put", "/api/gates/keeper-twin", gate.toString(), "*");
    assertThat(changed).isEqualTo(gate);
    JsonNode change =
        check("/api/gates/{id}/revisions", "get", "/api/gates/keeper-twin/revisions")
            .get("revisions")
            .get(0)
            .get("change");
    check("/api/jobs/{id}", "get", "/api/jobs/" + change);
    check("/api/recipes/{id}", "get", "/api/recipes/no-such-recipe");
    check("/api/recipes", "get", "/api/recipes?q=kick+hold+over+80&tag=dry&order=-hold");
    check("/api/recipes", "get", "/api/recipes?order=best&hold.from=7");
    check("/api/facets", "get", "/api/facets?q=kick&histograms=hold,index");
    check("/api/facets", "get", "/api/facets?histograms=nothing");
    String alike = "/api/recipes/slack-tide-kick/alike";
    check("/api/recipes/{id}/alike", "get", alike);
    check("/api/recipes/{id}/alike", "get", alike + "?by=both&limit=3");
    String favourite = "/api/recipes/slack-tide-kick/favourite";
    check("/api/recipes/{id}/favourite", "put", favourite, "", "");
    check("/api/recipes/{id}/favourite", "delete", favourite, "", "");
    check("/api/tags", "get", "/api/tags");
    JsonNode renamed =
        check("/api/tags/{name}", "put", "/api/tags/kick", "{\"name\": \"thud\"}", "");
    check("/api/changes/{id}/undo", "post", renamed.get("undo").asText(), "", "");
    check("/api/tags/{name}", "delete", "/api/tags/no-such-tag", "", "");
    String shelf = "{\"name\": \"Kicks\", \"search\": \"q=kick\"}";
    JsonNode shelved = check("/api/shelves", "post", "/api/shelves", shelf, "");
    check("/api/shelves", "get", "/api/shelves");
    String other = "{\"name\": \"Dry kicks\", \"search\": \"q=kick&tag=dry\"}";
    check("/api/shelves/{id}", "put", "/api/shelves/" + shelved.get("id"), other, "");
    check("/api/shelves", "post", "/api/shelves", other, "");
    for (String vague : new String[] {"tagg=dry", "q=kick+hold+over+80", "q=", ""}) {
      String bulk = "{\"do\": \"bin\", \"search\": \"" + vague + "\"}";
      JsonNode refused = check("/api/changes", "post", "/api/changes", bulk, "");
      assertThat(refused.get("status").asInt()).as(vague).isEqualTo(422);
    }
    String all = "{\"do\": \"tag\", \"search\": \"q=kick\", \"add\": [\"found\"]}";
    check("/api/changes", "post", "/api/changes", all, "");
    check("/api/recipes", "post", "/api/recipes", "{\"title\": 5, \"tags\": 7}", "");
  }

  private static JsonNode check(String path, String method, String target) throws IOException {
    return check(path, method, target, "", "");
  }

  private static JsonNode check(
      String path, String method, String target, String body, String ifMatch) throws IOException {
    Exchange exchange =
        Exchange.request(notebook.port(), method.toUpperCase(Locale.ROOT), target)
            .header("If-Match", ifMatch.isEmpty() ? null : ifMatch);
    if (!method.equals("get")) {
      exchange.body("application/json", body.getBytes(StandardCharsets.UTF_8));
    }
    Answer answer = exchange.send();
    JsonNode json = JSON.readTree(answer.bytes());
    JsonNode responses = description.get("paths").get(path).get(method).get("responses");
    JsonNode response = responses.get(String.valueOf(answer.status()));
    JsonNode content =
        response == null
            ? description.at("/components/responses/Problem/content/application~1problem+json")
            : response.get("content").get("application/json");
    if (response == null) {
      assertThat(answer.status()).as(target).isGreaterThanOrEqualTo(400).isLessThan(500);
    }
    ObjectNode schema = content.get("schema").deepCopy();
    schema.set("components", description.get("components"));
    Schema validator =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(schema);
    assertThat(validator.validate(json)).as(target).isEmpty();
    return json;
  }
}
