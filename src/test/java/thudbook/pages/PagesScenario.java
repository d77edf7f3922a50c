package thudbook.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.equipment.Gate;
import thudbook.equipment.Measured;
import thudbook.equipment.StudioChannel;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.pages.finding.RecipeIndex;
import thudbook.pages.frame.Markup;
import thudbook.pages.frame.ServedNotebook;
import thudbook.pages.help.Help;
import thudbook.pages.help.Remedy;
import thudbook.quantities.Position;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;
import thudbook.sources.Source;

/** Scenario: pages over HTTP, from a real database that was filled with what could go wrong. */
class PagesScenario {
  private static final String HOSTILE = "<script>alert(1)</script>\"'><b onclick=x>&amp;";

  @TempDir Path folder;
  private ServedNotebook notebook;

  @BeforeEach
  void open() throws IOException {
    notebook = new ServedNotebook(folder);
  }

  @AfterEach
  void close() {
    notebook.close();
  }

  @Test
  void anEmptyNotebookSaysSo() {
    assertThat(page("/")).contains("The notebook is empty");
    assertThat(page("/gates")).contains("No gate yet");
  }

  @Test
  void hostileTextIsShownAsTextEverywhere() {
    notebook.add(List.of(gate(HOSTILE)), List.of(recipe("hostile", HOSTILE, stage())));
    for (String address : List.of("/", "/recipes/hostile", "/gates", "/gates/lamp")) {
      String html = page(address);
      assertThat(html).as(address).contains("&lt;script&gt;alert(1)").doesNotContain("<b onclick");
    }
  }

  @Test
  void aCompleteRecipeShowsItsPatchItsPlotAndItsNumbers() {
    notebook.add(List.of(gate("Lamp")), List.of(recipe("thud", "Thud", stage())));
    String html = page("/recipes/thud");
    assertThat(html)
        .contains("White noise, through")
        .contains("Large thump")
        .contains("Tubes in Lamp")
        .contains("lets go after")
        .contains("/api/recipes/thud/document")
        .contains("<svg")
        .contains(">12:40</td><td>Decay 180\u00a0ms, exponential to 1\u00a0%</td>");
    assertThat(new Markup(html).all("details")).isNotEmpty();
    assertThat(page("/gates/lamp"))
        .contains("Measured with a sweep on 12 September 2026, after warming up for 20\u00a0min.")
        .contains("href=\"/recipes/thud\"");
  }

  @Test
  void aHalfWrittenRecipeSaysWhatIsMissing() {
    notebook.add(List.of(), List.of(recipe("half", "Half", null)));
    assertThat(page("/recipes/half")).contains("No prediction yet: no gate channel.");
    assertThat(page("/")).contains("No prediction yet: no gate channel.");
  }

  @Test
  void pagesOfTheListLeadForwardsAndBack() {
    notebook.add(
        List.of(),
        IntStream.range(0, 2 * RecipeIndex.ROWS + 1)
            .mapToObj(i -> recipe("r" + i, String.format("Recipe %03d", i), null))
            .toList());
    Markup first = new Markup(page("/?order=title"));
    assertThat(link(first, "prev")).isEmpty();
    Markup second = new Markup(page(link(first, "next")));
    Markup last = new Markup(page(link(second, "next")));
    assertThat(link(last, "next")).isEmpty();
    assertThat(titles(last)).containsExactly("/recipes/r" + 2 * RecipeIndex.ROWS);
    assertThat(titles(new Markup(page(link(last, "prev"))))).isEqualTo(titles(second));
    assertThat(titles(new Markup(page(link(second, "prev"))))).isEqualTo(titles(first));
  }

  @Test
  void theListOfATagHasOnlyItsRecipesAndKeepsTheTagOverPages() {
    notebook.add(List.of(), List.of(recipe("one", "One", null), recipe("two", "Two & a/b?", null)));
    assertThat(page("/?tag=dry")).contains("tagged dry").contains("2 recipes");
    assertThat(page("/?tag=nowhere")).contains("No recipe is like that");
  }

  @Test
  void whatIsNotThereIsAPageToo() {
    for (String address :
        List.of("/recipes/none", "/gates/none", "/help/none", "/help/errors/none", "/none")) {
      HttpResponse<String> answer = notebook.get(address);
      assertThat(answer.statusCode()).as(address).isEqualTo(404);
      wellMade(address, answer.body());
    }
    HttpResponse<String> cursor = notebook.get("/?after=nonsense");
    assertThat(cursor.statusCode()).isBetween(400, 422);
    wellMade("cursor", cursor.body());
  }

