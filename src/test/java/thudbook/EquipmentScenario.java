package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import thudbook.settings.Settings;

/** Scenario: modules are written, changed and used in a real browser, on a phone. */
class EquipmentScenario {
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
    AtomicLong ids = new AtomicLong();
    notebook = Notebook.open(settings, clock, () -> new UUID(0x4000, ids.incrementAndGet()));
    Chromium.resize(browser, 390, 844);
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

  @Test
  void aModuleIsWrittenOnAPhoneRefusedMendedAndTakenBack() throws IOException {
    visit("/equipment/new");
    type("label", "E9");
    type("title", "Spare envelope");
    new Select(field("kind")).selectByValue("envelope");
    type("controls.0.name", "decay");
    new Select(field("controls.0.unit")).selectByValue("ms");
    new Select(field("controls.0.taper")).selectByValue("exponential");
    type("controls.0.from", "2 V");
    type("controls.0.to", "4 s");
    press("add-controls");
    assertThat(value("controls.0.from")).isEqualTo("2 V");
    type("controls.1.name", "range");
    type("controls.1.positions", "short, long");
    type("ports.0.name", "out");
    new Select(field("ports.0.direction")).selectByValue("out");
    press("save");
    assertThat(field("controls.0.from").getAttribute("aria-invalid")).isEqualTo("true");
    assertThat(browser.findElement(By.className("fault-summary")).getText())
        .contains("control 1, from")
        .contains("expected a time");
    assertThat(value("controls.1.positions")).isEqualTo("short, long");
    assertThat(Inspection.faults(browser)).isEmpty();
    Inspection.screenshot(browser, "equipment-form-390");
    field("controls.0.from").clear();
    type("controls.0.from", "2 ms");
    press("save");
    assertThat(browser.getCurrentUrl()).endsWith("/equipment/e9-spare-envelope");
    assertThat(text()).contains("2 ms").contains("89.4 ms").contains("4 s").contains("short, long");
    fitsThePhone();
    Chromium.follow(browser, browser.findElement(By.linkText("Edit")));
    field("controls.0.to").clear();
    type("controls.0.to", "8 s");
    press("save");
    assertThat(text()).contains("8 s");
    Chromium.follow(browser, browser.findElement(By.linkText("History")));
    assertThat(text()).contains("Revision 2").contains("wrote down the module E9");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".revision-deeds button")));
    assertThat(text()).contains("Went back to revision 1");
    visit("/equipment/e9-spare-envelope");
    assertThat(text()).contains("4 s");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".deeds-of-page button")));
    visit("/bin");
    assertThat(text()).contains("E9 Spare envelope");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".binned button")));
    visit("/equipment");
    assertThat(text()).contains("E9 Spare envelope");
  }

  @Test
  void aLabelThatIsTakenIsToldAtItsField() {
    visit("/equipment/new");
    type("label", "e1");
    type("title", "Another envelope");
    press("save");
    assertThat(browser.findElement(By.className("fault-summary")).getText())
        .contains("The label e1 is taken by Attack-hold-decay envelope");
  }

  @Test
  void whatIsWrittenOfEverySampleModuleComesBackFromItsForm() {
    for (String slug : List.of("o1-oscillator", "m1-mixer", "g1-keeper-twin", "desk")) {
      visit("/equipment/" + slug + "/edit");
      press("save");
      assertThat(browser.getCurrentUrl()).endsWith("/equipment/" + slug);
      visit("/equipment/" + slug + "/history");
      assertThat(browser.findElements(By.className("revision"))).as(slug).hasSize(1);
    }
  }

  @Test
  void aRecipeTellsWhatItsKnobsComeTo() throws IOException {
    visit("/recipes/slack-tide-kick");
    Patience.with(browser)
        .until(page -> page.findElements(By.cssSelector("a[data-touchy]")).isEmpty());
    String settings =
        browser.findElement(By.className("settings")).getText().replace('\u00a0', ' ');
    assertThat(settings).contains("Touchy: A1 gain 1").contains("179 ms").contains("156 ms");
    assertThat(browser.findElements(By.className("patch-faults"))).isEmpty();
    assertThat(Inspection.faults(browser)).isEmpty();
    fitsThePhone();
    visit("/recipes/keepers-glass");
    assertThat(browser.findElement(By.className("patch-faults")).getText())
        .contains("G1 quick is never opened: nothing goes into G1 control 1");
  }

  @Test
  void knobsAndValuesAreBroughtIntoStepInTheEditor() throws IOException {
    visit("/recipes/slack-tide-kick/edit");
    WebElement at = byName("settings.6.at");
    assertThat(byName("settings.6.for").getAttribute("value")).isEqualTo("envelope.decay");
    reveal(at);
    at.clear();
    at.sendKeys("2:00");
    Chromium.follow(
        browser,
        browser.findElement(By.cssSelector("button[name='form.step-with'][value='knobs']")));
    // 2:00 is 420 of 600 minutes: 2 ms · 4000^0.7 = 0.6645 s.
    becomes("envelope.attack-hold-decay.decay", "664 ms");
    WebElement decay = byName("envelope.attack-hold-decay.decay");
    decay.clear();
    decay.sendKeys("180 ms");
    reveal(byName("settings.6.at"));
    Chromium.follow(
        browser,
        browser.findElement(By.cssSelector("button[name='form.step-with'][value='values']")));
    becomes("settings.6.at", "12:25");
    assertThat(browser.findElement(By.id("answer-patch")).getAttribute("textContent"))
        .contains("E1 decay: 12:25 is 179\u00a0ms; the sound’s value stands at 12:25");
  }

  private static WebElement byName(String name) {
    return browser.findElement(By.name(name));
  }

  private static void becomes(String name, String value) {
    Patience.with(browser).until(page -> value.equals(byName(name).getAttribute("value")));
  }

  /** Opens the part of the form that a field stands in. */
  private static void reveal(WebElement field) {
    browser.executeScript("arguments[0].closest('details').open = true;", field);
  }

  @Test
  void everyPageIsAccessibleAndTubesAreCautioned() throws IOException {
    for (String page :
        List.of(
            "/equipment",
            "/equipment/o1-oscillator",
            "/equipment/o1-oscillator/edit",
            "/equipment/g3-glass-lantern",
            "/help/equipment")) {
      visit(page);
      assertThat(Inspection.faults(browser)).as(page).isEmpty();
      fitsThePhone();
    }
    visit("/equipment/g3-glass-lantern");
    assertThat(text()).contains("High voltage and hot glass").contains("local electrical codes");
  }

  private static void fitsThePhone() {
    long wide =
        ((Number) browser.executeScript("return document.documentElement.scrollWidth")).longValue();
    assertThat(wide).isLessThanOrEqualTo(390);
  }

  private static void visit(String path) {
    browser.get(notebook.url().resolve(path).toString());
  }

  private static WebElement field(String name) {
    return browser.findElement(By.id(name));
  }

  private static String value(String name) {
    return field(name).getAttribute("value");
  }

  private static void type(String name, String text) {
    field(name).sendKeys(text);
  }

  private static void press(String deed) {
    List<WebElement> buttons =
        browser.findElements(By.cssSelector("button[name='form.do'][value='" + deed + "']"));
    Chromium.follow(browser, buttons.get(buttons.size() - 1));
  }

  private static String text() {
    return browser.findElement(By.tagName("main")).getText().replace('\u00a0', ' ');
  }
}
