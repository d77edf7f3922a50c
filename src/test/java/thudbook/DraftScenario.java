package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import thudbook.storage.OtherProcess;

/** Scenario: what is typed survives a reload, a closed tab, and the kill of server or browser. */
@Timeout(value = 40, unit = TimeUnit.MINUTES)
class DraftScenario {
  private static final String READY = "Thudbook is ready at ";

  /** So many disasters, at moments that follow from the seed. */
  private static final int DISASTERS = 20;

  private static final long SEED = 20261125;

  private enum Disaster {
    RELOAD,
    CLOSED_TAB,
    KILLED_SERVER,
    KILLED_BROWSER
  }

  /** Whether this browser has handed over every draft that it kept. */
  private static final String NOTHING_LEFT_HERE =
      "return !Object.keys(localStorage).some(key => key.startsWith('thudbook-draft-'))";

  @TempDir Path folder;
  private final Path profile = Chromium.profile();
  private Process server;
  private URI url;
  private ChromeDriver browser;

  @BeforeEach
  void open() throws IOException {
    browser = Chromium.start(profile);
    serve("0");
  }

  @AfterEach
  void close() {
    if (browser != null) {
      browser.quit();
    }
    if (server != null) {
      server.destroyForcibly();
    }
  }

  private void serve(String port) throws IOException {
    String data = folder.resolve("data").toString();
    server =
        OtherProcess.start(Main.class, "serve", "--port", port, "--data", data, "--samples", "no");
    String line = server.inputReader(StandardCharsets.UTF_8).readLine();
    url = URI.create(line.substring(READY.length()));
  }

  @Test
  void nothingThatThePageCallsKeptIsLost() throws Exception {
    Random random = new Random(SEED);
    for (int i = 0; i < DISASTERS; i++) {
      Disaster disaster = Disaster.values()[i % Disaster.values().length];
      String stood = "round " + i + " stood " + random.nextInt(1_000_000);
      visit("/recipes/new");
      String key = browser.findElement(By.name("form.key")).getAttribute("value");
      type("title", "Draft " + i);
      type("source.noise.from", random.nextInt(1, 900) + " Hz");
      String from = value("source.noise.from");
      notes().sendKeys(stood);
      kept();
      notes().sendKeys(" and fresh words");
      Thread.sleep(random.nextInt(900));
      strike(disaster);
      comeBackTo(key);
      assertThat(value("title")).as("%s %d", disaster, i).isEqualTo("Draft " + i);
      assertThat(value("source.noise.from")).as("%s %d", disaster, i).isEqualTo(from);
      assertThat(notes().getAttribute("value")).as("%s %d", disaster, i).startsWith(stood);
      notes().sendKeys(Keys.chord(Keys.CONTROL, Keys.END), ".");
    }
  }

  /** Lets the disaster happen, and puts everything in order again. */
  private void strike(Disaster disaster) throws Exception {
    switch (disaster) {
      case RELOAD -> browser.navigate().refresh();
      case CLOSED_TAB -> {
        String old = browser.getWindowHandle();
        browser.switchTo().newWindow(WindowType.TAB);
        String next = browser.getWindowHandle();
        browser.switchTo().window(old);
        browser.close();
        browser.switchTo().window(next);
      }
      case KILLED_SERVER -> {
        killServer();
        notes().sendKeys(", and words for nobody");
        patiently()
            .until(page -> page.findElement(By.id("kept")).getText().contains("this browser"));
        serve(String.valueOf(url.getPort()));
      }
      case KILLED_BROWSER -> {
        Object pid = browser.getCapabilities().getCapability("goog:processID");
        ProcessHandle.of(((Number) pid).longValue()).orElseThrow().destroyForcibly();
        try {
          browser.quit();
        } catch (WebDriverException gone) {
          // There is nothing left to quit.
        }
        browser = Chromium.start(profile);
      }
    }
  }

  private void killServer() throws InterruptedException {
    server.destroyForcibly().waitFor();
  }

