package thudbook;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/**
 * A real browser. Where there is none, browser tests are skipped and say how to get it; with {@code
 * THUDBOOK_BROWSER_TESTS=required} they fail instead.
 */
public final class Chromium {
  private static final String HOW_TO_GET_IT =
      "no chromium and chromedriver on the PATH: browser tests are skipped. On Debian:"
          + " apt-get install chromium chromium-driver";

  private Chromium() {}

  /** Starts it, with a profile of its own and without a network of its own. */
  public static ChromeDriver start() {
    return start(profile());
  }

  /** Starts it with a profile that may have been used before. */
  public static ChromeDriver start(Path profile) {
    Optional<Path> browser = onPath("chromium");
    Optional<Path> driver = onPath("chromedriver");
    if (browser.isEmpty() || driver.isEmpty()) {
      if ("required".equals(System.getenv("THUDBOOK_BROWSER_TESTS"))) {
        throw new AssertionError(HOW_TO_GET_IT);
      }
      Assumptions.abort(HOW_TO_GET_IT);
    }
    ChromeOptions options = new ChromeOptions();
    options.setBinary(browser.get().toFile());
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--hide-scrollbars",
        "--user-data-dir=" + profile);
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(driver.get().toFile()).build();
    ChromeDriver started = new ChromeDriver(service, options);
    started.manage().timeouts().scriptTimeout(Patience.LIMIT).pageLoadTimeout(Patience.LIMIT);
    return started;
  }

  /** Shows pages as on a screen of this size. */
  public static void resize(ChromeDriver driver, int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  /**
   * Presses a button or link, brought into view first, and waits for the page that it leads to. It
   * asks the page: an element of a page that is just leaving may be neither there nor stale.
   */
  public static void follow(ChromeDriver driver, WebElement element) {
    leave(driver, element, element::click);
  }

  /** Opens a link by its key, and waits for the page that it leads to. */
  public static void followByKey(ChromeDriver driver, WebElement element) {
    leave(driver, element, () -> element.sendKeys(Keys.ENTER));
  }

  private static void leave(ChromeDriver driver, WebElement element, Runnable press) {
    driver.executeScript(
        "window.leaving = true; arguments[0].scrollIntoView({block: 'center'})", element);
    press.run();
    Patience.with(driver)
        .until(
            page ->
                driver.executeScript(
                    "return !window.leaving && document.readyState === 'complete'"));
  }

  /** Tells pages which scheme the reader likes. */
  public static void scheme(ChromeDriver driver, String scheme) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  /** A new, empty profile. */
  public static Path profile() {
    try {
      return Files.createTempDirectory("thudbook-browser");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<Path> onPath(String program) {
    return Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
        .map(folder -> Path.of(folder, program))
        .filter(Files::isExecutable)
        .findFirst();
  }
}
