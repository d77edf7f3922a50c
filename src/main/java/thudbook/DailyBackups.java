package thudbook;

import java.time.InstantSource;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thudbook.quantities.Refusal;
import thudbook.storage.keeping.Backups;

/**
 * Makes a backup whenever the last one is a day old, in a thread of its own, and lets go of the
 * oldest ones.
 */
final class DailyBackups implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(DailyBackups.class);

  /** A start has better things to do first. */
  private static final long FIRST_LOOK_SECONDS = 5;

  /** A machine may sleep for days: looking often is simpler than working out when. */
  private static final long LOOK_SECONDS = 600;

  private final Backups backups;
  private final int keep;
  private final InstantSource clock;
  private final ScheduledExecutorService worker =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "backups");
            thread.setDaemon(true);
            return thread;
          });

  /**
   * @param keep how many are kept; 0: none are made
   */
  DailyBackups(Backups backups, int keep, InstantSource clock) {
    this.backups = backups;
    this.keep = keep;
    this.clock = clock;
  }

  /** Begins, and returns at once. */
  @SuppressWarnings("FutureReturnValueIgnored") // a look lets no exception out
  void start() {
    if (keep > 0) {
      worker.scheduleWithFixedDelay(this::look, FIRST_LOOK_SECONDS, LOOK_SECONDS, TimeUnit.SECONDS);
    }
  }

  /** Makes a backup if one is due. A failure is logged: the next look tries again. */
  void look() {
    try {
      if (backups.dailyDue(clock.instant())) {
        backups.make(Backups.Occasion.DAILY, clock.instant());
        backups.keepDaily(keep);
      }
    } catch (Refusal refusal) {
      LOG.warn("There is no backup of today: {}", refusal.getMessage());
    } catch (RuntimeException e) {
      LOG.error("The backup of today failed", e);
    }
  }

  /** Waits for a backup that is being made. */
  @Override
  public void close() {
    worker.shutdown();
    try {
      worker.awaitTermination(1, TimeUnit.MINUTES);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
