package thudbook.wording;

import thudbook.predictions.Reach;

/** How far a strike opens a gate, in words. */
public final class ReachWords {
  private ReachWords() {}

  /** In two or three words. */
  public static String brief(Reach reach) {
    return switch (reach) {
      case SILENT -> "silent";
      case PARTIAL -> "opens partly";
      case BRIEF -> "opens briefly";
      case OPEN -> "opens fully";
      case IDLE_OPEN -> "open at rest";
    };
  }

  /** What that means, in one sentence. */
  public static String meaning(Reach reach) {
    return switch (reach) {
      case SILENT -> "The control voltage never rises above the threshold.";
      case PARTIAL -> "The control voltage rises above the threshold and stays below the ceiling.";
      case BRIEF ->
          "The control voltage gets to the ceiling, but not for long enough to open the low-pass gate to 99 %.";
      case OPEN -> "The low-pass gate opens to 99 % or more.";
      case IDLE_OPEN -> "The control voltage is above the threshold before the strike.";
    };
  }
}
