package thudbook.commands;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** A file that is not what it should be, with one line per fault. */
final class RefusedFile extends RuntimeException {
  private final transient List<String> lines;

  private RefusedFile(List<String> lines, @Nullable Exception cause) {
    super(cause);
    this.lines = List.copyOf(lines);
  }

  /** A document with faults: {@code file:line: key: …}. */
  static RefusedFile of(Path file, Refusal refusal) {
    return new RefusedFile(
        refusal.faults().stream()
            .map(fault -> file + lineOf(fault) + ": " + fault.message())
            .toList(),
        refusal);
  }

  /** A document that is not what was asked for. */
  static RefusedFile of(Path file, List<String> sentences) {
    return new RefusedFile(sentences.stream().map(said -> file + ": " + said).toList(), null);
  }

  /** A file that can't be read. */
  static RefusedFile of(Path file, IOException e) {
    String why =
        e instanceof NoSuchFileException
            ? "there is no such file"
            : e instanceof AccessDeniedException ? "may not be read" : "can't be read as a file";
    return new RefusedFile(List.of(file + ": " + why), e);
  }

  /** What is wrong. */
  List<String> lines() {
    return lines;
  }

  private static String lineOf(Fault fault) {
    return fault.line() > 0 ? ":" + fault.line() : "";
  }
}
