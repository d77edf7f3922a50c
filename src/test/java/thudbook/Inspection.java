package thudbook;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.chrome.ChromeDriver;

/** Looks at a page: what an accessibility checker finds, and pictures for a person to look at. */
final class Inspection {
  private static final Path SCREENSHOTS = Path.of("target/screenshots");

  private Inspection() {}

  /** What the accessibility checker finds; none: nothing. */
  static List<?> faults(ChromeDriver browser) throws IOException {
    try (InputStream in = Inspection.class.getResourceAsStream("/axe.min.js")) {
      browser.executeScript(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    }
    return (List<?>)
        browser.executeAsyncScript(
            """
            const done = arguments[arguments.length - 1];
            axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']})
              .then(result => done(result.passes.length < 10 ? ['few rules were run'] : result.violations.map(v =>
                  v.id + ': ' + v.nodes.map(n => n.html.slice(0, 160) + ' ' + n.failureSummary).join(' | '))));
            """);
  }

  /** A picture of the whole page. */
  static void screenshot(ChromeDriver browser, String name) throws IOException {
    Object data =
        browser
            .executeCdpCommand(
                "Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", true))
            .get("data");
    write(name + ".png", data);
  }

  /** The page as it is printed. */
  static void print(ChromeDriver browser, String name) throws IOException {
    Object data =
        browser
            .executeCdpCommand(
                "Page.printToPDF", Map.of("printBackground", true, "preferCSSPageSize", true))
            .get("data");
    write(name + ".pdf", data);
  }

  private static void write(String name, Object data) throws IOException {
    Files.createDirectories(SCREENSHOTS);
    Files.write(SCREENSHOTS.resolve(name), Base64.getDecoder().decode(data.toString()));
  }
}
