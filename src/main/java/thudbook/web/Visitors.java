package thudbook.web;

import io.javalin.http.Context;
import java.util.Objects;
import thudbook.access.Visitor;

/** Who sent a request: noted before any handler sees it, and read by handlers. */
public final class Visitors {
  private static final String ATTRIBUTE = Visitor.class.getName();

  private Visitors() {}

  /** Notes who sent a request. */
  static void meet(Context ctx) {
    ctx.attribute(ATTRIBUTE, Visitor.alone(Visitor.Way.WEB));
  }

  /**
   * Who sent a request.
   *
   * @throws NullPointerException outside of {@link Server}, which alone lets visitors in
   */
  public static Visitor of(Context ctx) {
    return Objects.requireNonNull(ctx.<Visitor>attribute(ATTRIBUTE), "a visitor");
  }
}
