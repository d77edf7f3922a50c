package thudbook.quantities;

import java.util.List;

/**
 * An input that is refused, with all its faults. Never a programmer's error: those are {@link
 * IllegalArgumentException} and {@link IllegalStateException}.
 */
public final class Refusal extends RuntimeException {
  /** The kinds of refusal; each has one HTTP status and one page of help. */
  public enum Kind {
    /** Could not be read at all: not JSON, not YAML, not UTF-8. */
    MALFORMED,
    /** Was read, and values are refused. */
    REFUSED_VALUES,
    /** There is no such thing. */
    NOT_FOUND,
    /** Conflicts with what is there. */
    CONFLICT,
    /** A newer version is there. */
    STALE,
    /** Larger than allowed. */
    TOO_LARGE,
    /** Could not be put on the disk: it is full, or may not be written to. */
    NOT_STORED
  }

  private final Kind kind;
  private final transient List<Fault> faults;

  /** A refusal with one or more faults. */
  public Refusal(Kind kind, List<Fault> faults) {
    super(faults.isEmpty() ? kind.name() : faults.get(0).message());
    this.kind = kind;
    this.faults = List.copyOf(faults);
  }

  /** A refusal of the whole input, in one sentence. */
  public static Refusal of(Kind kind, String code, String message) {
    return new Refusal(kind, List.of(new Fault("", 0, code, "", "", message)));
  }

  /** What kind of refusal this is. */
  public Kind kind() {
    return kind;
  }

  /** Everything that is wrong, in the order of the input. */
  public List<Fault> faults() {
    return faults;
  }
}
