package thudbook.benchmark;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.openqa.selenium.chrome.ChromeDriver;
import thudbook.Chromium;

/** From the turn of a slider in a real browser to the frame that shows the new plot and numbers. */
final class PaintMeasurement implements Measurement {
  private static final int WARM_UP = 150;
  private static final int TURNS = 100;

  /** Moves the slider by a step and waits for the frame after the answer was put in place. */
  private static final String TURN =
      """
      const turn = arguments[0];
      const done = arguments[arguments.length - 1];
      const slider = document.querySelector(
        '[id="f-envelope.attack-hold-decay.decay"]').parentElement.querySelector('[type=range]');
      const answer = document.getElementById('answer');
      const before = performance.now();
      new MutationObserver((changes, observer) => {
        observer.disconnect();
        requestAnimationFrame(() => setTimeout(() => done(performance.now() - before), 0));
      }).observe(answer, { childList: true });
      slider.value = String(Number(slider.max) * (0.3 + 0.002 * (turn % 150)));
      slider.dispatchEvent(new Event('input', { bubbles: true }));
      """;

  @Override
  public List<Figure> measure(Path folder) throws Exception {
    ChromeDriver browser = Chromium.start();
    try (ServerProcess server = ServerProcess.thudbook(folder.resolve("data"))) {
      Chromium.resize(browser, 1280, 900);
      browser.manage().timeouts().scriptTimeout(Duration.ofSeconds(20));
      browser.get("http://127.0.0.1:" + server.port() + "/recipes/gale-tom-high/edit");
      List<Double> milliseconds = new ArrayList<>();
      for (int turn = -WARM_UP; turn < TURNS; turn++) {
        double took = ((Number) browser.executeAsyncScript(TURN, turn + WARM_UP)).doubleValue();
        if (turn >= 0) {
          milliseconds.add(took);
        }
      }
      Collections.sort(milliseconds);
      return List.of(
          new Figure(
              "a turn of a slider in the editor: one strike, to the frame that shows the answer",
              String.format(
                  Locale.ROOT,
                  "median %.0f ms, 95 %% within %.0f ms",
                  milliseconds.get(TURNS / 2),
                  milliseconds.get(TURNS * 95 / 100)),
              "under 100 ms"));
    } finally {
      browser.quit();
    }
  }
}
