package thudbook.library.typed;

import java.util.List;
import thudbook.library.Wanted;

/**
 * What a typed search was understood as.
 *
 * @param understood each part in words, in the order of the text
 * @param notes what was not understood, or not as it may have been meant; the rest holds
 */
public record Typed(Wanted wanted, List<String> understood, List<Note> notes) {
  public Typed {
    understood = List.copyOf(understood);
    notes = List.copyOf(notes);
  }

  /**
   * Something to mend.
   *
   * @param found the part of the text
   * @param message one sentence
   */
  public record Note(String found, String message) {}
}