  @Test
  void everyPageOfTheHelpIsThere() {
    assertThat(page("/help")).contains("What a low-pass gate does");
    Help.PAGES.forEach(help -> assertThat(page(help.address())).contains(help.title()));
    Remedy.all()
        .forEach(
            remedy ->
                assertThat(page(remedy.kind().type()))
                    .contains("HTTP status " + remedy.kind().status()));
  }

  @Test
  void anIdLeadsToTheAddressOfItsSlug() {
    Recipe recipe = recipe("thud", "Thud", null);
    notebook.add(List.of(), List.of(recipe));
    HttpResponse<String> answer = notebook.get("/recipes/" + recipe.id());
    assertThat(answer.statusCode()).isEqualTo(308);
    assertThat(answer.headers().firstValue("Location").orElse("")).endsWith("/recipes/thud");
  }

  private String page(String address) {
    HttpResponse<String> answer = notebook.get(address);
    assertThat(answer.statusCode()).as(address).isEqualTo(200);
    wellMade(address, answer.body());
    return answer.body();
  }

  /** Holds for every page: whole, one heading, nothing inline that the policy would refuse. */
  private static void wellMade(String address, String html) {
    Markup markup = new Markup(html);
    assertThat(markup.all("h1")).as("headings of %s", address).hasSize(1);
    assertThat(markup.all("main")).as("main parts of %s", address).hasSize(1);
    assertThat(markup.all("style")).as("inline styles of %s", address).isEmpty();
    assertThat(markup.all("script"))
        .as("scripts of %s", address)
        .allSatisfy(script -> assertThat(script.value("src")).startsWith("/"));
    assertThat(markup.tags)
        .as("attributes of %s", address)
        .allSatisfy(
            tag ->
                assertThat(tag.attributes())
                    .noneMatch(name -> name.equals("style") || name.startsWith("on")));
    assertThat(markup.tags.stream().map(tag -> tag.value("id")).filter(id -> !id.isEmpty()))
        .as("ids of %s", address)
        .doesNotHaveDuplicates();
  }

  private static String link(Markup page, String rel) {
    return page.all("a").stream()
        .filter(a -> a.value("rel").equals(rel))
        .map(a -> a.value("href").replace("&amp;", "&"))
        .findFirst()
        .orElse("");
  }

  private static List<String> titles(Markup page) {
    return page.all("a").stream()
        .map(a -> a.value("href"))
        .filter(href -> href.matches("/recipes/[^/]+") && !href.equals("/recipes/new"))
        .toList();
  }

  private static StageEntry stage() {
    return new StageEntry("lamp", "quick", Drive.UNITY, null);
  }

  private static Gate gate(String text) {
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
        text,
        Gate.Caution.TUBE,
        List.of(
            new StudioChannel(
                channel, new Measured(Measured.How.SWEEP, LocalDate.of(2026, 9, 12), 20.0))),
        text);
  }

  private static Recipe recipe(String slug, String text, StageEntry stage) {
    return new Recipe(
        UUID.randomUUID(),
        slug,
        text,
        List.of("dry", "kick"),
        text,
        LocalDate.of(2026, 10, 2),
        "parent",
        text,
        4,
        new SourceEntry.Noise(Source.Colour.WHITE, 20, 20_000, 5),
        new EnvelopeEntry.AttackHoldDecay(
            7.0, Rise.linear(0.001), 0, new EnvelopeEntry.FallEntry(0.18, Curve.EXPONENTIAL, 0.01)),
        new Strikes.Every(0.375, 3, Strikes.Restart.LEVEL),
        stage == null ? List.of() : List.of(stage),
        null,
        List.of(new Recipe.Connection(text, text)),
        List.of(
            new Recipe.Setting(
                text, text, new Position.Clock(LocalTime.of(12, 40)), "envelope.decay"),
            new Recipe.Setting(text, text, new Position.Named(text), null)),
        List.of(new Recipe.Mix(text, -6.0)),
        List.of(new Recipe.After(text, text)),
        List.of(),
        text,
        List.of(text),
        text);
  }
}
