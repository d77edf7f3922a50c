package thudbook.pages.writing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.pages.frame.Markup;
import thudbook.pages.frame.ServedNotebook;
import thudbook.recipes.Recipe;

/** Scenario: recipes are written over HTTP with plain forms, as a browser without scripts does. */
class EditorFormsScenario {
  private static final String HOSTILE = "<script>alert(1)</script>\"'><b onclick=x>&amp;";

  @TempDir Path folder;
  private ServedNotebook notebook;

  @BeforeEach
  void open() throws IOException {
    notebook = new ServedNotebook(folder);
    notebook.add(List.of(gate()), List.of());
  }

  @AfterEach
  void close() {
    notebook.close();
  }

  @Test
  void titleAndNotesAloneAreSaved() {
    HttpResponse<String> saved =
        post("/recipes/new", filled("/recipes/new", Map.of("title", "Thud", "notes", "Later.")));
    assertThat(saved.statusCode()).isEqualTo(303);
    assertThat(location(saved)).isEqualTo("/recipes/thud");
    Recipe recipe = notebook.recipe("thud");
    assertThat(recipe.notes()).isEqualTo("Later.");
    assertThat(recipe.source()).isNull();
    assertThat(recipe.envelope()).isNull();
  }

  @Test
  void theGateThatWasUsedLastIsPreset() {
    post(
        "/recipes/new",
        filled(
            "/recipes/new",
            Map.of("title", "One", "stages.0.gate", "lamp", "stages.0.channel", "quick")));
    assertThat(form(notebook.get("/recipes/new").body()))
        .containsEntry("stages.0.gate", List.of("lamp"))
        .containsEntry("stages.0.channel", List.of("quick"));
  }

  @Test
  void sentTwiceItIsSavedOnce() {
    Map<String, List<String>> form = filled("/recipes/new", Map.of("title", "Thud"));
    assertThat(location(post("/recipes/new", form))).isEqualTo("/recipes/thud");
    assertThat(location(post("/recipes/new", form))).isEqualTo("/recipes/thud");
    assertThat(notebook.get("/").body()).contains("1 recipe<");
    assertThat(location(post("/recipes/new", filled("/recipes/new", Map.of("title", "Thud")))))
        .isEqualTo("/recipes/thud-2");
    assertThat(location(post("/recipes/new", filled("/recipes/new", Map.of("title", "New")))))
        .isEqualTo("/recipes/new-2");
  }

  @Test
  void refusedValuesComeBackWithEverythingTyped() {
    Map<String, List<String>> form =
        filled(
            "/recipes/new",
            Map.of(
                "title", "",
                "source.kind", "noise",
                "source.fm.carrier", "A1",
                "envelope.attack-hold-decay.decay", "180",
                "connections.0.out", "N1 noise",
                "notes", HOSTILE));
    HttpResponse<String> answer = post("/recipes/new", form);
    assertThat(answer.statusCode()).isEqualTo(422);
    Markup page = new Markup(answer.body());
    assertThat(answer.body()).contains("3 things have to be mended");
    assertThat(page.all("a").stream().map(a -> a.value("href")))
        .contains("#f-title", "#f-envelope.attack-hold-decay.decay", "#f-connections.0.in");
    assertThat(page.tags.stream().filter(tag -> tag.value("aria-invalid").equals("true")))
        .hasSize(3);
    assertThat(page.all("details"))
        .anyMatch(d -> d.value("id").equals("part-connections") && d.attributes().contains("open"));
    assertThat(form(answer.body())).isEqualTo(form);
  }

  @Test
  void tryingShowsThePlotAndSavesNothing() {
    Map<String, List<String>> form =
        filled(
            "/recipes/new",
            Map.of(
                "title", "Thud",
                "source.kind", "noise",
                "envelope.kind", "pulse",
                "envelope.pulse.peak", "5 V",
                "envelope.pulse.length", "4 ms",
                "stages.0.gate", "lamp",
                "stages.0.channel", "quick"));
    String page = post("/editor/form", form).body();
    assertThat(page).contains("<svg class=\"plot plot-beside\"").contains("Predicted shape");
    assertThat(form(page)).isEqualTo(form);
    assertThat(notebook.get("/").body()).contains("The notebook is empty");
    form.put("envelope.pulse.length", List.of("4 V"));
    assertThat(post("/editor/form", form).body())
        .contains("One thing has to be mended")
        .contains("No prediction while a field of the sound is at fault");
  }

