package thudbook.gates;

import java.util.Optional;

/** What the openness of a gate moves, and how. */
public sealed interface Response {
  /** The three kinds, for those who name or choose one. */
  enum Kind {
    /** Level and cutoff. */
    BOTH,
    /** Level only: an amplifier. */
    AMPLITUDE,
    /** Cutoff only: a filter. */
    LOW_PASS;

    /** Whether the openness moves the level. */
    public boolean movesLevel() {
      return this != LOW_PASS;
    }

    /** Whether the openness moves a filter. */
    public boolean movesCutoff() {
      return this != AMPLITUDE;
    }
  }

  /** Which of the three this is. */
  Kind kind();

  /** How the level follows the openness, if it does; else it is 1. */
  Optional<Level> level();

  /** How the cutoff follows the openness, if there is a filter. */
  Optional<Filter> filter();

  /** Level and cutoff move together. */
  record Both(Level moved, Filter filtered) implements Response {
    @Override
    public Kind kind() {
      return Kind.BOTH;
    }

    @Override
    public Optional<Level> level() {
      return Optional.of(moved);
    }

    @Override
    public Optional<Filter> filter() {
      return Optional.of(filtered);
    }
  }

  /** The level alone moves. */
  record Amplitude(Level moved) implements Response {
    @Override
    public Kind kind() {
      return Kind.AMPLITUDE;
    }

    @Override
    public Optional<Level> level() {
      return Optional.of(moved);
    }

    @Override
    public Optional<Filter> filter() {
      return Optional.empty();
    }
  }

  /** The cutoff alone moves. */
  record LowPass(Filter filtered) implements Response {
    @Override
    public Kind kind() {
      return Kind.LOW_PASS;
    }

    @Override
    public Optional<Level> level() {
      return Optional.empty();
    }

    @Override
    public Optional<Filter> filter() {
      return Optional.of(filtered);
    }
  }
}
