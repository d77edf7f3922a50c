package thudbook.pages.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Patience;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.Slugs;
import thudbook.equipment.Gate;
import thudbook.pages.frame.Markup;
import thudbook.pages.frame.ServedNotebook;
import thudbook.pages.writing.PageForm;
import thudbook.recipes.Recipe;

/**
 * Scenario: what recipes and gates were, going back, the bin, undo, comparison and lineage, and the
 * editor of gates, over HTTP and without scripts.
 */
class HistoryScenario {
  private static final Identity IDENTITY =
      new Identity() {
        @Override
        public UUID newId() {
          return UUID.randomUUID();
        }

        @Override
        public String slugFor(String title) {
          return Slugs.of(title);
        }
      };

  @TempDir Path folder;
  private ServedNotebook notebook;
  private final Gate twin = gate("keeper-twin");
  private final Recipe spring = recipe("spring-tide-kick");
  private final Recipe slack = recipe("slack-tide-kick");

  @BeforeEach
  void open() throws IOException {
    notebook = new ServedNotebook(folder);
    notebook.add(List.of(twin), List.of(spring, slack));
  }

  @AfterEach
  void close() {
    notebook.close();
  }

  @Test
  void aHistoryTellsWhatChangedAndLeadsBack() {
    edit(Map.of("envelope.attack-hold-decay.decay", "240 ms", "heard", "longer"));
    String history = page("/recipes/slack-tide-kick/history");
    assertThat(history)
        .contains("Revision 2")
        .contains("today’s")
        .contains("decay 180\u00a0ms → 240\u00a0ms")
        .contains("Predicted: ")
        .contains("/compare?of=slack-tide-kick@1,slack-tide-kick");
    assertThat(page("/recipes/slack-tide-kick/history/1"))
        .contains("Revision 1")
        .contains("not what counts today")
        .contains("180\u00a0ms");

    HttpResponse<String> back =
        notebook.post("/recipes/slack-tide-kick/history/1/restore", Map.of("version", "2"));
    String change = page(followed(back));
    assertThat(change).contains("Went back to revision 1").contains(">Undo</button>");
    assertThat(page("/recipes/slack-tide-kick")).contains("Decay</dt><dd>180\u00a0ms");
    assertThat(page("/recipes/slack-tide-kick/history")).contains("Revision 3");
  }

  @Test
  void goingBackFromAnOldPageIsRefusedAndShowsWhatWasSaved() {
    edit(Map.of("heard", "once"));
    edit(Map.of("heard", "twice"));
    HttpResponse<String> late =
        notebook.post("/recipes/slack-tide-kick/history/1/restore", Map.of("version", "2"));
    assertThat(late.statusCode()).isEqualTo(412);
    assertThat(late.body()).contains("Somebody saved it").contains("“once” → “twice”");
    assertThat(page("/recipes/slack-tide-kick")).contains("twice");
    assertThat(notebook.post("/recipes/slack-tide-kick/history/1/restore", Map.of()).statusCode())
        .isEqualTo(422);
    assertThat(notebook.get("/recipes/slack-tide-kick/history/9").statusCode()).isEqualTo(404);
    assertThat(notebook.get("/recipes/slack-tide-kick/history/x").statusCode()).isEqualTo(404);
  }

  @Test
  void longHistoriesHavePages() {
    for (int i = 1; i <= HistorySheet.ROWS + 2; i++) {
      edit(Map.of("heard", "take " + i));
    }
    String first = page("/recipes/slack-tide-kick/history");
    assertThat(first).contains("Earlier ones").doesNotContain("Revision 3<");
    String second = page("/recipes/slack-tide-kick/history?below=4");
    assertThat(second).contains("Revision 3<").contains("The newest").doesNotContain("Earlier");
  }