  @Test
  void rowsAndStagesAreAddedAndRemoved() {
    Map<String, List<String>> form =
        filled("/recipes/new", Map.of("connections.0.out", "a", "connections.0.in", "b"));
    form.put("form.add", List.of("connections"));
    Map<String, List<String>> longer = form(post("/editor/form", form).body());
    assertThat(longer)
        .containsKey("connections.1.out")
        .containsEntry("connections.0.in", List.of("b"));
    longer.put("connections.1.out", List.of("c"));
    longer.put("form.remove", List.of("connections.0"));
    Map<String, List<String>> shorter = form(post("/editor/form", longer).body());
    assertThat(shorter)
        .doesNotContainKey("connections.1.out")
        .containsEntry("connections.0.out", List.of("c"));
    shorter.put("form.add", List.of("stages"));
    for (int stages = 2; stages <= 4; stages++) {
      shorter = form(post("/editor/form", shorter).body());
      assertThat(shorter).containsKey("stages." + (stages - 1) + ".gain");
      shorter.put("form.add", List.of("stages"));
    }
  }

  @Test
  void aChannelMayBeTriedOutButNotSaved() {
    String channel =
        """
        transfer: [[1 V, 0], [4 V, 1]]
        opening: 2 ms
        release: [{share: 1, time: 30 ms}]
        cutoff: {closed: 40 Hz, open: 9 kHz}
        leak: -60 dB
        """;
    Map<String, List<String>> form =
        filled(
            "/recipes/new",
            Map.of(
                "title", "Thud",
                "source.kind", "noise",
                "envelope.kind", "pulse",
                "envelope.pulse.peak", "5 V",
                "envelope.pulse.length", "4 ms",
                "stages.0.tried", channel));
    assertThat(post("/editor/live", form).body())
        .contains("threshold 1")
        .doesNotContain("data-field");
    HttpResponse<String> answer = post("/recipes/new", form);
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("save it in a gate first");
  }

  @Test
  void editingKeepsEverythingAndTellsWhatChanged() {
    post(
        "/recipes/new",
        filled(
            "/recipes/new",
            Map.of(
                "title",
                "Thud",
                "source.kind",
                "noise",
                "source.noise.from",
                "100 Hz",
                "tags",
                "dry, kick")));
    Map<String, List<String>> form =
        filled("/recipes/thud/edit", Map.of("source.noise.from", "200 Hz", "slug", "thump"));
    HttpResponse<String> saved = post("/recipes/thud/edit", form);
    assertThat(location(saved)).isEqualTo("/recipes/thump");
    Recipe recipe = notebook.recipe("thump");
    assertThat(recipe.tags()).containsExactly("dry", "kick");
    assertThat(Documents.write(recipe)).contains("from: 200 Hz");
    assertThat(notebook.get("/recipes/thud").statusCode()).isEqualTo(308);
    assertThat(notebook.lastAct("thump")).isEqualTo("changed address and lower edge of the noise");
  }

  @Test
  void aVariationCopiesAndTakesANameOfItsOwn() {
    post("/recipes/new", filled("/recipes/new", Map.of("title", "Thud", "source.kind", "noise")));
    Map<String, List<String>> form =
        filled("/recipes/new?from=thud", Map.of("title", "Thud, darker"));
    assertThat(location(post("/recipes/new", form))).isEqualTo("/recipes/thud-darker");
    Recipe child = notebook.recipe("thud-darker");
    assertThat(child.derivedFrom()).isEqualTo("thud");
    assertThat(child.source()).isEqualTo(notebook.recipe("thud").source());
    assertThat(child.id()).isNotEqualTo(notebook.recipe("thud").id());
  }

