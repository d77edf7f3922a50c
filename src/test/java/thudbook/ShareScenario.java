package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import thudbook.photos.Photos;
import thudbook.photos.Pictures;
import thudbook.settings.Settings;

/** Scenario: photos, taking in and giving out in a real browser, over a real database. */
class ShareScenario {
  private static final Path SCREENSHOTS = Path.of("target/screenshots");
  private static final String DOCUMENT = "---\nthudbook: recipe/1\ntitle: %s\n---\nRing it.\n";

  @TempDir static Path folder;
  private static Notebook notebook;
  private static ChromeDriver browser;
  private static String axe;

  @BeforeAll
  static void open() throws Exception {
    browser = Chromium.start();
    Settings settings =
        Settings.of(
            Map.of("port", "0", "data", folder.resolve("data").toString()),
            Map.of(),
            Map.of("user.home", folder.toString()));
    InstantSource clock = InstantSource.fixed(Instant.parse("2026-11-02T09:30:00Z"));
    notebook = Notebook.open(settings, clock, UUID::randomUUID);
    Files.createDirectories(SCREENSHOTS);
    try (InputStream in = ShareScenario.class.getResourceAsStream("/axe.min.js")) {
      axe = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
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
  void aPhotoIsAddedDescribedShownPrintedAndTakenOut() throws IOException {
    Path photo = folder.resolve("IMG 4711.JPG");
    Files.write(photo, Pictures.withCameraNotes(Pictures.jpeg(1200, 800), 6, "lat 51.5"));
    Path other = Files.write(folder.resolve("small.png"), Pictures.png(640, 360));
    visit("/recipes/slack-tide-kick");
    addPhoto(photo, "The whole patch, from the left");
    assertThat(browser.getCurrentUrl()).endsWith("/recipes/slack-tide-kick#photos");
    addPhoto(other, "");
    List<WebElement> shown = browser.findElements(By.cssSelector(".photo-list img"));
    assertThat(shown).hasSize(2);
    assertThat(shown.get(0).getAttribute("alt")).isEqualTo("The whole patch, from the left");
    assertThat(browser.executeScript("return arguments[0].naturalHeight", shown.get(0)))
        .as("turned upright, 480 pixels high")
        .isEqualTo(480L);
    inAllForms("photos", ".photos");
    print("photos");

    WebElement link = browser.findElement(By.cssSelector(".photo-list a"));
    String address = link.getAttribute("href");
    browser.get(address);
    assertThat(browser.executeScript("return document.images[0].naturalHeight")).isEqualTo(1200L);
    visit("/recipes/slack-tide-kick");
    Chromium.follow(browser, browser.findElement(By.cssSelector(".photo-remove button")));
    assertThat(browser.findElements(By.cssSelector(".photo-list img"))).hasSize(1);
  }

  private static void addPhoto(Path file, String shows) {
    browser.findElement(By.cssSelector(".photo-add summary")).click();
    browser.findElement(By.id("photo-file")).sendKeys(file.toString());
    browser.findElement(By.id("photo-shows")).sendKeys(shows);
    Chromium.follow(browser, browser.findElement(By.cssSelector(".photo-add button")));
  }

  @Test
  void aZipIsLookedAtTakenInAndUndone() throws IOException {
    Path zip = folder.resolve("studio.zip");
    String kick = Files.readString(Path.of("sample-library/recipes/slack-tide-kick.md"));
    String bell = Files.readString(Path.of("sample-library/recipes/bell-buoy.md"));
    try (OutputStream out = Files.newOutputStream(zip);
        ZipOutputStream entries = new ZipOutputStream(out)) {
      put(entries, "recipes/bell-buoy.md", bell.replaceFirst("title: .*", "title: Bell buoy, low"));
      put(entries, "recipes/lamp-chain.md", sample("lamp-chain"));
      put(entries, "recipes/new.md", String.format(DOCUMENT, "Harbour tom"));
      put(entries, "recipes/other-kick.md", kick.replaceFirst("id: \\S+\n", ""));
      put(entries, "LICENCE", "no document");
    }
    visit("/share");
    inAllForms("share", "main");
    browser.findElement(By.id("share-files")).sendKeys(zip.toString());
    submit(".drop");
    assertThat(heading()).isEqualTo("What would change");
    assertThat(text("main"))
        .contains("1 new, 1 changed, 1 the same as here, 1 in conflict")
        .contains("LICENCE", "Bell buoy, low", "is taken by Slack-tide kick");
    inAllForms("share-preview", "main");
    assertThat(Exchange.get(notebook.url().getPort(), "/recipes/harbour-tom").status())
        .as("nothing is written before a word is said")
        .isEqualTo(404);
    submit("main form");
    assertThat(browser.getCurrentUrl()).contains("/changes/");
    assertThat(text("main"))
        .containsIgnoringCase("took in 2 documents")
        .contains("Harbour tom", "Bell buoy, low");
    Chromium.follow(browser, browser.findElement(By.cssSelector("form.undo button")));
    assertThat(text("main")).containsIgnoringCase("undid: took in 2 documents");
    visit("/recipes/bell-buoy");
    assertThat(heading()).isEqualTo("Bell buoy");
  }

  @Test
  void aFolderIsTakenInWithItsPhotos() throws IOException {
    Path from = Files.createDirectories(folder.resolve("from/recipes"));
    Path media = Files.createDirectories(folder.resolve("from/media"));
    byte[] photo = Pictures.withCameraNotes(Pictures.jpeg(300, 200), 1, "at home");
    String name = Photos.sha256(photo) + ".jpg";
    Files.write(media.resolve(name), photo);
    String document = String.format(DOCUMENT, "Gull rattle, wet");
    Files.writeString(
        from.resolve("wet.md"),
        document.replaceFirst("title", "photos: [{file: " + name + ", shows: the desk}]\ntitle"));
    visit("/share");
    browser.findElement(By.id("share-folder")).sendKeys(folder.resolve("from").toString());
    submit(".drop");
    assertThat(text("main")).contains("1 new", "with 1 photo", "from/recipes/wet.md");
    submit("main form");
    visit("/recipes/gull-rattle-wet");
    WebElement shown = browser.findElement(By.cssSelector(".photo-list img"));
    assertThat(shown.getAttribute("alt")).isEqualTo("the desk");
    assertThat(browser.executeScript("return arguments[0].naturalWidth", shown)).isEqualTo(300L);
  }

  @Test
  void pastedTextIsTakenInAndItsFaultsAreTold() throws IOException {
    visit("/share");
    String pasted =
        String.format(DOCUMENT, "Slip one") + String.format(DOCUMENT, "Slip two\nrating: 9");
    paste(pasted);
    assertThat(heading()).isEqualTo("Share");
    assertThat(text(".fault-summary")).contains("pasted text, line 9: rating: found 9");
    assertThat(browser.switchTo().activeElement().getAttribute("class")).isEqualTo("fault-summary");
    assertThat(browser.findElement(By.id("share-text")).getAttribute("value")).isEqualTo(pasted);
    inAllForms("share-faults", "main");
    browser.findElement(By.id("share-text")).clear();
    paste(pasted.replace("rating: 9", "rating: 4"));
    assertThat(text("main")).contains("2 new");
    submit("main form");
    visit("/recipes/slip-two");
    assertThat(heading()).isEqualTo("Slip two");
  }

  private static void paste(String text) {
    browser.executeScript(
        "arguments[0].value = arguments[1]", browser.findElement(By.id("share-text")), text);
    submit(".drop");
  }

  @Test
  void filesAreDroppedOntoTheForm() throws IOException {
    Path one = Files.writeString(folder.resolve("one.md"), String.format(DOCUMENT, "Rope fid"));
    Path two = Files.writeString(folder.resolve("two.md"), String.format(DOCUMENT, "Rope whip"));
    visit("/share");
    WebElement form = browser.findElement(By.cssSelector("[data-drop]"));
    drag("dragEnter", form, one, two);
    drag("dragOver", form, one, two);
    assertThat(form.getAttribute("data-over")).as("it shows that it takes them").isNotNull();
    drag("drop", form, one, two);
    assertThat(form.getAttribute("data-over")).isNull();
    assertThat(browser.executeScript("return document.getElementById('share-files').files.length"))
        .isEqualTo(2L);
    submit(".drop");
    assertThat(text("main")).contains("Rope fid", "Rope whip");
  }

  /** Moves files over the middle of an element, as a person does from a folder. */
  private static void drag(String type, WebElement onto, Path... files) {
    browser.executeScript("arguments[0].scrollIntoView({block: 'center'})", onto);
    @SuppressWarnings("unchecked")
    Map<String, Number> middle =
        (Map<String, Number>)
            browser.executeScript(
                "const box = arguments[0].getBoundingClientRect();"
                    + "return {x: box.x + box.width / 2, y: box.y + box.height / 2};",
                onto);
    browser.executeCdpCommand(
        "Input.dispatchDragEvent",
        Map.of(
            "type",
            type,
            "x",
            middle.get("x"),
            "y",
            middle.get("y"),
            "data",
            Map.of(
                "items",
                List.of(),
                "files",
                Arrays.stream(files).map(Path::toString).toList(),
                "dragOperationsMask",
                1)));
  }

  @Test
  void aTableIsReadColumnByColumn() throws IOException {
    Path table = folder.resolve("kit.csv");
    Files.writeString(table, "Name,Peak voltage (V),Decay (ms),Mood\nRope thud,7,180,calm\n");
    visit("/share");
    browser.findElement(By.id("share-files")).sendKeys(table.toString());
    submit(".drop");
    assertThat(text("main"))
        .contains("“Peak voltage (V)” is peak (V)", "“Mood” is not taken", "kit.csv, row 2");
    inAllForms("share-table", "main");
    submit("main form");
    visit("/recipes/rope-thud");
    assertThat(text("main")).contains("7 V", "180 ms");
  }

  @Test
  void aRecipeIsCopiedAsText() throws IOException {
    visit("/recipes/thunder-roll");
    Chromium.follow(browser, browser.findElement(By.linkText("Copy as text")));
    assertThat(browser.findElement(By.id("plain-text")).getAttribute("value"))
        .startsWith("Thunder roll\n")
        .contains("\nConnections\n1. ", "Monitors down");
    assertThat(browser.findElement(By.id("document-text")).getAttribute("value"))
        .isEqualTo(sample("thunder-roll"));
    inAllForms("copy", "main");
  }

  private static String sample(String slug) throws IOException {
    return Files.readString(Path.of("sample-library", "recipes", slug + ".md"));
  }

  private static void put(ZipOutputStream zip, String name, String text) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(text.getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
  }

  private static void visit(String address) {
    browser.get(notebook.url().resolve(address).toString());
  }

  private static void submit(String form) {
    Chromium.follow(browser, browser.findElement(By.cssSelector(form + " p > button")));
  }

  private static String heading() {
    return browser.findElement(By.tagName("h1")).getText();
  }

  private static String text(String part) {
    return browser.findElement(By.cssSelector(part)).getText();
  }

  /** Looks at a page as on a desk, in the dark and on a phone, and takes pictures of it. */
  private static void inAllForms(String name, String part) throws IOException {
    for (String scheme : List.of("dark", "light")) {
      Chromium.scheme(browser, scheme);
      assertThat(faultsFoundByAxe()).as(name + " " + scheme).isEmpty();
      picture(name + "-wide-" + scheme);
    }
    for (int width : new int[] {320, 390}) {
      Chromium.resize(browser, width, 800);
      assertThat(browser.executeScript("return document.documentElement.scrollWidth"))
          .as("width of %s on a screen of %d", name, width)
          .isEqualTo((long) width);
    }
    assertThat(faultsFoundByAxe()).as(name + " narrow").isEmpty();
    picture(name + "-narrow");
    assertThat(browser.findElement(By.cssSelector(part)).isDisplayed()).isTrue();
    Chromium.resize(browser, 1280, 900);
  }

  private static void print(String name) throws IOException {
    Object pdf =
        browser.executeCdpCommand("Page.printToPDF", Map.of("printBackground", true)).get("data");
    Files.write(SCREENSHOTS.resolve(name + ".pdf"), Base64.getDecoder().decode(pdf.toString()));
  }

  private static List<?> faultsFoundByAxe() {
    browser.executeScript(axe);
    return (List<?>)
        browser.executeAsyncScript(
            """
            const done = arguments[arguments.length - 1];
            axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']})
              .then(result => done(result.violations.map(v =>
                  v.id + ': ' + v.nodes.map(n => n.html.slice(0, 160) + ' ' + n.failureSummary).join(' | '))));
            """);
  }

  private static void picture(String name) throws IOException {
    Object data =
        browser
            .executeCdpCommand(
                "Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", true))
            .get("data");
    Files.write(SCREENSHOTS.resolve(name + ".png"), Base64.getDecoder().decode(data.toString()));
  }
}
