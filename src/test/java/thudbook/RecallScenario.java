package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chromium.ChromiumNetworkConditions;
import thudbook.documents.Documents;
import thudbook.quantities.Position;
import thudbook.recipes.Recipe;
import thudbook.settings.Settings;

/** Scenario: planning a session, its sheets on paper, and ticking off at the rack. */
class RecallScenario {
  private static final Path SCREENSHOTS = Path.of("target/screenshots");
  private static final double[] A4 = {8.27, 11.69};
  private static final double[] LETTER = {8.5, 11};

  @TempDir static Path folder;
  private static Notebook notebook;
  private static ChromeDriver browser;

  @BeforeAll
  static void open() throws Exception {
    browser = Chromium.start();
    Settings settings =
        Settings.of(
            Map.of(
                "port",
                "0",
                "data",
                folder.resolve("data").toString(),
                "base-url",
                "https://rack.example/"),
            Map.of(),
            Map.of("user.home", folder.toString()));
    InstantSource clock = InstantSource.fixed(Instant.parse("2026-11-02T09:30:00Z"));
    notebook = Notebook.open(settings, clock, UUID::randomUUID);
    Files.createDirectories(SCREENSHOTS);
  }

  @AfterAll
  static void close() {
    if (browser != null) {
      browser.quit();
    }
    if (notebook != null) {
      notebook.close();
    }
  }

  @BeforeEach
  void wideAndLight() {
    Chromium.resize(browser, 1280, 900);
    Chromium.scheme(browser, "light");
  }

