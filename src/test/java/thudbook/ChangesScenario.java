package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.NoSuchElementException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import thudbook.settings.Settings;

/** Scenario: going back, undo, lineage and gates in a real browser. */
class ChangesScenario {
  @TempDir static Path folder;
  private static Notebook notebook;
  private static ChromeDriver browser;

  @BeforeAll
  static void open() throws IOException {
    browser = Chromium.start();
    Settings settings =
        Settings.of(
            Map.of("port", "0", "data", folder.toString()),
            Map.of(),
            Map.of("user.home", folder.toString()));
    InstantSource clock = InstantSource.fixed(Instant.parse("2026-11-02T09:30:00Z"));
    notebook = Notebook.open(settings, clock, UUID::randomUUID);
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

  @Test
  void aRecipeIsChangedComparedWithWhatItWasAndBroughtBack() throws IOException {
    save("/recipes/gale-tom-high/edit", "envelope.attack-hold-decay.decay", "90 ms");
    save("/recipes/gale-tom-high/edit", "heard", "tighter than ever");
    visit("/recipes/gale-tom-high/history");
    assertThat(browser.findElement(By.cssSelector(".revisions")).getText())
        .contains("→ 90 ms")
        .contains("Predicted:");
    lookAt("history");
    click(By.xpath("//li[.//h2[contains(., 'Revision 1')]]//a[contains(., 'Compare with today')]"));
    sees("h1", "Compare");
    sees(".differences", "90 ms");
    browser.navigate().back();
    click(By.xpath("//li[.//h2[contains(., 'Revision 1')]]//button"));
    sees("h1", "Went back to revision 1");
    lookAt("change-restored");
    click(By.xpath("//button[. = 'Undo']"));
    sees("h1", "Undid: went back to revision 1");
    visit("/recipes/gale-tom-high");
    sees(".blocks", "90 ms");
  }

  @Test
  void whatIsThrownAwayIsTakenBackAtOnceOrFromTheBin() throws IOException {
    visit("/recipes/oil-can");
    click(By.xpath("//button[. = 'Throw into the bin']"));
    sees("h1", "Threw Oil can into the bin");
    visit("/bin");
    sees("main", "Oil can");
    lookAt("bin-filled");
    click(By.linkText("Oil can"));
    lookAt("recipe-in-bin");
    click(By.xpath("//button[. = 'Take it out']"));
    sees("h1", "Took Oil can out of the bin");
    click(By.xpath("//button[. = 'Undo']"));
    visit("/recipes/oil-can");
    sees(".notice", "This lies in the bin");
    visit("/changes");
    lookAt("changes-many");
  }

  @Test
  void parentsAndVariationsLeadToEachOther() {
    visit("/recipes/slack-tide-kick");
    click(By.linkText("Compare with its parent"));
    assertThat(browser.findElements(By.cssSelector("figure .plot-line-1"))).isNotEmpty();
    click(By.linkText("Slack-tide kick"));
    click(By.linkText("Spring-tide kick"));
    sees(".variations", "Slack-tide kick");
    click(By.linkText("Compare…"));
    WebElement more = browser.findElement(By.id("of"));
    more.sendKeys("shingle hat", Keys.ENTER);
    patiently().until(page -> page.getTitle().contains("Shingle hat"));
    assertThat(browser.findElements(By.cssSelector(".compared li"))).hasSize(2);
  }

  @Test
  void aGateIsDrawnWhileItIsTypedGuardedAndItsRecipesFollow() throws IOException {
    visit("/gates/keeper-twin/edit");
    String before = browser.findElement(By.id("answer")).getText();
    type("channels.0.transfer", "1.2 V, 0\n4.5 V, 1");
    patiently().until(page -> !text("#answer").equals(before));
    sees("#answer", "Hears nothing below 1.2 V");
    type("channels.0.opening", "soon");
    patiently().until(page -> !text("[data-fault-of='channels.0.opening']").isEmpty());
    assertThat(browser.findElements(By.cssSelector("#answer figure"))).isNotEmpty();
    type("channels.0.opening", "1.5 ms");

    click(By.xpath("//button[contains(., 'Remove channel quick')]"));
    sees("#guard", "is in use");
    sees("#guard", "Slack-tide kick");
    assertThat(browser.findElement(field("channels.0.opening")).getAttribute("value"))
        .isEqualTo("1.5 ms");
    lookAt("gate-guarded");

    click(By.id("save"));
    patiently().until(page -> page.getCurrentUrl().contains("/changes/"));
    sees("#progress", "predicted again.");
    patiently().until(page -> page.findElements(By.cssSelector("#moved .waiting")).isEmpty());
    sees("#moved", "Slack-tide kick");
    sees("#moved", "→");
    lookAt("change-of-gate");
  }

  @Test
  void aDraftOfAGateOutlivesItsTab() {
    visit("/gates/new");
    type("title", "Lighthouse door");
    patiently().until(page -> text("#kept").contains("kept"));
    visit("/gates/new");
    sees(".drafts", "Lighthouse door");
    click(By.partialLinkText("Go on"));
    assertThat(browser.findElement(field("title")).getAttribute("value"))
        .isEqualTo("Lighthouse door");
  }

  /** Wide, narrow, dark and printed, each without a fault that a checker finds. */
  private static void lookAt(String name) throws IOException {
    for (String scheme : List.of("light", "dark")) {
      Chromium.scheme(browser, scheme);
      assertThat(Inspection.faults(browser)).as(name + ", " + scheme).isEmpty();
      Inspection.screenshot(browser, name + "-wide-" + scheme);
    }
    Chromium.scheme(browser, "light");
    Inspection.print(browser, name);
    Chromium.resize(browser, 390, 800);
    assertThat(browser.executeScript("return document.documentElement.scrollWidth"))
        .as("width of the page on a phone")
        .isEqualTo(390L);
    assertThat(Inspection.faults(browser)).as(name + ", narrow").isEmpty();
    Inspection.screenshot(browser, name + "-narrow");
    Chromium.resize(browser, 1280, 900);
  }

  private static void save(String address, String field, String value) {
    visit(address);
    WebElement element = browser.findElement(field(field));
    // Fields that are folded away are as good as any, and are filled without unfolding them.
    browser.executeScript("arguments[0].value = arguments[1]", element, value);
    browser.executeScript("document.getElementById('save').click()");
    patiently().until(page -> !page.getCurrentUrl().contains("/edit"));
  }

  private static void type(String field, String value) {
    WebElement element = browser.findElement(field(field));
    element.sendKeys(Keys.chord(Keys.CONTROL, "a"), value);
  }

  private static By field(String name) {
    return By.id("f-" + name);
  }

  private static void click(By what) {
    WebElement element = browser.findElement(what);
    browser.executeScript("arguments[0].scrollIntoView({block: 'center'})", element);
    element.click();
  }

  /** Waits for words: a page may come only after a form has been kept and sent. */
  private static void sees(String selector, String words) {
    patiently()
        .ignoring(NoSuchElementException.class)
        .withMessage(selector + " with " + words)
        .until(page -> text(selector).contains(words));
  }

  private static String text(String selector) {
    return browser.findElement(By.cssSelector(selector)).getText();
  }

  private static void visit(String address) {
    browser.get(notebook.url().resolve(address).toString());
  }

  private static WebDriverWait patiently() {
    return Patience.with(browser);
  }
}
