package thudbook.storage;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A class of the tests that runs in a Java machine of its own, so that it can be killed. */
public final class OtherProcess {
  private OtherProcess() {}

  /** Starts its main method; what it writes to standard output can be read. */
  public static Process start(Class<?> main, String... arguments) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                main.getName()));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }
}
