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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;
import thudbook.settings.Settings;

/** Scenario: the notebook in a real browser, over a real database with the sample library. */
class BrowserScenario {
  @TempDir static Path folder;
  private static Notebook notebook;
  private static ChromeDriver browser;

  @BeforeAll
  static void open() throws Exception {
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
  static void close() throws Exception {
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
  void fromTheListToARecipeItsPlotItsGateAndTheHelpByKeyboard() {
    visit("/");
    WebElement link = browser.findElement(By.linkText("Slack-tide kick"));
    Chromium.followByKey(browser, link);
    assertThat(heading()).isEqualTo("Slack-tide kick");

    WebElement plot = browser.findElement(By.cssSelector("[role=slider]"));
    plot.sendKeys(Keys.HOME);
    String first = plot.getAttribute("aria-valuetext");
    for (int i = 0; i < 40; i++) {
      plot.sendKeys(Keys.ARROW_RIGHT);
    }
    assertThat(plot.getAttribute("aria-valuetext"))
        .as("the cursor moves along the time axis")
        .contains("ms")
        .isNotEqualTo(first);
    assertThat(browser.findElement(By.cssSelector(".plot-readout")).getText()).contains("dB");

    Chromium.followByKey(browser, browser.findElement(By.partialLinkText("Keeper twin")));
    assertThat(heading()).isEqualTo("Keeper twin");
    Chromium.followByKey(browser, browser.findElement(By.linkText("Help")));
    assertThat(heading()).isEqualTo("Help");
    Chromium.followByKey(browser, browser.findElement(By.linkText("What a low-pass gate does")));
    assertThat(heading()).isEqualTo("What a low-pass gate does");
  }

  @Test
  void aQuestionMarkShowsTheKeysAndEscapeHidesThem() {
    visit("/gates");
    WebElement dialog = browser.findElement(By.id("keys-dialog"));
    assertThat(dialog.isDisplayed()).isFalse();
    new Actions(browser).sendKeys("?").perform();
    assertThat(dialog.isDisplayed()).isTrue();
    new Actions(browser).sendKeys(Keys.ESCAPE).perform();
    assertThat(dialog.isDisplayed()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/?order=title&tag=kick",
        "/recipes/slack-tide-kick",
        "/recipes/lamp-chain",
        "/recipes/thunder-roll",
        "/recipes/parcel-from-the-boat",
        "/recipes/new",
        "/recipes/slack-tide-kick/edit",
        "/recipes/hull-boom/edit",
        "/recipes/bell-buoy",
        "/recipes/slack-tide-kick/history",
        "/recipes/slack-tide-kick/history/1",
        "/compare?of=slack-tide-kick,spring-tide-kick",
        "/compare?of=slack-tide-kick,shingle-hat,foghorn,bell-buoy,glass-gong,hull-boom",
        "/bin",
        "/changes",
        "/changes/1",
        "/gates",
        "/gates/new",
        "/gates/keeper-twin",
        "/gates/keeper-twin/edit",
        "/gates/keeper-twin/history",
        "/gates/glass-lantern",
        "/help",
        "/help/model",
        "/help/numbers",
        "/help/writing",
        "/help/cautions",
        "/help/file-format",
        "/help/history",
        "/help/gates",
        "/help/share",
        "/help/sessions",
        "/sessions",
        "/sessions/new",
        "/sessions/act-two-the-storm",
        "/sessions/act-two-the-storm/edit",
        "/recipes/slack-tide-kick/recall",
        "/recipes/parcel-from-the-boat/recall",
        "/help/keys",
        "/share",
        "/recipes/slack-tide-kick/text",
        "/help/errors/refused-values",
        "/nowhere"
      })
  void everyScreenIsAccessibleFitsAPhoneAndBreaksNoPolicy(String address) throws IOException {
    String name = address.equals("/") ? "list" : address.substring(1).replaceAll("[^a-z]+", "-");
    for (String scheme : List.of("light", "dark")) {
      Chromium.scheme(browser, scheme);
      Chromium.resize(browser, 1280, 900);
      visit(address);
      assertThat(Inspection.faults(browser)).as(scheme).isEmpty();
      Inspection.screenshot(browser, name + "-wide-" + scheme);
    }
    Chromium.scheme(browser, "light");
    for (int width : new int[] {390, 320}) {
      Chromium.resize(browser, width, 800);
      visit(address);
      assertThat(browser.executeScript("return document.documentElement.scrollWidth"))
          .as("width of the page on a screen of " + width)
          .isEqualTo((long) width);
    }
    Chromium.resize(browser, 390, 800);
    assertThat(Inspection.faults(browser)).as("narrow").isEmpty();
    Inspection.screenshot(browser, name + "-narrow");
    assertThat(
            browser.manage().logs().get("browser").getAll().stream()
                .map(entry -> entry.getMessage())
                .filter(message -> !message.contains("status of 404"))
                .toList())
        .as("complaints of the browser, such as about the content security policy")
        .isEmpty();
  }

  @Test
  void aRecipePrintsAsALightSheet() throws IOException {
    Chromium.scheme(browser, "dark");
    visit("/recipes/slack-tide-kick");
    Inspection.print(browser, "recipe");
    browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
    assertThat(browser.executeScript("return getComputedStyle(document.body).color").toString())
        .as("ink on paper, whatever the screen's scheme")
        .isEqualTo("rgb(35, 38, 43)");
    assertThat(browser.findElement(By.cssSelector(".masthead")).isDisplayed()).isFalse();
    browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", ""));
  }

  private static void visit(String address) {
    browser.get(notebook.url().resolve(address).toString());
  }

  private static String heading() {
    return browser.findElement(By.tagName("h1")).getText();
  }
}