  /** Goes on with a draft that the notebook offers. */
  private void comeBackTo(String key) {
    visit("/recipes/new");
    patiently().until(page -> browser.executeScript(NOTHING_LEFT_HERE));
    String address = "a[href$='draft=" + key + "']";
    patiently().until(page -> !page.findElements(By.cssSelector(address)).isEmpty());
    patiently()
        .until(
            page -> {
              boolean there = page.getCurrentUrl().endsWith(key);
              if (!there) {
                page.findElement(By.cssSelector(address)).click();
              }
              return there;
            });
    browser.executeScript(
        "for (const part of document.querySelectorAll('details')) part.open = true");
  }

  @Test
  void wordsTypedWhileTheServerIsAwayComeBackToo() throws Exception {
    visit("/recipes/new");
    String key = browser.findElement(By.name("form.key")).getAttribute("value");
    killServer();
    type("title", "Written alone");
    patiently().until(page -> page.findElement(By.id("kept")).getText().contains("this browser"));
    assertThat(leavingIsQuestioned()).as("this browser has it").isFalse();
    serve(String.valueOf(url.getPort()));
    comeBackTo(key);
    assertThat(value("title")).isEqualTo("Written alone");
  }

  @Test
  void wordsTypedJustBeforeSavingComeBackIfTheServerIsAway() throws Exception {
    visit("/recipes/new");
    String key = browser.findElement(By.name("form.key")).getAttribute("value");
    killServer();
    type("title", "Saved to nobody");
    browser.findElement(By.id("save")).click();
    patiently().until(page -> page.findElements(By.id("editor")).isEmpty());
    serve(String.valueOf(url.getPort()));
    comeBackTo(key);
    assertThat(value("title")).isEqualTo("Saved to nobody");
  }

  @Test
  void whatWasSavedIsNotOfferedAgain() {
    visit("/recipes/new");
    type("title", "Saved at once");
    Chromium.follow(browser, browser.findElement(By.id("save")));
    assertThat(browser.findElement(By.tagName("h1")).getText()).isEqualTo("Saved at once");
    assertThat(browser.executeScript(NOTHING_LEFT_HERE)).isEqualTo(true);
    visit("/recipes/new");
    assertThat(browser.findElements(By.cssSelector(".drafts"))).isEmpty();
  }

  @Test
  void wordsTypedWhileAnAnswerIsLateOutliveTheTab() throws Exception {
    try (HeldAnswer proxy = new HeldAnswer(url.getPort(), "POST /editor/drafts/")) {
      URI direct = url;
      url = URI.create("http://127.0.0.1:" + proxy.port() + "/");
      visit("/recipes/new");
      String key = browser.findElement(By.name("form.key")).getAttribute("value");
      type("title", "Early");
      patiently().until(page -> proxy.asked() == 1);
      browser.findElement(By.id("f-title")).sendKeys(" and late");
      strike(Disaster.CLOSED_TAB);
      proxy.letGo();
      comeBackTo(key);
      assertThat(value("title")).isEqualTo("Early and late");
      url = direct;
    }
  }

  @Test
  void aRowThatComesLateOverwritesNothing() throws Exception {
    try (HeldAnswer proxy = new HeldAnswer(url.getPort(), "POST /editor/form")) {
      URI direct = url;
      url = URI.create("http://127.0.0.1:" + proxy.port() + "/");
      visit("/recipes/new");
      int rows = browser.findElements(By.cssSelector("#part-connections tbody tr")).size();
      WebElement add =
          browser.findElement(By.cssSelector("button[name='form.add'][data-part='connections']"));
      browser.executeScript("arguments[0].click()", add);
      patiently().until(page -> proxy.asked() == 1);
      type("connections.0.out", "E1 out");
      proxy.letGo();
      patiently()
          .until(
              page ->
                  page.findElements(By.cssSelector("#part-connections tbody tr")).size() > rows);
      assertThat(value("connections.0.out")).isEqualTo("E1 out");
      url = direct;
    }
  }

