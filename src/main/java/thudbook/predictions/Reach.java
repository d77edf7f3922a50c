package thudbook.predictions;

/** How far a strike opens a gate, in the order that decides between stages: the least counts. */
public enum Reach {
  /** The control voltage is never above the threshold. */
  SILENT,
  /** Never at the ceiling. */
  PARTIAL,
  /** At the ceiling, but too short to open to 0.99. */
  BRIEF,
  /** Opens to 0.99 or more. */
  OPEN,
  /** Open before the strike. */
  IDLE_OPEN
}
