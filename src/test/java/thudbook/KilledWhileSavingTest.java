package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Scenario: servers are killed while clients save; the benchmarks do it more often. */
class KilledWhileSavingTest {
  private static final int ROUNDS = 15;

  @TempDir private Path folder;

  @Test
  @Timeout(value = 10, unit = TimeUnit.MINUTES)
  void noAnsweredSaveIsLost() throws Exception {
    assertThat(new KillsWhileSaving(folder).rounds(ROUNDS)).isGreaterThanOrEqualTo(ROUNDS);
  }
}