  @Test
  void aDraftThatIsOpenedShowsWhatOnlyThisBrowserHas() throws Exception {
    visit("/recipes/new");
    String key = browser.findElement(By.name("form.key")).getAttribute("value");
    type("title", "On the server");
    kept();
    killServer();
    browser.findElement(By.id("f-title")).sendKeys(", and here");
    strike(Disaster.CLOSED_TAB);
    serve(String.valueOf(url.getPort()));
    browser.get(url.resolve("/recipes/new?draft=" + key).toString());
    patiently().until(page -> value("title").equals("On the server, and here"));
    patiently().until(page -> browser.executeScript(NOTHING_LEFT_HERE));
    assertThat(browser.findElement(By.id("f-title")).isEnabled()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"/sessions/new", "/equipment/new"})
  void formsWithoutADraftOnTheServerComeBackToo(String address) throws Exception {
    browser.get(url.resolve(address).toString());
    browser.findElement(By.id("title")).sendKeys("Written at the rack");
    String add = address.startsWith("/sessions") ? "row" : "add-controls";
    if (address.startsWith("/sessions")) {
      browser.findElement(By.id("recipes.0.recipe")).sendKeys("some-recipe");
    }
    Chromium.follow(browser, browser.findElement(By.cssSelector("button[value='" + add + "']")));
    browser.findElement(By.id("notes")).sendKeys("with a row more");
    int fields = browser.findElements(By.cssSelector("form[data-draft] input")).size();
    strike(Disaster.CLOSED_TAB);
    browser.get(url.resolve(address).toString());
    patiently().until(page -> valueOf("notes").equals("with a row more"));
    assertThat(valueOf("title")).isEqualTo("Written at the rack");
    assertThat(browser.findElements(By.cssSelector("form[data-draft] input"))).hasSize(fields);
    killServer();
    browser.findElement(By.id("title")).sendKeys(", saved to nobody");
    browser.findElement(By.cssSelector("button.main")).click();
    patiently().until(page -> page.findElements(By.id("notes")).isEmpty());
    serve(String.valueOf(url.getPort()));
    browser.get(url.resolve(address).toString());
    patiently().until(page -> valueOf("title").equals("Written at the rack, saved to nobody"));
    assertThat(valueOf("notes")).isEqualTo("with a row more");
  }

  @Test
  void leavingIsQuestionedOnlyWhenNobodyElseHasIt() throws Exception {
    visit("/recipes/new");
    assertThat(leavingIsQuestioned()).isFalse();
    browser.executeScript(
        "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }");
    killServer();
    type("title", "Nowhere but here");
    patiently().until(page -> page.findElement(By.id("kept")).getText().contains("don’t leave"));
    assertThat(leavingIsQuestioned()).isTrue();
    serve(String.valueOf(url.getPort()));
    patiently().until(page -> page.findElement(By.id("kept")).getText().contains("is kept."));
    assertThat(leavingIsQuestioned()).isFalse();
  }

  private Boolean leavingIsQuestioned() {
    return (Boolean)
        browser.executeScript(
            "const leaving = new Event('beforeunload', {cancelable: true});"
                + "window.dispatchEvent(leaving); return leaving.defaultPrevented;");
  }

  private void visit(String address) {
    browser.get(url.resolve(address).toString());
    browser.executeScript(
        "document.querySelectorAll('details').forEach(part => part.open = true);"
            + "document.querySelector('[name=\"source.kind\"][value=noise]')?.click();");
  }

  /** Waits until the page says that all that was typed is on the server. */
  private void kept() {
    patiently()
        .until(page -> !page.findElements(By.cssSelector("#kept[data-safe='true']")).isEmpty());
  }

  private String valueOf(String id) {
    return browser.findElement(By.id(id)).getAttribute("value");
  }

  private WebElement notes() {
    return browser.findElement(By.id("f-notes"));
  }

  private void type(String name, String text) {
    browser.findElement(By.id("f-" + name)).sendKeys(Keys.chord(Keys.CONTROL, "a"), text);
  }

  private String value(String name) {
    return browser.findElement(By.id("f-" + name)).getAttribute("value");
  }

  private WebDriverWait patiently() {
    return Patience.with(browser);
  }
}
