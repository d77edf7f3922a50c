package thudbook.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Fault;

/** Draws an error for people. */
public interface ErrorPage {
  /**
   * A whole HTML page.
   *
   * @param faults what is wrong with the input; empty if there is nothing more to say
   * @param requestId what to look for in the log; null unless the error is ours
   */
  String html(ErrorKind kind, List<Fault> faults, @Nullable String requestId);
}
