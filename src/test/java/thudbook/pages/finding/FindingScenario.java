package thudbook.pages.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.pages.frame.Markup;
import thudbook.pages.frame.ServedNotebook;
import thudbook.storage.Written;

/** Scenario: finding over HTTP as a browser without scripts does it, from a real database. */
class FindingScenario {
  @TempDir Path folder;
  private ServedNotebook notebook;

  @BeforeEach
  void open() throws IOException {
    notebook = new ServedNotebook(folder);
    notebook.add(
        List.of(Written.gate("lamp", "Lamp")),
        List.of(
            Written.recipe("one", "Slack kick", List.of("dry", "low"), "lamp"),
            Written.recipe("two", "Slack hat", List.of("dry"), "lamp"),
            Written.recipe("three", "Bell", List.of("wet"), "lamp")));
  }

  @AfterEach
  void close() {
    notebook.close();
  }

  @Test
  void whatWasFoundIsMarkedAndEscaped() {
    notebook.add(
        List.of(), List.of(Written.recipe("evil", "<b>Kick</b> & kick", List.of("<i>"), "lamp")));
    String html = page("/?q=kick");
    assertThat(html)
        .contains("Slack <mark>kick</mark>")
        .contains("&lt;b&gt;<mark>Kick</mark>&lt;/b&gt; &amp; <mark>kick</mark>")
        .contains("2 recipes");
    assertThat(page("/?q=monitors+slack"))
        .as("an extract of the notes says why")
        .contains("<mark>Monitors</mark> down before connecting.");
  }

  @Test
  void emptyFieldsOfTheFormLeadToTheAddressOfTheSearch() {
    HttpResponse<String> answer =
        notebook.get("/?q=slack&tag=dry&not.tag=low&hold.from=&hold.to=+&made.from=&order=");
    assertThat(answer.statusCode()).isEqualTo(303);
    assertThat(answer.headers().firstValue("Location")).hasValue("/?q=slack&tag=dry&not.tag=low");
    assertThat(page("/?q=slack&tag=dry&not.tag=low"))
        .contains("Slack</mark> hat")
        .contains("1 recipe");
  }

  @Test
  void whatIsNotUnderstoodIsSaidBesideItsField() {
    String html = page("/?hold.from=80+bananas&q=hold+over&tag=dry&hold.to=");
    assertThat(html).contains("Found 80 bananas, expected");
    Markup markup = new Markup(html);
    Markup.Tag field =
        markup.tags.stream()
            .filter(tag -> tag.value("name").equals("hold.from"))
            .findFirst()
            .orElseThrow();
    assertThat(field.value("value")).isEqualTo("80 bananas");
    assertThat(field.value("aria-invalid")).isEqualTo("true");
    assertThat(html).contains("id=\"" + field.value("aria-describedby") + "\"");
    assertThat(html).contains("2 recipes");
  }

  @Test
  void aFavouriteIsOneFromTheRow() {
    HttpResponse<String> answer =
        notebook.post("/recipes/two/favourite", Map.of("favourite", "yes", "back", "/?q=slack"));
    assertThat(answer.statusCode()).isEqualTo(303);
    assertThat(answer.headers().firstValue("Location")).hasValue("/?q=slack#r-two");
    assertThat(page("/?favourite=yes")).contains("Slack hat").contains("1 recipe");
    notebook.post("/recipes/two/favourite", Map.of("favourite", "no", "back", "//evil.example"));
    assertThat(page("/?favourite=yes")).contains("No recipe is like that");
  }

  @Test
  void selectedRecipesAreTaggedInOneActAndItIsUndone() {
    HttpResponse<String> answer =
        notebook.send(
            "/selection",
            Map.of(
                "recipe", List.of("one", "three"),
                "tags", List.of("act two, loud"),
                "act", List.of("tag"),
                "back", List.of("/?q=&order=title")));
    assertThat(answer.statusCode()).isEqualTo(303);
    String back = answer.headers().firstValue("Location").orElseThrow();
    assertThat(notebook.recipe("one").tags()).containsExactly("dry", "low", "act two", "loud");
    assertThat(notebook.recipe("two").tags()).containsExactly("dry");
    String html = page("/?order=title&" + back.substring(back.indexOf("done=")));
    assertThat(html)
        .contains("Tagged act two, loud on 2 recipes.")
        .contains("<button>Undo</button>");
    String undo =
        new Markup(html)
            .all("form").stream()
                .map(form -> form.value("action"))
                .filter(action -> action.endsWith("/undo"))
                .findFirst()
                .orElseThrow();
    answer = notebook.post(undo, Map.of("back", "/?order=title"));
    assertThat(answer.headers().firstValue("Location").orElseThrow())
        .startsWith("/?order=title&done=");
    assertThat(notebook.recipe("three").tags()).containsExactly("wet");
  }

  @Test
  void allThatMatchMeansEveryPageAndNothingElse() {
    notebook.add(
        List.of(),
        IntStream.range(0, RecipeIndex.ROWS + 5)
            .mapToObj(i -> Written.recipe("m" + i, "Marimba " + i, List.of(), "lamp"))
            .toList());
    assertThat(
            notebook
                .post(
                    "/selection",
                    Map.of(
                        "all", "yes", "search", "q=marimba", "act", "bin", "back", "/?q=marimba"))
                .statusCode())
        .isEqualTo(303);
    assertThat(page("/?q=marimba")).contains("No recipe is like that");
    assertThat(page("/")).contains("3 recipes");
  }

