package thudbook.sessions;

/** What the modules of the studio are, by their labels. */
public interface Roles {
  /** A rack of which nothing is known: what a module is then follows from the recipes. */
  Roles UNKNOWN = module -> Role.UNKNOWN;

  /** What a module does. */
  Role role(String module);

  /** What a module does, as far as it matters here. */
  enum Role {
    /** Plays one frequency at a time. */
    OSCILLATOR,
    /** Makes one control voltage at a time. */
    ENVELOPE,
    OTHER,
    UNKNOWN
  }
}