  @Test
  void theBinGivesBackAndUndoIsOfferedAtOnce() {
    assertThat(page("/bin")).contains("The bin is empty");
    HttpResponse<String> thrown = notebook.post("/recipes/slack-tide-kick/bin", version(1));
    String change = followed(thrown);
    assertThat(page(change)).contains("Threw Slack-tide kick into the bin").contains(">Undo<");
    assertThat(page("/bin")).contains("Slack-tide kick");
    assertThat(page("/recipes/slack-tide-kick")).contains("This lies in the");
    assertThat(page("/")).doesNotContain("/recipes/slack-tide-kick");

    String undone = followed(notebook.post(change + "/undo", Map.of()));
    assertThat(page(undone)).contains("Undid: threw Slack-tide kick into the bin");
    assertThat(page(change)).contains("This was undone");
    assertThat(page("/")).contains("/recipes/slack-tide-kick");
    HttpResponse<String> again = notebook.post(change + "/undo", Map.of());
    assertThat(again.statusCode()).isEqualTo(409);
    wellMade(again.body());

    notebook.post("/recipes/slack-tide-kick/bin", version(3));
    assertThat(page(followed(notebook.post("/bin/recipes/" + slack.id(), Map.of()))))
        .contains("Took Slack-tide kick out of the bin");
    assertThat(page("/changes")).contains("Took Slack-tide kick out of the bin").contains("undone");
  }

  @Test
  void whatCameSinceStandsInTheWayOfAnUndoAndIsSaid() {
    edit(Map.of("heard", "once"));
    edit(Map.of("heard", "twice"));
    String history = page("/recipes/slack-tide-kick/history");
    String first =
        new Markup(history)
            .all("a").stream()
                .map(a -> a.value("href"))
                .filter(
                    href -> href.startsWith("/changes/") && href.length() > "/changes/".length())
                .skip(1)
                .findFirst()
                .orElseThrow();
    assertThat(page(first)).contains("It can’t be undone as it is").contains("changed or binned");
    HttpResponse<String> refused = notebook.post(first + "/undo", Map.of());
    assertThat(refused.statusCode()).isEqualTo(409);
    assertThat(refused.body()).contains("It was not undone");
  }

  @Test
  void lineageIsShownAndComparedBothWays() {
    assertThat(page("/recipes/slack-tide-kick"))
        .contains("/compare?of=spring-tide-kick,slack-tide-kick");
    assertThat(page("/recipes/spring-tide-kick"))
        .contains("Variations of it")
        .contains("href=\"/recipes/slack-tide-kick\"");
    String compared = page("/compare?of=spring-tide-kick,slack-tide-kick");
    assertThat(compared)
        .contains("What differs")
        .contains("A: Spring-tide kick")
        .contains("B: Slack-tide kick")
        .contains("Numbers side by side")
        .contains("Shapes over each other");
  }

  @Test
  void upToSixAreComparedAndWhatIsNotThereIsSaid() {
    assertThat(page("/compare")).contains("Compare recipes");
    assertThat(page("/compare?of=Slack-tide kick&of=nobody".replace(" ", "%20")))
        .contains("There is no recipe “nobody”")
        .contains("A</strong> <a href=\"/recipes/slack-tide-kick\"");
    for (int i = 0; i < 7; i++) {
      edit(Map.of("heard", "take " + i));
    }
    String seven = page("/compare?of=" + "1234567".replaceAll("(.)", "slack-tide-kick@$1,"));
    assertThat(seven).contains("Only the first 6").contains("F: Slack-tide kick, revision 6");
    assertThat(new Markup(seven).all("li").stream().count()).isGreaterThanOrEqualTo(6);
    assertThat(page("/compare?of=slack-tide-kick@1,slack-tide-kick@99")).contains("@99”");
  }