  @Test
  void aSelectionIsComparedOrExported() {
    Map<String, List<String>> chosen = Map.of("recipe", List.of("one", "two"));
    HttpResponse<String> compared = notebook.send("/selection", with(chosen, "compare"));
    assertThat(compared.headers().firstValue("Location")).hasValue("/compare?of=one,two");
    HttpResponse<String> zip = notebook.send("/selection", with(chosen, "export"));
    assertThat(zip.headers().firstValue("Content-Type")).hasValue("application/zip");
    assertThat(zip.body()).contains("recipes/one.md", "recipes/two.md", "gates/lamp.md");
    assertThat(zip.body()).doesNotContain("three.md");
    for (String act : List.of("tag", "bin", "nonsense")) {
      HttpResponse<String> refused = notebook.send("/selection", with(Map.of(), act));
      assertThat(refused.statusCode()).isEqualTo(422);
      assertThat(refused.body()).contains("Select a recipe first");
    }
  }

  @Test
  void aTagIsRenamedMergedAndDeletedWithUndo() {
    HttpResponse<String> asked =
        notebook.post("/tags/rename", Map.of("tag", "wet", "name", "Dry", "back", "/tags"));
    assertThat(asked.statusCode()).isEqualTo(409);
    assertThat(asked.body()).contains("Make one of two tags?").contains("on 2 recipes");
    assertThat(notebook.recipe("three").tags()).containsExactly("wet");
    String done =
        location(
            notebook.post(
                "/tags/rename",
                Map.of("tag", "wet", "name", "dry", "merge", "yes", "back", "/tags")));
    assertThat(notebook.recipe("three").tags()).containsExactly("dry");
    assertThat(page(done)).contains("Merged the tag wet into dry on 1 recipe.").contains("Undo");
    location(notebook.post("/tags/rename", Map.of("tag", "low", "name", "deep", "back", "/tags")));
    assertThat(notebook.recipe("one").tags()).containsExactly("dry", "deep");
    done = location(notebook.post("/tags/delete", Map.of("tag", "dry", "back", "/tags")));
    assertThat(done).startsWith("/tags?done=");
    assertThat(notebook.recipe("two").tags()).isEmpty();
    HttpResponse<String> refused =
        notebook.post("/tags/rename", Map.of("tag", "deep", "name", " ", "back", "/tags"));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("keeps its name");
  }

  @Test
  void aSearchIsKeptRenamedAndTakenDown() {
    assertThat(location(notebook.post("/shelves", Map.of("name", "Dry ones", "search", "tag=dry"))))
        .isEqualTo("/?tag=dry");
    assertThat(page("/")).contains(">Dry ones</a>");
    assertThat(page("/shelves")).contains("2 recipes: tagged dry");
    HttpResponse<String> taken =
        notebook.post("/shelves", Map.of("name", "dry ONES", "search", "q=bell"));
    assertThat(taken.statusCode()).isEqualTo(409);
    assertThat(taken.body()).contains("The name was not taken").contains("value=\"dry ONES\"");
    notebook.post("/shelves/1/name", Map.of("name", "Dust"));
    assertThat(page("/shelves")).contains(">Dust</a>");
    HttpResponse<String> down = notebook.post("/shelves/1/remove", Map.of());
    assertThat(down.body()).contains("“Dust” was taken down").contains("Put it up again");
    assertThat(page("/shelves")).contains("There is no shelf yet");
  }

  @Test
  void whatIsLikeARecipeIsRankedWithWords() {
    for (String by : List.of("", "?by=settings", "?by=both")) {
      assertThat(page("/recipes/one/alike" + by))
          .contains("Slack hat")
          .contains("Bell")
          .contains("0.0\u00a0dB</b> away, as good as the same")
          .contains("No difference that you would notice.");
    }
    assertThat(notebook.get("/recipes/one/alike?by=smell").statusCode()).isEqualTo(404);
    assertThat(page("/recipes/one")).contains("href=\"/recipes/one/alike\"");
  }

  @Test
  void whatFollowsIsSuggested() {
    assertThat(notebook.get("/completions?text=kick,%20on%20qu").body())
        .contains("role=\"option\"")
        .contains("data-text=\"kick, on quick \"");
    assertThat(notebook.get("/completions").body().strip()).isEmpty();
  }

  private static Map<String, List<String>> with(Map<String, List<String>> form, String act) {
    Map<String, List<String>> all = new HashMap<>(form);
    all.put("act", List.of(act));
    return all;
  }

  private static String location(HttpResponse<String> answer) {
    assertThat(answer.statusCode()).isEqualTo(303);
    return answer.headers().firstValue("Location").orElseThrow();
  }

  private String page(String address) {
    HttpResponse<String> answer = notebook.get(address);
    assertThat(answer.statusCode()).as(address).isEqualTo(200);
    new Markup(answer.body());
    return answer.body();
  }
}
