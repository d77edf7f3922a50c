package thudbook.access;

/** Who writes in tests. */
public final class Hands {
  /** Whom a request or a command brings along. */
  public static final Author OWNER = Visitor.alone(Visitor.Way.COMMAND_LINE).author();

  private Hands() {}
}
