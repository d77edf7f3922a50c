package thudbook.commands;

import java.io.IOException;
import java.io.PrintWriter;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import thudbook.quantities.Refusal;

/** Says why a command ended, in lines that a person can act on. */
public final class Complaint {
  private Complaint() {}

  public static int of(Exception e, CommandLine commandLine, CommandLine.ParseResult parsed) {
    PrintWriter err = commandLine.getErr();
    if (e instanceof Refusal refusal) {
      refusal.faults().forEach(fault -> err.println(fault.message()));
    } else if (e instanceof IOException io) {
      err.println(io.getMessage());
    } else {
      LoggerFactory.getLogger(Complaint.class).error("internal error", e);
    }
    return CommandLine.ExitCode.SOFTWARE;
  }
}
