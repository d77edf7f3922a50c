package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;
import thudbook.settings.Settings;
import thudbook.storage.Database;
import thudbook.yardstick.RandomLibrary;

/**
 * Scenario: finding in a real browser among 20,000 recipes ({@code -Drecipes=…} for another
 * number), by typing, by filters, by keyboard alone, and acting on many at once.
 */
class FindScenario {
  private static final int RECIPES = Integer.getInteger("recipes", 20_000);

  @TempDir static Path folder;
  private static RandomLibrary library;
  private static Notebook notebook;
  private static ChromeDriver browser;

  @BeforeAll
  static void open() throws Exception {
    browser = Chromium.start();
    library = new RandomLibrary(4, 600);
    try (Database database = Database.open(folder)) {
      library.fill(database, RECIPES);
    }
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
  void resultsComeWhileTypingAndNothingJumps() {
    visit("/");
    watchShifts();
    Map<String, Object> before = places();
    assertThat(count()).isEqualTo(RECIPES);
    int found = count();
    for (char letter : word().toCharArray()) {
      box().sendKeys(String.valueOf(letter));
      int last = found;
      await(() -> count() <= last && query().endsWith(box().getAttribute("value")));
      found = count();
    }
    int narrowed = found;
    assertThat(narrowed).isBetween(1, RECIPES - 1);
    assertThat(browser.findElements(By.cssSelector("#rows mark"))).isNotEmpty();
    assertThat(text(".understood")).contains(word());
    box().sendKeys(", peak level over -20 dB");
    await(() -> count() < narrowed && text(".understood").contains("peak level over -20 dB"));
    assertThat(places())
        .as("box, filters, order and first row stand where they were")
        .isEqualTo(before);
    assertThat(shifts()).as("cumulative layout shift").isLessThan(0.01);
    assertThat(box()).isEqualTo(browser.switchTo().activeElement());
  }

  @Test
  void filtersNarrowFollowInTheAddressAndAreRemoved() {
    visit("/");
    watchShifts();
    WebElement tag = browser.findElement(By.cssSelector("#tags-box input[name=tag]"));
    String name = row(tag).findElement(By.tagName("label")).getText();
    int left = Integer.parseInt(row(tag).findElement(By.cssSelector(".tally-count")).getText());
    tag.click();
    await(() -> count() == left);
    assertThat(query()).contains("tag=");
    assertThat(text(".active")).contains("tagged " + name);
    WebElement from = browser.findElement(By.id("f-hold-from"));
    from.sendKeys("20ms");
    await(() -> count() < left);
    from = browser.findElement(By.id("f-hold-from"));
    assertThat(from.getAttribute("value"))
        .as("what is typed stays as it is typed")
        .isEqualTo("20ms");
    from.sendKeys("x");
    await(() -> text("#f-hold-from-fault").contains("20msx"));
    assertThat(count()).as("what is not understood asks nothing").isEqualTo(left);
    browser.findElement(By.partialLinkText("Remove all filters")).click();
    await(() -> count() == RECIPES);
    assertThat(query()).isEmpty();
    assertThat(browser.findElement(By.id("f-hold-from")).getAttribute("value")).isEmpty();
    browser.navigate().back();
    await(() -> count() == left);
    assertThat(shifts()).as("cumulative layout shift").isLessThan(0.01);
  }

  @Test
  void backLeadsToTheSamePlace() {
    visit("/");
    box().sendKeys(word());
    await(() -> count() < RECIPES && query().contains(word()));
    int found = count();
    browser.findElements(By.cssSelector("#rows h2 a")).get(18).sendKeys(Keys.ARROW_DOWN);
    WebElement link = browser.switchTo().activeElement();
    String title = link.getText();
    Object scrolled = browser.executeScript("return Math.round(scrollY)");
    assertThat(((Number) scrolled).intValue()).isPositive();
    link.sendKeys(Keys.ENTER);
    await(() -> text("h1").equals(title));
    browser.navigate().back();
    await(() -> text("h1").equals("Recipes") && count() == found);
    assertThat(box().getAttribute("value")).isEqualTo(word());
    await(() -> scrolled.equals(browser.executeScript("return Math.round(scrollY)")));
    browser.findElement(By.cssSelector("[rel=next]")).click();
    await(() -> text(".title-line .count").startsWith("41 to 80"));
    browser.navigate().back();
    await(() -> text(".title-line .count").startsWith("1 to 40"));
  }

  @Test
  void manyAreTaggedInOneActAndItIsUndone() {
    visit("/?order=title");
    List<WebElement> boxes = browser.findElements(By.cssSelector(".row-select"));
    boxes.get(0).click();
    boxes.get(2).click();
    assertThat(text("#bulk-count")).isEqualTo("2 recipes are selected.");
    browser.findElement(By.id("bulk-tags")).sendKeys("zz from act two");
    follow("button[value=tag]");
    assertThat(text(".done")).contains("Tagged zz from act two on 2 recipes.");
    assertThat(query()).startsWith("order=title");
    visit("/?tag=zz+from+act+two");
    assertThat(count()).isEqualTo(2);
    tick("#all");
    browser.findElement(By.id("bulk-tags")).sendKeys("zz loud, zz wide");
    follow("button[value=tag]");
    visit("/?tag=zz+loud&tag=zz+wide");
    assertThat(count()).isEqualTo(2);
    tick("#all");
    follow("button[value=bin]");
    assertThat(text(".done")).contains("Threw 2 recipes into the bin.");
    assertThat(text(".found .empty")).contains("No recipe is like that");
    follow(".done button");
    await(() -> count() == 2);
  }

  @Test
  void everythingWorksByKeyboardAlone() {
    visit("/");
    keys("/");
    assertThat(browser.switchTo().activeElement()).isEqualTo(box());
    keys("hol");
    await(() -> !browser.findElements(By.cssSelector("#completions [role=option]")).isEmpty());
    keys(Keys.ARROW_DOWN);
    String first = box().getAttribute("aria-activedescendant");
    assertThat(browser.findElement(By.id(first)).getAttribute("aria-selected")).isEqualTo("true");
    keys(Keys.ENTER);
    assertThat(box().getAttribute("value")).isEqualTo("hold ");
    keys("over 5 ms");
    await(() -> text(".understood").contains("hold over 5 ms") && count() > 0);
    keys(Keys.ARROW_DOWN);
    List<WebElement> links = browser.findElements(By.cssSelector("#rows h2 a"));
    assertThat(browser.switchTo().activeElement()).isEqualTo(links.get(0));
    keys(Keys.ARROW_DOWN, Keys.ARROW_DOWN, Keys.ARROW_UP, " ");
    assertThat(browser.switchTo().activeElement()).isEqualTo(links.get(1));
    assertThat(text("#bulk-count")).isEqualTo("1 recipe is selected.");
    keys(Keys.ESCAPE);
    assertThat(text("#bulk-count")).startsWith("Select recipes");
    String title = links.get(1).getText();
    keys(Keys.ENTER);
    await(() -> text("h1").equals(title));
  }

  @Test
  void favouritesAreMarkedWhereTheyStand() {
    visit("/?order=title");
    browser.findElement(By.cssSelector(".favourite")).click();
    await(
        () ->
            browser
                .findElement(By.cssSelector(".favourite"))
                .getAttribute("aria-pressed")
                .equals("true"));
    visit("/?favourite=yes");
    assertThat(count()).isEqualTo(1);
    browser.findElement(By.cssSelector(".favourite")).click();
  }

  @Test
  void everyScreenOfFindingIsAccessibleAndFitsAPhone() throws IOException {
    List<String> addresses =
        List.of(
            "/",
            "/?q="
                + word()
                + "+hold+over+bananas&tag="
                + library.tags().get(0)
                + "&hold.from=1 ms&attack.to=x",
            "/?q=nothing+is+like+this",
            "/tags",
            "/shelves",
            "/recipes/r7/alike?by=both",
            "/help/finding");
    for (String address : addresses) {
      String name = "find" + address.replaceAll("[^a-z]+", "-").replaceAll("-q-.*hold", "-search");
      for (String scheme : List.of("light", "dark")) {
        Chromium.scheme(browser, scheme);
        Chromium.resize(browser, 1280, 900);
        visit(address);
        assertThat(Inspection.faults(browser)).as(address + " " + scheme).isEmpty();
        Inspection.screenshot(browser, name + "-wide-" + scheme);
      }
      Chromium.scheme(browser, "light");
      Chromium.resize(browser, 320, 800);
      visit(address);
      assertThat(browser.executeScript("return document.documentElement.scrollWidth"))
          .as("width of %s on a screen of 320", address)
          .isEqualTo(320L);
      Chromium.resize(browser, 390, 800);
      visit(address);
      assertThat(Inspection.faults(browser)).as(address + " narrow").isEmpty();
      Inspection.screenshot(browser, name + "-narrow");
    }
    visit("/?q=" + word());
    browser.findElement(By.cssSelector("#filters > summary")).click();
    browser.findElement(By.cssSelector(".row-select")).click();
    assertThat(Inspection.faults(browser)).as("filters open, narrow").isEmpty();
    Inspection.screenshot(browser, "find-filters-narrow");
    Inspection.print(browser, "find-list");
  }

  /** A word that many recipes have. */
  private static String word() {
    return library.words().stream().filter(w -> w.matches("[a-z]{5,}")).findFirst().orElseThrow();
  }

  private static void visit(String address) {
    browser.get(notebook.url() + address.substring(1).replace(" ", "%20"));
  }

  private static WebElement box() {
    return browser.findElement(By.id("q"));
  }

  private static WebElement row(WebElement cell) {
    return cell.findElement(By.xpath("ancestor::tr"));
  }

  private static void keys(CharSequence... keys) {
    new Actions(browser).sendKeys(keys).perform();
  }

  private static void tick(String selector) {
    browser.findElement(By.cssSelector(selector)).click();
  }

  private static void follow(String selector) {
    Chromium.follow(browser, browser.findElement(By.cssSelector(selector)));
  }

  private static String text(String selector) {
    List<WebElement> found = browser.findElements(By.cssSelector(selector));
    return found.isEmpty() ? "" : found.get(0).getText();
  }

  private static int count() {
    String said = text(".title-line .count").replaceAll(".* of ", "").replaceAll(" recipes?$", "");
    return said.matches("[0-9]+") ? Integer.parseInt(said) : 0;
  }

  private static String query() {
    return String.valueOf(browser.executeScript("return location.search.slice(1)"));
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> places() {
    return (Map<String, Object>)
        browser.executeScript(
            """
            const of = (selector) => {
              const { x, y, width } = document.querySelector(selector).getBoundingClientRect();
              return [x, y, width].map(Math.round).join(' ');
            };
            return Object.fromEntries(
              ['#q', '#filters', '#group-on', '#f-hold-from', '#order', '#rows'].map((s) => [s, of(s)]));
            """);
  }

  /** Counts every shift, also those that an input excuses. */
  private static void watchShifts() {
    browser.executeScript(
        """
        window.shifted = 0;
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) { window.shifted += entry.value; }
        }).observe({ type: 'layout-shift', buffered: true });
        """);
  }

  private static double shifts() {
    return ((Number) browser.executeScript("return window.shifted")).doubleValue();
  }

  private static void await(Supplier<Boolean> condition) {
    Patience.with(browser).until(driver -> condition.get());
  }
}