  @Test
  void theSecondToSaveSeesBothVersionsAndChooses() {
    post(
        "/recipes/new",
        filled("/recipes/new", Map.of("title", "Thud", "heard", "dull", "room", "hall")));
    Map<String, List<String>> slower =
        filled("/recipes/thud/edit", Map.of("title", "Mine", "heard", "bright"));
    post(
        "/recipes/thud/edit",
        filled("/recipes/thud/edit", Map.of("title", "Theirs", "room", "attic")));
    HttpResponse<String> conflict = post("/recipes/thud/edit", slower);
    assertThat(conflict.statusCode()).isEqualTo(409);
    assertThat(notebook.recipe("thud").title()).as("nothing is overwritten").isEqualTo("Theirs");
    Map<String, List<String>> choice = form(conflict.body());
    assertThat(choice)
        .containsEntry("form.take.title", List.of("yours"))
        .containsEntry("form.take.heard", List.of("yours"))
        .containsEntry("form.take.room", List.of("theirs"));
    Map<String, List<String>> goOn =
        form(post("/editor/form", with(choice, "form.combine", "1")).body());
    assertThat(goOn)
        .containsEntry("title", List.of("Mine"))
        .containsEntry("heard", List.of("bright"))
        .containsEntry("room", List.of("attic"));
    choice.put("form.take.title", List.of("base"));
    // Somebody saves once more, before the choice is sent.
    post("/recipes/thud/edit", filled("/recipes/thud/edit", Map.of("by", "Pia")));
    HttpResponse<String> again = post("/recipes/thud/edit", choice);
    assertThat(again.statusCode()).isEqualTo(409);
    assertThat(form(again.body())).containsEntry("form.take.title", List.of("base"));
    assertThat(post("/recipes/thud/edit", form(again.body())).statusCode()).isEqualTo(303);
    Recipe recipe = notebook.recipe("thud");
    assertThat(List.of(recipe.title(), recipe.heard(), recipe.room(), recipe.by()))
        .containsExactly("Thud", "bright", "attic", "Pia");
  }

  @Test
  void theSameChangeTwiceIsNoConflict() {
    post("/recipes/new", filled("/recipes/new", Map.of("title", "Thud")));
    Map<String, List<String>> form = filled("/recipes/thud/edit", Map.of("heard", "dull"));
    assertThat(post("/recipes/thud/edit", form).statusCode()).isEqualTo(303);
    assertThat(post("/recipes/thud/edit", form).statusCode()).isEqualTo(303);
  }

  @Test
  void draftsAreKeptOfferedAndThrownAway() {
    Map<String, List<String>> form =
        filled(
            "/recipes/new",
            Map.of("title", "Half a thud", "source.kind", "noise", "source.fm.carrier", "A1"));
    String key = form.get("form.key").get(0);
    form.put("form.step", List.of("3"));
    assertThat(post("/editor/drafts/" + key, form).statusCode()).isEqualTo(204);
    Map<String, List<String>> late = with(with(form, "title", "Hal"), "form.step", "2");
    assertThat(post("/editor/drafts/" + key, late).statusCode()).isEqualTo(204);
    String page = notebook.get("/recipes/new").body();
    assertThat(page)
        .contains(
            "You were writing <strong>Half a thud</strong> at <time datetime=\"2026-11-02T09:30:00Z\"")
        .contains("/recipes/new?draft=" + key);
    assertThat(form(notebook.get("/recipes/new?draft=" + key).body())).isEqualTo(form);
    HttpResponse<String> saved = post("/recipes/new", form);
    assertThat(saved.statusCode()).isEqualTo(303);
    assertThat(notebook.get("/recipes/new").body()).doesNotContain("You were writing");

    Map<String, List<String>> edit = filled("/recipes/half-a-thud/edit", Map.of("heard", "dull"));
    String other = edit.get("form.key").get(0);
    post("/editor/drafts/" + other, with(edit, "form.step", "1"));
    assertThat(notebook.get("/recipes/half-a-thud/edit").body()).contains("/edit?draft=" + other);
    assertThat(notebook.get("/recipes/new").body())
        .contains("/recipes/half-a-thud/edit?draft=" + other);
    HttpResponse<String> dropped =
        post("/editor/drafts/" + other + "/drop", Map.of("form.subject", edit.get("form.subject")));
    assertThat(location(dropped)).isEqualTo("/recipes/half-a-thud/edit");
    assertThat(notebook.get("/recipes/half-a-thud/edit").body()).doesNotContain("You were writing");
  }

