package thudbook.storage;

import java.util.ArrayList;
import java.util.List;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** Things that have another version than an act expects. */
final class Stale {
  private final List<Fault> faults = new ArrayList<>();

  /** Notes a thing whose version is not the expected one. */
  void check(String title, long expected, long found) {
    if (expected != found) {
      faults.add(
          new Fault(
              "",
              0,
              "stale",
              String.valueOf(expected),
              String.valueOf(found),
              title
                  + " was changed meanwhile: version "
                  + found
                  + " is there, and this was meant for version "
                  + expected
                  + "."));
    }
  }

  /**
   * Ends the checks.
   *
   * @throws Refusal with everything that was noted
   */
  void refuse() {
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.STALE, faults);
    }
  }
}
