package thudbook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.config.JavalinConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.Exchange;
import thudbook.Exchange.Answer;
import thudbook.access.Visitor;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** Who is answered, how errors are answered and what every answer carries. Scenario tests. */
class ServerTest {
  private static final int BODY_LIMIT = 10_000;

  private static Server server;

  @BeforeAll
  static void start() throws IOException {
    server =
        Server.start(
            new Server.Address(
                InetAddress.getLoopbackAddress(),
                0,
                URI.create("https://Notebook.example/"),
                BODY_LIMIT),
            (kind, faults, requestId) -> "<p>" + kind.slug() + " " + requestId + "</p>",
            () -> "request-7",
            ServerTest::routes);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static void routes(JavalinConfig config) {
    config
        .routes
        .get("/page", ctx -> ctx.html("<p>page</p>"))
        .get("/visitor", ctx -> ctx.result(Visitors.of(ctx).toString()))
        .post("/api/length", ctx -> ctx.result(String.valueOf(ctx.bodyAsBytes().length)))
        .get("/api/json", ctx -> MediaTypes.requireAccepted(ctx, "application/json"))
        .post("/api/json", ctx -> MediaTypes.requireBody(ctx, "application/json"))
        .get(
            "/api/tagged",
            ctx -> {
              if (!EntityTags.answered(ctx, EntityTags.ofVersion(3))) {
                ctx.result("content");
              }
            })
        .get(
            "/broken",
            ctx -> {
              throw new IllegalStateException("secret in /etc/place");
            })
        .get(
            "/api/broken",
            ctx -> {
              throw new IllegalStateException("secret in /etc/place");
            })
        .get(
            "/api/exhausted",
            ctx -> {
              throw new StackOverflowError("secret");
            })
        .get(
            "/api/refused/{kind}",
            ctx -> {
              throw new Refusal(
                  Refusal.Kind.valueOf(ctx.pathParam("kind")),
                  List.of(
                      new Fault("/a/0", 0, "out-of-range", "<5>", "1 to 4", "a.0: found <5>"),
                      new Fault("/b", 0, "missing", "", "a number", "b: missing")));
            });
  }

  private static Exchange request(String method, String target) {
    return Exchange.request(server.port(), method, target);
  }

  private static Answer get(String target) throws IOException {
    return request("GET", target).send();
  }

  private static JsonNode problem(Answer answer) throws IOException {
    assertThat(answer.header("Content-Type")).isEqualTo("application/problem+json");
    JsonNode problem = new ObjectMapper().readTree(answer.bytes());
    assertThat(problem.get("status").asInt()).isEqualTo(answer.status());
    return problem;
  }

  @Test
  void aHandlerKnowsWhoSentItsRequest() throws IOException {
    assertThat(get("/visitor").text()).isEqualTo(Visitor.alone(Visitor.Way.WEB).toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"127.0.0.1:", "localhost:", "LOCALHOST:", "[::1]:", "127.8.8.8:"})
  void loopbackWithThePortIsAccepted(String host) throws IOException {
    Answer answer = request("GET", "/page").header("Host", host + server.port()).send();
    assertThat(answer.status()).isEqualTo(200);
  }

  @Test
  void theHostOfTheBaseUrlIsAccepted() throws IOException {
    assertThat(request("GET", "/page").header("Host", "notebook.example").send().status())
        .isEqualTo(200);
    assertThat(request("GET", "/page").header("Host", "notebook.example:444").send().status())
        .isEqualTo(421);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "evil.example",
        "evil.example:8741",
        "127.0.0.1",
        "127.0.0.1:1",
        "localhost.evil.example",
        "127.0.0.1.evil.example",
        "0.0.0.0",
        "192.168.1.5"
      })
  void aForeignHostIsRefusedEverywhere(String host) throws IOException {
    for (String target : List.of("/page", "/api/tagged", "/nowhere")) {
      Answer answer = request("GET", target).header("Host", host).send();
      assertThat(answer.status()).isEqualTo(421);
      assertThat(answer.text()).doesNotContain(host);
    }
  }

  @Test
  void aRequestWithoutAHostIsRefused() throws IOException {
    assertThat(request("GET", "/page").header("Host", null).send().status()).isIn(400, 421);
    assertThat(request("GET", "http://evil.example/page").send().status()).isIn(400, 421);
  }

