package thudbook.pages.frame;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Fault;
import thudbook.web.ErrorKind;

/**
 * What went wrong, as it is shown.
 *
 * @param messages what is wrong, a sentence each; at least one
 * @param requestId what to look for in the log; null unless the error is ours
 */
public record ErrorSheet(ErrorKind kind, List<String> messages, @Nullable String requestId) {
  /** The sheet of an error. */
  public static ErrorSheet of(ErrorKind kind, List<Fault> faults, @Nullable String requestId) {
    List<String> messages = faults.stream().map(Fault::message).toList();
    return new ErrorSheet(kind, messages.isEmpty() ? List.of(kind.meaning()) : messages, requestId);
  }
}