  @Test
  void aGateIsWrittenChangedAndItsRecipesFollow() throws InterruptedException {
    String made = followed(notebook.post("/gates/new", door()));
    assertThat(made).isEqualTo("/gates/storm-door");
    assertThat(page(made)).contains("Channel only").contains("Hears nothing below 1\u00a0V");

    Map<String, String> form = fields("/gates/keeper-twin/edit");
    form.put("channels.0.transfer", "1.4 V, 0\r\n4 V, 1");
    String change = followed(notebook.post("/gates/keeper-twin/edit", form));
    assertThat(change).startsWith("/changes/");
    Patience.until(
        "both recipes predicted again", () -> page(change).contains("2 recipes predicted again."));
    assertThat(page(change))
        .contains("2 recipes predicted again.")
        .contains("Slack-tide kick")
        .contains("→</span>");
    assertThat(notebook.get(change + "/progress").body()).contains("2 recipes predicted again.");
    assertThat(page("/gates/keeper-twin/history"))
        .contains("quick: transfer 2.4\u00a0V, 0; 5\u00a0V, 1 → 1.4\u00a0V, 0")
        .contains("Go back to this one");
    assertThat(page("/gates/keeper-twin/history/1")).contains("not what counts today");
    assertThat(page(followed(notebook.post("/gates/keeper-twin/history/1/restore", version(2)))))
        .contains("Went back to revision 1");
  }

  @Test
  void aChannelThatRecipesUseStaysAndNothingTypedIsLost() {
    Map<String, String> form = fields("/gates/keeper-twin/edit");
    form.put("channels.0.name", "hasty");
    form.put("notes", "Typed a moment ago.");
    HttpResponse<String> renamed = notebook.post("/gates/keeper-twin/edit", form);
    assertThat(renamed.statusCode()).isEqualTo(409);
    wellMade(renamed.body());
    assertThat(renamed.body())
        .contains("What recipes use has to stay")
        .contains("href=\"/recipes/slack-tide-kick\"")
        .contains("value=\"hasty\"")
        .contains("Typed a moment ago.");

    form.put("form.remove", "channels.0");
    HttpResponse<String> removed = notebook.post("/editor/gate/form", form);
    assertThat(removed.statusCode()).isEqualTo(409);
    assertThat(removed.body()).contains("The channel quick is in use").contains("Typed a moment");

    form.put("form.remove", "channels.1");
    HttpResponse<String> other = notebook.post("/editor/gate/form", form);
    assertThat(other.statusCode()).isEqualTo(200);
    assertThat(other.body()).contains("value=\"hasty\"").doesNotContain("value=\"long\"");

    form.remove("form.remove");
    form.put("form.add", "channels");
    assertThat(notebook.post("/editor/gate/form", form).body()).contains("channels.2.transfer");

    HttpResponse<String> binned = notebook.post("/gates/keeper-twin/bin", version(1));
    assertThat(binned.statusCode()).isEqualTo(409);
    assertThat(binned.body()).contains("uses the gate Keeper twin");
  }

  @Test
  void theSecondToSaveAGateSeesBothVersionsAndChooses() {
    Map<String, String> mine = fields("/gates/keeper-twin/edit");
    Map<String, String> theirs = fields("/gates/keeper-twin/edit");
    theirs.put("channels.0.opening", "2 ms");
    theirs.put("notes", "Theirs.");
    notebook.post("/gates/keeper-twin/edit", theirs);
    mine.put("channels.0.leak", "-70 dB");
    mine.put("notes", "Mine.");
    HttpResponse<String> late = notebook.post("/gates/keeper-twin/edit", mine);
    assertThat(late.statusCode()).isEqualTo(409);
    wellMade(late.body());
    assertThat(late.body())
        .contains("Two versions of Keeper twin", "Channel quick: Opening", "Channel quick: Leak");
    assertThat(page("/gates/keeper-twin")).as("nothing is overwritten").contains("Theirs.");
    Map<String, String> choice = PageForm.fields(late.body());
    assertThat(choice)
        .containsEntry("form.take.channels.0.opening", "theirs")
        .containsEntry("form.take.channels.0.leak", "yours")
        .containsEntry("form.take.notes", "yours");

    choice.put("form.combine", "1");
    Map<String, String> goOn = PageForm.fields(notebook.post("/editor/gate/form", choice).body());
    assertThat(goOn)
        .containsEntry("channels.0.opening", "2 ms")
        .containsEntry("channels.0.leak", "-70 dB")
        .containsEntry("channels.0.was", "quick")
        .containsEntry("notes", "Mine.");

    choice.remove("form.combine");
    choice.put("form.take.notes", "theirs");
    assertThat(followed(notebook.post("/gates/keeper-twin/edit", choice))).startsWith("/changes/");
    assertThat(page("/gates/keeper-twin"))
        .contains("−70\u00a0dB", "2\u00a0ms", "Theirs.")
        .doesNotContain("Mine.");
  }

