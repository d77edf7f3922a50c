package thudbook.benchmark;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import thudbook.Exchange;

/** A server as a process of its own, which prints a line that ends in its address. */
final class ServerProcess implements AutoCloseable {
  private static final Path TARGET = Path.of("target").toAbsolutePath();

  /** The heap that the run command of the README gives. */
  static final String HEAP = "-Xmx256m";

  private final Process process;
  private final int port;
  private final long startedNanos;

  private ServerProcess(List<String> arguments, Path errors) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(arguments);
    startedNanos = System.nanoTime();
    process = new ProcessBuilder(command).redirectError(errors.toFile()).start();
    BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
    String line = out.readLine();
    if (line == null) {
      throw new IOException("the server did not start: " + Files.readString(errors));
    }
    port = URI.create(line.substring(line.indexOf("http://"))).getPort();
  }

  /** The built jar on a data folder, as the README runs it. */
  static ServerProcess thudbook(Path data) throws IOException {
    return thudbook(data, HEAP);
  }

  /** The same with another heap, such as {@code -Xmx1g}. */
  static ServerProcess thudbook(Path data, String heap) throws IOException {
    return new ServerProcess(
        List.of(
            "-XX:SharedArchiveFile=" + TARGET.resolve("thudbook.jsa"),
            "-XX:+UseSerialGC",
            heap,
            "-jar",
            TARGET.resolve("thudbook.jar").toString(),
            "serve",
            "--port",
            "0",
            "--data",
            data.toString()),
        data.resolveSibling("errors"));
  }

  /** A bare server of the same library, with the same options but no archive. */
  static ServerProcess bare(Path folder) throws IOException {
    return new ServerProcess(
        List.of(
            "-XX:+UseSerialGC",
            HEAP,
            "-cp",
            TARGET.resolve("test-classes") + ":" + TARGET.resolve("lib") + "/*",
            BareServer.class.getName()),
        folder.resolve("errors"));
  }

  int port() {
    return port;
  }

  /** Asks for the first page and answers how long ago the process was started, in seconds. */
  double secondsToFirstAnswer() throws IOException {
    int status = Exchange.get(port, "/").status();
    if (status != 200) {
      throw new IOException("the first page answered " + status);
    }
    return (System.nanoTime() - startedNanos) / 1e9;
  }

  /** The largest resident memory so far, in mebibytes. */
  double peakMebibytes() throws IOException {
    Path status = Path.of("/proc", Long.toString(process.pid()), "status");
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmHWM:"))
        .mapToDouble(line -> Double.parseDouble(line.replaceAll("[^0-9]", "")) / 1024)
        .findFirst()
        .orElseThrow();
  }

  /** Stops it as Ctrl-C would; fails if that takes longer than half a minute. */
  @Override
  public void close() {
    process.destroy();
    process.onExit().orTimeout(30, TimeUnit.SECONDS).join();
  }
}
