package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;
import thudbook.settings.Settings;

/** Scenario: recipes are written in a real browser. */
class EditorScenario {
  /** Also while the drawing of another width is still there. */
  private static final String EVERY_PLOT_IS_SEEN =
      "return [...document.querySelectorAll('.answer .plot-frame-box')].every(box =>"
          + " [...box.querySelectorAll('svg.plot')].some(plot => plot.getClientRects().length > 0))";

  private static final String SAVE = "Ctrl+S";

  @TempDir static Path folder;
  private static Notebook notebook;
  private static ChromeDriver browser;
  private static final AtomicLong IDS = new AtomicLong();

  @BeforeAll
  static void open() throws IOException {
    browser = Chromium.start();
    Settings settings =
        Settings.of(
            Map.of("port", "0", "data", folder.toString()),
            Map.of(),
            Map.of("user.home", folder.toString()));
    InstantSource clock = InstantSource.fixed(Instant.parse("2026-11-02T09:30:00Z"));
    notebook = Notebook.open(settings, clock, () -> new UUID(0x4000, IDS.incrementAndGet()));
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
  void wide() {
    Chromium.resize(browser, 1280, 900);
  }

  /** Keys and texts in the order in which a person gives them: each is one step. */
  @Test
  void aWholeRecipeIsWrittenByKeyboardInUnder25Steps() throws Exception {
    IDS.set(0x8000_0000_0000_0000L);
    visit("/recipes/new");
    CharSequence[] steps = {
      "Lantern thud",
      Keys.TAB,
      "Keeper",
      Keys.TAB,
      Keys.TAB,
      Keys.TAB,
      Keys.ARROW_RIGHT,
      Keys.ARROW_RIGHT,
      Keys.ARROW_RIGHT,
      Keys.TAB,
      "A1",
      Keys.TAB,
      "1.5x",
      Keys.TAB,
      "0.8",
      Keys.TAB,
      Keys.TAB,
      Keys.TAB,
      "7 V",
      Keys.TAB,
      "1ms",
      Keys.TAB,
      "0.18 s",
      SAVE
    };
    assertThat(steps.length).isLessThan(25);
    for (CharSequence step : steps) {
      Actions hands = new Actions(browser);
      if (SAVE.contentEquals(step)) {
        hands.keyDown(Keys.CONTROL).sendKeys("s").keyUp(Keys.CONTROL).perform();
      } else {
        hands.sendKeys(step).perform();
      }
    }
    patiently().until(page -> page.getCurrentUrl().endsWith("/recipes/lantern-thud"));
    String expected;
    try (var in = EditorScenario.class.getResourceAsStream("lantern-thud.md")) {
      expected = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    assertThat(document("lantern-thud")).isEqualTo(expected);
  }

  @Test
  void everyChangeIsAnsweredAndMarkedAgainstWhatIsSaved() {
    visit("/recipes/gale-tom-high/edit");
    assertThat(browser.findElements(By.cssSelector(".was"))).isEmpty();
    WebElement decay = field("envelope.attack-hold-decay.decay");
    String saved = decay.getAttribute("value");
    type(decay, "35 ms");
    patiently().until(page -> !page.findElements(By.cssSelector(".was")).isEmpty());
    assertThat(browser.findElements(By.cssSelector("#answer .plot-line-5"))).isNotEmpty();
    type(decay, "35 furlongs");
    patiently().until(page -> !fault("envelope.attack-hold-decay.decay").isEmpty());
    assertThat(decay.getAttribute("aria-invalid")).isEqualTo("true");
    assertThat(browser.findElements(By.cssSelector("#answer figure")))
        .as("the last plot stays while a field is at fault")
        .isNotEmpty();
    type(decay, saved);
    patiently().until(page -> page.findElements(By.cssSelector(".was")).isEmpty());
    assertThat(fault("envelope.attack-hold-decay.decay")).isEmpty();
  }

  @Test
  void slidersAndArrowKeysWriteTextWithItsUnit() {
    visit("/recipes/gale-tom-high/edit");
    WebElement decay = field("envelope.attack-hold-decay.decay");
    type(decay, "100 ms");
    decay.sendKeys(Keys.ARROW_UP);
    String up = decay.getAttribute("value");
    assertThat(up).endsWith(" ms").isNotEqualTo("100 ms");
    decay.sendKeys(Keys.ARROW_DOWN);
    decay.sendKeys(Keys.ARROW_DOWN);
    assertThat(Double.parseDouble(decay.getAttribute("value").replace(" ms", ""))).isLessThan(100);
    browser.executeScript(
        "const range = arguments[0].nextElementSibling; range.value = range.max;"
            + "range.dispatchEvent(new Event('input', {bubbles: true}));",
        decay);
    assertThat(decay.getAttribute("value")).isEqualTo("10000 ms");
    type(decay, "0.2 s");
    assertThat(decay.getAttribute("value")).isEqualTo("0.2 s");
  }

  @Test
  void everyNumberOfAGateHasASliderThatFollowsIt() {
    visit("/gates/keeper-twin/edit");
    Object still =
        browser.executeScript(
            "return [...document.querySelectorAll('[data-turn]')]"
                + ".filter(field => field.value !== '' && field.nextElementSibling.disabled)"
                + ".map(field => field.name)");
    assertThat((List<?>) still).isEmpty();
  }

  @Test
  void whatWasTypedForAnotherKindStays() {
    visit("/recipes/new");
    choose("source.kind", "noise");
    type(field("source.noise.from"), "1 kHz");
    choose("source.kind", "fm");
    assertThat(field("source.noise.from").isDisplayed()).isFalse();
    type(field("source.fm.carrier"), "110 Hz");
    choose("envelope.kind", "pulse");
    type(field("envelope.pulse.length"), "4 ms");
    choose("envelope.kind", "attack-hold-decay");
    choose("source.kind", "noise");
    assertThat(field("source.noise.from").getAttribute("value")).isEqualTo("1 kHz");
    choose("envelope.kind", "pulse");
    assertThat(field("envelope.pulse.length").getAttribute("value")).isEqualTo("4 ms");
    type(field("title"), "Kinds");
    save();
    assertThat(document("kinds"))
        .contains("kind: noise")
        .contains("from: 1000 Hz")
        .doesNotContain("carrier")
        .contains("length: 4 ms");
  }

  @Test
  void aLateAnswerNeverReplacesANewerOne() throws Exception {
    try (HeldAnswer proxy = new HeldAnswer(notebook.url().getPort(), "POST /editor/live")) {
      browser.get("http://127.0.0.1:" + proxy.port() + "/recipes/gale-tom-high/edit");
      WebElement decay = field("envelope.attack-hold-decay.decay");
      type(decay, "20 ms");
      patiently().until(page -> proxy.asked() == 1);
      type(decay, "300 ms");
      patiently().until(page -> "2".equals(answered()));
      String newer = answer();
      proxy.letGo();
      // Two more turns of the browser's own tasks: the late answer has had its chance.
      browser.executeAsyncScript(
          "const done = arguments[0]; setTimeout(() => requestAnimationFrame(() => done()), 300);");
      assertThat(answered()).isEqualTo("2");
      assertThat(answer()).isEqualTo(newer);
    }
  }

  @Test
  void rowsAndStagesAreAddedAndRemovedInPlace() {
    visit("/recipes/new");
    type(field("title"), "Rows");
    browser.findElement(By.cssSelector("#part-connections summary")).click();
    type(field("connections.0.out"), "N1 noise");
    type(field("connections.0.in"), "G1 in 1");
    press("form.add", "connections");
    type(field("connections.1.out"), "E1 out");
    type(field("connections.1.in"), "G1 control 1");
    press("form.add", "connections");
    type(field("connections.2.out"), "wrong");
    press("form.remove", "connections.0");
    patiently().until(page -> page.findElements(By.id("f-connections.2.out")).isEmpty());
    press("form.remove", "connections.1");
    patiently().until(page -> page.findElements(By.id("f-connections.1.out")).isEmpty());
    browser.findElement(By.cssSelector("#part-stages summary")).click();
    press("form.add", "stages");
    field("stages.1.gate").sendKeys("Keeper");
    assertThat(field("stages.1.channel").getAttribute("value")).isEqualTo("quick");
    save();
    assertThat(document("rows"))
        .contains("connections:\n  - {out: E1 out, in: G1 control 1}\n---")
        .contains("- gate: keeper-twin\n    channel: quick");
  }

  @Test
  void theSecondOfTwoTabsToSaveChoosesFieldByField() throws IOException {
    visit("/recipes/heartbeat/edit");
    String first = browser.getWindowHandle();
    type(field("title"), "Heartbeat, closer");
    browser.switchTo().newWindow(WindowType.TAB);
    Chromium.resize(browser, 1280, 900);
    visit("/recipes/heartbeat/edit");
    field("heard").isEnabled();
    browser.executeScript("document.getElementById('part-about').open = true");
    type(field("heard"), "two soft thuds");
    type(field("title"), "Heartbeat, mended");
    save();
    browser.close();
    browser.switchTo().window(first);
    browser.executeScript("document.getElementById('part-about').open = true");
    type(field("room"), "in the hall");
    browser.findElement(By.id("save")).click();
    patiently()
        .until(page -> page.findElement(By.tagName("h1")).getText().startsWith("Two versions"));
    look("conflict");
    assertThat(chosen("form.take.title")).isEqualTo("yours");
    assertThat(chosen("form.take.heard")).isEqualTo("theirs");
    assertThat(chosen("form.take.room")).isEqualTo("yours");
    browser
        .findElement(By.cssSelector("[name='form.take.title'][value='theirs']"))
        .sendKeys(Keys.SPACE);
    save();
    assertThat(document("heartbeat"))
        .contains("title: \"Heartbeat, mended\"")
        .contains("heard: two soft thuds")
        .contains("room: in the hall");
  }

  @Test
  void theStatesOfAFormAreAccessibleInEveryForm() throws IOException {
    visit("/recipes/gale-tom-high/edit");
    type(field("envelope.attack-hold-decay.decay"), "60 ms");
    browser.executeScript(
        "for (const part of document.querySelectorAll('details.part, details.more')) {"
            + " part.open = true; }");
    patiently().until(page -> !page.findElements(By.cssSelector(".was")).isEmpty());
    look("editor-changed");
    field("connections.0.in").clear();
    type(field("envelope.attack-hold-decay.peak"), "7,5 V");
    browser.findElement(By.id("save")).click();
    patiently().until(page -> !page.findElements(By.id("faults")).isEmpty());
    assertThat(browser.switchTo().activeElement().getAttribute("id"))
        .as("what is wrong is read first")
        .isEqualTo("faults");
    look("editor-refused");
    browser.findElement(By.cssSelector("#faults a")).click();
    assertThat(browser.getCurrentUrl()).contains("#f-");
  }

  /** Looks at the page as it is: wide, dark, narrow and on paper. */
  private static void look(String name) throws IOException {
    for (String scheme : List.of("light", "dark")) {
      Chromium.scheme(browser, scheme);
      assertThat(Inspection.faults(browser)).as("%s, %s", name, scheme).isEmpty();
      Inspection.screenshot(browser, name + "-wide-" + scheme);
    }
    Chromium.scheme(browser, "light");
    Chromium.resize(browser, 390, 800);
    assertThat(browser.executeScript(EVERY_PLOT_IS_SEEN)).as(name + " on a phone").isEqualTo(true);
    assertThat(browser.executeScript("return document.documentElement.scrollWidth"))
        .as("width of %s on a phone", name)
        .isEqualTo(390L);
    Inspection.screenshot(browser, name + "-narrow");
    Chromium.resize(browser, 1280, 900);
    Inspection.print(browser, name);
  }

  private static String chosen(String name) {
    return browser
        .findElement(By.cssSelector("[name='" + name + "']:checked"))
        .getAttribute("value");
  }

  @Test
  void aVariationStartsFromEverythingAndKnowsItsParent() {
    visit("/recipes/slack-tide-kick");
    Chromium.follow(browser, browser.findElement(By.linkText("Write a variation")));
    assertThat(browser.findElement(By.cssSelector(".lineage")).getText())
        .isEqualTo("A variation of Slack-tide kick.");
    type(field("title"), "Neap-tide kick");
    type(field("source.fm.index"), "2.4");
    patiently()
        .until(page -> page.findElement(By.id("answer")).getText().contains("in Slack-tide kick"));
    save();
    assertThat(document("neap-tide-kick"))
        .contains("derivedFrom: slack-tide-kick")
        .contains("index: 2.4")
        .contains("carrier: 55 Hz");
  }

  private static void visit(String address) {
    browser.get(notebook.url().resolve(address).toString());
  }

  private static WebElement field(String name) {
    return browser.findElement(By.id("f-" + name));
  }

  private static void type(WebElement field, String text) {
    field.sendKeys(Keys.chord(Keys.CONTROL, "a"), text);
  }

  private static void choose(String kind, String value) {
    browser
        .findElement(By.cssSelector("[name='" + kind + "'][value='" + value + "']"))
        .sendKeys(Keys.SPACE);
  }

  private static void press(String name, String value) {
    int before = browser.findElements(By.cssSelector(".form-rows tbody tr, [data-stage]")).size();
    browser.findElement(By.cssSelector("[name='" + name + "'][value='" + value + "']")).click();
    patiently()
        .until(
            page ->
                page.findElements(By.cssSelector(".form-rows tbody tr, [data-stage]")).size()
                    != before);
  }

  private static void save() {
    String before = browser.getCurrentUrl();
    browser.findElement(By.id("save")).click();
    patiently()
        .until(
            page ->
                !page.getCurrentUrl().equals(before)
                    && page.findElements(By.cssSelector("article.recipe")).size() == 1);
  }

  private static String fault(String name) {
    return browser.findElement(By.cssSelector("[data-fault-of='" + name + "']")).getText();
  }

  private static String answered() {
    return browser.findElement(By.id("answer")).getAttribute("data-answered");
  }

  private static String answer() {
    return browser.findElement(By.cssSelector(".answer-numbers")).getText();
  }

  private static String document(String slug) {
    try {
      return Exchange.get(notebook.url().getPort(), "/api/recipes/" + slug + "/document").text();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static WebDriverWait patiently() {
    return Patience.with(browser);
  }
}