  @Test
  void theOwnOriginIsAccepted() throws IOException {
    Answer loopback =
        request("POST", "/api/length")
            .header("Origin", "http://127.0.0.1:" + server.port())
            .body("application/json", new byte[3])
            .send();
    assertThat(loopback.text()).isEqualTo("3");
    Answer base =
        request("POST", "/api/length")
            .header("Host", "notebook.example")
            .header("Origin", "https://notebook.example")
            .body("application/x-www-form-urlencoded", new byte[4])
            .send();
    assertThat(base.text()).isEqualTo("4");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "null",
        "http://evil.example",
        "https://127.0.0.1:PORT",
        "http://127.0.0.1",
        "http://localhost:PORT",
        "http://127.0.0.1:PORT.evil.example",
        ""
      })
  void aForeignOriginIsRefused(String origin) throws IOException {
    String own = origin.replace("PORT", String.valueOf(server.port()));
    for (String method : List.of("POST", "PUT", "DELETE", "OPTIONS", "PATCH")) {
      Answer answer =
          request(method, "/api/length")
              .header("Origin", own)
              .body("application/json", new byte[3])
              .send();
      assertThat(answer.status()).as(method).isEqualTo(403);
      assertThat(problem(answer).get("type").asText()).isEqualTo("/help/errors/foreign-origin");
      assertThat(answer.header("Access-Control-Allow-Origin")).isNull();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "application/x-www-form-urlencoded",
        "multipart/form-data; boundary=x",
        "text/plain",
        "TEXT/PLAIN; charset=utf-8"
      })
  void withoutAnOriginNoFormIsTaken(String type) throws IOException {
    Answer answer = request("POST", "/api/length").body(type, new byte[3]).send();
    assertThat(answer.status()).isEqualTo(403);
    assertThat(request("POST", "/api/length").body("application/json", new byte[3]).send().status())
        .isEqualTo(200);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/page", "/nowhere", "/broken", "/api/broken", "/api/exhausted", "/api/tagged"})
  void everyAnswerCarriesTheSecurityHeaders(String target) throws IOException {
    assertSecure(get(target));
    assertSecure(request("GET", target).header("Host", "evil.example").send());
    assertSecure(request("DELETE", target).send());
  }

  private static void assertSecure(Answer answer) {
    assertThat(answer.header("Content-Security-Policy"))
        .isEqualTo(
            "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
                + "object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'");
    assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
    assertThat(answer.header("Referrer-Policy")).isEqualTo("same-origin");
    assertThat(answer.header("Server")).isNull();
  }

  @Test
  void aBodyOverTheLimitIsRefusedHoweverItComes() throws IOException {
    byte[] fits = new byte[BODY_LIMIT];
    byte[] over = new byte[BODY_LIMIT + 1];
    assertThat(request("POST", "/api/length").body("application/json", fits).send().text())
        .isEqualTo("10000");
    assertThat(request("POST", "/api/length").chunks("application/json", fits).send().text())
        .isEqualTo("10000");
    Answer said = request("POST", "/api/length").body("application/json", over).send();
    assertThat(problem(said).get("type").asText()).isEqualTo("/help/errors/too-large");
    Answer chunked = request("POST", "/api/length").chunks("application/json", over).send();
    assertThat(chunked.status()).isEqualTo(413);
  }

  @ParameterizedTest
  @CsvSource({
    "MALFORMED, 400, malformed", "NOT_FOUND, 404, not-found", "CONFLICT, 409, conflict",
    "STALE, 412, stale", "TOO_LARGE, 413, too-large", "REFUSED_VALUES, 422, refused-values"
  })
  void aRefusalTellsAllItsFaults(String kind, int status, String slug) throws IOException {
    Answer answer = get("/api/refused/" + kind);
    assertThat(answer.status()).isEqualTo(status);
    JsonNode problem = problem(answer);
    assertThat(problem.get("type").asText()).isEqualTo("/help/errors/" + slug);
    assertThat(problem.get("title").asText()).isNotEmpty();
    assertThat(problem.get("errors")).hasSize(2);
    JsonNode first = problem.get("errors").get(0);
    assertThat(first.get("pointer").asText()).isEqualTo("/a/0");
    assertThat(first.get("code").asText()).isEqualTo("out-of-range");
    assertThat(first.get("found").asText()).isEqualTo("<5>");
    assertThat(first.get("expected").asText()).isEqualTo("1 to 4");
    assertThat(first.get("message").asText()).isEqualTo("a.0: found <5>");
  }

  @Test
  void anErrorOfOursTellsItsNumberAndNothingElse() throws IOException {
    Answer json = get("/api/broken");
    assertThat(json.status()).isEqualTo(500);
    assertThat(problem(json).get("requestId").asText()).isEqualTo("request-7");
    Answer html = get("/broken");
    assertThat(html.text()).isEqualTo("<p>internal-error request-7</p>");
    Answer exhausted = get("/api/exhausted");
    assertThat(exhausted.status()).isEqualTo(500);
    for (Answer answer : List.of(json, html, exhausted)) {
      assertThat(answer.text()).doesNotContain("secret", "/etc", "Exception", "thudbook.", "\tat");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/api/%3Cscript%3Ealert(1)%3C/script%3E", "/%3Cscript%3E", "/a%22b", "/no/where"})
  void whatIsNotThereIsNotRepeated(String target) throws IOException {
    Answer answer = get(target);
    assertThat(answer.status()).isEqualTo(404);
    assertThat(answer.text()).doesNotContain("script", "where", "a\"b");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/api/..%2f..%2fetc", "/api/%00", "/api/%zz", "/api/;x/..;/", "/api/%"})
  void ambiguousAddressesAreRefusedWithoutAWordAboutTheServer(String target) throws IOException {
    Answer answer = get(target);
    assertThat(answer.status()).isIn(400, 404);
    assertThat(answer.text()).doesNotContainIgnoringCase("jetty").doesNotContain("Exception");
    assertSecure(answer);
  }

  @Test
  void anotherMethodIsRefusedWithThoseThatAreTaken() throws IOException {
    Answer answer = request("DELETE", "/page").send();
    assertThat(answer.status()).isEqualTo(405);
    assertThat(answer.header("Allow")).contains("GET", "HEAD").doesNotContain("POST");
    assertThat(request("TRACE", "/page").send().status()).isIn(403, 405);
  }

  @Test
  void typesThatAreNotTakenOrNotThere() throws IOException {
    assertThat(request("POST", "/api/json").body("application/xml", new byte[1]).send().status())
        .isEqualTo(415);
    assertThat(
            request("POST", "/api/json")
                .body("Application/JSON; charset=utf-8", new byte[1])
                .send()
                .status())
        .isEqualTo(200);
    assertThat(request("GET", "/api/json").header("Accept", "text/html").send().status())
        .isEqualTo(406);
    assertThat(request("GET", "/api/json").header("Accept", "text/html, */*;q=0.1").send().status())
        .isEqualTo(200);
    assertThat(request("GET", "/api/json").header("Accept", "application/json;q=0").send().status())
        .isEqualTo(406);
  }

  @Test
  void headIsGetWithoutTheBody() throws IOException {
    for (String target : List.of("/page", "/api/tagged", "/nowhere", "/api/broken")) {
      Answer get = get(target);
      Answer head = request("HEAD", target).send();
      assertThat(head.status()).isEqualTo(get.status());
      assertThat(head.bytes()).isEmpty();
      assertThat(head.header("Content-Length"))
          .isEqualTo(String.valueOf(get.bytes().length))
          .isEqualTo(get.header("Content-Length"));
      assertThat(head.header("Content-Type")).isEqualTo(get.header("Content-Type"));
      assertThat(head.header("ETag")).isEqualTo(get.header("ETag"));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"\"3\"|304", "W/\"3\"|304", "\"1\", \"3\"|304", "*|304", "\"2\"|200", "3|200"})
  void whoHasTheVersionIsToldSo(String known, int status) throws IOException {
    Answer answer = request("GET", "/api/tagged").header("If-None-Match", known).send();
    assertThat(answer.status()).isEqualTo(status);
    assertThat(answer.header("ETag")).isEqualTo("\"3\"");
    assertThat(answer.text()).isEqualTo(status == 304 ? "" : "content");
  }

  @Test
  void nonsenseInsteadOfARequestIsAnsweredPlainly() throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      socket
          .getOutputStream()
          .write("GET /page HTTP/9.9\r\nno header\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
      assertThat(answer).startsWith("HTTP/1.1 ").doesNotContainIgnoringCase("jetty");
    }
  }

  @Test
  void onlyLoopbackCanBeListenedOn() {
    assertThatThrownBy(
            () -> new Server.Address(InetAddress.getByName("0.0.0.0"), 0, null, BODY_LIMIT))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aTakenPortIsTold() {
    Server.Address address =
        new Server.Address(InetAddress.getLoopbackAddress(), server.port(), null, BODY_LIMIT);
    assertThatThrownBy(
            () -> Server.start(address, (kind, faults, id) -> "", () -> "", config -> {}))
        .isInstanceOf(IOException.class)
        .hasMessageContaining(server.port() + " is in use");
  }
}
