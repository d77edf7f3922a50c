package thudbook;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * The one way in which tests wait: for a condition, and so long that a machine that is many times
 * slower holds it too. What comes true in time costs nothing.
 */
public final class Patience {
  /** Longer than anything takes; only what never comes true waits so long. */
  public static final Duration LIMIT = Duration.ofMinutes(3);

  private static final Duration STEP = Duration.ofMillis(50);

  private Patience() {}

  /** Waits for what a browser shows; elements that were just replaced are looked for again. */
  public static WebDriverWait with(WebDriver browser) {
    WebDriverWait wait = new WebDriverWait(browser, LIMIT, STEP);
    wait.ignoring(StaleElementReferenceException.class);
    return wait;
  }

  /**
   * Waits for a condition.
   *
   * @throws AssertionError if it does not come true
   */
  public static void until(String what, BooleanSupplier condition) throws InterruptedException {
    long end = System.nanoTime() + LIMIT.toNanos();
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("in vain: " + what);
      }
      Thread.sleep(STEP.toMillis());
    }
  }
}
