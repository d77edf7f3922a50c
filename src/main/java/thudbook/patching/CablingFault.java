package thudbook.patching;

/**
 * Something that is wrong with the connections of a recipe, or that a reader should look at.
 *
 * @param place where, as a pointer of the recipe: {@code connections.2.in}, {@code stages.0}
 * @param message in one sentence that names the ports
 */
public record CablingFault(Kind kind, String place, String message) {
  /** Whether the patch may work all the same. */
  public boolean isWarning() {
    return kind.warning;
  }

  /** The kinds of bad connections. */
  public enum Kind {
    /** The label belongs to no module. */
    NO_SUCH_MODULE(false),
    /** Only a module is named. */
    NO_PORT_NAMED(false),
    /** The module has no such port. */
    NO_SUCH_PORT(false),
    /** The cable ends in an output. */
    OUTPUT_INTO_OUTPUT(false),
    /** The cable begins at an input. */
    INPUT_USED_AS_OUTPUT(false),
    /** Both ends are the wrong way round. */
    REVERSED(false),
    /** Two cables end in one input. */
    INPUT_FED_TWICE(false),
    /** The same connection stands there twice. */
    LISTED_TWICE(false),
    /** The signal goes round. */
    LOOP(true),
    /** Audio where a control voltage is expected. */
    AUDIO_INTO_CONTROL(true),
    /** A control voltage where audio is expected. */
    CONTROL_INTO_AUDIO(true),
    /** A slow or steady signal where an edge is expected. */
    NO_EDGE_FOR_TRIGGER(true),
    /** A trigger or gate signal where audio or a control voltage is expected. */
    TRIGGER_INTO_SIGNAL(true),
    /** A trigger where a key that is held is expected. */
    TRIGGER_INTO_GATE_SIGNAL(true),
    /** No module of the studio carries the gate of a stage. */
    STAGE_WITHOUT_MODULE(true),
    /** Nothing feeds the input of a gate stage. */
    STAGE_NOT_FED(false),
    /** Nothing opens a gate stage. */
    STAGE_NOT_CONTROLLED(false),
    /** Nothing goes on from a gate stage. */
    STAGE_NOT_HEARD(false),
    /** A stage is not fed by the one before it. */
    STAGES_NOT_IN_SERIES(false),
    /** An envelope is used and nothing strikes it. */
    ENVELOPE_NOT_STRUCK(true);

    private final boolean warning;

    Kind(boolean warning) {
      this.warning = warning;
    }
  }
}