  static Stream<String> slugs() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("sample-library/recipes"))) {
      return files
          .map(file -> file.getFileName().toString().replace(".md", ""))
          .sorted()
          .toList()
          .stream();
    }
  }

  private static Recipe recipe(String slug) throws IOException {
    byte[] text = Files.readAllBytes(Path.of("sample-library/recipes", slug + ".md"));
    return ((Recipe) Documents.read(text, Samples.NONE_MISSING).thing());
  }

  /** Everything that a person needs is recovered from the text of the printed sheet alone. */
  @ParameterizedTest
  @MethodSource("slugs")
  void aPrintedSheetIsComplete(String slug) throws IOException {
    Recipe recipe = recipe(slug);
    visit("/recipes/" + slug + "/recall");
    for (double[] paper : List.of(A4, LETTER)) {
      PrintedSheet sheet = PrintedSheet.of(browser, paper[0], paper[1]);
      String name = "recall-" + slug + (paper == A4 ? "-a4" : "-letter");
      Files.write(SCREENSHOTS.resolve(name + ".pdf"), sheet.bytes());
      assertThat(sheet.connections())
          .isEqualTo(recipe.connections().stream().map(c -> c.out() + " > " + c.in()).toList());
      assertThat(sheet.dials("Switches", "Knobs")).isEqualTo(dials(recipe, true));
      assertThat(sheet.dials("Knobs", "Tune")).isEqualTo(dials(recipe, false));
      assertThat(sheet.code()).isEqualTo("https://rack.example/recipes/" + slug + "/recall");
      assertThat(sheet.collisions()).isEmpty();
      assertThat(sheet.lines()).contains("1 Power and warm-up", "2 Monitors down", "9 Monitors up");
    }
  }

  private static List<String> dials(Recipe recipe, boolean switches) {
    return recipe.settings().stream()
        .filter(s -> s.at() instanceof Position.Named == switches)
        .map(s -> s.module() + " " + s.control() + " at " + read(s.at()))
        .toList();
  }

  /** Degrees, shares and values as a page writes them; the samples have clocks and names. */
  private static String read(Position at) {
    return at.text().replace(" deg", "°");
  }

  @Test
  void allSheetsOfASessionArePrinted() throws IOException {
    visit("/sessions/act-two-the-storm/sheets");
    for (double[] paper : List.of(A4, LETTER)) {
      PrintedSheet sheets = PrintedSheet.of(browser, paper[0], paper[1]);
      Files.write(
          SCREENSHOTS.resolve("session-sheets-" + (paper == A4 ? "a4" : "letter") + ".pdf"),
          sheets.bytes());
      assertThat(sheets.collisions()).isEmpty();
      assertThat(sheets.connections()).hasSizeGreaterThan(30);
    }
    inAllForms("session-sheets");
  }

  @Test
  void aSessionIsPlannedFromTheListPutInOrderAndReadEverywhere() throws IOException {
    visit("/?tag=kick");
    Chromium.follow(browser, browser.findElement(By.linkText("Plan a session from these")));
    List<WebElement> rows = browser.findElements(By.cssSelector("input[name$='.recipe']"));
    assertThat(rows.size()).isGreaterThan(3);
    inAllForms("session-form");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".session-form button.main")));
    assertThat(text(".fault-summary")).contains("title: missing");
    browser.findElement(By.id("title")).sendKeys("Kicks of the evening");
    browser.findElement(By.id("date")).sendKeys("2026-11-05");
    Chromium.follow(browser, browser.findElement(By.cssSelector("button[value='down-0']")));
    assertThat(browser.findElement(By.id("title")).getAttribute("value"))
        .isEqualTo("Kicks of the evening");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".session-form button.main")));
    assertThat(browser.getCurrentUrl()).endsWith("/sessions/kicks-of-the-evening");
    inAllForms("session-planned");
  }

  @Test
  void aHalfWrittenPlanSurvivesAClosedPageAndTheSecondToSaveSeesWhatTheFirstDid() {
    visit("/sessions/first-run-through/edit");
    browser.findElement(By.id("title")).sendKeys(", with the lights");
    visit("/sessions");
    visit("/sessions/first-run-through/edit");
    assertThat(browser.findElement(By.id("title")).getAttribute("value"))
        .isEqualTo("First run-through, with the lights");
    assertThat(text(".recall-status")).contains("is back");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".session-form button.main")));
    assertThat(text("h1")).isEqualTo("First run-through, with the lights");
    visit("/sessions/first-run-through/edit");
    browser.executeScript("document.querySelector('input[name=version]').value = '1'");
    browser.findElement(By.id("by")).clear();
    browser.findElement(By.id("by")).sendKeys("Bram");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".session-form button.main")));
    assertThat(text(".fault-summary")).contains("Somebody saved this session").contains("Bram");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".session-form button.main")));
    assertThat(text("main")).contains("Bram");
    visit("/changes");
    Chromium.follow(browser, browser.findElement(By.cssSelector("main a[href^='/changes/']")));
    Chromium.follow(browser, browser.findElement(By.cssSelector("form.undo button")));
    visit("/sessions/first-run-through/edit");
    browser.findElement(By.id("title")).clear();
    browser.findElement(By.id("title")).sendKeys("First run-through");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".session-form button.main")));
  }

  @Test
  void clashesAreToldAndABetterOrderIsTakenAndUndone() throws IOException {
    visit("/sessions/act-two-the-storm");
    assertThat(text(".clashes"))
        .contains("At once, in the layer storm")
        .contains("Rain on the lens and Spring-tide kick both want the channel Keeper twin, quick")
        .contains("Play Spring-tide kick through")
        .contains("Lens tick stays patched while Clockwork is played")
        .contains("Take the order below");
    inAllForms("session-clashes");
    String before = text(".session-steps");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".better button")));
    assertThat(text("main")).containsIgnoringCase("took the order with the fewest moves");
    visit("/sessions/act-two-the-storm");
    assertThat(browser.findElements(By.cssSelector(".better"))).isEmpty();
    assertThat(text(".clashes")).doesNotContain("Lens tick");
    visit("/changes");
    Chromium.follow(browser, browser.findElement(By.partialLinkText("ook the order")));
    Chromium.follow(browser, browser.findElement(By.cssSelector("form.undo button")));
    visit("/sessions/act-two-the-storm");
    assertThat(text(".session-steps")).isEqualTo(before);
  }

  @Test
  void tickedOffAtTheRackWithTheNetworkCutAndRestoredAndFinishedWithANewRevision()
      throws IOException {
    Chromium.resize(browser, 390, 844);
    visit("/sessions/first-run-through");
    Chromium.follow(
        browser, browser.findElement(By.cssSelector(".item-deeds a[href*='/slack-tide-kick/']")));
    assertThat(browser.executeScript("return document.documentElement.scrollWidth"))
        .isEqualTo(390L);
    List<WebElement> ticks = browser.findElements(By.name("tick"));
    ticks.get(0).click();
    waitFor("return document.querySelector('.recall-status').textContent.startsWith('All')");
    cut(true);
    ticks.get(1).click();
    ticks.get(2).click();
    WebElement decay = browser.findElement(By.name("set.s:E1 / decay"));
    decay.sendKeys("12:05");
    decay.sendKeys(Keys.TAB);
    waitFor("return document.querySelector('form[data-waits]') !== null");
    assertThat(text(".recall-status")).contains("kept on this device");
    Inspection.screenshot(browser, "recall-cut-390");
    cut(false);
    waitFor("return document.querySelector('.recall-status').textContent.startsWith('All')");
    browser.navigate().refresh();
    waitForPage();
    assertThat(browser.findElements(By.cssSelector("input[name='tick']:checked"))).hasSize(3);
    assertThat(browser.findElement(By.name("set.s:E1 / decay")).getAttribute("value"))
        .isEqualTo("12:05");
    assertThat(Inspection.faults(browser)).isEmpty();
    Inspection.screenshot(browser, "recall-390");
    browser.findElement(By.name("save")).click();
    Chromium.follow(browser, browser.findElement(By.cssSelector(".finish button")));
    assertThat(text("main")).containsIgnoringCase("set up again").contains("Slack-tide kick");
    visit("/recipes/slack-tide-kick");
    assertThat(text("main")).contains("12:05").contains("2 November 2026, for First run-through");
    visit("/sessions/first-run-through");
    assertThat(text(".session-steps")).contains("Last set up 2 November 2026");
    visit("/recipes/slack-tide-kick/recall?session=first-run-through");
    assertThat(browser.findElements(By.cssSelector("input[name='tick']:checked"))).isEmpty();
  }

  @Test
  void whatIsKeptOnTheDeviceComesBackEvenIfItWasNeverSent() throws IOException {
    visit("/recipes/bell-buoy/recall");
    cut(true);
    browser.findElements(By.name("tick")).get(0).click();
    waitFor("return document.querySelector('form[data-waits]') !== null");
    String id =
        browser.findElement(By.cssSelector("form[data-recall]")).getAttribute("data-recall");
    assertThat(browser.executeScript("return localStorage.getItem('recall:" + id + "')"))
        .asString()
        .contains("c:");
    cut(false);
    waitFor("return document.querySelector('.recall-status').textContent.startsWith('All')");
  }

  @Test
  void aKnobThatIsNoPositionIsToldAndNothingTickedIsLost() {
    visit("/recipes/foghorn/recall");
    browser.findElements(By.name("tick")).get(1).click();
    WebElement field = browser.findElements(By.cssSelector("input[name^='set.']")).get(0);
    field.sendKeys("17:00");
    browser.findElement(By.name("save")).click();
    Chromium.follow(browser, browser.findElement(By.cssSelector(".finish button")));
    assertThat(text(".notice")).contains("found 17:00, expected a position such as 10:30");
    assertThat(browser.findElements(By.cssSelector("input[name='tick']:checked"))).hasSize(1);
  }

  @Test
  void theNumberOfASheetLeadsBackToIt() throws IOException {
    visit("/sessions");
    inAllForms("sessions");
    browser.findElement(By.id("number")).sendKeys("5354c0");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".by-number button")));
    assertThat(browser.getCurrentUrl()).endsWith("/recipes/slack-tide-kick/recall");
    inAllForms("recall");
  }

  private static void cut(boolean off) {
    ChromiumNetworkConditions conditions = new ChromiumNetworkConditions();
    conditions.setOffline(off);
    conditions.setLatency(Duration.ZERO);
    conditions.setDownloadThroughput(-1);
    conditions.setUploadThroughput(-1);
    browser.setNetworkConditions(conditions);
  }

  private static void visit(String address) {
    browser.get(notebook.url().resolve(address).toString());
  }

  private static void waitForPage() {
    waitFor("return !window.leaving && document.readyState === 'complete'");
  }

  private static void waitFor(String script) {
    Patience.with(browser).until(page -> Boolean.TRUE.equals(browser.executeScript(script)));
  }

  private static String text(String part) {
    return browser.findElement(By.cssSelector(part)).getText();
  }

  /** Looks at a page as on a desk, in the dark and on a phone, and takes pictures of it. */
  private static void inAllForms(String name) throws IOException {
    for (String scheme : List.of("dark", "light")) {
      Chromium.scheme(browser, scheme);
      assertThat(Inspection.faults(browser)).as(name + " " + scheme).isEmpty();
      Inspection.screenshot(browser, name + "-wide-" + scheme);
    }
    for (int width : new int[] {320, 390}) {
      Chromium.resize(browser, width, 800);
      assertThat(browser.executeScript("return document.documentElement.scrollWidth"))
          .as("width of %s on a screen of %d", name, width)
          .isEqualTo((long) width);
    }
    assertThat(Inspection.faults(browser)).as(name + " narrow").isEmpty();
    Inspection.screenshot(browser, name + "-narrow");
    Chromium.resize(browser, 1280, 900);
  }
}