  @Test
  void aFormWithoutItsVersionIsKeptAndAnImmenseOneIsNot() {
    post("/recipes/new", filled("/recipes/new", Map.of("title", "Thud")));
    Map<String, List<String>> form = filled("/recipes/thud/edit", Map.of("heard", "dull"));
    String key = form.get("form.key").get(0);
    for (String version : List.of("", "0", "-1", "NaN")) {
      assertThat(post("/editor/drafts/" + key, with(form, "form.version", version)).statusCode())
          .isEqualTo(204);
    }
    Map<String, List<String>> immense = with(form, "notes", "a".repeat(3 << 20));
    for (String address : List.of("/editor/drafts/" + key, "/editor/live", "/recipes/thud/edit")) {
      assertThat(post(address, immense).statusCode()).as(address).isEqualTo(413);
    }
  }

  @Test
  void theAddressOfTheFormIsNoAddressOfARecipe() {
    Map<String, List<String>> form =
        filled("/recipes/new", Map.of("title", "Thud", "slug", "new", "notes", "Typed."));
    HttpResponse<String> answer = post("/recipes/new", form);
    assertThat(answer.statusCode()).isEqualTo(409);
    assertThat(answer.body())
        .contains("The slug new leads to the page on which a new recipe is written.")
        .contains("Typed.");
    assertThat(notebook.get("/").body()).contains("The notebook is empty");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/recipes/none/edit", "/recipes/new?from=none"})
  void whatIsNotThereIsNotFound(String address) {
    assertThat(notebook.get(address).statusCode()).isEqualTo(404);
  }

  @Test
  void hostileTextIsShownAsText() {
    Map<String, String> hostile = new LinkedHashMap<>();
    form(notebook.get("/recipes/new").body()).keySet().stream()
        .filter(name -> !name.startsWith("form.") && !name.equals("id") && !name.endsWith("kind"))
        .forEach(name -> hostile.put(name, HOSTILE));
    Map<String, List<String>> form = filled("/recipes/new", hostile);
    for (String address :
        List.of("/recipes/new", "/editor/form", "/editor/live", "/editor/notes")) {
      HttpResponse<String> answer = post(address, form);
      assertThat(answer.statusCode()).as(address).isIn(200, 422);
      new Markup(answer.body());
      assertThat(answer.body())
          .as(address)
          .doesNotContain("<script>alert")
          .doesNotContain("<b onclick");
    }
  }

  private HttpResponse<String> post(String address, Map<String, List<String>> form) {
    return notebook.send(address, form);
  }

  private static String location(HttpResponse<String> answer) {
    return answer.headers().firstValue("Location").orElse("");
  }

  private static Map<String, List<String>> with(
      Map<String, List<String>> form, String name, String value) {
    Map<String, List<String>> changed = new LinkedHashMap<>(form);
    changed.put(name, List.of(value));
    return changed;
  }

  /** The form of a page, with some fields filled in. */
  private Map<String, List<String>> filled(String address, Map<String, String> fields) {
    HttpResponse<String> answer = notebook.get(address);
    assertThat(answer.statusCode()).as(address).isEqualTo(200);
    new Markup(answer.body());
    Map<String, List<String>> form = form(answer.body());
    fields.forEach((name, value) -> form.put(name, List.of(value)));
    return form;
  }

  private static Map<String, List<String>> form(String html) {
    return FormOfPage.fields(html);
  }

  private static Gate gate() {
    Channel channel =
        new Channel(
            "quick",
            Transfer.between(2.4, 5),
            new Cells(0.0012, List.of(new Cell(0.88, 0.018, null), new Cell(0.12, 0.12, null))),
            new Response.Both(new Level(-66, 1, 0), new Filter(2, 1, 40, 9000, 1)),
            new Output(1.1, 10));
    return new Gate(
        UUID.randomUUID(),
        "lamp",
        "Lamp",
        Gate.Caution.NONE,
        List.of(new StudioChannel(channel, null)),
        "");
  }
}