  @Test
  void faultsOfAGateStandAtTheirFieldsAndLiveDrawingsStayAway() {
    Map<String, String> form = door();
    form.put("channels.0.opening", "soon");
    form.put("title", "");
    HttpResponse<String> refused = notebook.post("/gates/new", form);
    assertThat(refused.statusCode()).isEqualTo(422);
    wellMade(refused.body());
    assertThat(refused.body())
        .contains("2 things have to be mended")
        .contains("href=\"#f-channels.0.opening\"");
    assertThat(notebook.post("/editor/gate/live", form).body())
        .contains("data-kept=\"true\"")
        .contains("data-field=\"channels.0.opening\"");
    assertThat(notebook.post("/editor/gate/live", door()).body())
        .contains("The same strike through every channel")
        .contains("Keeper twin, quick")
        .contains("This gate, only");
  }

  @Test
  void aDraftOfAGateIsOfferedAgain() {
    Map<String, String> form = fields("/gates/new");
    form.put("title", "Half a gate");
    form.put("form.step", "3");
    String key = form.get("form.key");
    assertThat(notebook.post("/editor/drafts/" + key, form).statusCode()).isEqualTo(204);
    assertThat(page("/gates/new")).contains("You were writing <strong>Half a gate</strong>");
    assertThat(page("/gates/new?draft=" + key)).contains("value=\"Half a gate\"");
    assertThat(page("/recipes/new")).doesNotContain("Half a gate");
    assertThat(
            followed(notebook.post("/editor/drafts/" + key + "/drop", Map.of("form.noun", "gate"))))
        .isEqualTo("/gates/new");
    assertThat(page("/gates/new")).doesNotContain("Half a gate");
  }

  private static Map<String, String> door() {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("title", "Storm door");
    form.put("channels.0.name", "only");
    form.put("channels.0.response", "both");
    form.put("channels.0.transfer", "1 V, 0\r\n5 V, 1");
    form.put("channels.0.opening", "1 ms");
    form.put("channels.0.release.0.share", "1");
    form.put("channels.0.release.0.time", "18 ms");
    form.put("channels.0.release.1.share", "");
    form.put("channels.0.cutoff.closed", "40 Hz");
    form.put("channels.0.cutoff.open", "9 kHz");
    form.put("channels.0.leak", "-66 dB");
    form.put("channels.0.measured.how", "");
    return form;
  }

  private void edit(Map<String, String> changes) {
    Map<String, String> form = fields("/recipes/slack-tide-kick/edit");
    form.putAll(changes);
    assertThat(notebook.post("/recipes/slack-tide-kick/edit", form).statusCode()).isEqualTo(303);
  }

  private static Map<String, String> version(int version) {
    return Map.of("version", String.valueOf(version));
  }

  /** The fields of the form of a page, as a browser would send them. */
  private Map<String, String> fields(String address) {
    return PageForm.fields(page(address));
  }

  private static String followed(HttpResponse<String> answer) {
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(303);
    return answer.headers().firstValue("Location").orElseThrow();
  }

  private String page(String address) {
    HttpResponse<String> answer = notebook.get(address);
    assertThat(answer.statusCode()).as(address).isEqualTo(200);
    wellMade(answer.body());
    return answer.body();
  }

  private static void wellMade(String html) {
    Markup markup = new Markup(html);
    assertThat(markup.all("h1")).hasSize(1);
    assertThat(markup.tags.stream().map(tag -> tag.value("id")).filter(id -> !id.isEmpty()))
        .doesNotHaveDuplicates();
  }

  private static Gate gate(String slug) {
    return ((Gate) noun(Path.of("sample-library/gates/" + slug + ".md")));
  }

  private static Recipe recipe(String slug) {
    return ((Recipe) noun(Path.of("sample-library/recipes/" + slug + ".md")));
  }

  private static Thing noun(Path file) {
    try {
      return Documents.read(Files.readAllBytes(file), IDENTITY).thing();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
